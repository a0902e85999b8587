"""The days of a crop's climate as rows of a table, the latest first."""

from growlog.desktop.locale_forms import day_in_form
from growlog.desktop.plain_table import Column, Row
from growlog.records.display import in_shown_unit
from growlog.services.climate.of_crop import ClimateOfCrop, CropClimateDay
from growlog.words import say, show_number


def climate_columns() -> list[Column]:
    """Day, age, temperatures, humidity, dryness and dew."""
    degrees = in_shown_unit(0, "°C")[1]
    numbers = [
        (say("Low, {unit}", unit=degrees), say("Lowest temperature, {unit}", unit=degrees), 72),
        (say("Mean, {unit}", unit=degrees), say("Mean temperature, {unit}", unit=degrees), 78),
        (say("High, {unit}", unit=degrees), say("Highest temperature, {unit}", unit=degrees), 72),
        (say("RH, %"), say("Mean relative humidity, %"), 58),
        (say("Night RH, %"), say("Mean relative humidity in the dark, %"), 92),
        (say("VPD, kPa"), say("Mean vapour pressure deficit of the air, kPa"), 76),
        (say("Dew point, {unit}", unit=degrees), say("Highest dew point, {unit}", unit=degrees), 104),
    ]
    first = [Column(say("Day"), width_px=108), Column(say("Age"), True, 52)]
    middle = [Column(title, True, width_px, tip) for title, tip, width_px in numbers]
    return [*first, *middle, Column(say("Remark"))]


def climate_rows(climate: ClimateOfCrop) -> list[Row]:
    """One row for each day of which something is known."""
    humid = {w.age for w in climate.warnings if w.kind == "humid-night"}
    return [_row(day, day.age in humid) for day in reversed(climate.days)]


def _row(day: CropClimateDay, is_humid: bool) -> Row:
    known = day.climate
    remarks = []
    if is_humid:
        remarks.append(say("humid night"))
    if day.may_condense:
        remarks.append(say("dew"))
    if not day.from_logger:
        remarks.append(say("from readings"))
    cells = (
        day_in_form(day.day, "yMMMd"), str(day.age), _degrees(known.temperature_min_c),
        _degrees(known.temperature_mean_c), _degrees(known.temperature_max_c),
        _number(known.humidity_mean_percent, 0), _number(known.night_humidity_mean_percent, 0),
        _number(known.vpd_mean_kpa, 2), _degrees(known.dew_point_max_c), ", ".join(remarks),
    )  # fmt: skip
    return Row(str(day.age), cells, bold=is_humid or day.may_condense)


def _degrees(celsius: float | None) -> str:
    if celsius is None:
        return ""
    value, _, more = in_shown_unit(celsius, "°C")
    return show_number(value, 1 + more)


def _number(value: float | None, decimals: int) -> str:
    return "" if value is None else show_number(value, decimals)
