"""Pictures of unknown origin read in worker processes: one that hangs or kills its worker costs only itself."""

import logging
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures.process import BrokenProcessPool
from contextlib import suppress
from pathlib import Path
from types import TracebackType
from typing import NamedTuple, Self

from growlog.photos.picture_problem import PictureProblem
from growlog.photos.survey import SurveyedPicture, rebuild_previews, survey_picture
from growlog.photos.workers import MEMORY_LIMIT_BYTES, SECONDS_PER_PICTURE, Job, Stopped, Workers, result_of

_AHEAD = 64  # files handed over before their turn, so that one that hangs does not idle the other workers
_ATTEMPTS_TOGETHER = 2  # in a pool shared with other files, before a file must show by itself what it does

_log = logging.getLogger(__name__)

Outcome = SurveyedPicture | PictureProblem


class _UnderWay(NamedTuple):
    path: Path
    job: Job
    attempts: int


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
        self._workers = Workers(workers, seconds_per_picture, memory_limit_bytes)
        self._read = read

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def close(self) -> None:
        """Ends the workers; a survey still running in another thread ends early. The next one starts anew."""
        self._workers.close()

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
        return _Survey(self._workers, self._read, self._cache_folder, cancelled).outcomes(paths, on_progress)

    def rebuild_previews(self, path: Path, sha256: str) -> None:
        """Makes both previews of a known original again, into the cache. Raises PictureProblem.

        Where the pool is closed meanwhile, they stay missing.
        """
        arguments = (rebuild_previews, path, self._cache_folder, sha256)
        with suppress(Stopped):
            job = self._workers.start(self._workers.closings, *arguments)
            try:
                result_of(job, _never)
            except BrokenProcessPool:
                self._workers.let_go(job.pool)
                self._workers.alone(_never, *arguments)


class _Survey:
    """One run over many files."""

    def __init__(
        self,
        workers: Workers,
        read: Callable[[Path, Path], SurveyedPicture],
        cache_folder: Path,
        cancelled: Callable[[], bool] | None,
    ) -> None:
        self._workers = workers
        self._read = read
        self._cache_folder = cache_folder
        self._cancelled = cancelled or _never
        self._closings = workers.closings
        self._under_way: deque[_UnderWay] = deque()

    def outcomes(
        self, paths: Iterable[Path], on_progress: Callable[[int, int], None] | None
    ) -> Iterator[tuple[Path, Outcome]]:
        waiting = deque(paths)
        total = len(waiting)
        try:
            while waiting or self._under_way:
                while waiting and len(self._under_way) < _AHEAD:
                    self._under_way.append(self._start(waiting.popleft()))
                path, outcome = self._next()
                if on_progress is not None:
                    on_progress(total - len(waiting) - len(self._under_way), total)
                yield path, outcome
        except Stopped:
            return
        finally:
            for left in self._under_way:
                left.job.future.cancel()

    def _next(self) -> tuple[Path, Outcome]:
        while True:
            first = self._under_way[0]
            try:
                outcome = self._outcome(first)
            except BrokenProcessPool:
                self._restart(first.job)
                continue
            self._under_way.popleft()
            return first.path, outcome

    def _outcome(self, first: _UnderWay) -> Outcome:
        try:
            return self._surveyed(first)
        except PictureProblem as problem:
            return problem

    def _surveyed(self, first: _UnderWay) -> SurveyedPicture:
        try:
            surveyed: SurveyedPicture = result_of(first.job, self._stop)
        except BrokenProcessPool:
            if first.attempts < _ATTEMPTS_TOGETHER:
                raise
            _log.warning("the pool of picture readers broke again; reading %s by itself", first.path)
            surveyed = self._workers.alone(self._stop, self._read, first.path, self._cache_folder)
        return surveyed

    def _start(self, path: Path, attempts: int = 1) -> _UnderWay:
        job = self._workers.start(self._closings, self._read, path, self._cache_folder)
        return _UnderWay(path, job, attempts)

    def _restart(self, broken: Job) -> None:
        """Gives what a broken pool lost to a fresh one, in place."""
        self._workers.let_go(broken.pool)
        for place, left in enumerate(self._under_way):
            if left.job.lost_with(broken.pool):
                self._under_way[place] = self._start(left.path, left.attempts + 1)

    def _stop(self) -> bool:
        return self._workers.closings != self._closings or self._cancelled()


def _never() -> bool:
    return False
