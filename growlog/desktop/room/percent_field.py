"""A share that is typed in per cent and kept as a part of 1."""

from growlog.desktop.look.widgets import NumberField


class PercentField(NumberField):
    """0 to 100 %; an empty field is no share. What was not touched comes back as it was."""

    def __init__(self, label: str, share: float | None = None, name: str = "", decimals: int = 1) -> None:
        super().__init__(label, "%", 0, 100, decimals, name=name)
        self._kept = share
        self.set_value(None if share is None else share * 100)
        self._kept_text = self.line.text()

    def share(self) -> float | None:
        """The share as a part of 1."""
        if self.line.text() == self._kept_text:
            return self._kept
        value = self.value()
        return None if value is None else value / 100
