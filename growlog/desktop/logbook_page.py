"""The open logbook: crop list, season board and day sheet side by side, a head above and the totals below."""

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QSplitter, QVBoxLayout, QWidget

from growlog.desktop.background import Lane
from growlog.desktop.board.season_board import SeasonBoard
from growlog.desktop.crop_list.crop_list import CropList
from growlog.desktop.day_sheet.add_row import KIND_KEYS
from growlog.desktop.day_sheet.day_sheet import DaySheetPanel
from growlog.desktop.desk import Desk
from growlog.desktop.head_bar import HeadBar
from growlog.desktop.look.widgets.buttons import Button
from growlog.desktop.look.widgets.labels import ElidedLabel, Rule, TextLabel
from growlog.desktop.settings import Settings
from growlog.desktop.totals import counts_line, totals_line
from growlog.services.board import Board
from growlog.services.board_use import BoardUse, use_of
from growlog.services.crops import CropSummary
from growlog.services.day_sheet import DaySheet
from growlog.services.due import DueItem, routines_of
from growlog.services.logbooks import facts_of
from growlog.words import say


class LogbookPage(QWidget):
    """Places the three panels and carries what they say to the desk and back."""

    add_photos_wanted = Signal()
    new_crop_wanted = Signal()
    room_wanted = Signal()
    tally_wanted = Signal()
    mixer_wanted = Signal()

    def __init__(self, desk: Desk, settings: Settings, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._settings = settings
        self.crop_list = CropList()
        self.board = SeasonBoard(desk.pictures)
        self.day_sheet = DaySheetPanel(desk.pictures)
        self.totals = ElidedLabel("", role="strong")
        self.kept = TextLabel("", tone="mute")
        self.counts = ElidedLabel("", tone="mute", shortest_px=0)
        beside = (self.board, self.crop_list)
        self._keys = [self._entry_key(panel, kind, key) for panel in beside for kind, key in KIND_KEYS.items()]
        self._shown_crop = ""
        self._place()
        self._connect()
        self._restore()

    def show_kept(self, sentence: str) -> None:
        """Says at the lower right what was saved or copied last."""
        self.kept.setText(sentence)

    def remember(self) -> None:
        """Keeps the widths of the panels for the next time."""
        self._settings.set("splitter_sizes", self._splitter.sizes())

    def _entry_key(self, panel: QWidget, kind: str, key: str) -> QShortcut:
        """The day sheet's single keys work on the board and in the crop list, too."""
        shortcut = QShortcut(QKeySequence(key), panel, context=Qt.ShortcutContext.WidgetWithChildrenShortcut)
        shortcut.activated.connect(partial(self.day_sheet.add_wanted.emit, kind))
        shortcut.setEnabled(self._desk.log.writable)
        return shortcut

    def _place(self) -> None:
        self._splitter = QSplitter(Qt.Orientation.Horizontal)
        self._splitter.setChildrenCollapsible(False)
        for panel in (self.crop_list, self.board, self.day_sheet):
            self._splitter.addWidget(panel)
        for index, share in enumerate((0, 1, 0)):
            self._splitter.setStretchFactor(index, share)
        page = QVBoxLayout(self)
        page.setContentsMargins(0, 0, 0, 0)
        page.setSpacing(0)
        page.addWidget(self._head())
        page.addWidget(Rule())
        page.addWidget(self._splitter, 1)
        page.addWidget(Rule())
        page.addWidget(self._foot())

    def _head(self) -> QWidget:
        self.add_photos_button = Button(say("Add photos"), "primary", "add-photos", "add_photos_button")
        self.room_button = Button(say("Room"), "", "room", "room_button")
        self.new_crop_button = Button(say("New crop"), "", "new-crop", "new_crop_button")
        self.tally_button = Button(say("Session tally"), "primary", "tally", "tally_button")
        self.mixer_button = Button(say("Mixer"), "", "mixer", "mixer_button")
        tally, mixer, photos = self.tally_button, self.mixer_button, self.add_photos_button
        buttons = (tally, mixer, photos, self.new_crop_button, self.room_button)
        first_silent = (self.new_crop_button, self.room_button, mixer, photos, tally)
        return HeadBar(TextLabel(facts_of(self._desk.log).name, role="heading"), self.counts, buttons, first_silent)

    def _foot(self) -> QWidget:
        foot = QWidget()
        foot.setObjectName("foot_bar")
        row = QHBoxLayout(foot)
        row.setContentsMargins(16, 6, 16, 6)
        row.addWidget(self.totals, 1)
        row.addWidget(self.kept)
        return foot

    def _connect(self) -> None:
        desk = self._desk
        desk.crops_changed.connect(self._show_crops)
        desk.due_changed.connect(self._show_due)
        desk.board_changed.connect(self._show_board)
        desk.sheet_changed.connect(self._show_sheet)
        self.crop_list.crop_chosen.connect(desk.selection.choose_crop)
        self.crop_list.new_crop_wanted.connect(self.new_crop_wanted)
        self.board.age_chosen.connect(desk.choose_age)
        self.board.crop_wanted.connect(self.new_crop_wanted)
        self.board.photos_wanted.connect(self.add_photos_wanted)
        self.board.underlay_chosen.connect(self._lay_under)
        self.board.axis_mode_changed.connect(self._keep_axis)
        self.board.to_come_toggled.connect(self._keep_to_come)
        self.board.lane_order_changed.connect(self._keep_order)
        self.board.hidden_lanes_changed.connect(self._keep_hidden)
        self.day_sheet.day_step.connect(desk.step_day)
        self.day_sheet.add_photos_wanted.connect(self.add_photos_wanted)
        self.add_photos_button.clicked.connect(self.add_photos_wanted)
        self.new_crop_button.clicked.connect(self.new_crop_wanted)
        self.room_button.clicked.connect(self.room_wanted)
        self.tally_button.clicked.connect(self.tally_wanted)
        self.mixer_button.clicked.connect(self.mixer_wanted)

    def _restore(self) -> None:
        settings = self._settings
        writable = self._desk.log.writable
        self.day_sheet.set_writable(writable)
        self.crop_list.set_writable(writable)
        self.add_photos_button.setEnabled(writable)
        self.new_crop_button.setEnabled(writable)
        self.tally_button.setEnabled(writable)
        self.board.set_axis_mode(settings.text("axis_mode"))
        self.board.set_to_come(settings.flag("show_to_come"))
        if settings.texts("lane_order"):
            self.board.set_lane_order(settings.texts("lane_order"))
        self.board.set_hidden_lanes(settings.texts("hidden_lanes"))
        self._watch_humidity("humid_above_percent")
        settings.changed.connect(self._watch_humidity)
        sizes = settings.numbers("splitter_sizes")
        self._splitter.setSizes(sizes if len(sizes) == 3 else [200, 880, 340])

    def _show_crops(self, crops: list[CropSummary]) -> None:
        self.crop_list.show_crops(crops, self._desk.selection.crop_id)
        self.counts.setText(counts_line(crops))

    def _show_due(self, due: list[DueItem]) -> None:
        log = self._desk.log
        self.crop_list.due.show_due(due, log.today(), bool(routines_of(log)), log.writable)

    def _show_board(self, board: Board | None) -> None:
        chosen = "" if board is None else board.crop.id
        self.crop_list.show_chosen(chosen)
        others = [(c.crop.id, c.crop.name) for c in self._desk.crops if c.crop.id != chosen and c.curve]
        if chosen != self._shown_crop:
            self.board.show_underlay(None)
            self._shown_crop = chosen
        self.board.set_underlay_choices(others)
        day = self._desk.selection.day
        if board is None:
            self.board.show_nothing()
        else:
            self.board.show_board(board, board.last_age if day is None else self._desk.age_of(day))
        self.totals.setText("" if board is None else totals_line(board))
        self._read_use()

    def _show_sheet(self, sheet: DaySheet | None) -> None:
        if sheet is not None:
            self.board.set_day(sheet.age)
        self.day_sheet.show_day(sheet)

    def _lay_under(self, crop_id: str) -> None:
        self.board.show_underlay(self._desk.other_curve(crop_id))

    def _keep_axis(self, mode: str) -> None:
        self._settings.set("axis_mode", mode)

    def _keep_to_come(self, on: bool) -> None:
        self._settings.set("show_to_come", on)

    def _keep_order(self, order: list[str]) -> None:
        self._settings.set("lane_order", list(order))

    def _keep_hidden(self, hidden: list[str]) -> None:
        self._settings.set("hidden_lanes", list(hidden))
        self._read_use()

    def _watch_humidity(self, key: str) -> None:
        if key == "humid_above_percent":
            self.board.surface.lanes.watch_humidity(self._settings.number(key))

    def _read_use(self) -> None:
        """Cost and electricity by day are read beside the board, and only where their lanes are shown."""
        board = self._desk.board
        wanted = {"cost", "energy"} - set(self._settings.texts("hidden_lanes"))
        if board is None or not wanted or (board.use is not None and board.use.crop_id == board.crop.id):
            return
        self._desk.runner.run(use_of, self._desk.log, board.crop.id, on_done=self._show_use, lane=Lane.DATABASE)

    def _show_use(self, use: BoardUse) -> None:
        self._desk.lay_use(use)
