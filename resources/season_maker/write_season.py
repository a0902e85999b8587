"""Writes the season as the logbook's open data package, with its photos, and the plant masks beside them."""

from dataclasses import replace
from pathlib import Path

from growlog.records.photo import Photo, PhotoUse
from growlog.sharing.data_package import Package, write_package

from .air_logger import hourly_samples, logger_file
from .entry_records import entries_of
from .photo_files import PhotoFile, make_photos, photo_jobs, write_photo
from .photo_records import original_names, photo_record, use_record
from .plan_records import feed_steps, light_steps
from .power_records import devices, tariffs
from .purchase_records import purchases
from .quality import decisions
from .room_records import ROOM_ID, crop_of, cultivar_of, facts_of, lamp_of, mixes, placements_of, plant_of, room_of
from .routine_records import due_answers, routines
from .scenario import LAST_DAY
from .season import Season
from .shelf_products import feed_targets, shelf_products, tap_water
from .stock_records import stock_moves

README = """\
The sample season: an invented box room and four invented crops, no real grower, place or plant.

datapackage.json and the CSV files are the records; photos/ holds the pictures that they list. The pictures are drawn
from the same plant model that the entries come from, and carry a camera's dates.

masks/ is no part of the data package. For each picture it holds one of the same name, upright, 225 x 300 pixels,
one bit: white is plant, black is everything else. The share of white is how much of the picture is plant.

All of it is made by: python -m resources.season_maker --to FOLDER
"""


def write_season(season: Season, folder: Path, workers: int) -> Package:
    """Writes everything into a new or empty folder and gives the records; FileExistsError if it holds files."""
    folder.mkdir(parents=True, exist_ok=True)
    if any(folder.iterdir()):
        raise FileExistsError(f"{folder} is not empty")
    pairs = write_photos(season, folder, workers)
    package = package_of_season(season, tuple(photo for photo, _ in pairs), tuple(use for _, use in pairs))
    write_package(package, folder)
    (folder / "README.txt").write_text(README, encoding="utf-8", newline="\n")
    return package


def write_photos(season: Season, folder: Path, workers: int) -> list[tuple[Photo, PhotoUse]]:
    """Draws and writes all photos and masks; their records in the order of crops and days."""
    names = original_names(season)
    pairs = []
    for drawn in make_photos(photo_jobs(season), workers):
        write_photo(drawn, folder)
        photo = _record(drawn, folder, names)
        pairs.append((photo, use_record(drawn.plan, photo)))
    return pairs


def package_of_season(season: Season, photos: tuple[Photo, ...], uses: tuple[PhotoUse, ...]) -> Package:
    """All records of the season."""
    return _with_air(season, _with_shelf_and_money(_with_plans(season, _grown(season, photos, uses))))


def _grown(season: Season, photos: tuple[Photo, ...], uses: tuple[PhotoUse, ...]) -> Package:
    """The room, the crops and what happened to them."""
    plans = [crop.plan for crop in season.crops]
    return Package(
        logbook=facts_of(season),
        as_of=LAST_DAY,
        rooms=(room_of(season),),
        lamps=(lamp_of(season),),
        cultivars=tuple(cultivar_of(plan) for plan in plans),
        crops=tuple(crop_of(plan) for plan in plans),
        plants=tuple(plant_of(plan) for plan in plans),
        placements=tuple(place for plan in plans for place in placements_of(plan)),
        mixes=mixes(),
        photos=photos,
        photo_uses=uses,
        entries=entries_of(season),
        decisions=decisions(),
    )


def _with_plans(season: Season, package: Package) -> Package:
    return replace(
        package,
        feed_steps=feed_steps(season),
        light_steps=light_steps(season),
        routines=routines(),
        due_answers=due_answers(),
    )


def _with_shelf_and_money(package: Package) -> Package:
    products = shelf_products()
    return replace(
        package,
        products=products,
        waters=(tap_water(),),
        feed_targets=feed_targets(),
        stock_moves=tuple(stock_moves(products, package.mixes, package.entries)),
        devices=devices(ROOM_ID),
        tariffs=tariffs(),
        purchases=purchases(),
    )


def _with_air(season: Season, package: Package) -> Package:
    samples = hourly_samples(season.leaf_area_m2)
    file = logger_file(ROOM_ID, samples)
    return replace(package, logger_files=(file,), climate_samples={file.id: samples})


def _record(drawn: PhotoFile, folder: Path, names: dict[tuple[str, int], str]) -> Photo:
    return photo_record(drawn.plan, folder, drawn.path, drawn.sha256, names[drawn.plan.crop, drawn.plan.age])
