"""`python -m resources.season_maker --to FOLDER`: writes the demo season as a data package with its photos."""

import argparse
import sys
from pathlib import Path

if not __package__:  # started by its folder's name
    sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from resources.season_maker.season import make_season
from resources.season_maker.write_season import write_photos, write_season

LARGEST_BYTES = 14_000_000


def main() -> int:
    """Read the arguments, write the files, tell what was written."""
    parser = argparse.ArgumentParser(prog="season_maker", description="Makes the invented demo season.")
    parser.add_argument("--to", type=Path, required=True, help="new or empty folder to write into")
    parser.add_argument("--photos-only", action="store_true", help="photos and plant masks, no entries")
    parser.add_argument("--workers", type=int, default=2, help="processes that draw at the same time")
    arguments = parser.parse_args()
    season, folder = make_season(), arguments.to
    if arguments.photos_only:
        print(f"{len(write_photos(season, folder, arguments.workers))} photos")
    else:
        try:
            package = write_season(season, folder, arguments.workers)
        except FileExistsError as error:
            parser.error(str(error))
        print(f"{len(package.entries)} entries, {len(package.photos)} photos")
    total = sum(file.stat().st_size for file in folder.rglob("*") if file.is_file())
    print(f"{total / 1e6:.2f} MB in {folder}")
    return 0 if total <= LARGEST_BYTES else 1


if __name__ == "__main__":
    raise SystemExit(main())
