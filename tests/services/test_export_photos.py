"""The photos of an exported data set: without places by default, originals with --complete, the same bytes again."""

import json
import subprocess
import sys
from pathlib import Path

import pytest
from PIL import ExifTags, Image

from growlog.photos.places import PlacesStay
from growlog.records.crop import Crop
from growlog.records.entry import Note
from growlog.services.exchange import ExchangeRefused, export_logbook, new_logbook_of
from growlog.services.logbooks import open_log
from growlog.services.open_logbook import OpenLogbook
from growlog.services.photo_intake import judge, look_at, take_in
from tests.logbooks import TODAY, plant_crop, still_clock, write
from tests.photos.conftest import encoded, exif_with, quartered
from tests.photos.telling import SECRET, telling_heic, telling_jpeg, telling_png, telling_tiff, telling_webp
from tests.services.test_exchange import files_below

pytestmark = pytest.mark.slow


def take(log: OpenLogbook, crop: Crop, source: Path, content: bytes) -> None:
    source.write_bytes(content)
    _, written = take_in(log, judge(log, list(look_at(log, [source], crop.id))))
    assert written is not None


@pytest.fixture
def crop(log: OpenLogbook, tmp_path: Path) -> Crop:
    """A crop with a photo of each kind that tells its place, and one that tells none."""
    made = plant_crop(log)
    plain = encoded(quartered(), "JPEG", exif=exif_with(1, original="2026:02:01 08:00:00").tobytes(), quality=70)
    kinds = {"jpg": telling_jpeg(), "png": telling_png(), "webp": telling_webp(), "tif": telling_tiff(),
             "heic": telling_heic(), "jpeg": plain}  # fmt: skip
    for number, (ending, content) in enumerate(kinds.items(), start=1):
        take(log, made, tmp_path / f"2026-01-{number:02d}.{ending}", content)
    write(log, made, TODAY, Note(), note='=HYPERLINK("x") and \'=kept, -1, "quoted"\nsecond line')
    return made


def photos_in(folder: Path) -> dict[str, bytes]:
    return {name: content for name, content in files_below(folder).items() if name.startswith("photos/")}


def again(folder: Path, tmp_path: Path, out: str, *, complete: bool) -> Path:
    """Read into a new logbook and written out again."""
    home = tmp_path / f"of-{out}"
    assert new_logbook_of(folder, home, still_clock())
    back = open_log(home, still_clock(), tmp_path / "cache")
    try:
        export_logbook(back, tmp_path / out, complete=complete)
    finally:
        back.close()
    return tmp_path / out


@pytest.mark.usefixtures("crop")
def test_photos_go_without_places_with_their_pixels_as_they_were(log: OpenLogbook, tmp_path: Path) -> None:
    package = export_logbook(log, tmp_path / "out")
    assert package is not None
    assert package.photos_without_places == 5
    shared = photos_in(tmp_path / "out")
    assert len(shared) == 6
    for name, content in shared.items():
        original = (log.folder / name).read_bytes()
        assert SECRET not in content
        assert (content == original) == (SECRET not in original)
        if not name.endswith(".heic"):
            with Image.open(tmp_path / "out" / name) as after, Image.open(log.folder / name) as before:
                assert after.tobytes() == before.tobytes()
                assert not after.getexif().get_ifd(ExifTags.IFD.GPSInfo)


@pytest.mark.slow
@pytest.mark.usefixtures("crop")
def test_the_tables_tell_of_the_files_as_they_are_there_and_the_validator_agrees(
    log: OpenLogbook, tmp_path: Path
) -> None:
    export_logbook(log, tmp_path / "out")
    description = json.loads((tmp_path / "out" / "datapackage.json").read_text(encoding="utf-8"))["description"]
    assert "Of the photos 5 are not the originals" in description
    assert new_logbook_of(tmp_path / "out", tmp_path / "again", still_clock())  # each photo is checked by its SHA-256
    told = subprocess.run(
        [sys.executable, "-m", "frictionless", "validate", "datapackage.json", "--json"],
        cwd=tmp_path / "out", capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert json.loads(told.stdout)["valid"], told.stdout


@pytest.mark.usefixtures("crop")
def test_a_complete_export_keeps_the_originals_and_comes_back_with_the_same_bytes(
    log: OpenLogbook, tmp_path: Path
) -> None:
    package = export_logbook(log, tmp_path / "out", complete=True)
    assert package is not None
    assert package.photos_without_places == 0
    shared = photos_in(tmp_path / "out")
    assert all(content == (log.folder / name).read_bytes() for name, content in shared.items())
    assert any(SECRET in content for content in shared.values())
    back = again(tmp_path / "out", tmp_path, "again", complete=True)
    assert files_below(back) == files_below(tmp_path / "out")


@pytest.mark.usefixtures("crop")
def test_what_went_out_without_places_goes_out_again_as_it_is(log: OpenLogbook, tmp_path: Path) -> None:
    export_logbook(log, tmp_path / "out")
    back = again(tmp_path / "out", tmp_path, "again", complete=False)
    assert photos_in(back) == photos_in(tmp_path / "out")


def test_two_photos_that_differ_in_their_place_alone_stay_two(log: OpenLogbook, tmp_path: Path) -> None:
    crop = plant_crop(log)
    for number, note in enumerate((b"one", b"two"), start=1):
        content = encoded(quartered(), "JPEG", comment=note, quality=90)
        take(log, crop, tmp_path / f"2026-01-0{number}.jpg", content)
    export_logbook(log, tmp_path / "out")
    first, second = sorted(photos_in(tmp_path / "out").values(), key=len)
    assert second == first + b"\0"
    assert photos_in(again(tmp_path / "out", tmp_path, "again", complete=False)) == photos_in(tmp_path / "out")


def test_of_a_file_that_is_not_understood_a_bare_picture_goes_out(
    log: OpenLogbook, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stays(_: bytes) -> bytes:
        raise PlacesStay("odd")

    crop = plant_crop(log)
    take(log, crop, tmp_path / "2026-01-01.tif", telling_tiff())
    monkeypatch.setattr("growlog.services.photos_for_others.without_places", stays)
    package = export_logbook(log, tmp_path / "out")
    assert package is not None
    assert package.photos[0].media_type == "image/jpeg"
    assert package.photos[0].path.endswith(".jpg")
    assert SECRET not in (tmp_path / "out" / package.photos[0].path).read_bytes()


@pytest.mark.usefixtures("crop")
@pytest.mark.parametrize("complete", [False, True])
def test_a_full_disk_half_way_leaves_no_half_folder(
    log: OpenLogbook, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, complete: bool
) -> None:
    before = {p.name for p in tmp_path.iterdir()}
    written: list[int] = []

    def full(_: int) -> None:
        written.append(1)
        if len(written) > 2:
            raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(ExchangeRefused, match="No space left on device"):
        export_logbook(log, tmp_path / "out", complete=complete)
    assert {p.name for p in tmp_path.iterdir()} == before


@pytest.mark.usefixtures("crop")
def test_a_cancelled_export_leaves_no_half_folder(log: OpenLogbook, tmp_path: Path) -> None:
    asked: list[int] = []

    def after_three() -> bool:
        asked.append(1)
        return len(asked) > 3

    before = {p.name for p in tmp_path.iterdir()}
    assert export_logbook(log, tmp_path / "out", cancelled=after_three) is None
    assert {p.name for p in tmp_path.iterdir()} == before


@pytest.mark.usefixtures("crop")
def test_text_that_a_spreadsheet_would_run_is_guarded_and_comes_back_as_it_was(
    log: OpenLogbook, tmp_path: Path
) -> None:
    export_logbook(log, tmp_path / "out", complete=True)
    table = (tmp_path / "out" / "entries.csv").read_text(encoding="utf-8")
    assert "'=HYPERLINK" in table
    assert new_logbook_of(tmp_path / "out", tmp_path / "again", still_clock())
    back = open_log(tmp_path / "again", still_clock(), tmp_path / "cache")
    try:
        with back.unit() as unit:
            notes = [e.note for e in unit.entries.all()]
    finally:
        back.close()
    assert notes == ['=HYPERLINK("x") and \'=kept, -1, "quoted"\nsecond line']
