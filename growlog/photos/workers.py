"""Spawned worker processes with a limit of time and memory each, replaced when they die, started when needed."""

import multiprocessing
import os
from collections.abc import Callable
from concurrent.futures import CancelledError, Future, wait
from concurrent.futures.process import BrokenProcessPool
from threading import Lock
from typing import Any, NamedTuple

from pebble import ProcessExpired, ProcessPool

from growlog.photos.picture_problem import PictureProblem, Reason
from growlog.photos.survey import prepare_worker

SECONDS_PER_PICTURE = 60.0
MEMORY_LIMIT_BYTES = 4 << 30  # address space of a worker: 250 megapixels in colour, turned and scaled, fit
_MOST_WORKERS = 4
_LOOK_SECONDS = 0.1  # how often a wait looks up to see whether it should stop


class Stopped(Exception):
    """The workers were closed, or the caller lost interest, while a result was awaited."""


class Job(NamedTuple):
    """Work handed to the workers of one pool."""

    future: Future[Any]
    pool: ProcessPool

    def lost_with(self, broken: ProcessPool) -> bool:
        """Whether it was given to this pool, which broke, and has no result."""
        if self.pool is not broken:
            return False
        return not self.future.done() or isinstance(self.future.exception(), BrokenProcessPool)


class Workers:
    """A pool of processes that can be closed and started again, from any thread."""

    def __init__(self, count: int | None, seconds_per_job: float, memory_limit_bytes: int) -> None:
        self._count = count or min(os.cpu_count() or 1, _MOST_WORKERS)
        self._seconds = seconds_per_job
        self._memory_limit_bytes = memory_limit_bytes
        self._lock = Lock()
        self._pool: ProcessPool | None = None
        self.closings = 0  # how often they were closed: who started before the last time must stop

    def close(self) -> None:
        """Ends all processes; whoever awaits a result of theirs is stopped."""
        with self._lock:
            self.closings += 1
            pool, self._pool = self._pool, None
        if pool is not None:
            _end(pool)

    def start(self, closings: int, work: Callable[..., Any], *arguments: Any) -> Job:
        """Hands the work over. Raises Stopped where the workers were closed since `closings` was read."""
        pool = self._running(closings)
        return Job(self._schedule(pool, work, arguments), pool)

    def alone(self, stop: Callable[[], bool], work: Callable[..., Any], *arguments: Any) -> Any:
        """The result of the work in a process of its own: its death has one culprit. Raises PictureProblem."""
        pool = self._new_pool(1)
        try:
            return result_of(Job(self._schedule(pool, work, arguments), pool), stop)
        except BrokenProcessPool as error:
            raise PictureProblem(Reason.WORKER_DIED, str(error)) from error
        finally:
            _end(pool)

    def let_go(self, broken: ProcessPool) -> None:
        """Ends a pool that broke, so that the next job starts a fresh one."""
        with self._lock:
            if self._pool is not broken:
                return  # another thread noticed first
            self._pool = None
        _end(broken)

    def _running(self, closings: int) -> ProcessPool:
        with self._lock:
            if self.closings != closings:
                raise Stopped
            if self._pool is not None and not self._pool.active:  # its processes were killed while idle
                _end(self._pool)
                self._pool = None
            if self._pool is None:
                self._pool = self._new_pool(self._count)
            return self._pool

    def _new_pool(self, count: int) -> ProcessPool:
        # Spawned, not forked: a fork would copy the locks of Qt's and the database's threads as they stand.
        return ProcessPool(
            max_workers=count,
            initializer=prepare_worker,
            initargs=(self._memory_limit_bytes,),
            context=multiprocessing.get_context("spawn"),
        )

    def _schedule(self, pool: ProcessPool, work: Callable[..., Any], arguments: tuple[Any, ...]) -> Future[Any]:
        try:
            return pool.schedule(work, arguments, timeout=self._seconds)
        except RuntimeError as error:  # it broke or was closed since it was handed out
            failed: Future[Any] = Future()
            failed.set_exception(BrokenProcessPool(str(error)))
            return failed


def result_of(job: Job, stop: Callable[[], bool]) -> Any:
    """What the work returned or raised; what befell its process is a PictureProblem.

    Raises BrokenProcessPool where the pool as a whole broke, which names no culprit, and Stopped where `stop`
    says so.
    """
    while not stop():
        if wait([job.future], timeout=_LOOK_SECONDS).done:
            return _finished(job.future)
        if not job.pool.active and not job.future.done():
            raise BrokenProcessPool("ended before this job's turn")
    raise Stopped


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
        raise Stopped from error


def _end(pool: ProcessPool) -> None:
    pool.stop()  # type: ignore[no-untyped-call]
    pool.join()
