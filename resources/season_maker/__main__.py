"""`python -m resources.season_maker --to FOLDER --photos-only`: draws the demo season's photos."""

import argparse
import sys
from pathlib import Path

if not __package__:  # started by its folder's name
    sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from resources.season_maker.photo_files import make_photos, photo_jobs, write_photo
from resources.season_maker.season import make_season

LARGEST_BYTES = 14_000_000


def main() -> int:
    """Read the arguments, write the files, tell what was written."""
    parser = argparse.ArgumentParser(prog="season_maker", description="Makes the invented demo season.")
    parser.add_argument("--to", type=Path, required=True, help="folder to write into")
    parser.add_argument("--photos-only", action="store_true", help="photos and plant masks, no entries")
    parser.add_argument("--workers", type=int, default=2, help="processes that draw at the same time")
    arguments = parser.parse_args()
    if not arguments.photos_only:
        parser.error("entries are not written yet: add --photos-only")
    season, total, count = make_season(), 0, 0
    for photo in make_photos(photo_jobs(season), arguments.workers):
        write_photo(photo, arguments.to)
        total, count = total + len(photo.jpeg), count + 1
    print(f"{count} photos, {total / 1e6:.2f} MB in {arguments.to}")
    return 0 if total <= LARGEST_BYTES else 1


if __name__ == "__main__":
    raise SystemExit(main())
