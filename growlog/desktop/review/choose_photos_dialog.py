"""Which photos tell the story: each day's leading one to be ticked, and the others of a day if wanted."""

from collections.abc import Collection, Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QWidget

from growlog.desktop.look.widgets import Banner, TextLabel
from growlog.desktop.pictures import Pictures
from growlog.desktop.review.story_tile import StoryTile
from growlog.desktop.review.tile_grid import TileGrid
from growlog.desktop.tall_dialog import TallDialog
from growlog.services.review.model import StoryPhoto
from growlog.services.review.story import FEWEST, MOST
from growlog.words import say, say_count


class ChoosePhotosDialog(TallDialog):
    """Announces the photos that were ticked, or that the program is to pick them again."""

    chosen = Signal(object)  # list[str], ids of uses
    automatic_wanted = Signal()

    def __init__(
        self, choices: Sequence[StoryPhoto], ticked: Collection[str], pictures: Pictures, parent: QWidget | None = None
    ) -> None:
        super().__init__(say("Photos of the review"), "", parent, 860)
        self.setObjectName("choosePhotos")
        words = say("Tick the photos that tell the story; {few} to {most} read well.", few=FEWEST, most=MOST)
        self.banner = Banner(can_close=False)
        self.banner.hide()
        self._choices, self._pictures = list(choices), pictures
        self.grid = TileGrid(110)
        self.every_box = QCheckBox(say("Show every photo of each day, not only the leading one"))
        self.every_box.setObjectName("everyPhoto")
        self.every_box.setVisible(len({photo.day for photo in choices}) < len(choices))
        self.body.addWidget(TextLabel(words, "", wraps=True))
        self.body.addWidget(self.every_box)
        self.body.addWidget(self.banner)
        self.body.addWidget(self.grid)
        self.body.addStretch(1)
        self.automatic_button = self.add_button(say("Pick them by plant age"), name="automatic", left=True)
        self.automatic_button.setEnabled(any(photo.chosen for photo in choices))
        self.leave_button = self.add_button(say("Leave as it was"), name="leave")
        self.use_button = self.add_button(say("Use these photos"), "primary", "use")
        self._show(ticked)
        self.every_box.toggled.connect(self._show_other_choice)
        self.automatic_button.clicked.connect(self.automatic_wanted)
        self.leave_button.clicked.connect(self.reject)
        self.use_button.clicked.connect(self.confirm)

    def ticked(self) -> list[str]:
        """The uses that are ticked, in order of age."""
        return [tile.photo.use_id for tile in self.grid.tiles if tile.isChecked()]

    def confirm(self) -> None:
        """Announces them."""
        self.chosen.emit(self.ticked())

    def say_problem(self, sentence: str) -> None:
        """What was refused."""
        self.banner.show_message(sentence, "problem")
        self.banner.show()

    def _show_other_choice(self, _every: bool) -> None:
        self._show(self.ticked())

    def _show(self, ticked: Collection[str]) -> None:
        """The leading photo of each day and what is ticked, or all."""
        every = self.every_box.isChecked()
        leading = {photo.day: photo.use_id for photo in reversed(self._choices)}
        wanted = {*ticked, *leading.values()}
        shown = [photo for photo in self._choices if every or photo.use_id in wanted]
        tiles = [StoryTile(photo, self._pictures, ticks=True) for photo in shown]
        for tile in tiles:
            tile.setChecked(tile.photo.use_id in ticked)
            tile.toggled.connect(self._count)
        self.grid.show_tiles(tiles)
        self._count()

    def _count(self, _ticked: bool = False) -> None:
        count = len(self.ticked())
        note = say_count("{n} photo ticked", "{n} photos ticked", count)
        if count > MOST:
            note = say("{note}; at most {most} can be used", note=note, most=MOST)
        self.set_note(note)
        self.use_button.setEnabled(1 <= count <= MOST)
