"""Where the program's own files are found."""

from pathlib import Path

import pytest

from growlog.desktop.resources import ResourceMissing, choose_root, resource_path, resource_text


def test_the_packed_folder_comes_before_the_checkout(tmp_path: Path) -> None:
    packed, checkout = tmp_path / "packed", tmp_path / "checkout"
    for folder in (packed, checkout):
        (folder / "styles").mkdir(parents=True)
    assert choose_root([packed, checkout]) == packed


def test_a_folder_without_styles_is_passed_over(tmp_path: Path) -> None:
    (tmp_path / "packed").mkdir()
    (tmp_path / "checkout" / "styles").mkdir(parents=True)
    assert choose_root([tmp_path / "packed", tmp_path / "checkout"]) == tmp_path / "checkout"


def test_an_installation_without_resources_is_told_plainly(tmp_path: Path) -> None:
    with pytest.raises(ResourceMissing, match="packed"):
        choose_root([tmp_path / "packed"])


def test_a_missing_file_is_named() -> None:
    with pytest.raises(ResourceMissing, match=r"nothing\.svg"):
        resource_path("icons", "nothing.svg")


def test_the_font_comes_with_its_licence() -> None:
    text = resource_text("font", "OFL.txt")
    assert "SIL OPEN FONT LICENSE Version 1.1" in text
    assert "The Inter Project Authors" in text


def test_every_kind_of_file_in_the_folder_has_its_source_named() -> None:
    sources = resource_text("SOURCES.md")
    assert "LogbookSans" in sources
    assert "icons/" in sources
