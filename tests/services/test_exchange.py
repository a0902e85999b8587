"""The logbook written out and read in: nothing lost, nothing half-done."""

from dataclasses import replace
from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from growlog.records.entry import Feed, Note, Pick
from growlog.records.light_plan import LightStep
from growlog.records.product import ShelfProduct, StockMove, StockMoveSort
from growlog.records.purchase import Purchase
from growlog.records.recipe import MixPart
from growlog.records.room import Lamp, Room
from growlog.services.climate.of_crop import climate_of_room
from growlog.services.crops import crops_of, remove_crop
from growlog.services.entries import remove_entry
from growlog.services.exchange import ExchangeRefused, export_logbook, import_package, new_logbook_of
from growlog.services.logbooks import facts_of, open_log
from growlog.services.mixes import save_mix
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.photo_intake import judge, look_at, take_in
from growlog.services.photo_uses import remove_photo
from growlog.services.rooms import save_thing
from growlog.services.sample import build_sample, holds_logbook, sample_last_day
from growlog.services.undo import undo
from growlog.sharing.data_package import package_files, write_package
from tests.logbooks import TODAY, logbook, plant_crop, still_clock, write
from tests.sharing.packages import AS_OF, PHOTO_BYTES, full_package

pytestmark = pytest.mark.slow

PHOTOS = Path(__file__).parents[1] / "data" / "photos" / "daily-rosettes"


def files_below(folder: Path) -> dict[str, bytes]:
    """Every file below a folder with its bytes."""
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


@pytest.fixture
def package(tmp_path: Path) -> Path:
    """A sound package with its photo on disk."""
    folder = tmp_path / "package"
    photo = folder / full_package().photos[0].path
    photo.parent.mkdir(parents=True)
    photo.write_bytes(PHOTO_BYTES)
    write_package(full_package(), folder)
    return folder


def add_photo(log: OpenLogbook, crop_id: str) -> None:
    """One real photo on the crop."""
    items = look_at(log, [PHOTOS / "plant-a_2019-10-23-11-05.jpg"], crop_id)
    done, change = take_in(log, judge(log, list(items)))
    assert change is not None, done


def test_a_package_goes_into_an_empty_logbook_and_comes_out_with_the_same_bytes(package: Path, tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        assert import_package(package, log) is not None
        export_logbook(log, tmp_path / "out", complete=True)
    assert files_below(tmp_path / "out") == files_below(package)


def test_the_logbook_takes_over_the_name_and_currency_of_the_package(package: Path, tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        import_package(package, log)
        assert facts_of(log) == replace(full_package().logbook, version=1)


def test_the_climate_days_are_made_of_the_samples_that_a_package_holds(package: Path, tmp_path: Path) -> None:
    (file,) = full_package().logger_files
    with logbook(tmp_path) as log:
        import_package(package, log)
        days = climate_of_room(log, file.room_id)
    assert [d.day for d in days] == sorted({s.at_utc.date() for s in full_package().climate_samples[file.id]})
    assert days[0].humidity_mean_percent == 60.0


def test_a_logger_file_from_the_end_of_time_is_refused_by_its_name(package: Path, tmp_path: Path) -> None:
    (file,) = full_package().logger_files
    for_ever = replace(file, last_at=datetime(9999, 12, 31, 23, tzinfo=UTC))
    text = package_files(replace(full_package(), logger_files=(for_ever,)))["logger_files.csv"]
    (package / "logger_files.csv").write_bytes(text)
    with logbook(tmp_path) as log:
        with pytest.raises(ExchangeRefused, match=r"air\.csv in logger_files\.csv"):
            import_package(package, log)
        assert crops_of(log) == []


def test_a_grown_logbook_with_a_real_photo_comes_back_from_its_package(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log, sown=date(2019, 10, 1))
        add_photo(log, crop.id)
        write(log, crop, date(2019, 12, 1), Pick(2, 300.0), note="=cmd, first")
        package = export_logbook(log, tmp_path / "out")
        original = log.photo_folder.absolute(package.photos[0].path) if package else None
        assert original is not None
        assert original.read_bytes() == (tmp_path / "out" / package.photos[0].path).read_bytes()
        before = [(s.crop, s.photo_count, s.total) for s in crops_of(log)]
    assert new_logbook_of(tmp_path / "out", tmp_path / "again", still_clock())
    log = open_log(tmp_path / "again", still_clock(), tmp_path / "cache")
    try:
        assert [(s.crop, s.photo_count, s.total) for s in crops_of(log)] == before
    finally:
        log.close()


def test_the_bin_stays_behind_with_all_that_belongs_to_it(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        kept, binned = plant_crop(log, sown=date(2019, 10, 1)), plant_crop(log, "Boxroom Red", date(2019, 10, 1))
        write(log, binned, TODAY, Note(), note="goes with its crop")
        gone = write(log, kept, TODAY, Note(), note="goes alone")
        add_photo(log, kept.id)
        with log.unit() as unit:
            use_id = unit.photo_uses.all()[0].id
        remove_photo(log, use_id)
        remove_entry(log, gone.id)
        remove_crop(log, binned.id)
        package = export_logbook(log, tmp_path / "out")
    assert package is not None
    assert [c.name for c in package.crops] == ["Boxroom Gold"]
    assert (package.entries, package.photos, package.photo_uses) == ((), (), ())
    assert not (tmp_path / "out" / "photos").exists()


def test_a_mix_in_the_bin_is_kept_where_a_feed_still_points_at_it(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        mix, change = save_mix(log, "growth", (MixPart("part A", 2.0),))
        write(log, crop, TODAY, Feed(mix.id, None, 2.0))
        undo(log, change)
        package = export_logbook(log, tmp_path / "out")
    assert package is not None
    assert [m.id for m in package.mixes] == [mix.id]
    assert new_logbook_of(tmp_path / "out", tmp_path / "again", still_clock())


def test_what_points_into_the_bin_lets_go_of_it_or_keeps_it(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        kept, binned = plant_crop(log), plant_crop(log, "Boxroom Red")
        gone = write(log, kept, TODAY, Note(), note="goes")
        room, lamp = Room(new_id(), "Shelf"), new_id()
        product, bottle = ShelfProduct(new_id(), "Part A"), new_id()
        with log.unit() as unit:
            unit.add("g", room, product, Lamp(lamp, room.id, "Panel"))
            unit.add("g", StockMove(bottle, product.id, TODAY, StockMoveSort.USED, 4.0, entry_id=gone.id))
            unit.add("g", LightStep("by-day", room.id, TODAY, binned.id, lamp_ids=(lamp,)))
            unit.add("g", LightStep("by-age", room.id, None, binned.id, 30))
            unit.add("g", Purchase("shared", "Scale", TODAY), Purchase("own", "Seed", TODAY, crop_id=binned.id))
            for record in (room, product, unit.lamps.get(lamp), gone):
                unit.remove("h", record)
            unit.commit()
        remove_crop(log, binned.id)
        package = export_logbook(log, tmp_path / "out")
    assert package is not None
    assert [(m.id, m.entry_id) for m in package.stock_moves] == [(bottle, None)]
    assert [(s.id, s.crop_id) for s in package.light_steps] == [("by-day", None)]
    assert [p.id for p in package.purchases] == ["shared"]
    assert (product.id, lamp) == (package.products[0].id, package.lamps[0].id)
    assert room.id in {r.id for r in package.rooms}
    assert new_logbook_of(tmp_path / "out", tmp_path / "again", still_clock())


def test_an_export_into_a_folder_that_is_not_empty_is_refused_and_leaves_it_as_it_is(tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "mine.txt").write_text("mine", encoding="utf-8")
    with logbook(tmp_path) as log, pytest.raises(ExchangeRefused, match="is not empty"):
        export_logbook(log, tmp_path / "out")
    assert files_below(tmp_path / "out") == {"mine.txt": b"mine"}


def test_an_export_goes_into_an_empty_folder(tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()
    with logbook(tmp_path) as log:
        export_logbook(log, tmp_path / "out")
    assert (tmp_path / "out" / "datapackage.json").is_file()


def test_an_export_with_a_lost_original_names_it_and_leaves_no_half_package(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log, sown=date(2019, 10, 1))
        add_photo(log, crop.id)
        next((log.folder / "photos").rglob("*.jpg")).unlink()
        with pytest.raises(ExchangeRefused, match=r"^photos/Boxroom Gold/.*\.jpg: The photo is missing"):
            export_logbook(log, tmp_path / "out")
    assert sorted(p.name for p in tmp_path.iterdir()) == ["cache", "room"]


def test_a_cancelled_export_leaves_nothing(package: Path, tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        import_package(package, log)
        assert export_logbook(log, tmp_path / "out", cancelled=lambda: True, complete=True) is None
    assert not (tmp_path / "out").exists()
    assert not list(tmp_path.glob("*.part")) + list(tmp_path.glob(".*.part"))


def test_progress_counts_the_photos(package: Path, tmp_path: Path) -> None:
    seen: list[tuple[int, int]] = []
    with logbook(tmp_path) as log:
        import_package(package, log, lambda done, total: seen.append((done, total)))
    assert seen == [(1, 1)]


@pytest.mark.parametrize("damage", ["changed", "missing", "table"])
def test_nothing_of_a_wrong_package_is_written(package: Path, tmp_path: Path, damage: str) -> None:
    photo = package / full_package().photos[0].path
    if damage == "changed":
        photo.write_bytes(PHOTO_BYTES[:-1] + b"!")
    elif damage == "missing":
        photo.unlink()
    else:
        (package / "culls.csv").write_bytes(b"")
    with logbook(tmp_path) as log:
        before = files_below(log.folder)
        with pytest.raises(ExchangeRefused, match=r"^(photos/|culls\.csv, row 1)"):
            import_package(package, log)
        assert files_below(log.folder) == before
        assert crops_of(log) == []


def test_copied_photos_are_taken_away_again_where_the_rows_cannot_be_written(
    package: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full_disk(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("growlog.services.exchange._write", full_disk)
    with logbook(tmp_path) as log:
        with pytest.raises(ExchangeRefused, match="No space left on device"):
            import_package(package, log)
        assert list((log.folder / "photos").iterdir()) == []


def test_a_cancelled_import_writes_nothing(package: Path, tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        assert import_package(package, log, cancelled=lambda: True) is None
        assert list((log.folder / "photos").iterdir()) == []
        assert crops_of(log) == []
    assert not new_logbook_of(package, tmp_path / "new", still_clock(), cancelled=lambda: True)
    assert not (tmp_path / "new").exists()


def test_a_logbook_that_holds_something_takes_no_package(package: Path, tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        save_thing(log, Room(new_id(), "Box room"))
        with pytest.raises(ExchangeRefused, match="Read it into a new logbook"):
            import_package(package, log)


def test_an_import_is_one_change_in_the_history(package: Path, tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        change = import_package(package, log)
        with log.unit() as unit:
            groups = [row.group_id for row in unit.history()]
    assert change is not None
    assert set(groups[1:]) == {change.group_id}


def test_the_sample_season_becomes_a_logbook_of_its_own_once(package: Path, tmp_path: Path) -> None:
    folder = tmp_path / "data" / "sample"
    assert not holds_logbook(folder)
    build_sample(package, folder, still_clock())
    assert holds_logbook(folder)
    assert sample_last_day(package) == AS_OF
    with pytest.raises(ExchangeRefused, match="is not empty"):
        build_sample(package, folder, still_clock())


def test_a_sample_season_that_is_not_there_is_said_plainly(tmp_path: Path) -> None:
    with pytest.raises(ExchangeRefused, match=r"datapackage\.json: The file is missing"):
        build_sample(tmp_path / "nowhere", tmp_path / "sample", still_clock())
    assert not (tmp_path / "sample").exists()
