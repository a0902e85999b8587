"""A chart as a file or on the clipboard: PNG with double density, SVG, CSV; at the size of an A5 sheet on its side."""

from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMimeData, QRect, QRectF, QSize
from PySide6.QtGui import QGuiApplication, QImage, QImageWriter, QPainter
from PySide6.QtSvg import QSvgGenerator

from growlog.desktop.charts.chart_data import ChartData
from growlog.desktop.charts.paint import paint_chart
from growlog.desktop.look.theme import Look
from growlog.desktop.look.tokens import LIGHT
from growlog.services.chart_files import table_text

WIDTH_PX, HEIGHT_PX = 794, 559  # 210 mm by 148 mm at 96 pixels an inch
DENSITY = 2
_DOTS_PER_M = round(96 * DENSITY / 0.0254)  # so that other programs print it at that size
FORMATS = ("png", "svg", "csv")
# On paper a chart is light, whatever the screen is; at this size its smallest words are 8 points high.
_ON_PAPER = Look(LIGHT, 1.0)


def chart_image(data: ChartData) -> QImage:
    """The picture, twice as dense as a screen."""
    image = QImage(WIDTH_PX * DENSITY, HEIGHT_PX * DENSITY, QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(DENSITY)
    image.fill(_ON_PAPER.colour("card"))
    painter = QPainter(image)
    paint_chart(painter, QRectF(0, 0, WIDTH_PX, HEIGHT_PX), data, _ON_PAPER, titled=True)
    painter.end()
    image.setDotsPerMeterX(_DOTS_PER_M)
    image.setDotsPerMeterY(_DOTS_PER_M)
    return image


def chart_svg(data: ChartData) -> bytes:
    """The drawing."""
    held = QByteArray()
    buffer = QBuffer(held)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    generator = QSvgGenerator()
    generator.setOutputDevice(buffer)
    generator.setSize(QSize(WIDTH_PX, HEIGHT_PX))
    generator.setViewBox(QRect(0, 0, WIDTH_PX, HEIGHT_PX))
    generator.setTitle(data.title)
    generator.setDescription(f"{data.x_title}; {data.y_title}")
    painter = QPainter(generator)
    painter.fillRect(QRectF(0, 0, WIDTH_PX, HEIGHT_PX), _ON_PAPER.colour("card"))
    paint_chart(painter, QRectF(0, 0, WIDTH_PX, HEIGHT_PX), data, _ON_PAPER, titled=True)
    painter.end()
    buffer.close()
    return bytes(held.data())


def chart_csv(data: ChartData) -> str:
    """The values."""
    return table_text(data.rows())


def write_chart(data: ChartData, path: Path) -> None:
    """Writes the file in the form that its name ends with; ValueError for another ending, OSError if it cannot be."""
    ending = path.suffix.lower().lstrip(".")
    if ending not in FORMATS:
        raise ValueError(f"a chart is not written as {ending!r}, allowed are {', '.join(FORMATS)}")
    path.write_bytes(_content(data, ending))


def copy_chart(data: ChartData) -> None:
    """Puts the picture and the values on the clipboard: each program takes what it can use."""
    held = QMimeData()
    held.setImageData(chart_image(data))
    held.setText("\n".join("\t".join(row) for row in data.rows()))
    QGuiApplication.clipboard().setMimeData(held)


def _content(data: ChartData, ending: str) -> bytes:
    if ending == "svg":
        return chart_svg(data)
    if ending == "csv":
        return chart_csv(data).encode("utf-8")
    held = QByteArray()
    buffer = QBuffer(held)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"png")).write(chart_image(data))
    buffer.close()
    return bytes(held.data())
