"""The command that works a single figure out and says how."""

from decimal import Decimal

import click

from growlog.calculations.explained_figure import Figure, Value
from growlog.command_line.openers import Call
from growlog.command_line.output import tell, tell_json
from growlog.command_line.parameters import as_of_option
from growlog.services.figure_values import figure_values
from growlog.services.typed_values import NotUnderstood
from growlog.services.workable_figures import WORKABLES
from growlog.services.working_out import work_out
from growlog.words import say, show_number

_SURE = {
    "published": lambda: say("a published formula"),
    "common practice": lambda: say("common practice"),
    "estimate": lambda: say("an estimate"),
}


def _list_figures(context: click.Context, _parameter: click.Parameter, wanted: bool) -> None:
    if wanted:
        for workable in WORKABLES:
            tell(f"{workable.key}: {say(workable.name)}\n    {workable.usage()}")
        context.exit(0)


@click.command(
    "work-out",
    help=say("Work FIGURE out from values such as temp=77F humidity=60, and say how."),
)
@click.argument("figure")
@click.argument("values", nargs=-1, metavar="KEY=VALUE...")
@click.option("--json", "as_json", is_flag=True, help=say("Tell the figure as JSON."))
@click.option(
    "--list", is_flag=True, is_eager=True, expose_value=False, callback=_list_figures, help=say("List the figures.")
)
@as_of_option
@click.pass_obj
def work_out_command(call: Call, figure: str, values: tuple[str, ...], as_json: bool) -> int:
    """Works one figure out."""
    try:
        found = work_out(figure, values, WORKABLES, call.clock().today())
    except NotUnderstood as error:
        raise click.UsageError(str(error)) from error
    if as_json:
        tell_json({"figure": figure_values(found)})
    else:
        _tell_all(found)
    return 0


def _tell_all(figure: Figure) -> None:
    tell(f"{figure.key}: {shown(figure.value, figure.unit)}")
    if figure.low is not None and figure.high is not None:
        tell(say("Between {low} and {high}", low=shown(figure.low, ""), high=shown(figure.high, figure.unit)))
    elif figure.high is not None:
        tell(say("At most {high}", high=shown(figure.high, figure.unit)))
    tell(say("How this is worked out: {method}", method=figure.method))
    inputs = ", ".join(f"{i.name} {shown(i.value, i.unit)}" for i in figure.inputs)
    tell(say("From: {inputs}", inputs=inputs))
    tell(say("Source: {source}", source=say(figure.source)))
    tell(say("How sure: {sure}", sure=_SURE[figure.sure]()))


def shown(value: Value | None, unit: str) -> str:
    """A value with its unit, numbers to five digits; "none yet" where there is none."""
    if value is None:
        return say("none yet")
    text = value if isinstance(value, str) else _number(value)
    return f"{text}\u2009{unit}" if unit else text


def _number(value: float | int | Decimal) -> str:
    if not isinstance(value, float):
        return show_number(value, 0) if isinstance(value, int) else _coins(value)
    exponent = Decimal(f"{value:.5g}").normalize().as_tuple().exponent
    return show_number(value, max(0, -exponent) if isinstance(exponent, int) else 0)


def _coins(value: Decimal) -> str:
    exponent = value.as_tuple().exponent
    return show_number(float(value), max(0, -exponent) if isinstance(exponent, int) else 0)
