"""A share that is typed in per cent and kept as a part of 1."""

from growlog.desktop.look.widgets import NumberField


class PercentField(NumberField):
    """0 to 100 %; an empty field is no share. What was not touched comes back as it was.

    What is wrong with it beside other shares is said apart from what is wrong with the number itself, which it stays.
    """

    def __init__(self, label: str, share: float | None = None, name: str = "", decimals: int = 1) -> None:
        super().__init__(label, "%", 0, 100, decimals, name=name)
        self._kept = share
        self._beside = ""
        self.set_value(None if share is None else share * 100)
        self._kept_text = self.line.text()

    def share(self) -> float | None:
        """The share as a part of 1; None where nothing, or no share, stands."""
        if self.line.text() == self._kept_text:
            return self._kept
        is_number = not self.refusal or self.refusal == self._beside
        return self._value / 100 if is_number and self._value is not None else None

    def show_beside(self, sentence: str) -> None:
        """What is wrong with it beside the others, "" for nothing; what it says of itself comes first."""
        if self.refusal in ("", self._beside):
            self.show_problem(sentence)
        self._beside = sentence
