"""The tasks as hands do them in the real window; each asserts what the log holds in the end."""

import shutil
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QMimeData, QPoint, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtWidgets import QApplication, QDialog

from growlog.desktop.desk import Desk
from growlog.desktop.intake.intake_tray import IntakeTray
from growlog.desktop.intake.tray_table import PHOTO
from growlog.records.entry import Feed, Pick, Pollination
from growlog.services.crops import add_crop, new_crop
from tests.effort import spreadsheet
from tests.effort.keystroke_model import CONTROL, SHIFT, Effort, Hands
from tests.journeys.conftest import Person
from tests.logbooks import SOWN, TODAY

README = Path(__file__).parents[2] / "README.md"
CROPS = ("Boxroom Gold", "Landing Light", "Porch Violet")
WEIGHTS_G = (93, 78, 86, 64, 71, 88, 90, 55, 67, 82, 79, 84)
PHOTOS = Path(__file__).parents[1] / "data" / "photos" / "daily-rosettes"
Make = Callable[..., Person]


def harvest(make: Make) -> Effort:
    """12 weighed fruit, 5 females pollinated and 2 culls of the crop on the board, in the session tally."""
    someone, hands = _at_the_desk(make)
    hands.think()
    hands.press(Qt.Key.Key_L, CONTROL)
    _opened(someone)
    for weight_g in WEIGHTS_G:
        hands.think()
        hands.type(f"{weight_g}")
        hands.press(Qt.Key.Key_Return)
    hands.think()
    hands.type("ppppp")
    for cull in ("cc", "cm"):
        hands.think()
        hands.type(cull)
    hands.press(Qt.Key.Key_Return, CONTROL)
    pick, pollination = _written(someone, "pick"), _written(someone, "pollination")
    assert isinstance(pick[0], Pick)
    assert pick[0].weights_g == WEIGHTS_G
    assert pick[0].culled_count == 2
    assert pollination == [Pollination(females_pollinated=5)]
    return hands.effort


def morning_feed(make: Make) -> Effort:
    """Three crops in the feeding round: EC and pH of one mix, each crop its own volume."""
    someone, hands = _at_the_desk(make)
    hands.think()
    hands.press(Qt.Key.Key_F, CONTROL | SHIFT)
    _opened(someone)
    for place, text in enumerate(("1.2", "1.9", "5.9")):
        if place:
            hands.press(Qt.Key.Key_Tab)
        hands.think()
        hands.type(text)
    hands.press(Qt.Key.Key_Tab)  # the first crop's tick
    hands.press(Qt.Key.Key_Tab)  # its volume, which stays as it stands for all
    for text in ("0.9", "0.8"):
        hands.press(Qt.Key.Key_Return)
        hands.think()
        hands.type(text)
    hands.press(Qt.Key.Key_Return, CONTROL)
    feeds = _written(someone, "feed")
    assert sorted(f.volume_l for f in feeds if isinstance(f, Feed)) == [0.8, 0.9, 1.2]  # type: ignore[type-var]
    assert {(f.ec_ms_per_cm, f.ph) for f in feeds if isinstance(f, Feed)} == {(1.9, 5.9)}
    return hands.effort


def five_photos(make: Make) -> Effort:
    """Five photos dropped on the window; two of them are put to another crop in the intake tray."""
    someone, hands = _at_the_desk(make)
    files = _photos_of_today(someone)
    hands.effort.think()
    hands.effort.button(1)  # in the file manager: the first file
    hands.effort.button(2)  # and with Shift held the fifth
    hands.drop(lambda: _drop(someone, files))
    tray = _tray(someone)
    hands.think()
    hands.click(tray.view.viewport(), _middle(tray, 0))
    hands.click(tray.view.viewport(), _middle(tray, 1), CONTROL)
    hands.think()
    hands.press(Qt.Key.Key_2)  # the figure of the second crop
    _until_settled(someone, tray)
    with someone.qtbot.waitSignal(tray.taken_in, timeout=30_000):
        hands.press(Qt.Key.Key_Return, CONTROL)
    someone.until_idle()
    found = _photo_counts(someone)
    assert found == {CROPS[0]: 3, CROPS[1]: 2, CROPS[2]: 0}, found
    tray.close()
    return hands.effort


def table(make: Make) -> str:
    """The table for the guide, in Markdown."""
    rows = [
        ("12 fruit weighed, 5 flowers pollinated, 2 culls", harvest(make), spreadsheet.harvest()),
        ("Morning feed of three crops", morning_feed(make), spreadsheet.morning_feed()),
        ("Five photos, two of another crop", five_photos(make), spreadsheet.five_photos()),
    ]
    lines = ["| task | here | in a spreadsheet | share |", "|---|---|---|---|"]
    for name, here, there in rows:
        share = round(100 * here.seconds / there.seconds)
        lines.append(f"| {name} | {_told(here)} | {_told(there)} | {share} % |")
    return "\n".join(lines)


def _told(done: Effort) -> str:
    return f"{done.seconds:.1f} s ({done.keys} keys, {done.points} pointings)"


def _at_the_desk(make: Make) -> tuple[Person, Hands]:
    someone = make(TODAY, hour=8)
    someone.new_logbook()
    desk = _desk(someone)
    for name, species in zip(CROPS, ("pattypan", "chilli", "aubergine"), strict=True):
        crop, cultivar = new_crop(name, species, SOWN, packet_days=58)
        assert desk.write(add_crop, crop, cultivar) is not None
    desk.selection.choose_crop(next(c.crop.id for c in desk.crops if c.crop.name == CROPS[0]))
    with someone.qtbot.waitActive(someone.window):
        someone.window.activateWindow()
    page = someone.window.page
    assert page is not None
    page.board.setFocus()
    return someone, Hands(someone.window)


def _opened(someone: Person) -> None:
    """Waits for a dialog to have the keys: nobody types into a window that is not there yet."""
    someone.qtbot.waitUntil(lambda: isinstance(QApplication.activeWindow(), QDialog))


def _desk(someone: Person) -> Desk:
    assert someone.window.desk is not None
    return someone.window.desk


def _written(someone: Person, kind: str) -> list[object]:
    with _desk(someone).log.unit() as unit:
        return [e.detail for e in unit.entries.all(kind=kind)]


def _photo_counts(someone: Person) -> dict[str, int]:
    return {c.crop.name: c.photo_count for c in _desk(someone).crops}


def _photos_of_today(someone: Person) -> list[Path]:
    phone = someone.home / "phone"
    phone.mkdir()
    names = [phone / f"photo_{TODAY.isoformat()}-08-0{n}.jpg" for n in range(5)]
    for source, name in zip(sorted(PHOTOS.glob("plant-a_*.jpg")), names, strict=False):
        shutil.copy(source, name)
    return names


def _drop(someone: Person, files: list[Path]) -> None:
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(f)) for f in files])
    event = QDropEvent(QPoint(400, 400), Qt.DropAction.CopyAction, data, Qt.MouseButton.LeftButton,
                       Qt.KeyboardModifier.NoModifier)  # fmt: skip
    someone.window.dropEvent(event)


def _tray(someone: Person) -> IntakeTray:
    assert someone.window.opened is not None
    tray = someone.window.opened.photos.tray
    assert tray is not None
    _until_settled(someone, tray)
    return tray


def _until_settled(someone: Person, tray: IntakeTray) -> None:
    someone.qtbot.waitUntil(lambda: tray.is_at_rest and tray.in_button.isEnabled(), timeout=30_000)
    QApplication.sendPostedEvents()


def _middle(tray: IntakeTray, place: int) -> QPoint:
    return tray.view.visualRect(tray.table.index(place, PHOTO)).center()
