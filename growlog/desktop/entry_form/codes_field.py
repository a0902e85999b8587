"""BBCH codes as chips, typed or taken from the list of a scale, with their meanings."""

from functools import partial

from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QMenu, QVBoxLayout, QWidget

from growlog.calculations.growth_stage import PRINCIPAL_STAGES
from growlog.desktop.entry_form.chips import ChipLine
from growlog.desktop.look.widgets import Button, ChoiceField, Field
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.desktop.resources import resource_text
from growlog.services.growth_stages import GrowthStage, StageScale, growth_stages, scale_for
from growlog.words import say


class CodesField(Field):
    """The codes seen, in the order added; several may run at once."""

    def __init__(self, label: str, species: str = "", name: str = "codes") -> None:
        self.list_button = Button(say("From the list\u2026"), name="codeList")
        self.chip_line = ChipLine(say("Code, then Enter"), self.list_button)
        self.meanings = TextLabel("", "small", wraps=True)
        self._codes: tuple[str, ...] = ()
        self._stages: tuple[GrowthStage, ...] = ()
        self.menu = QMenu(self.list_button)
        self.scale_field = ChoiceField(
            say("Scale"), [(s.value, say(s.label)) for s in StageScale], scale_for(species).value, name="scale"
        )
        holder = self._holder()
        super().__init__(label, holder, "", name)
        column = holder.layout()
        if isinstance(column, QVBoxLayout):  # what is wrong with a code stands by the line it was typed in
            column.insertWidget(1, self.message_label)
        self.chip_line.line.setObjectName(f"{name}.line")
        self.chip_line.line.setAccessibleName(label)
        self.setFocusProxy(self.chip_line.line)
        self.list_button.clicked.connect(self._open_list)
        self.chip_line.entered.connect(self.add)
        self.chip_line.struck.connect(self._struck)
        self.chip_line.line.textEdited.connect(self._typing)
        self.scale_field.value_changed.connect(self._scale_chosen)
        self._scale_chosen()

    def value(self) -> tuple[str, ...]:
        """The codes."""
        return self._codes

    def set_value(self, codes: tuple[str, ...]) -> None:
        """Shows codes without emitting value_changed."""
        self._codes = tuple(codes)
        self._show()

    def check(self) -> bool:
        """False while a code is typed but not added."""
        self.clear_message()
        if self.chip_line.line.text().strip():
            self.show_problem(say("Press Enter to add this code, or empty the line."))
        return not self.is_refused

    def take_typed(self) -> None:
        """Adds what still stands in the line, as Enter does."""
        if self.chip_line.line.text().strip():
            self.add(self.chip_line.line.text().strip())

    def add(self, text: str) -> None:
        """Adds the codes in a text, such as 61 or 61/71."""
        found = text.replace("/", " ").replace(",", " ").split()
        if not all(code.isascii() and code.isdigit() and len(code) in (2, 3) for code in found):
            self.show_problem(say("{code} is not a BBCH code of two or three digits.", code=text))
            return
        self._codes += tuple(code for code in dict.fromkeys(found) if code not in self._codes)
        self.chip_line.line.clear()
        self._changed()

    def _open_list(self) -> None:
        self.menu.popup(self.list_button.mapToGlobal(QPoint(0, self.list_button.height() + 2)))

    def _holder(self) -> QWidget:
        holder = QWidget()
        column = QVBoxLayout(holder)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        for widget in (self.chip_line, self.meanings, self.scale_field):
            column.addWidget(widget)
        return holder

    def _struck(self, place: int) -> None:
        self._codes = self._codes[:place] + self._codes[place + 1 :]
        self._changed()

    def _typing(self) -> None:
        self.clear_message()

    def _changed(self) -> None:
        self.clear_message()
        self._show()
        self.value_changed.emit()

    def _scale_chosen(self) -> None:
        scale = StageScale(self.scale_field.value() or StageScale.CUCURBITS)
        self._stages = growth_stages(resource_text("tables", "bbch.csv"), scale)
        self._fill_menu()
        self._show()

    def _fill_menu(self) -> None:
        self.menu.clear()
        for principal in sorted({int(stage.code[0]) for stage in self._stages}):
            part = QMenu(f"{principal}  {say(PRINCIPAL_STAGES[principal])}", self.menu)
            self.menu.addMenu(part)
            for stage in self._stages:
                if int(stage.code[0]) == principal:
                    part.addAction(f"{stage.code}  {_meaning(stage)}").triggered.connect(partial(self.add, stage.code))

    def _show(self) -> None:
        self.chip_line.show_chips(list(self._codes))
        known = {stage.code: _meaning(stage) for stage in self._stages}
        lines = [f"{code}: {known[code]}" if code in known else _principal(code) for code in self._codes]
        self.meanings.setText("\n".join(line for line in lines if line))
        self.meanings.setVisible(bool(lines))


def _meaning(stage: GrowthStage) -> str:
    return say("{meaning} (from memory)", meaning=stage.meaning) if stage.from_memory else stage.meaning


def _principal(code: str) -> str:
    return f"{code}: {say(PRINCIPAL_STAGES[int(code[0])])}" if code[:1].isdigit() else ""
