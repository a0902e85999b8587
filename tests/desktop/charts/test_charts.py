"""Charts: what is drawn, and that picture, drawing and values leave the program whole."""

import csv
from io import StringIO
from pathlib import Path

import pytest
from PySide6.QtCore import QByteArray
from PySide6.QtGui import QGuiApplication, QImage
from PySide6.QtSvg import QSvgRenderer
from pytestqt.qtbot import QtBot

from growlog.desktop.charts import Band, ChartData, ChartMenu, ChartView, Line, Upright
from growlog.desktop.charts.chart_export import HEIGHT_PX, WIDTH_PX, chart_csv, chart_image, write_chart
from growlog.desktop.charts.paint import TEXT_PX
from growlog.desktop.charts.ticks import number_words, round_steps
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.windows.chart_saving import ChartSaving
from tests.desktop.fakes import FakeFileChoice, FakeMessages

DATA = ChartData(
    "Yield of Boxroom Gold", "plant age, days", "marketable yield so far, g",
    (Line("Boxroom Gold", [44, 50, 60], [80.5, 200, 600], steps=True),
     Line("other", [40, 60], [10, 900], "feed", "dash")),
    (Band("in four cases out of five", [60, 74], [600, 650], [600, 900]),),
    (Upright(58, "packet maturity"),),
    ("2 to 8 fruit by 21 March 2026.",),
)  # fmt: skip


def test_the_picture_is_an_a5_sheet_of_double_density_with_all_colours_on_it(qapp: object) -> None:
    image = chart_image(DATA)
    assert (image.width(), image.height()) == (2 * WIDTH_PX, 2 * HEIGHT_PX)
    assert pytest.approx(210 / 148, rel=0.01) == WIDTH_PX / HEIGHT_PX
    colours = {image.pixelColor(x, y).name() for x in range(0, image.width(), 3) for y in range(0, image.height(), 3)}
    assert {"#c04a00", "#0072b2"} <= colours


def test_the_smallest_words_are_eight_points_high_on_a5() -> None:
    # Common practice, no source: eight points are the least that print is read at.
    assert TEXT_PX * 72 / 96 >= 8


def test_the_drawing_is_valid_svg_with_the_axis_titles(qapp: object, tmp_path: Path) -> None:
    path = tmp_path / "chart.svg"
    write_chart(DATA, path)
    text = path.read_text(encoding="utf-8")
    assert QSvgRenderer(QByteArray(text.encode())).isValid()
    for words in ("plant age, days", "marketable yield so far, g", "Boxroom Gold"):
        assert words in text


def test_the_values_are_csv_with_points_and_units_in_the_heading() -> None:
    rows = list(csv.reader(StringIO(chart_csv(DATA))))
    assert rows[0] == ["series", "plant age, days", "marketable yield so far, g", "low", "high"]
    assert ["Boxroom Gold", "44", "80.5", "", ""] in rows
    assert ["in four cases out of five", "74", "", "650", "900"] in rows
    assert ["packet maturity", "58", "", "", ""] in rows


def test_a_picture_is_written_as_png_and_other_endings_are_refused(qapp: object, tmp_path: Path) -> None:
    write_chart(DATA, tmp_path / "chart.PNG")
    read = QImage(str(tmp_path / "chart.PNG"))
    assert read.width() == 2 * WIDTH_PX
    assert 1000 * read.width() / read.dotsPerMeterX() == pytest.approx(210, abs=0.5)  # mm: an A5 sheet on its side
    with pytest.raises(ValueError, match="png, svg, csv"):
        write_chart(DATA, tmp_path / "chart.bmp")


def test_copy_puts_picture_and_values_on_the_clipboard(qtbot: QtBot) -> None:
    menu = ChartMenu(lambda: DATA)
    qtbot.addWidget(menu)
    with qtbot.waitSignal(menu.copied):
        menu.action("copy").trigger()
    held = QGuiApplication.clipboard().mimeData()
    assert held.hasImage()
    assert held.text().splitlines()[1].split("\t")[:3] == ["Boxroom Gold", "44", "80.5"]


def saving(files: FileChoice, messages: FakeMessages, qtbot: QtBot, data: ChartData | None = DATA) -> ChartMenu:
    menu = ChartMenu(lambda: data)
    qtbot.addWidget(menu)
    ChartSaving(files, messages, menu).follow(menu)
    return menu


def test_a_chart_is_saved_where_the_person_says_with_the_right_ending(qtbot: QtBot, tmp_path: Path) -> None:
    messages = FakeMessages()
    menu = saving(FakeFileChoice([tmp_path / "mine"]), messages, qtbot)
    menu.action("svg").trigger()
    assert (tmp_path / "mine.svg").is_file()
    assert messages.informed == ["Saved in mine.svg."]


def test_a_folder_that_is_not_there_is_a_sentence(qtbot: QtBot, tmp_path: Path) -> None:
    messages = FakeMessages()
    saving(FakeFileChoice([tmp_path / "no" / "mine.csv"]), messages, qtbot).action("csv").trigger()
    assert "mine.csv could not be written" in messages.problems[0]


def test_an_empty_chart_is_not_saved(qtbot: QtBot) -> None:
    files = FakeFileChoice()
    saving(files, FakeMessages(), qtbot, None).action("png").trigger()
    assert files.titles == []


@pytest.mark.parametrize(
    ("low", "high", "most", "found"),
    [(0, 1, 5, [0, 0.2, 0.4, 0.6, 0.8, 1.0]), (0, 9, 4, [0, 5]), (-3, 7, 5, [-2, 0, 2, 4, 6]), (0, 1800, 10, None)],
)
def test_ticks_are_round_and_within_the_range(low: float, high: float, most: int, found: list[float] | None) -> None:
    ticks = round_steps(low, high, most)
    assert all(low - 1e-9 <= t <= high + 1e-9 for t in ticks)
    assert len(ticks) <= most + 1
    if found is not None:
        assert ticks == pytest.approx(found)


def test_counts_have_whole_ticks_and_words_as_many_decimals_as_needed() -> None:
    assert round_steps(0, 2, 8, whole=True) == [0, 1, 2]
    assert number_words([0.0, 0.5, 1.0]) == ["0.0", "0.5", "1.0"]
    assert number_words([0.0, 20.0]) == ["0", "20"]


def test_a_view_without_a_chart_says_why(qtbot: QtBot) -> None:
    view = ChartView("chart")
    qtbot.addWidget(view)
    view.show_chart(None, "Nothing was picked yet.")
    view.resize(300, 240)
    view.grab()
    assert view.accessibleName() == "Nothing was picked yet."
    view.show_chart(DATA)
    assert view.accessibleName() == "Yield of Boxroom Gold"
    assert view.accessibleDescription() == "2 to 8 fruit by 21 March 2026."
