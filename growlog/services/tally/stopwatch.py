"""A stopwatch that keeps running while the program is closed, and is doubted when it ran for too long."""

from dataclasses import dataclass, replace
from datetime import datetime

LEFT_ON_AFTER_H = 4  # nobody tends a growing room longer without a break; common practice, no source


@dataclass(frozen=True)
class Stopwatch:
    """run_s: seconds of earlier runs. started_at: the moment (with its time zone) of the present run, None if still."""

    run_s: int = 0
    started_at: datetime | None = None

    @property
    def running(self) -> bool:
        """Whether it runs now."""
        return self.started_at is not None

    def present_run_s(self, now: datetime) -> int:
        """Seconds of the present run, 0 if still; never less than 0, even where the clock was put back."""
        return 0 if self.started_at is None else max(0, int((now - self.started_at).total_seconds()))

    def elapsed_s(self, now: datetime) -> int:
        """Seconds of all runs."""
        return self.run_s + self.present_run_s(now)

    def is_doubtful(self, now: datetime) -> bool:
        """Whether the present run is so long, or so odd, that it was probably left on."""
        if self.started_at is None:
            return False
        return now < self.started_at or self.present_run_s(now) > LEFT_ON_AFTER_H * 3600

    def started(self, now: datetime) -> "Stopwatch":
        """Running from now on; a running one runs on."""
        return self if self.running else replace(self, started_at=now)

    def stopped(self, now: datetime) -> "Stopwatch":
        """Still, with the present run taken in. Ask is_doubtful before: whoever calls this has the answer."""
        return Stopwatch(self.elapsed_s(now))

    def without_present_run(self) -> "Stopwatch":
        """Still, with the present run left out."""
        return Stopwatch(self.run_s)
