"""The day of the calendar in as long a form as there is room for."""

from datetime import date

from growlog.desktop.day_sheet.day_words import weekday_forms
from growlog.desktop.look.widgets import ElidedLabel


class DayLabel(ElidedLabel):
    """Weekday, day and month, shortened before it is cut."""

    def __init__(self) -> None:
        super().__init__("", "subtitle", shortest_px=24)
        self._forms: tuple[str, ...] = ("",)

    def show_day(self, day: date) -> None:
        """Another day."""
        self._forms = weekday_forms(day)
        self.setText(self._forms[0])

    def shown_text(self) -> str:
        """The longest form that fits."""
        metrics = self.fontMetrics()
        fitting = [form for form in self._forms if metrics.horizontalAdvance(form) <= self.width()]
        return fitting[0] if fitting else super().shown_text()
