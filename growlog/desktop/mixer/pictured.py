"""The screens of feeding solutions as they stand in pictures: empty, in use, held against a target, refused."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from growlog.desktop.mixer.mixer_dialog import MixerDialog
from growlog.desktop.shelf.product_form import ProductFormCard
from growlog.services.mixer import MixerState, Range

if TYPE_CHECKING:
    from growlog.desktop.main_window import MainWindow

_LOW_CALCIUM = {"N": Range(140, 180), "P": Range(35, 55), "K": Range(210, 260), "Ca": Range(170, 190)}


def empty_mixer(window: "MainWindow") -> None:
    """The mixer before anything is in it."""
    if window.opened is not None:
        window.opened.nutrients.mixer.open(MixerState())


def mixer(window: "MainWindow") -> None:
    """The mixer as it opens for the crop and day."""
    _opened(window)


def mixer_refused(window: "MainWindow") -> None:
    """A tank of nothing and a dose that is no number."""
    dialog = _opened(window)
    if dialog is None:
        return
    dialog.tank_field.set_value(0.0)
    dialog.tank_field.value_changed.emit()
    if dialog.table.lines:
        dialog.table.lines[0].amount.line.setText("two")
        dialog.table.lines[0].amount.check()
        dialog.table.lines[0].changed.emit()
    dialog.log_button.click()


def mixer_target(window: "MainWindow") -> None:
    """The mixer held against ranges of the grower's own."""
    dialog = _opened(window)
    if dialog is not None:
        dialog.targets.take_own("", _LOW_CALCIUM)
        dialog.show_elements()


def own_ranges(window: "MainWindow") -> None:
    """The ranges as they are typed."""
    mixer_target(window)
    if window.opened is not None and window.opened.nutrients.mixer.dialog is not None:
        window.opened.nutrients.mixer.dialog.targets.own_button.click()


def doses(window: "MainWindow") -> None:
    """Doses for that target, worked out."""
    mixer_target(window)
    windows = None if window.opened is None else window.opened.nutrients.mixer
    if windows is not None and windows.dialog is not None:
        windows.dialog.doses_button.click()
        if windows.doses is not None:
            windows.doses.ask()


def mix_and_log(window: "MainWindow") -> None:
    """Who gets the tank."""
    dialog = _opened(window)
    if dialog is not None:
        dialog.log_button.click()


def explanation(window: "MainWindow") -> None:
    """How the EC of the mixer is worked out."""
    dialog = _opened(window)
    if dialog is not None:
        dialog.explain_button.explain()


def shelf(window: "MainWindow") -> None:
    """The products there are."""
    if window.opened is not None:
        window.opened.nutrients.shelf.open_shelf()


def stock(window: "MainWindow") -> None:
    """What came to the first product and went from it."""
    shelf(window)
    dialog = None if window.opened is None else window.opened.nutrients.shelf.shelf
    if dialog is not None and dialog.rows:
        dialog.rows[0].stock_button.click()


def product_form(window: "MainWindow") -> None:
    """The label of the first product, or an empty one."""
    shelf(window)
    dialog = None if window.opened is None else window.opened.nutrients.shelf.shelf
    if dialog is not None and dialog.rows:
        dialog.change(dialog.rows[0].item.product)
    elif dialog is not None:
        dialog.new()


def product_refused(window: "MainWindow") -> None:
    """An empty label that was to be kept, by weight and without a density."""
    shelf(window)
    dialog = None if window.opened is None else window.opened.nutrients.shelf.shelf
    if dialog is None:
        return
    dialog.new()
    if isinstance(dialog.form, ProductFormCard):
        dialog.form.name_field.set_value("Bloom")
        dialog.form.basis_field.set_value("w/w")
        dialog.form.basis_field.value_changed.emit()
        dialog.form.analysis.rows[0].nutrient.set_value("k2o")
        dialog.form.analysis.rows[0].percent.set_value(5)
        dialog.form.confirm()


def waters(window: "MainWindow") -> None:
    """The source waters there are."""
    if window.opened is not None:
        window.opened.nutrients.shelf.open_waters()


def water_form(window: "MainWindow") -> None:
    """An empty analysis."""
    waters(window)
    dialog = None if window.opened is None else window.opened.nutrients.shelf.waters
    if dialog is not None:
        dialog.new()


def feed_plan(window: "MainWindow") -> None:
    """The plan of the chosen crop."""
    if window.opened is not None:
        window.opened.nutrients.tanks.open_plan()


def tank_care(window: "MainWindow") -> None:
    """A tank that has grown low and too strong."""
    if window.opened is None:
        return
    window.opened.nutrients.tanks.open_care()
    care = window.opened.nutrients.tanks.care
    if care is not None:
        care.top_up.fields["volume_now_l"].set_value(12)
        care.top_up.fields["ec_now_ms_per_cm"].set_value(2.1)
        care.top_up.ask_quietly()


def tank_ph(window: "MainWindow") -> None:
    """The pH of a tank."""
    _care_page(window, "ph")


def tank_uptake(window: "MainWindow") -> None:
    """What the plants of a tank took."""
    _care_page(window, "uptake")


def _care_page(window: "MainWindow", page: str) -> None:
    if window.opened is not None:
        window.opened.nutrients.tanks.open_care()
        if window.opened.nutrients.tanks.care is not None:
            window.opened.nutrients.tanks.care.show_page(page)


def _opened(window: "MainWindow") -> MixerDialog | None:
    if window.opened is None:
        return None
    window.opened.nutrients.mixer.open()
    return window.opened.nutrients.mixer.dialog


MIXER_SCREENS: dict[str, Callable[["MainWindow"], None]] = {
    "mixer": mixer,
    "mixer-empty": empty_mixer,
    "mixer-target": mixer_target,
    "mixer-refused": mixer_refused,
    "own-ranges": own_ranges,
    "mixer-doses": doses,
    "mix-and-log": mix_and_log,
    "explanation": explanation,
    "shelf": shelf,
    "stock": stock,
    "product-form": product_form,
    "product-refused": product_refused,
    "waters": waters,
    "water-form": water_form,
    "feed-plan": feed_plan,
    "tank-care": tank_care,
    "tank-ph": tank_ph,
    "tank-uptake": tank_uptake,
}
