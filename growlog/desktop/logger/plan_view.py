"""What a logger file would bring: counts, gaps, overlaps, and the rows that stay out."""

from datetime import datetime
from zoneinfo import ZoneInfo

from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets import SectionTitle, TextLabel
from growlog.desktop.plain_table import Column, PlainTable, Row
from growlog.services.climate.logger_plan import LoggerPlan
from growlog.services.climate.wall_clock import zone_of
from growlog.words import say, say_count, show_day, show_number


class PlanView(QWidget):
    """Empty until a file was read."""

    def __init__(self) -> None:
        super().__init__()
        self.counts_label = TextLabel("", "heading", wraps=True)
        self.more_label = TextLabel("", wraps=True)
        self.refused_title = SectionTitle("")
        columns = [Column(say("Line"), True, 72), Column(say("Why it stays out")), Column(say("As written"))]
        self.table = PlainTable(columns, say("Rows that stay out"), "refusedRows", 8)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        for widget in (self.counts_label, self.more_label, self.refused_title, self.table):
            column.addWidget(widget)
        self.hide()

    def show_plan(self, plan: LoggerPlan | None) -> None:
        """Another file, or other answers."""
        self.setVisible(plan is not None)
        if plan is None:
            return
        is_open = bool(plan.open_questions)
        self.counts_label.setText(
            say("Answer the questions; then the rows are judged.") if is_open else counts_words(plan)
        )
        self.more_label.setText("" if is_open else "\n".join(_more(plan)))
        self.more_label.setVisible(bool(self.more_label.text()))
        self._show_refused(plan, 0 if is_open else plan.refused_count)

    def _show_refused(self, plan: LoggerPlan, n: int) -> None:
        title = say_count("{n} row stays out", "{n} rows stay out", n)
        if n > len(plan.refused):
            title = say("{rows}, the first {shown} of them", rows=title, shown=len(plan.refused))
        self.refused_title.set_title(title)
        self.refused_title.setVisible(bool(n))
        self.table.show_rows([Row(str(i), (str(r.line), r.reason, r.text)) for i, r in enumerate(plan.refused)])
        self.table.setVisible(bool(n))
        self.table.setColumnHidden(2, not any(row.text for row in plan.refused))


def counts_words(plan: LoggerPlan) -> str:
    """How many samples, from when to when."""
    if plan.first_at is None or plan.last_at is None:
        return say("No sample can be read in.")
    zone = zone_of(plan.room.zone)
    n = say_count("{n} sample", "{n} samples", plan.sample_count)
    return say("{samples} from {first} to {last}", samples=n, first=moment_words(plan.first_at, zone),
               last=moment_words(plan.last_at, zone))  # fmt: skip


def moment_words(at: datetime, zone: ZoneInfo) -> str:
    """A moment on the room's wall clock."""
    there = at.astimezone(zone)
    return f"{show_day(there.date())} {there:%H:%M}"


def _more(plan: LoggerPlan) -> list[str]:
    lines = []
    if plan.gap_count:
        hours = show_number(plan.longest_gap_minutes / 60, 1)
        lines.append(
            say_count(
                "{n} gap of more than an hour without a sample; the longest is {hours} h.",
                "{n} gaps of more than an hour without a sample; the longest is {hours} h.",
                plan.gap_count,
                hours=hours,
            )
        )
    return [*lines, *plan.notes]
