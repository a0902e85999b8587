"""The job of a worker process: one file read, hashed, its facts told and its previews put into the cache."""

from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from growlog.photos.capture_time import capture_time
from growlog.photos.photo_folder import sha256_of
from growlog.photos.picture_file import PictureFacts, read_facts
from growlog.photos.picture_kind import media_type_of_file
from growlog.photos.picture_problem import PictureProblem, Reason, problem_from_os_error
from growlog.photos.preview_cache import PreviewCache
from growlog.photos.previews import make_previews
from growlog.records.photo import CaptureTime


@dataclass(frozen=True)
class SurveyedPicture:
    """A file that is a picture, and all that intake must know of it. Its previews are in the cache."""

    path: Path
    sha256: str
    byte_count: int
    facts: PictureFacts
    capture: CaptureTime


def prepare_worker(memory_limit_bytes: int) -> None:
    """Runs once in each worker: a picture that wants too much memory fails by itself, not the computer."""
    try:
        import resource
    except ImportError:  # Windows has none
        return
    for kind, limit in ((resource.RLIMIT_AS, memory_limit_bytes), (resource.RLIMIT_CORE, 0)):
        with suppress(ValueError, OSError):  # the system may already be stricter, or not know the limit
            resource.setrlimit(kind, (limit, resource.getrlimit(kind)[1]))


def survey_picture(path: Path, cache_folder: Path) -> SurveyedPicture:
    """Reads one file; decodes it only where the cache lacks its previews. Raises PictureProblem."""
    cache = PreviewCache(cache_folder)
    byte_count, modified = _file_facts(path)
    media_type_of_file(path)  # what is no picture is not worth hashing, however large
    sha256 = sha256_of(path)
    facts = read_facts(path) if cache.has(sha256) else _preview(path, sha256, cache)
    return SurveyedPicture(path, sha256, byte_count, facts, capture_time(facts.exif_times, path.name, modified))


def rebuild_previews(path: Path, cache_folder: Path, sha256: str) -> None:
    """Makes both previews of a known original again. Raises PictureProblem, also where it has changed."""
    if sha256_of(path) != sha256:
        raise PictureProblem(Reason.CHANGED)
    _preview(path, sha256, PreviewCache(cache_folder))


def _preview(path: Path, sha256: str, cache: PreviewCache) -> PictureFacts:
    previews = make_previews(path)
    cache.write(sha256, previews)  # a full cache disk must not keep a picture out; previews can be made later
    return previews.facts


def _file_facts(path: Path) -> tuple[int, datetime | None]:
    try:
        status = path.stat()
    except OSError as error:
        raise problem_from_os_error(error) from error
    except ValueError as error:  # a NUL in the name
        raise PictureProblem(Reason.MISSING, str(error)) from error
    return status.st_size, _local_time(status.st_mtime)


def _local_time(seconds: float) -> datetime | None:
    try:
        return datetime.fromtimestamp(seconds, tz=UTC).astimezone()
    except (OverflowError, OSError, ValueError):
        return None  # a file system with nonsense in it
