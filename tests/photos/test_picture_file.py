"""Pictures of unknown origin: what is told of them, and in which words the others are refused."""

import struct
import warnings
import zlib
from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image, ImageFile

from growlog.photos.picture_file import PIXEL_LIMIT, PictureFacts, read_facts
from growlog.photos.picture_problem import PictureProblem, Reason
from growlog.photos.previews import make_previews
from tests.photos.conftest import encoded, exif_with, opened, quartered


def reason_of(read: Callable[[Path], object], path: Path) -> Reason:
    with pytest.raises(PictureProblem) as caught:
        read(path)
    assert path.name in caught.value.sentence(path.name)
    return caught.value.reason


def png_header(width_px: int, height_px: int) -> bytes:
    """A PNG that claims a size and holds next to nothing (PNG specification, third edition, clause 11)."""

    def chunk(kind: bytes, content: bytes) -> bytes:
        return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", zlib.crc32(kind + content))

    header = struct.pack(">IIBBBBB", width_px, height_px, 8, 2, 0, 0, 0)
    pixels = zlib.compress(b"\0" * 64)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", pixels) + chunk(b"IEND", b"")


@pytest.mark.parametrize(
    "kind, media_type",
    [("JPEG", "image/jpeg"), ("PNG", "image/png"), ("WEBP", "image/webp"), ("TIFF", "image/tiff")],
)
def test_each_kind_tells_its_size_and_kind(make_picture: Callable[..., Path], kind: str, media_type: str) -> None:
    facts = read_facts(make_picture(kind=kind))
    assert (facts.width_px, facts.height_px, facts.media_type, facts.orientation) == (64, 48, media_type, 1)


def test_the_first_of_several_pictures_in_a_jpeg_counts(make_picture: Callable[..., Path]) -> None:
    second = Image.new("RGB", (10, 10))
    path = make_picture("two.jpg", kind="MPO", save_all=True, append_images=[second])
    facts = read_facts(path)
    assert (facts.media_type, facts.width_px, facts.height_px) == ("image/jpeg", 64, 48)


def test_a_png_named_jpg_goes_in_as_png(make_picture: Callable[..., Path]) -> None:
    assert read_facts(make_picture("mislabelled.jpg", kind="PNG")).media_type == "image/png"


def test_a_picture_without_an_ending_goes_in(make_picture: Callable[..., Path]) -> None:
    assert read_facts(make_picture("leaf")).media_type == "image/jpeg"


@pytest.mark.parametrize(
    "name", ["Grüne Blätter 1.jpg", "🥒 🌱.jpg", "-rf.jpg", "ひょうたん.jpg", "100%.jpg", "a{b}.jpg"]
)
def test_odd_letters_in_a_name_harm_nothing(make_picture: Callable[..., Path], name: str) -> None:
    assert read_facts(make_picture(name)).width_px == 64


@pytest.mark.parametrize("kind", ["JPEG", "WEBP", "PNG"])
@pytest.mark.parametrize("orientation", [5, 6, 7, 8])
def test_a_picture_on_its_side_tells_its_upright_size(
    make_picture: Callable[..., Path], orientation: int, kind: str
) -> None:
    facts = read_facts(make_picture(kind=kind, exif=exif_with(orientation)))
    assert (facts.width_px, facts.height_px, facts.orientation) == (48, 64, orientation)


def test_a_tiff_on_its_side_tells_its_upright_size(make_picture: Callable[..., Path]) -> None:
    facts = read_facts(make_picture(kind="TIFF", tiffinfo={274: 6}))
    assert (facts.width_px, facts.height_px, facts.orientation) == (48, 64, 6)


def test_exif_behind_the_pixels_of_a_png_is_found(make_picture: Callable[..., Path]) -> None:
    content = encoded(quartered(), "PNG")
    block = exif_with(6).tobytes().removeprefix(b"Exif\0\0")
    chunk = struct.pack(">I", len(block)) + b"eXIf" + block + struct.pack(">I", zlib.crc32(b"eXIf" + block))
    path = make_picture("late.png", kind="PNG")
    path.write_bytes(content[:-12] + chunk + content[-12:])
    assert read_facts(path).orientation == 6


def test_an_empty_file_is_said_to_be_empty(tmp_path: Path) -> None:
    path = tmp_path / "nothing.jpg"
    path.touch()
    assert reason_of(read_facts, path) is Reason.EMPTY


def test_a_text_named_jpg_is_no_picture(tmp_path: Path) -> None:
    path = tmp_path / "notes.jpg"
    path.write_text("Watered at seven.")
    assert reason_of(read_facts, path) is Reason.NOT_A_PICTURE


def test_a_file_of_zeros_is_no_picture(tmp_path: Path) -> None:
    path = tmp_path / "failed-copy.jpg"
    path.write_bytes(bytes(4096))
    assert reason_of(read_facts, path) is Reason.NOT_A_PICTURE


def test_a_folder_is_no_picture(tmp_path: Path) -> None:
    assert reason_of(read_facts, tmp_path) is Reason.NOT_A_PICTURE


def test_a_missing_file_is_said_to_be_missing(tmp_path: Path) -> None:
    assert reason_of(read_facts, tmp_path / "gone.jpg") is Reason.MISSING


def test_a_name_no_file_can_have_is_missing(tmp_path: Path) -> None:
    with pytest.raises(PictureProblem) as caught:
        read_facts(tmp_path / "a\0b.jpg")
    assert caught.value.reason is Reason.MISSING


@pytest.mark.parametrize("kind", ["GIF", "BMP", "AVIF", "ICO"])
def test_other_kinds_of_picture_are_called_unsupported(make_picture: Callable[..., Path], kind: str) -> None:
    assert reason_of(read_facts, make_picture("other.jpg", kind=kind)) is Reason.UNSUPPORTED


def test_a_camera_raw_file_in_tiffs_clothes_is_refused(make_picture: Callable[..., Path]) -> None:
    path = make_picture("raw.dng", kind="TIFF", tiffinfo={50706: b"\1\4\0\0"})
    assert reason_of(read_facts, path) is Reason.UNSUPPORTED


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "TIFF"])
@pytest.mark.parametrize("kept", [0.2, 0.5, 0.9])
def test_a_picture_that_breaks_off_is_called_truncated(
    make_picture: Callable[..., Path], kind: str, kept: float
) -> None:
    path = make_picture("cut.jpg", Image.effect_noise((400, 300), 80), kind=kind)
    content = path.read_bytes()
    path.write_bytes(content[: int(len(content) * kept)])
    assert reason_of(make_previews, path) is Reason.TRUNCATED


def test_a_real_photo_that_breaks_off_is_called_truncated(rosettes: list[Path], tmp_path: Path) -> None:
    path = tmp_path / "cut.jpg"
    content = rosettes[0].read_bytes()
    path.write_bytes(content[: len(content) * 9 // 10])
    assert reason_of(make_previews, path) is Reason.TRUNCATED


def test_scrambled_pixels_are_called_unreadable(make_picture: Callable[..., Path]) -> None:
    path = make_picture("scrambled.png", kind="PNG")
    content = bytearray(path.read_bytes())
    where = content.index(b"IDAT") + 4
    content[where : where + 40] = b"\xff" * 40
    path.write_bytes(bytes(content))
    assert reason_of(make_previews, path) is Reason.UNREADABLE


@pytest.mark.parametrize("size_px", [(60_000, 60_000), (25_001, 10_000)])
def test_a_header_beyond_the_limit_is_refused_before_decoding(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, size_px: tuple[int, int]
) -> None:
    def decode(self: ImageFile.ImageFile) -> None:
        raise AssertionError("decoded")

    monkeypatch.setattr(ImageFile.ImageFile, "load", decode)
    path = tmp_path / "huge.png"
    path.write_bytes(png_header(*size_px))
    assert reason_of(make_previews, path) is Reason.TOO_MANY_PIXELS


def test_the_sentence_names_the_limit_that_is_kept() -> None:
    sentence = PictureProblem(Reason.TOO_MANY_PIXELS).sentence("huge.png")
    assert f"{PIXEL_LIMIT // 1_000_000} million pixels" in sentence


def test_a_header_at_the_limit_still_tells_its_facts(tmp_path: Path) -> None:
    path = tmp_path / "large.png"
    path.write_bytes(png_header(25_000, 10_000))
    facts = read_facts(path)
    assert facts.width_px * facts.height_px == PIXEL_LIMIT


@pytest.mark.slow
def test_a_picture_of_many_megapixels_goes_in(make_picture: Callable[..., Path]) -> None:
    path = make_picture("many.png", Image.new("1", (13_000, 10_000), 1), kind="PNG")
    assert opened(make_previews(path).large).size == (1600, 1231)


def test_a_file_without_rights_is_said_to_be_without(
    make_picture: Callable[..., Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    path = make_picture()

    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refuse)
    assert reason_of(read_facts, path) is Reason.NO_RIGHTS


def test_no_warning_of_the_decoder_leaks_out(make_picture: Callable[..., Path]) -> None:
    path = make_picture("hostile.jpg", exif=b"Exif\0\0II*\0\x08\0\0\0\xff\xff" + b"\x01" * 200)
    with warnings.catch_warnings(record=True) as leaked:
        warnings.simplefilter("always")
        make_previews(path)
    assert leaked == []


def test_reading_changes_no_strictness_of_the_decoder(make_picture: Callable[..., Path]) -> None:
    read_facts(make_picture())
    assert ImageFile.LOAD_TRUNCATED_IMAGES is False


def test_the_real_portraits_all_tell_the_same_upright_size(turned_portraits: list[Path]) -> None:
    told = [read_facts(path) for path in turned_portraits]
    assert {(facts.width_px, facts.height_px) for facts in told} == {(1200, 1800)}
    assert [facts.orientation for facts in told] == [1, 1, 2, 3, 4, 5, 6, 7, 8]


def test_facts_cannot_be_changed(make_picture: Callable[..., Path]) -> None:
    facts = read_facts(make_picture())
    assert isinstance(facts, PictureFacts)
    with pytest.raises(AttributeError):
        facts.width_px = 1  # type: ignore[misc]
