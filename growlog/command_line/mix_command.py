"""The command that works out a mix from a file."""

import math
from dataclasses import replace
from pathlib import Path
from typing import Any

import click

from growlog.calculations.conductivity import meter_ppm
from growlog.command_line.output import tell, tell_json
from growlog.services.mixing import DoseLine, MixResult, read_mix, work_out
from growlog.words import say, show_number

_DIGITS = 6  # significant, in JSON: past what any label or scale can tell


@click.command(
    "mix", help=say("Work out the mix in FILE.toml: elements, EC, order and cautions, or doses for a target.")
)
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False), metavar="FILE.toml")
@click.option("--syringe", "smallest_ml", type=float, metavar="ML", help=say("Round found doses to so many mL."))
@click.option("--scale", "smallest_g", type=float, metavar="G", help=say("Round found doses to so many g."))
@click.option("--json", "as_json", is_flag=True, help=say("Print one JSON document."))
def mix_command(file: Path, smallest_ml: float | None, smallest_g: float | None, as_json: bool) -> None:
    """Reads the file and prints what comes out."""
    content = read_mix(file)
    content = replace(
        content,
        smallest_ml=content.smallest_ml if smallest_ml is None else smallest_ml,
        smallest_g=content.smallest_g if smallest_g is None else smallest_g,
    )
    result = work_out(content)
    if as_json:
        tell_json(mix_json(result))
    else:
        for line in mix_lines(result):
            tell(line)


def mix_json(result: MixResult) -> dict[str, Any]:
    """The result in plain values; elements by symbol, N being the total. What is unknown is in the warnings."""
    return {
        "elements_mg_per_l": {element: _short(mg) for element, mg in result.elements_mg_per_l.items()},
        "ec_ms_per_cm": {
            "estimate": _short(result.ec.estimate),
            "low": _short(result.ec.low),
            "high": _short(result.ec.high),
        },
        "doses": [_dose_json(dose) for dose in result.doses],
        "warnings": [*result.warnings, *result.cautions],
        "unmet": [
            {
                "element": miss.element,
                "target_mg_per_l": _short(miss.target_mg_per_l),
                "reached_mg_per_l": _short(miss.reached_mg_per_l),
                "reason": miss.reason,
            }
            for miss in result.unmet
        ],
    }


def mix_lines(result: MixResult) -> list[str]:
    """The result for a reader at the bench."""
    return [
        say("Doses"),
        *(f"  {_dose_line(dose)}" for dose in result.doses),
        say("Elements, mg/L"),
        *(f"  {element:<3}{_figure(mg):>9}" for element, mg in result.elements_mg_per_l.items()),
        *(say("  and what {product} brings, which is not known", product=name) for name in result.unknown_products),
        *_ec_lines(result),
        *_unmet_lines(result),
        say("Order"),
        *(f"  {number}. {step}" for number, step in enumerate(result.steps, start=1)),
        *_section(say("Mind"), [*result.warnings, *result.cautions]),
    ]


def _dose_json(dose: DoseLine) -> dict[str, Any]:
    line: dict[str, Any] = {"product": dose.product, "amount": _short(dose.amount), "unit": dose.unit}
    if dose.tank_amount is not None:
        line |= {"tank_amount": _short(dose.tank_amount), "tank_unit": dose.per_l.measure}
    return line


def _dose_line(dose: DoseLine) -> str:
    per_l = f"{_figure(dose.per_l.amount)}\u2009{dose.per_l.measure}/L"
    if dose.tank_amount is None:
        return f"{dose.product}: {per_l}"
    tank = f"{_figure(dose.tank_amount)}\u2009{dose.per_l.measure}"
    return say("{product}: {per_l}, {tank} for the tank", product=dose.product, per_l=per_l, tank=tank)


def _ec_lines(result: MixResult) -> list[str]:
    low, middle, high = (show_number(ec, 2) for ec in (result.ec.low, result.ec.estimate, result.ec.high))
    scales = ", ".join(f"{show_number(ppm, 0)} ({scale})" for scale, ppm in meter_ppm(result.ec.estimate).items())
    unknown = result.unknown_products
    return [
        *([say("EC without {products}:", products=", ".join(unknown))] if unknown else []),
        say(
            "EC at 25 °C, estimated: {middle} mS/cm ({micro} µS/cm), {low} to {high}",
            middle=middle,
            micro=show_number(result.ec.estimate * 1000, 0),
            low=low,
            high=high,
        ),
        say("A ppm meter shows, by its scale, which is not mg/L of nutrients: {scales}", scales=scales),
    ]


def _unmet_lines(result: MixResult) -> list[str]:
    sentences = [
        say(
            "{element}: {reached} instead of {target} mg/L. {reason}",
            element=miss.element,
            reached=_figure(miss.reached_mg_per_l),
            target=_figure(miss.target_mg_per_l),
            reason=miss.reason,
        )
        for miss in result.unmet
    ]
    return _section(say("Off target"), sentences)


def _section(title: str, sentences: list[str]) -> list[str]:
    return [title, *(f"  {sentence}" for sentence in sentences)] if sentences else []


def _figure(value: float) -> str:
    """Three significant digits or more: 0.0113, 0.500, 2.64, 210.1."""
    if value >= 1:
        return show_number(value, 1 if value >= 100 else 2)
    return show_number(value, min(2 - math.floor(math.log10(value)), 7) if value > 0 else 0)


def _short(value: float) -> float:
    return float(f"{value:.{_DIGITS}g}")
