"""Worker processes that read pictures of unknown origin: a file that hangs or kills one costs only itself."""

import logging
import multiprocessing
import os
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import CancelledError, Future, wait
from concurrent.futures.process import BrokenProcessPool
from pathlib import Path
from threading import Lock
from types import TracebackType
from typing import Any, NamedTuple, Self
from weakref import WeakSet

from pebble import ProcessExpired, ProcessPool

from growlog.photos.picture_problem import PictureProblem, Reason
from growlog.photos.survey import SurveyedPicture, prepare_worker, rebuild_previews, survey_picture

SECONDS_PER_PICTURE = 60.0
MEMORY_LIMIT_BYTES = 4 << 30  # address space of a worker: 250 megapixels in colour, turned and scaled, fit
_MOST_WORKERS = 4
_AHEAD = 64  # files handed over before their turn, so that one that hangs does not idle the other workers
_ATTEMPTS_TOGETHER = 2  # in pools shared with other files, before a file must show by itself what it does
_LOOK_SECONDS = 0.1  # how often a wait looks up to see whether it was cancelled

_log = logging.getLogger(__name__)

Outcome = SurveyedPicture | PictureProblem


class _Closed(Exception):
    """The pool was closed, or the survey cancelled, while a result was awaited."""


class _Job(NamedTuple):
    path: Path
    future: Future[Any]
    pool: ProcessPool
    attempts: int = 1

    def lost_with(self, pool: ProcessPool) -> bool:
        """Whether it was given to this pool, which broke, and has no result."""
        if self.pool is not pool:
            return False
        return not self.future.done() or isinstance(self.future.exception(), BrokenProcessPool)


class DecodePool:
    """Started with its first job, reusable until closed; each picture has a limit of time and memory."""

    def __init__(
        self,
        cache_folder: Path,
        workers: int | None = None,
        seconds_per_picture: float = SECONDS_PER_PICTURE,
        memory_limit_bytes: int = MEMORY_LIMIT_BYTES,
        read: Callable[[Path, Path], SurveyedPicture] = survey_picture,
    ) -> None:
        self._cache_folder = cache_folder
        self._workers = workers or min(os.cpu_count() or 1, _MOST_WORKERS)
        self._seconds = seconds_per_picture
        self._memory_limit_bytes = memory_limit_bytes
        self._read = read
        self._lock = Lock()
        self._pool: ProcessPool | None = None
        self._closed: WeakSet[ProcessPool] = WeakSet()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def close(self) -> None:
        """Ends the workers; a survey still running in another thread ends early. The next job starts anew."""
        with self._lock:
            pool, self._pool = self._pool, None
            if pool is not None:
                self._closed.add(pool)
        if pool is not None:
            _end(pool)

    def survey(
        self,
        paths: Iterable[Path],
        on_progress: Callable[[int, int], None] | None = None,
        cancelled: Callable[[], bool] | None = None,
    ) -> Iterator[tuple[Path, Outcome]]:
        """What each file is, in the order given: a surveyed picture, or the problem that keeps it out.

        on_progress: called with the number done and the number in all, in the caller's thread.
        cancelled: asked again and again; once it says so, the iterator ends and running jobs are stopped.
        """
        waiting = deque(paths)
        total = len(waiting)
        under_way: deque[_Job] = deque()
        try:
            while waiting or under_way:
                while waiting and len(under_way) < _AHEAD:
                    under_way.append(self._start_survey(waiting.popleft()))
                job = under_way[0]
                try:
                    outcome = self._outcome(job, cancelled or _never)
                except BrokenProcessPool:
                    self._restart(under_way, job.pool)
                    continue
                under_way.popleft()
                if on_progress is not None:
                    on_progress(total - len(waiting) - len(under_way), total)
                yield job.path, outcome
        except _Closed:
            return
        finally:
            for job in under_way:
                job.future.cancel()

    def rebuild_previews(self, path: Path, sha256: str) -> None:
        """Makes both previews of a known original again, into the cache. Raises PictureProblem."""
        pool = self._running()
        job = _Job(path, self._schedule(pool, rebuild_previews, path, sha256), pool)
        try:
            _result_of(job, _never)
        except BrokenProcessPool:
            self._discard(pool)
            self._alone(rebuild_previews, path, sha256)

    def _start_survey(self, path: Path, attempts: int = 1) -> _Job:
        pool = self._running()
        return _Job(path, self._schedule(pool, self._read, path), pool, attempts)

    def _restart(self, under_way: deque[_Job], broken: ProcessPool) -> None:
        """Gives what a broken pool lost to a fresh one, in place."""
        if not self._discard(broken):
            raise _Closed
        for place, job in enumerate(under_way):
            if job.lost_with(broken):
                under_way[place] = self._start_survey(job.path, job.attempts + 1)

    def _outcome(self, job: _Job, cancelled: Callable[[], bool]) -> Outcome:
        try:
            return self._surveyed(job, cancelled)
        except PictureProblem as problem:
            return problem

    def _surveyed(self, job: _Job, cancelled: Callable[[], bool]) -> SurveyedPicture:
        try:
            surveyed: SurveyedPicture = _result_of(job, cancelled)
        except BrokenProcessPool:
            if job.attempts < _ATTEMPTS_TOGETHER or cancelled():
                raise
            surveyed = self._alone(self._read, job.path)
        return surveyed

    def _alone(self, work: Callable[..., Any], path: Path, *more: Any) -> Any:
        """With a worker of its own: when the whole pool broke, this tells the guilty file from the others."""
        _log.warning("the pool of picture readers broke; reading %s by itself", path)
        pool = self._new_pool(workers=1)
        try:
            return _result_of(_Job(path, self._schedule(pool, work, path, *more), pool), _never)
        except BrokenProcessPool as error:
            raise PictureProblem(Reason.WORKER_DIED, str(error)) from error
        finally:
            _end(pool)

    def _schedule(self, pool: ProcessPool, work: Callable[..., Any], path: Path, *more: Any) -> Future[Any]:
        try:
            return pool.schedule(work, (path, self._cache_folder, *more), timeout=self._seconds)
        except RuntimeError as error:  # it broke or was closed since it was handed out
            failed: Future[Any] = Future()
            failed.set_exception(BrokenProcessPool(str(error)))
            return failed

    def _running(self) -> ProcessPool:
        with self._lock:
            if self._pool is None or not self._pool.active:  # inactive: its workers were killed while idle
                self._pool = self._new_pool(self._workers)
            return self._pool

    def _new_pool(self, workers: int) -> ProcessPool:
        # Spawned, not forked: a fork would copy the locks of Qt's and the database's threads as they stand.
        return ProcessPool(
            max_workers=workers,
            initializer=prepare_worker,
            initargs=(self._memory_limit_bytes,),
            context=multiprocessing.get_context("spawn"),
        )

    def _discard(self, broken: ProcessPool) -> bool:
        """Lets go of a broken pool, so that the next job starts a fresh one. False where `close` did so."""
        with self._lock:
            if broken in self._closed:
                return False
            first_to_notice = self._pool is broken
            if first_to_notice:
                self._pool = None
        if first_to_notice:
            _end(broken)
        return True


def _never() -> bool:
    return False


def _end(pool: ProcessPool) -> None:
    pool.stop()  # type: ignore[no-untyped-call]
    pool.join()


def _result_of(job: _Job, cancelled: Callable[[], bool]) -> Any:
    while not cancelled():
        if wait([job.future], timeout=_LOOK_SECONDS).done:
            return _finished(job.future)
        if not job.pool.active and not job.future.done():
            raise BrokenProcessPool("ended before this file's turn")
    raise _Closed


def _finished(future: Future[Any]) -> Any:
    try:
        return future.result()
    except TimeoutError as error:
        raise PictureProblem(Reason.TOO_SLOW) from error
    except MemoryError as error:
        raise PictureProblem(Reason.UNREADABLE, "out of memory") from error
    except ProcessExpired as error:
        raise PictureProblem(Reason.WORKER_DIED, str(error)) from error
    except CancelledError as error:
        raise _Closed from error
