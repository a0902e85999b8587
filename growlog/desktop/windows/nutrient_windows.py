"""All that belongs to feeding solutions, wired together: the mixer, the shelf, waters, the feed plan, tank care."""

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from growlog.desktop.desk import Desk
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.messages import Messages
from growlog.desktop.settings import Settings
from growlog.desktop.windows.mixer_windows import MixerWindows
from growlog.desktop.windows.shelf_windows import ShelfWindows
from growlog.desktop.windows.tank_windows import TankWindows


class NutrientWindows(QObject):
    """Holds the windows and leads from one to the other."""

    def __init__(self, desk: Desk, window: QWidget, settings: Settings, files: FileChoice, messages: Messages) -> None:
        super().__init__(window)
        self.mixer = MixerWindows(desk, window, settings, files, messages)
        self.shelf = ShelfWindows(desk, window, messages)
        self.tanks = TankWindows(desk, window, settings, messages)
        self.mixer.shelf_wanted.connect(self.shelf.open_shelf)
        self.mixer.waters_wanted.connect(self.shelf.open_waters)
        self.mixer.top_up_wanted.connect(self.tanks.open_care)
        self.tanks.mixer_wanted.connect(self.mixer.open)
