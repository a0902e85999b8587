"""The season board as one widget: header, lanes and yield, or what to do first where there is nothing yet."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QScrollArea, QStackedWidget, QVBoxLayout, QWidget

from growlog.desktop.board.header import Header
from growlog.desktop.board.surface import Surface
from growlog.desktop.look.widgets import EmptyState
from growlog.desktop.pictures import Pictures
from growlog.services.board import Board, Curve
from growlog.services.yield_view.outlook import Outlook
from growlog.words import say

AXIS_MODES = ("age", "calendar")
_ZOOM_STEP = 1.5


class SeasonBoard(QWidget):
    """Shows one crop. It announces what the person chooses and is told what to show."""

    age_chosen = Signal(int)
    entry_chosen = Signal(str)
    crop_wanted = Signal()
    photos_wanted = Signal()
    lane_order_changed = Signal(list)
    hidden_lanes_changed = Signal(list)
    axis_mode_changed = Signal(str)
    to_come_toggled = Signal(bool)
    underlay_wanted = Signal()  # the list of other crops was opened
    underlay_chosen = Signal(str)  # crop id, "" for none

    def __init__(self, pictures: Pictures, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("season-board")
        self.header = Header()
        self.surface = Surface(pictures)
        self.no_crop = EmptyState(
            say("No crop is chosen. Choose one from the list, or begin a new one."), say("New crop"), name="no-crop"
        )
        self.no_entries = EmptyState(
            say("This crop has no photos and no entries yet. Begin with its photos."),
            say("Add photos"),
            name="no-entries",
        )
        self._scroll = _scrolling(self.surface)
        self._parts = QStackedWidget()
        self._parts.addWidget(self._scroll)
        self._parts.addWidget(self.no_entries)
        self._pages = QStackedWidget()
        self._pages.addWidget(self.no_crop)
        self._pages.addWidget(self._crop_page())
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self._pages)
        self.setFocusProxy(self.surface)
        self._connect()

    def show_board(self, board: Board, age: int) -> None:
        """Shows a crop with the day line at a plant age."""
        self.header.show_board(board)
        self.surface.show_board(board, age)
        self._fill_menu()
        self._parts.setCurrentWidget(self._scroll if has_anything(board) else self.no_entries)
        self._pages.setCurrentIndex(1)

    def show_nothing(self) -> None:
        """No crop is chosen."""
        self._pages.setCurrentWidget(self.no_crop)

    def set_day(self, age: int) -> None:
        """Moves the day line without announcing it."""
        self.surface.set_day(age)

    def set_underlay_choices(self, choices: Sequence[tuple[str, str]]) -> None:
        """Id and name of the crops whose curve can be laid under this one."""
        self.header.underlay.set_choices(choices)

    def show_underlay(self, curve: Curve | None) -> None:
        """Lays another crop's curve under this one, or takes it away."""
        self.header.underlay.show_chosen("" if curve is None else curve.crop_id)
        self.surface.set_underlay(curve)

    def show_outlook(self, outlook: Outlook | None) -> None:
        """What is still to come of the crop shown; one of another crop is left aside."""
        board = self.surface.board
        if board is not None and (outlook is None or outlook.crop_id == board.crop.id):
            self.surface.set_outlook(outlook)

    def set_axis_mode(self, mode: str) -> None:
        """mode: "age" or "calendar"."""
        if mode not in AXIS_MODES:
            raise ValueError(f"mode is {mode!r}, allowed are {', '.join(AXIS_MODES)}")
        self.header.mode.set_value(mode)
        self.surface.set_calendar(mode == "calendar")

    def set_to_come(self, on: bool) -> None:
        """Whether what is still to come is drawn."""
        self.surface.chart.strip.set_on(on)

    def set_lane_order(self, keys: Sequence[str]) -> None:
        """Puts the lanes in order; those not named follow."""
        self.surface.lanes.set_order(keys)
        self._fill_menu()

    def set_hidden_lanes(self, keys: Sequence[str]) -> None:
        """Hides these lanes and shows all others."""
        self.surface.lanes.set_hidden(keys)
        self.surface.lay_out()
        self._fill_menu()

    def lanes(self) -> list[str]:
        """The keys of all lanes in their order, hidden ones too."""
        return self.surface.lanes.lane_keys()

    def _crop_page(self) -> QWidget:
        page = QWidget()
        layout = QVBoxLayout(page)
        layout.setContentsMargins(16, 8, 8, 4)
        layout.setSpacing(6)
        layout.addWidget(self.header)
        layout.addWidget(self._parts, 1)
        return page

    def _connect(self) -> None:
        self.surface.age_chosen.connect(self.age_chosen)
        self.surface.entry_chosen.connect(self.entry_chosen)
        self.surface.lane_order_changed.connect(self._order_changed)
        self.surface.chart.outlook_toggled.connect(self.to_come_toggled)
        self.no_crop.chosen.connect(self.crop_wanted)
        self.no_entries.chosen.connect(self.photos_wanted)
        self.header.mode.value_changed.connect(self._mode_chosen)
        self.header.underlay.opened.connect(self.underlay_wanted)
        self.header.underlay.chosen.connect(self._underlay_chosen)
        self.header.zoom_in.clicked.connect(self._zoom_in)
        self.header.zoom_out.clicked.connect(self._zoom_out)
        self.header.zoom_fit.clicked.connect(self.surface.fit)
        self.header.menu.toggled.connect(self._lane_toggled)
        self.header.menu.moved_up.connect(self._lane_moved_up)

    def _mode_chosen(self, mode: str) -> None:
        self.surface.set_calendar(mode == "calendar")
        self.axis_mode_changed.emit(mode)

    def _underlay_chosen(self, crop_id: str) -> None:
        if not crop_id:
            self.surface.set_underlay(None)
        self.underlay_chosen.emit(crop_id)

    def _zoom_in(self) -> None:
        self.surface.zoom(_ZOOM_STEP)

    def _zoom_out(self) -> None:
        self.surface.zoom(1 / _ZOOM_STEP)

    def _lane_toggled(self, key: str, shown: bool) -> None:
        hidden = set(self.surface.lanes.hidden())
        hidden = hidden - {key} if shown else hidden | {key}
        self.set_hidden_lanes(sorted(hidden))
        self.hidden_lanes_changed.emit(self.surface.lanes.hidden())

    def _lane_moved_up(self, key: str) -> None:
        order = self.lanes()
        index = order.index(key)
        if index:
            self.surface.move_lane(key, order[index - 1])

    def _order_changed(self, order: list[str]) -> None:
        self._fill_menu()
        self.lane_order_changed.emit(order)

    def _fill_menu(self) -> None:
        lanes = self.surface.lanes
        self.header.menu.show_lanes([lanes.lane(key) for key in lanes.lane_keys()], lanes.hidden())


def has_anything(board: Board) -> bool:
    """Whether the crop has a photo or an entry of any lane."""
    return any((board.photo_days, board.stages, board.light, board.feeds, board.training, board.pollination,
                board.picks, board.events, board.readings))  # fmt: skip


def _scrolling(surface: Surface) -> QScrollArea:
    """Scrolls up and down where the window is too low."""
    scroll = QScrollArea()
    scroll.setObjectName("board-scroll")
    scroll.setFrameShape(QFrame.Shape.NoFrame)
    scroll.setWidgetResizable(True)
    scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    scroll.setWidget(surface)
    return scroll
