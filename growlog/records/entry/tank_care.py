"""Care of a tank: topped up, corrected, drained, renewed, and its pH moved."""

from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar

from growlog.records.display import fixed, plain
from growlog.records.entry.base import Detail
from growlog.records.entry.wording import joined, measured
from growlog.records.problems import Problem, check_quantity
from growlog.words import mark, say


class TankWork(StrEnum):
    """What was done to the tank."""

    TOP_UP = "top-up"
    CORRECTION = "correction"
    RENEWAL = "renewal"
    PH = "ph"

    @property
    def label(self) -> str:
        """The work in words, to be translated where shown."""
        return _WORK_LABELS[self]


_WORK_LABELS = {
    TankWork.TOP_UP: mark("Topped up"),
    TankWork.CORRECTION: mark("Strength corrected"),
    TankWork.RENEWAL: mark("Renewed"),
    TankWork.PH: mark("pH moved"),
}


@dataclass(frozen=True)
class TankDose:
    """What went into the tank. product_id: of the shelf, None where only a name is known. unit: "mL" or "g"."""

    product: str
    dose_amount: float
    unit: str = "mL"
    product_id: str | None = None


@dataclass(frozen=True)
class TankCare(Detail):
    """Volumes in L, EC in mS/cm at 25 °C, before and after; what was added and what was let out."""

    kind: ClassVar[str] = "tank-care"
    label: ClassVar[str] = mark("Tank care")

    work: TankWork = TankWork.TOP_UP
    volume_before_l: float | None = None
    water_added_l: float | None = None
    drained_l: float | None = None
    ec_before_ms_per_cm: float | None = None
    ec_after_ms_per_cm: float | None = None
    ph_before: float | None = None
    ph_after: float | None = None
    mix_id: str | None = None
    doses: tuple[TankDose, ...] = ()

    def own_problems(self) -> list[Problem]:
        """Something is stated, and no more was let out than was there."""
        found = [p for d in self.doses for p in check_quantity("tank_dose", d.dose_amount, "doses")]
        stated = [v for name, v in vars(self).items() if name not in ("work", "mix_id") and v not in (None, ())]
        if not stated:
            found.append(Problem("water_added_l", say("Nothing is stated yet: fill in at least one field.")))
        if None not in (self.drained_l, self.volume_before_l) and (self.drained_l or 0) > (self.volume_before_l or 0):
            found.append(Problem("drained_l", say("More was let out than was in the tank.")))
        return found

    def summary(self) -> str:
        """What was done."""
        return say(self.work.label)

    def second_line(self) -> str:
        """Water, doses, EC and pH before and after."""
        return joined(
            measured(say("water"), self.water_added_l, 1, "L"),
            measured(say("drained"), self.drained_l, 1, "L"),
            *(f"{d.product} {plain(d.dose_amount, d.unit)}" for d in self.doses),
            _moved(say("EC"), self.ec_before_ms_per_cm, self.ec_after_ms_per_cm, 2),
            _moved(say("pH"), self.ph_before, self.ph_after, 1),
        )


def _moved(label: str, before: float | None, after: float | None, decimals: int) -> str:
    if before is not None and after is not None:
        return say(
            "{before} to {after}", before=measured(label, before, decimals, ""), after=fixed(after, decimals, "")
        )
    return measured(label, before if after is None else after, decimals, "")
