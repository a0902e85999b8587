"""The stages to choose from, against the BBCH monograph (Meier 2001) as far as it was read."""

from pathlib import Path

import pytest

from growlog.services.growth_stages import StageScale, growth_stages, scale_for

TABLE = (Path(__file__).parents[2] / "resources" / "tables" / "bbch.csv").read_text(encoding="utf-8")


@pytest.mark.parametrize("scale", list(StageScale))
def test_both_scales_begin_with_dry_seed_and_open_seed_leaves_at_10(scale: StageScale):
    # Meier (2001), principal stages 0 and 1 of cucurbits and of solanaceous fruit
    stages = {stage.code: stage for stage in growth_stages(TABLE, scale)}
    assert stages["00"].meaning == "dry seed"
    assert stages["10"].meaning == "seed leaves fully open"
    assert not stages["10"].from_memory


def test_a_code_that_was_not_read_in_the_monograph_says_so():
    stages = {stage.code: stage for stage in growth_stages(TABLE, StageScale.CUCURBITS)}
    assert stages["61"].from_memory
    assert not stages["51"].from_memory


def test_a_stage_that_only_three_digits_tell_has_three():
    codes = [stage.code for stage in growth_stages(TABLE, StageScale.CUCURBITS)]
    assert "119" in codes
    assert "101" not in codes


@pytest.mark.parametrize(
    "species, scale",
    [
        ("pattypan", StageScale.CUCURBITS),
        ("chilli", StageScale.SOLANACEOUS),
        ("Cherry tomato", StageScale.SOLANACEOUS),
        ("aubergine", StageScale.SOLANACEOUS),
        ("", StageScale.CUCURBITS),
    ],
)
def test_the_scale_follows_the_plants_name(species: str, scale: StageScale):
    assert scale_for(species) is scale
