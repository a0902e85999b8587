"""The day sheet: the chosen day of the crop with its photos and its entries, and what can be added to it."""

from functools import partial

from PySide6.QtCore import QPoint, QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QMenu, QScrollArea, QVBoxLayout, QWidget

from growlog.desktop.day_sheet.add_row import AddRow
from growlog.desktop.day_sheet.day_label import DayLabel
from growlog.desktop.day_sheet.day_words import age_words
from growlog.desktop.day_sheet.entry_row import EntryRow
from growlog.desktop.day_sheet.photo_frame import PhotoFrame
from growlog.desktop.day_sheet.photo_strip import PhotoStrip
from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import EmptyState, Ground
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.desktop.pictures import Pictures
from growlog.services.day_sheet import DayEntry, DaySheet
from growlog.services.photo_uses import DayPhoto
from growlog.words import say

_NARROW_PX = 270


class DaySheetPanel(QWidget):
    """Shows one day and says what is wanted of it; it changes nothing by itself."""

    day_step = Signal(int)
    add_wanted = Signal(str)
    correct_wanted = Signal(str)
    remove_wanted = Signal(str)
    photo_opened = Signal(object)
    photo_chosen_to_lead = Signal(str)
    photo_move_wanted = Signal(str)
    photo_remove_wanted = Signal(str)
    compare_wanted = Signal(int)
    add_photos_wanted = Signal()

    def __init__(self, pictures: Pictures, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("daySheet")
        self._sheet: DaySheet | None = None
        self._writable = True
        self._place_of_photo = 0
        self.title_label = TextLabel("", "page-title")
        self.day_label = DayLabel()
        self.earlier_button = IconButton("previous-day", say("The day before"))
        self.later_button = IconButton("next-day", say("The day after"))
        self.photo_frame = PhotoFrame(pictures)
        self.photo_strip = PhotoStrip(pictures)
        self.no_photo = EmptyState(say("No photo of this day."), say("Add photos"), "", "noPhoto")
        self.no_entries = EmptyState(say("Nothing is written for this day yet."), say("Write a note"), "", "noEntries")
        self.no_day = EmptyState(say("Choose a crop, and its days appear here."), "", "", "noDay")
        self.rows: list[EntryRow] = []
        self._made_rows: list[EntryRow] = []  # the shown ones first, then those that wait for a fuller day
        self.add_row = AddRow(self)
        self._place()
        self._connect()
        self.show_day(None)

    @property
    def sheet(self) -> DaySheet | None:
        """The day that is shown."""
        return self._sheet

    @property
    def photo(self) -> DayPhoto | None:
        """The photo that is shown large."""
        photos = self._sheet.photos if self._sheet is not None else ()
        return photos[self._place_of_photo] if self._place_of_photo < len(photos) else None

    def show_day(self, sheet: DaySheet | None) -> None:
        """Another day, or the same one after a change; None while no crop is chosen."""
        kept = self._kept_photo(sheet)
        focused = next((row.shown.entry.id for row in self.rows if row.hasFocus()), "")
        self._sheet = sheet
        self.scroll_area.setVisible(sheet is not None)
        self._header.setVisible(sheet is not None)
        self.no_day.setVisible(sheet is None)
        if sheet is None:
            self._show_rows(None, "")
            return
        self.title_label.setText(age_words(sheet.age))
        self.day_label.show_day(sheet.day)
        self._show_photo(kept)
        self._show_rows(sheet, focused)

    def place_quick_line(self, panel: QWidget) -> None:
        """Puts the quick line under the head, where it stays while the day scrolls."""
        self._column.insertWidget(1, panel)
        self.installEventFilter(panel)

    def set_writable(self, writable: bool) -> None:
        """Read-only hides everything that would change the logbook."""
        self._writable = writable
        for row in self.rows:
            row.set_writable(writable)
        self._show_what_can_be_done()

    def choose_photo(self, place: int) -> None:
        """Shows another photo of the day large."""
        self._place_of_photo = place
        if self._sheet is not None and self.photo is not None:
            self.photo_frame.show_photo(self.photo, self._sheet.age, self._sheet.photo_ages)
            self.photo_strip.mark_chosen(place)

    def choose_entry(self, entry_id: str) -> None:
        """Brings an entry of the day into view and into focus."""
        for row in self.rows:
            if row.shown.entry.id == entry_id:
                row.setFocus()
                self.scroll_area.ensureWidgetVisible(row)

    def photo_menu(self, place: int) -> QMenu:
        """The menu of a photo of the day."""
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        photo = self._sheet.photos[place] if self._sheet is not None else None
        if photo is None:
            return menu
        menu.addAction(say("Open large")).triggered.connect(partial(self.photo_opened.emit, photo))
        if self._writable:
            self._add_changes(menu, photo)
        return menu

    def minimumSizeHint(self) -> QSize:
        """It may become narrow."""
        return QSize(280, 240)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lays the head out anew."""
        super().resizeEvent(event)
        self._lay_day(self.width() < current().px(_NARROW_PX))

    def _add_changes(self, menu: QMenu, photo: DayPhoto) -> None:
        use_id = photo.use.id
        lead = menu.addAction(say("Let it lead the day"))
        lead.setEnabled(not photo.use.leads)
        lead.triggered.connect(partial(self.photo_chosen_to_lead.emit, use_id))
        move = menu.addAction(say("Move to another day or crop\u2026"))
        move.triggered.connect(partial(self.photo_move_wanted.emit, use_id))
        menu.addSeparator()
        remove = menu.addAction(say("Remove from this day"))
        remove.triggered.connect(partial(self.photo_remove_wanted.emit, use_id))

    def _place(self) -> None:
        ground = Ground("sheet")
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(ground)
        column = QVBoxLayout(ground)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        self._header = self._head()
        self._content = QWidget()
        self._content.setObjectName("scrolled")
        self._fill_content()
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setFrameShape(QFrame.Shape.NoFrame)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setWidget(self._content)
        self.scroll_area = scroll
        self._column = column
        column.addWidget(self._header)
        column.addWidget(self.no_day, 1)
        column.addWidget(scroll, 1)

    def _head(self) -> QWidget:
        head = QWidget()
        self._head_grid = QGridLayout(head)
        self._head_grid.setContentsMargins(20, 10, 12, 8)
        self._head_grid.setHorizontalSpacing(8)
        self._head_grid.setVerticalSpacing(2)
        self._head_grid.addWidget(self.title_label, 0, 0)
        self._head_grid.addWidget(self.earlier_button, 0, 2)
        self._head_grid.addWidget(self.later_button, 0, 3)
        self._head_grid.setColumnStretch(1, 1)
        self._lay_day(narrow=False)
        return head

    def _lay_day(self, narrow: bool) -> None:
        """The day stands beside its age, below it where there is no room."""
        self._head_grid.removeWidget(self.day_label)
        if narrow:
            self._head_grid.addWidget(self.day_label, 1, 0, 1, 4)
        else:
            self._head_grid.addWidget(self.day_label, 0, 1)

    def _fill_content(self) -> None:
        self._content.setMinimumWidth(1)  # words are squeezed, never cut off at the right
        column = QVBoxLayout(self._content)
        column.setContentsMargins(20, 0, 20, 16)
        column.setSpacing(8)
        self._entries = QVBoxLayout()
        self._entries.setSpacing(0)
        column.addWidget(self.photo_frame)
        column.addWidget(self.photo_strip)
        column.addWidget(self.no_photo)
        column.addLayout(self._entries)
        column.addWidget(self.no_entries)
        column.addWidget(self.add_row)
        column.addStretch(1)

    def _connect(self) -> None:
        self.earlier_button.clicked.connect(partial(self.day_step.emit, -1))
        self.later_button.clicked.connect(partial(self.day_step.emit, 1))
        self.photo_frame.opened.connect(self._open_photo)
        self.photo_frame.compare_wanted.connect(self.compare_wanted)
        self.photo_frame.menu_wanted.connect(self._open_menu_of_shown)
        self.photo_strip.chosen.connect(self.choose_photo)
        self.photo_strip.menu_wanted.connect(self._open_menu)
        self.no_photo.chosen.connect(self.add_photos_wanted)
        self.no_entries.chosen.connect(partial(self.add_wanted.emit, "note"))
        self.add_row.add_wanted.connect(self.add_wanted)

    def _kept_photo(self, sheet: DaySheet | None) -> int:
        """Where the photo that is shown now stands on the new sheet, 0 if it is not there."""
        shown = self.photo
        photos = sheet.photos if sheet is not None else ()
        same_day = sheet is not None and self._sheet is not None and sheet.day == self._sheet.day
        if shown is None or not same_day:
            return 0
        return next((place for place, photo in enumerate(photos) if photo.use.id == shown.use.id), 0)

    def _show_photo(self, place: int) -> None:
        sheet = self._sheet
        self._place_of_photo = place
        if sheet is None:
            return
        photo = self.photo
        if photo is not None:
            self.photo_frame.show_photo(photo, sheet.age, sheet.photo_ages)
        self.photo_frame.setVisible(photo is not None)
        self.no_photo.setVisible(photo is None)
        self.photo_strip.show_photos(sheet.photos, place)

    def _show_rows(self, sheet: DaySheet | None, focused: str) -> None:
        entries = sheet.entries if sheet is not None else ()
        while len(self._made_rows) < len(entries):
            self._make_row(entries[len(self._made_rows)])
        self.rows = self._made_rows[: len(entries)]
        for row, shown in zip(self.rows, entries, strict=True):
            row.show_entry(shown)
            row.set_writable(self._writable)
            row.show()  # at once, else it cannot take the focus and the sheet flickers
            if shown.entry.id == focused:
                row.setFocus(Qt.FocusReason.OtherFocusReason)
        for row in self._made_rows[len(entries) :]:
            row.hide()
        self._show_what_can_be_done()

    def _make_row(self, shown: DayEntry) -> None:
        row = EntryRow(shown, self._writable)
        row.correct_wanted.connect(self.correct_wanted)
        row.remove_wanted.connect(self.remove_wanted)
        row.neighbour_wanted.connect(partial(self._go_from_row, len(self._made_rows)))
        self._made_rows.append(row)
        self._entries.addWidget(row)

    def _go_from_row(self, place: int, step: int) -> None:
        if 0 <= place + step < len(self.rows):
            self.rows[place + step].setFocus(Qt.FocusReason.OtherFocusReason)
            self.scroll_area.ensureWidgetVisible(self.rows[place + step])

    def _show_what_can_be_done(self) -> None:
        self.no_entries.setVisible(self._sheet is not None and not self.rows)
        self.no_entries.button.setVisible(self._writable)
        self.no_photo.button.setVisible(self._writable)
        self.add_row.set_writable(self._writable and self._sheet is not None)

    def _open_photo(self) -> None:
        if self.photo is not None:
            self.photo_opened.emit(self.photo)

    def _open_menu_of_shown(self, at: QPoint) -> None:
        self._open_menu(self._place_of_photo, at)

    def _open_menu(self, place: int, at: QPoint) -> None:
        self.photo_menu(place).popup(at)
