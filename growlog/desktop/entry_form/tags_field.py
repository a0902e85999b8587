"""Numbers of tags on flowers and fruit: a line of them, a line with weights, and two lines for what became of them."""

import re
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QWidget

from growlog.desktop.entry_form.display_units import METRIC, display_unit
from growlog.desktop.look.widgets import Field, TextField
from growlog.desktop.look.widgets.number_text import NotANumber, number_text, parse_number
from growlog.records.entry import FlowerFate, TaggedFruit, TagSeen
from growlog.words import say

_BETWEEN_ITEMS = re.compile(r";|,\s+|,$")  # a comma with digits right behind it may be a decimal comma
_LONGEST = 2000


class TagsField(TextField):
    """Tags with commas between them. A text that was not touched gives back what was shown."""

    def __init__(self, label: str, placeholder: str = "", name: str = "tags") -> None:
        super().__init__(label, longest=_LONGEST, placeholder=placeholder, name=name)
        self._untouched: tuple[Any, ...] = ()
        self._untouched_text = ""

    def value(self) -> Any:
        """The tags; none while the line cannot be read."""
        if self.line.text() == self._untouched_text:
            return self._untouched
        try:
            return self._parsed(self.line.text())
        except NotANumber:
            return ()

    def set_value(self, value: Any) -> None:
        """Shows tags without emitting value_changed."""
        super().set_value(self._text_of(value))
        self._untouched = tuple(value)
        self._untouched_text = self.line.text()

    def _parsed(self, text: str) -> tuple[Any, ...]:
        return tuple(tag.strip() for tag in text.replace(";", ",").split(",") if tag.strip())

    def _text_of(self, value: Any) -> str:
        return ", ".join(value)


class TaggedFruitField(TagsField):
    """Tags of picked fruit, each with its weight where it was weighed: 12 or 12: 86."""

    def __init__(self, label: str, system: str = METRIC, name: str = "tagged") -> None:
        self._display = display_unit("weight_g", system)
        super().__init__(label, say("12, or with its weight 12: 86"), name)
        self.set_label(say("{label}, weights in {unit}", label=label, unit=self._display.unit))

    def check(self) -> bool:
        """False where a weight is no number."""
        self.clear_message()
        if self.line.text() != self._untouched_text:
            try:
                self._parsed(self.line.text())
            except NotANumber:
                self.show_problem(say("Write a tag and its weight as 12: 86, with a comma before the next tag."))
        return not self.is_refused

    def _parsed(self, text: str) -> tuple[TaggedFruit, ...]:
        found: list[TaggedFruit] = []
        for part in (p.strip() for p in _BETWEEN_ITEMS.split(text) if p.strip()):
            tags, colon, weight = part.partition(":")
            fruit = [TaggedFruit(tag.strip()) for tag in tags.split(",") if tag.strip()]
            if colon:  # the weight is of the tag right before it
                fruit[-1:] = [TaggedFruit(fruit[-1].tag if fruit else "", self._weight(weight))]
            found += fruit
        return tuple(found)

    def _weight(self, text: str) -> float:
        typed = parse_number(text)
        if typed is None:
            raise NotANumber(text)
        return self._display.kept(typed)

    def _text_of(self, value: Any) -> str:
        return ", ".join(self._one(fruit) for fruit in value)

    def _one(self, fruit: TaggedFruit) -> str:
        if fruit.weight_g is None:
            return fruit.tag
        weight = number_text(self._display.shown(fruit.weight_g), self._display.decimals).removesuffix(".0")
        return f"{fruit.tag}: {weight}"


class TagsSeenField(Field):
    """Which tagged flowers have set and which have dropped."""

    def __init__(self, name: str = "tags_seen") -> None:
        self.holder = QWidget()
        self.lines = {
            FlowerFate.SET: TagsField(say("Tags set"), name="tags_set"),
            FlowerFate.DROPPED: TagsField(say("Tags dropped"), name="tags_dropped"),
        }
        row = QHBoxLayout(self.holder)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(12)
        for line in self.lines.values():
            row.addWidget(line, 1)
        super().__init__("", self.holder, "", name)
        self.holder.setAccessibleName(say("Tags seen"))
        self.setFocusProxy(self.lines[FlowerFate.SET])
        self._untouched: tuple[TagSeen, ...] = ()
        for line in self.lines.values():
            line.value_changed.connect(self._typed)
            line.editing_finished.connect(self.editing_finished)

    def value(self) -> tuple[TagSeen, ...]:
        """What was seen, in the order in which it was shown where nothing else was typed."""
        typed = tuple(TagSeen(tag, fate) for fate, line in self.lines.items() for tag in line.value())
        return self._untouched if set(typed) == set(self._untouched) else typed

    def set_value(self, seen: tuple[TagSeen, ...]) -> None:
        """Shows what was seen without emitting value_changed."""
        for fate, line in self.lines.items():
            line.set_value(tuple(s.tag for s in seen if s.fate is fate))
        self._untouched = tuple(seen)

    def _typed(self) -> None:
        self.clear_message()
        self.value_changed.emit()
