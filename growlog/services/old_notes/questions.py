"""What must be answered before a file can be carried in, each with an example from the file itself."""

from collections.abc import Iterator, Sequence
from datetime import date

from growlog.records.crop import Crop
from growlog.services.old_notes.dates import OrderFound, order_words, readings
from growlog.services.old_notes.import_plan import Answers, Question
from growlog.services.old_notes.note_fields import Sort
from growlog.services.old_notes.old_table import OldTable
from growlog.services.old_notes.pick_cells import says_more
from growlog.services.old_notes.row_values import UsedColumn
from growlog.words import say, show_day

_WEIGHT_ALONE = "pick.total_weight_g"
_COUNTS = {"pick.fruit_count", "pick.weights_g"}


def questions_of(
    table: OldTable,
    columns: Sequence[UsedColumn],
    signs: Sequence[str],
    answers: Answers,
    order: OrderFound,
    crop: Crop | None,
) -> list[Question]:
    """The open questions, those that decide most first."""
    found = [*_missing(columns, crop)]
    if order.asks and not answers.date_order:
        found.append(_order_question(table, columns, order))
    if not answers.decimal and not any(sign in (".", ",") for sign in signs):
        found += [_decimal_question(table, c) for c in columns if signs[c.place] == "?"][:1]
    return found + list(_pick_questions(table, columns))


def _missing(columns: Sequence[UsedColumn], crop: Crop | None) -> Iterator[Question]:
    sorts = {c.field.sort for c in columns}
    if not sorts & {Sort.DAY, Sort.AGE}:
        yield Question("day", say("No column is read as the date. Say which one holds it."))
    if crop is None and Sort.CROP not in sorts:
        yield Question("crop", say("Say which crop these notes are of."))
    if not any(c.field.kind or c.field.key == "note" for c in columns):
        yield Question("columns", say("No column is read as something that can be carried in. Say what they hold."))


def _order_question(table: OldTable, columns: Sequence[UsedColumn], order: OrderFound) -> Question:
    place = next(c.place for c in columns if c.field.sort is Sort.DAY)
    texts = [cell for cell in table.column(place) if isinstance(cell, str)]
    example = next(
        (t for t in texts if len({readings(t).get(o) for o in order.possible} - {None}) > 1), texts[0] if texts else ""
    )
    meant = readings(example)
    choices = tuple((o, _choice(o, meant.get(o))) for o in order.possible)
    sentence = say("Day and month of “{example}” cannot be told apart. In which order are the dates?", example=example)
    return Question("date_order", sentence, choices, place)


def _choice(order: str, day: object) -> str:
    words = order_words(order)
    return f"{words} ({show_day(day)})" if isinstance(day, date) else words


def _decimal_question(table: OldTable, column: UsedColumn) -> Question:
    example = next(c for c in table.column(column.place) if isinstance(c, str) and "," in c)
    sentence = say("“{example}” in “{column}”: does the comma stand before decimals or between thousands?",
                   example=example, column=column.heading)  # fmt: skip
    choices = ((",", say("before decimals")), (".", say("between thousands")))
    return Question("decimal", sentence, choices, column.place)


def _pick_questions(table: OldTable, columns: Sequence[UsedColumn]) -> Iterator[Question]:
    keys = {c.field.key: c for c in columns}
    weight = keys.get(_WEIGHT_ALONE)
    if weight is not None and not keys.keys() & _COUNTS and not _says_how_many(table, weight):
        sentence = say("“{column}” holds weights, but no column says how many fruit. Is each row one fruit?",
                       column=weight.heading)  # fmt: skip
        choices = (("pick.weight_g", say("each row is one fruit")), ("", say("leave the column out")))
        yield Question("weight", sentence, choices, weight.place)
    culled = keys.get("pick.cull_count")
    if culled is not None and "pick.cull_cause" not in keys:
        sentence = say(
            "“{column}” holds culled fruit, but no column says why they were culled. "
            "Choose the cause as what the column is read as, or leave it out.",
            column=culled.heading,
        )
        yield Question("cull_cause", sentence, (("", say("leave the column out")),), culled.place)


def _says_how_many(table: OldTable, column: UsedColumn) -> bool:
    """Whether the cells themselves tell, as 2 @ 65g does."""
    texts = [c for c in table.column(column.place) if isinstance(c, str)]
    return bool(texts) and sum(map(says_more, texts)) * 2 >= len(texts)
