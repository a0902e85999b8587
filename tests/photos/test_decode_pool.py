"""Worker processes: whatever a file does to its worker, only that file is reported."""

import multiprocessing
import subprocess
import sys
import threading
from collections.abc import Callable, Iterator
from concurrent.futures.process import BrokenProcessPool
from pathlib import Path
from typing import Any

import pytest

from growlog.photos import decode_pool, workers
from growlog.photos.decode_pool import DecodePool
from growlog.photos.picture_problem import PictureProblem, Reason
from growlog.photos.preview_cache import PreviewCache
from growlog.photos.previews import PreviewSize
from growlog.photos.survey import SurveyedPicture
from growlog.photos.workers import Job
from tests.photos.misbehaving import read

pytestmark = pytest.mark.xdist_group("decode_pool")


@pytest.fixture(scope="session")
def cache_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("previews")


@pytest.fixture(scope="session")
def pool(cache_folder: Path) -> Iterator[DecodePool]:
    """Two workers for all tests of this file, with a short limit of time."""
    with DecodePool(cache_folder, workers=2, seconds_per_picture=2.0, read=read) as pool:
        yield pool


@pytest.fixture
def files(tmp_path: Path, rosettes: list[Path]) -> Callable[..., list[Path]]:
    """Copies of a real photo under the names given."""

    def copy(*names: str) -> list[Path]:
        for number, name in enumerate(names):
            (tmp_path / name).write_bytes(rosettes[number].read_bytes())
        return [tmp_path / name for name in names]

    return copy


def told(outcome: SurveyedPicture | PictureProblem) -> str:
    return outcome.reason if isinstance(outcome, PictureProblem) else "picture"


def test_files_are_told_in_the_order_given_with_progress(
    pool: DecodePool, rosettes: list[Path], cache_folder: Path
) -> None:
    progress: list[tuple[int, int]] = []
    order = rosettes[::-1]
    results = list(pool.survey(order, on_progress=lambda done, total: progress.append((done, total))))
    assert [path for path, _ in results] == order
    assert progress == [(done, 23) for done in range(1, 24)]
    surveyed = [outcome for _, outcome in results if isinstance(outcome, SurveyedPicture)]
    assert len(surveyed) == 23
    assert all(PreviewCache(cache_folder).has(picture.sha256) for picture in surveyed)


def test_problems_come_back_from_the_worker_with_their_reason(pool: DecodePool, tmp_path: Path) -> None:
    (tmp_path / "empty.jpg").touch()
    (tmp_path / "text.jpg").write_text("no picture")
    paths = [tmp_path / name for name in ("empty.jpg", "text.jpg", "gone.jpg")]
    reasons = [told(outcome) for _, outcome in pool.survey(paths)]
    assert reasons == [Reason.EMPTY, Reason.NOT_A_PICTURE, Reason.MISSING]


def test_a_file_that_hangs_kills_or_floods_its_worker_is_reported_alone(
    pool: DecodePool, files: Callable[..., list[Path]]
) -> None:
    paths = files("a.jpg", "hangs.jpg", "b.jpg", "dies.jpg", "c.jpg", "hoards.jpg", "d.jpg")
    outcomes = [told(outcome) for _, outcome in pool.survey(paths)]
    assert outcomes == [
        "picture",
        Reason.TOO_SLOW,
        "picture",
        Reason.WORKER_DIED,
        "picture",
        Reason.UNREADABLE,
        "picture",
    ]


def test_a_fault_of_the_program_itself_is_not_hidden(pool: DecodePool, files: Callable[..., list[Path]]) -> None:
    with pytest.raises(ZeroDivisionError):
        list(pool.survey(files("broken program.jpg")))


def test_a_survey_that_is_cancelled_ends_and_leaves_the_pool_usable(
    pool: DecodePool, files: Callable[..., list[Path]]
) -> None:
    paths = files("a.jpg", "hangs.jpg", "b.jpg")
    seen: list[Path] = []
    for path, _ in pool.survey(paths, cancelled=lambda: bool(seen)):
        seen.append(path)
    assert seen == paths[:1]
    assert [told(outcome) for _, outcome in pool.survey(paths[2:])] == ["picture"]


def test_a_survey_that_is_abandoned_leaves_the_pool_usable(pool: DecodePool, files: Callable[..., list[Path]]) -> None:
    paths = files("a.jpg", "hangs.jpg", "b.jpg")
    survey = pool.survey(paths)
    next(survey)
    survey.close()
    assert [told(outcome) for _, outcome in pool.survey(paths[2:])] == ["picture"]


def test_workers_killed_from_outside_while_idle_are_replaced(tmp_path: Path, files: Callable[..., list[Path]]) -> None:
    paths = files("a.jpg", "b.jpg")
    others = set(multiprocessing.active_children())
    with DecodePool(tmp_path / "cache", workers=2) as pool:
        list(pool.survey(paths))
        for worker in set(multiprocessing.active_children()) - others:
            worker.kill()
            worker.join()
        assert [told(outcome) for _, outcome in pool.survey(paths)] == ["picture", "picture"]


def test_a_file_that_keeps_any_worker_from_living_is_found_among_others(
    tmp_path: Path, files: Callable[..., list[Path]], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A pool that breaks as a whole names no culprit: then each file is read by itself."""
    broken: list[Path] = []

    def break_shared(job: Job, stop: Callable[[], bool]) -> Any:
        broken.append(tmp_path)
        raise BrokenProcessPool

    monkeypatch.setattr(decode_pool, "result_of", break_shared)  # the one that reads alone keeps the true one
    with DecodePool(tmp_path / "cache", workers=1, read=read) as pool:
        outcomes = [told(outcome) for _, outcome in pool.survey(files("a.jpg", "dies.jpg"))]
    assert len(broken) == 3  # twice together, which counts for both, and the second file once more by itself
    assert outcomes == ["picture", Reason.WORKER_DIED]


def test_lost_previews_are_made_again_by_a_worker(pool: DecodePool, rosettes: list[Path], cache_folder: Path) -> None:
    [(_, picture)] = pool.survey(rosettes[:1])
    assert isinstance(picture, SurveyedPicture)
    cache = PreviewCache(cache_folder)
    cache.path_of(picture.sha256, PreviewSize.SMALL).unlink()
    pool.rebuild_previews(rosettes[0], picture.sha256)
    assert cache.has(picture.sha256)
    with pytest.raises(PictureProblem) as caught:
        pool.rebuild_previews(rosettes[0], "0" * 64)
    assert caught.value.reason is Reason.CHANGED


def test_closing_ends_a_survey_in_another_thread_and_all_workers(
    tmp_path: Path, files: Callable[..., list[Path]]
) -> None:
    pool = DecodePool(tmp_path / "cache", workers=1, read=read)
    seen: list[str] = []
    first = threading.Event()

    def run() -> None:
        for _, outcome in pool.survey(files("signs.jpg", "hangs.jpg")):
            seen.append(told(outcome))
            first.set()

    thread = threading.Thread(target=run)
    thread.start()
    assert first.wait(30)
    pool.close()
    thread.join(30)
    assert not thread.is_alive()
    assert seen == ["picture"]
    worker = int((tmp_path / "signature").read_text())
    assert worker not in [child.pid for child in multiprocessing.active_children()]


def test_a_pool_without_a_job_starts_no_process(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def start(*_: object, **__: object) -> None:
        raise AssertionError("started")

    monkeypatch.setattr(workers, "ProcessPool", start)
    with DecodePool(tmp_path) as pool:
        assert list(pool.survey([])) == []


def test_a_worker_loads_neither_window_nor_database_nor_arrays() -> None:
    code = "import growlog.photos.survey, sys; print(*sorted(sys.modules))"
    loaded = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout.split()
    heavy = {"PySide6", "sqlalchemy", "numpy", "scipy", "pyqtgraph", "babel", "pint", "pebble", "pi_heif"}
    assert "PIL.Image" in loaded
    assert not heavy & set(loaded)
