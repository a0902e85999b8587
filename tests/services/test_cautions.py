"""Cautions: each topic has one, and says where it comes from."""

import pytest

from growlog.services.cautions import CAUTIONS, CautionTopic, cautions_for, local_first


@pytest.mark.parametrize("topic", list(CautionTopic))
def test_each_topic_has_a_caution_with_its_source(topic: CautionTopic) -> None:
    found = cautions_for(topic)
    assert found
    for caution in found:
        assert caution.sentence.endswith(".")
        assert caution.from_memory == ("from memory" in caution.source)


def test_local_codes_and_licensed_electricians_go_first() -> None:
    assert "Local codes" in local_first()
    assert "licensed electrician" in local_first()


def test_several_topics_come_in_the_order_of_the_table() -> None:
    assert cautions_for("mould", "lamps") == [c for c in CAUTIONS if c.topic in ("lamps", "mould")]
    with pytest.raises(ValueError, match="wind"):
        cautions_for("wind")
