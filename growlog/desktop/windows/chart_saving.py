"""Saves a chart where the person says, for every button that asks for it."""

import re
from pathlib import Path

from PySide6.QtCore import QObject

from growlog.desktop.charts.chart_data import ChartData
from growlog.desktop.charts.chart_export import write_chart
from growlog.desktop.charts.chart_menu import ChartMenu
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.messages import Messages
from growlog.words import say


class ChartSaving(QObject):
    """Follow each chart's button once."""

    def __init__(self, files: FileChoice, messages: Messages, parent: QObject) -> None:
        super().__init__(parent)
        self._files = files
        self._messages = messages

    def follow(self, menu: ChartMenu) -> None:
        """Saves what this button asks for from now on."""
        menu.save_wanted.connect(self._save)
        menu.copied.connect(self._say_copied)

    def save_text(self, suggested: str, text: str) -> None:
        """Saves a table as CSV where the person says."""
        path = self._files.file_to_save(say("Save the table"), suggested, [f"{say('Table')} (*.csv)"])
        if path is not None:
            self._write(path.with_suffix(".csv"), text)

    def _save(self, data: ChartData, ending: str) -> None:
        suggested = f"{_plain(data.title)}.{ending}"
        path = self._files.file_to_save(say("Save the chart"), suggested, [f"{ending.upper()} (*.{ending})"])
        if path is not None:
            self._write(path.with_suffix(f".{ending}"), data)

    def _write(self, path: Path, content: ChartData | str) -> None:
        try:
            if isinstance(content, str):
                path.write_text(content, encoding="utf-8", newline="")
            else:
                write_chart(content, path)
        except OSError as error:
            reason = error.strerror or str(error)
            self._messages.problem(say("{file} could not be written: {reason}.", file=path.name, reason=reason))
        else:
            self._messages.inform(say("Saved in {file}.", file=path.name))

    def _say_copied(self) -> None:
        self._messages.inform(say("The chart is on the clipboard, as a picture and as values."))


def _plain(title: str) -> str:
    """A title as the name of a file."""
    return re.sub(r"[^\w-]+", "-", title).strip("-").lower() or "chart"
