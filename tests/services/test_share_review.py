"""The review as others get it: a page judged by html5lib, a PDF read and drawn by pypdf and pdfium."""

import base64
import re
from dataclasses import replace
from datetime import timedelta
from io import BytesIO
from pathlib import Path

import html5lib
import pypdf
import pypdfium2
import pytest
from PIL import ExifTags, Image

from growlog.records.crop import Crop
from growlog.records.decision import Verdict
from growlog.records.entry import Note
from growlog.services.crops import change_crop, crop_and_cultivar
from growlog.services.decisions import decide
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.paper import Paper
from growlog.services.photo_intake import judge, look_at, take_in
from growlog.services.review.model import ReviewOptions
from growlog.services.share_review import review_page_pictures, write_review
from tests.logbooks import SOWN, TODAY, plant_crop, write
from tests.photos.conftest import encoded, quartered
from tests.photos.telling import SECRET, telling_exif
from tests.services.review.grown import change, grown, priced

pytestmark = pytest.mark.slow

NASTY = '<b>Gold</b> & "Sons" \'#panic() *x* $y$ [z] {{ facts }} \U0001f331'
RIGHT_TO_LEFT = "קישוא זהוב"
MM = 72 / 25.4


def html_of(log: OpenLogbook, crop: Crop, tmp_path: Path, **options: object) -> str:
    """The page, which a strict parser has read without a complaint."""
    path = tmp_path / "review.html"
    assert write_review(log, crop.id, path, ReviewOptions(**options)) is not None  # type: ignore[arg-type]
    page = path.read_text(encoding="utf-8")
    html5lib.HTMLParser(strict=True).parse(page)
    return page


def pdf_of(log: OpenLogbook, crop: Crop, tmp_path: Path, paper: Paper = Paper.A4) -> pypdf.PdfReader:
    path = tmp_path / "review.pdf"
    assert write_review(log, crop.id, path, paper=paper) is not None
    return pypdf.PdfReader(path)


def words_of(reader: pypdf.PdfReader) -> str:
    return " ".join(" ".join(page.extract_text() for page in reader.pages).split())


def text_of(page: str) -> str:
    """What a reader of the page sees."""
    document = html5lib.parse(page, namespaceHTMLElements=False)
    return " ".join(" ".join(document.find("body").itertext()).split())


def pictures_in(page: str) -> list[bytes]:
    return [base64.b64decode(found) for found in re.findall(r'src="data:image/jpeg;base64,([^"]+)"', page)]


def with_photo(log: OpenLogbook, crop: Crop, tmp_path: Path, day: str = "2026:01:18 18:41:02") -> Path:
    """A photo that tells its place, taken in; its original."""
    exif = telling_exif(1)
    exif.get_ifd(ExifTags.IFD.Exif)[ExifTags.Base.DateTimeOriginal] = day
    source = tmp_path / f"{day[:10].replace(':', '-')}.jpg"
    source.write_bytes(encoded(quartered(), "JPEG", exif=exif.tobytes()))
    _, written = take_in(log, judge(log, list(look_at(log, [source], crop.id))))
    assert written is not None
    with log.unit() as unit:
        return log.photo_folder.absolute(unit.photos.all()[-1].path)


def test_the_page_holds_all_that_it_needs(log: OpenLogbook, tmp_path: Path) -> None:
    crop = grown(log)
    priced(log, crop)
    with_photo(log, crop, tmp_path)
    page = html_of(log, crop, tmp_path)
    assert "<script" not in page
    assert not re.findall(r'(?:src|href)="(?!data:|#)', page)
    assert not re.findall(r"url\((?!data:)", page)
    assert len(pictures_in(page)) == 1
    assert page.count("<svg") == 2
    assert '<meta name="viewport"' in page
    assert "20 fruit, 2.00" in text_of(page)


@pytest.mark.parametrize("name", [NASTY, RIGHT_TO_LEFT])
def test_names_and_notes_are_shown_as_typed_and_become_no_markup(log: OpenLogbook, tmp_path: Path, name: str) -> None:
    crop, _ = change(log, grown(log, name).id, taste=name, trying=name, medium=name)
    write(log, crop, TODAY, Note(), note=name)
    decide(log, crop.id, Verdict.REGROW_WITH_CHANGES, name, name)
    page = html_of(log, crop, tmp_path)
    assert text_of(page).count(name) >= 7
    assert "<b>Gold" not in page
    assert html5lib.parse(page, namespaceHTMLElements=False).findtext("head/title") == name


def test_a_pdf_takes_every_name_as_it_stands(log: OpenLogbook, tmp_path: Path) -> None:
    words = words_of(pdf_of(log, grown(log, NASTY), tmp_path))
    assert '<b>Gold</b> & "Sons" \'#panic() *x* $y$ [z] {{ facts }}' in words


def test_a_right_to_left_name_is_set_on_paper(log: OpenLogbook, tmp_path: Path) -> None:
    reader = pdf_of(log, plant_crop(log, RIGHT_TO_LEFT), tmp_path)
    assert reader.metadata is not None
    assert reader.metadata.title == RIGHT_TO_LEFT


def test_characters_that_no_page_can_hold_are_left_out(log: OpenLogbook, tmp_path: Path) -> None:
    crop, _ = change(log, grown(log).id, taste="good\x0b\x07\ufffe, nutty")
    assert "good, nutty" in text_of(html_of(log, crop, tmp_path))
    assert "good, nutty" in words_of(pdf_of(log, crop, tmp_path))


@pytest.mark.parametrize(("paper", "millimetres"), [(Paper.A4, (210, 297)), (Paper.LETTER, (215.9, 279.4))])
def test_the_pdf_has_two_to_four_pages_of_its_paper(
    log: OpenLogbook, tmp_path: Path, paper: Paper, millimetres: tuple[float, float]
) -> None:
    crop = grown(log)
    priced(log, crop)
    decide(log, crop.id, Verdict.REGROW, "Good to eat.")
    reader = pdf_of(log, crop, tmp_path, paper)
    assert 2 <= len(reader.pages) <= 4
    box = reader.pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx([side * MM for side in millimetres], abs=0.6)
    first = " ".join(reader.pages[0].extract_text().split())
    for words in ("Boxroom Gold", "20 fruit, 2.00 kg", "What it gave", "Regrow", "Good to eat.", "1 of"):
        assert words in first


def test_its_pages_have_ink_on_them_and_the_photo_too(log: OpenLogbook, tmp_path: Path) -> None:
    crop = grown(log)
    with_photo(log, crop, tmp_path)
    pdf_of(log, crop, tmp_path)
    with pypdfium2.PdfDocument(tmp_path / "review.pdf") as document:
        drawn = [page.render(scale=0.5).to_pil().convert("RGB") for page in document]
    assert all(page.convert("L").getextrema()[0] < 160 for page in drawn)
    reds = sum(r > 180 and g < 90 and b < 90 for r, g, b in drawn[0].get_flattened_data())
    assert reds > 100


def test_a_crop_without_photos_and_picks_has_both_files(log: OpenLogbook, tmp_path: Path) -> None:
    crop = plant_crop(log)
    assert "There are no photos of this crop." in text_of(html_of(log, crop, tmp_path))
    assert "nothing was picked" in words_of(pdf_of(log, crop, tmp_path))


def test_a_missing_original_leaves_a_place_that_says_so(log: OpenLogbook, tmp_path: Path) -> None:
    crop = grown(log)
    with_photo(log, crop, tmp_path).unlink()
    page = html_of(log, crop, tmp_path)
    assert pictures_in(page) == []
    assert "The original of this photo is missing." in text_of(page)
    assert "1 photo cannot be shown, its original is missing or damaged: day 64." in text_of(page)
    assert "The original of this photo is missing." in words_of(pdf_of(log, crop, tmp_path))


def test_pictures_tell_no_place_unless_that_is_asked_for(log: OpenLogbook, tmp_path: Path) -> None:
    crop = grown(log)
    with_photo(log, crop, tmp_path)
    bare = Image.open(BytesIO(pictures_in(html_of(log, crop, tmp_path))[0]))
    assert not bare.getexif()
    assert set(bare.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density", "progressive", "progression"}
    asked = pictures_in(html_of(log, crop, tmp_path, places=True))[0]
    assert Image.open(BytesIO(asked)).getexif().get_ifd(ExifTags.IFD.GPSInfo)[1] == "N"
    pdf_of(log, crop, tmp_path)
    assert SECRET not in (tmp_path / "review.pdf").read_bytes()


def test_money_and_notes_are_left_out_where_that_is_asked(log: OpenLogbook, tmp_path: Path) -> None:
    crop = grown(log)
    priced(log, crop)
    seen = text_of(html_of(log, crop, tmp_path, money=False, notes=False))
    assert "EUR" not in seen
    assert "Small fruit taste best" not in seen
    assert "Left out: money, notes." in seen


@pytest.mark.slow
def test_a_page_stays_below_four_megabytes(log: OpenLogbook, tmp_path: Path) -> None:
    """Pictures of pure noise are the heaviest there are."""
    crop = grown(log)
    for number in range(9):
        source = tmp_path / f"2026-01-{number + 10:02d}.jpg"
        source.write_bytes(encoded(Image.effect_noise((1200, 1600), 120).convert("RGB"), "JPEG", quality=92))
        take_in(log, judge(log, list(look_at(log, [source], crop.id))))
    page = html_of(log, crop, tmp_path)
    assert len(pictures_in(page)) == 9
    assert len(page.encode()) < 4_000_000


def test_the_same_review_gives_the_same_bytes(log: OpenLogbook, tmp_path: Path) -> None:
    crop = grown(log)
    assert html_of(log, crop, tmp_path) == html_of(log, crop, tmp_path)
    pdf_of(log, crop, tmp_path)
    first = (tmp_path / "review.pdf").read_bytes()
    pdf_of(log, crop, tmp_path)
    assert (tmp_path / "review.pdf").read_bytes() == first


def test_pages_come_as_pictures_for_the_printer(log: OpenLogbook) -> None:
    pages = review_page_pictures(log, grown(log).id, paper=Paper.LETTER, dots_per_inch=72)
    assert 2 <= len(pages) <= 4
    assert Image.open(BytesIO(pages[0])).size == (612, 792)


def test_another_ending_is_refused(log: OpenLogbook, tmp_path: Path) -> None:
    with pytest.raises(LogbookProblem, match="must end in"):
        write_review(log, plant_crop(log).id, tmp_path / "review.doc")


def test_a_cancelled_review_leaves_nothing(log: OpenLogbook, tmp_path: Path) -> None:
    crop = grown(log)
    with_photo(log, crop, tmp_path)
    assert write_review(log, crop.id, tmp_path / "review.html", cancelled=lambda: True) is None
    assert not (tmp_path / "review.html").exists()


@pytest.mark.parametrize("name", ["review.html", "review.pdf"])
def test_a_full_disk_half_way_leaves_no_half_file(
    log: OpenLogbook, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    crop = grown(log)
    (tmp_path / name).write_bytes(b"the one before")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("growlog.sharing.whole_file.os.fsync", full)
    with pytest.raises(OSError, match="No space left"):
        write_review(log, crop.id, tmp_path / name)
    assert (tmp_path / name).read_bytes() == b"the one before"
    assert not list(tmp_path.glob(".*unfinished*"))


def test_earlier_crops_stand_beside_in_both_files(log: OpenLogbook, tmp_path: Path) -> None:
    grown(log, "Skylight Round")
    crop = grown(log)
    cultivar = crop_and_cultivar(log, crop.id)[1]
    change_crop(log, crop_and_cultivar(log, crop.id)[0], replace(cultivar, packet_days=None))
    assert "Skylight Round" in text_of(html_of(log, crop, tmp_path))
    assert "Skylight Round" in words_of(pdf_of(log, crop, tmp_path))


def test_paper_says_which_of_several_earlier_crops_it_shows(log: OpenLogbook, tmp_path: Path) -> None:
    crop = grown(log)
    assert "room for one earlier crop" not in words_of(pdf_of(log, crop, tmp_path))
    for name, months in (("Spring Gold", 6), ("Summer Gold", 4)):
        grown(log, name, SOWN - timedelta(days=30 * months))
    words = words_of(pdf_of(log, crop, tmp_path))
    assert "room for one earlier crop, the latest, Summer Gold. The web page shows Spring Gold too." in words


def test_a_number_and_its_unit_stay_on_one_line_of_paper(log: OpenLogbook, tmp_path: Path) -> None:
    crop = plant_crop(log)
    for count in range(24):  # of so many lengths that some would break within the unit
        write(log, crop, crop.day_zero + timedelta(days=count), Note(), note=f"{'x ' * (count + 20)}2.0 mL/L")
    lines = [line.strip() for page in pdf_of(log, crop, tmp_path).pages for line in page.extract_text().split("\n")]
    assert sum("2.0 mL/L" in line for line in lines) >= 24
    assert not [line for line in lines if line.endswith(("2.0", "mL/"))]


def test_a_name_without_a_blank_stays_on_the_paper(log: OpenLogbook, tmp_path: Path) -> None:
    crop = plant_crop(log, "W" * 120)
    assert write_review(log, crop.id, tmp_path / "review.pdf") is not None
    with pypdfium2.PdfDocument(tmp_path / "review.pdf") as document:
        picture = document[0].render(scale=0.5).to_pil().convert("L")
    margin = picture.crop((picture.width - 15, 0, picture.width, picture.height))
    assert margin.getextrema() == (255, 255)
