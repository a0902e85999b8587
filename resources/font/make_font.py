"""Makes the four font files beside this one: a smaller part of an open sans, under a name of its own.

python resources/font/make_font.py FOLDER_WITH_THE_FOUR_SOURCE_FILES
"""

import sys
from pathlib import Path

from fontTools import subset
from fontTools.ttLib import TTFont

FAMILY = "Logbook Sans"
WEIGHTS = ("Regular", "Medium", "SemiBold", "Bold")
RANGES = (
    (0x20, 0x7E),  # Basic Latin
    (0xA0, 0x17F),  # Latin-1 and Latin Extended-A
    (0x218, 0x21B),  # comma-below letters
    (0x2BC, 0x2DD),  # modifier letters and accents
    (0x300, 0x30C),  # combining marks
    (0x386, 0x3CE),  # Greek
    (0x400, 0x45F),  # Cyrillic
    (0x490, 0x493),
    (0x2000, 0x206F),  # spaces and punctuation
    (0x2070, 0x209C),  # superscripts and subscripts
    (0x20A0, 0x20BF),  # currency signs
    (0x2150, 0x215F),  # fractions
    (0x2190, 0x21E7),  # arrows and the shift key
    (0x2200, 0x2265),  # mathematics
    (0x2318, 0x2325),  # key signs
    (0x232B, 0x232B),
    (0x23CE, 0x23CE),  # the return key
    (0x25A0, 0x25CF),  # plain shapes
)
KEPT_FEATURES = ["kern", "mark", "ccmp", "locl", "tnum", "pnum", "case", "sups", "subs", "frac"]


def kept_code_points() -> list[int]:
    """Every character the program may want to show."""
    return [code for first, last in RANGES for code in range(first, last + 1)]


def rename(font: TTFont, weight: str) -> None:
    """A changed font bears its own name; the copyright and the licence records stay."""
    names = font["name"]
    names.names = [record for record in names.names if record.nameID in (0, 5, 8, 9, 13, 14)]
    simple = weight in ("Regular", "Bold")
    texts = {
        1: FAMILY if simple else f"{FAMILY} {weight}",
        2: weight if simple else "Regular",
        3: f"{FAMILY} {weight}, a subset",
        4: f"{FAMILY} {weight}",
        6: f"{FAMILY.replace(' ', '')}-{weight}",
        10: "A subset made for the Growing-room Logbook; renamed because it was changed.",
        16: FAMILY,
        17: weight,
    }
    for name_id, text in texts.items():
        names.setName(text, name_id, 3, 1, 0x409)
    top = font["CFF "].cff
    top.fontNames = [texts[6]]
    top.topDictIndex[0].FullName = texts[4]
    top.topDictIndex[0].FamilyName = FAMILY


def make(source: Path, target: Path, weight: str) -> None:
    """One weight, cut down and renamed."""
    options = subset.Options(layout_features=KEPT_FEATURES, hinting=False, desubroutinize=False)
    options.name_IDs = ["*"]
    options.notdef_outline = True
    font = subset.load_font(str(source), options)
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=kept_code_points())
    cutter.subset(font)
    rename(font, weight)
    subset.save_font(font, str(target), options)


def main() -> None:
    """All four weights from the folder named on the command line."""
    here = Path(__file__).parent
    for weight in WEIGHTS:
        make(Path(sys.argv[1]) / f"Inter-{weight}.otf", here / f"LogbookSans-{weight}.otf", weight)


if __name__ == "__main__":
    main()
