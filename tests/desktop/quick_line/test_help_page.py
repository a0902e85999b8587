"""The page of words tells the truth: each of its examples is read and becomes what stands beside it."""

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.actions import TABLE
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.desktop.quick_line.help_dialog import QuickLineHelp
from growlog.desktop.quick_line.help_page import Example, help_sections, sections_of
from growlog.services.quick_line import KnownMix, LineContext, more_of, read_line, title_of

EXAMPLES = [example for section in help_sections() for example in section.examples]
CONTEXT = LineContext(mixes=(KnownMix("Basic bloom", "mix-1"),))


@pytest.mark.parametrize("example", EXAMPLES, ids=[example.line for example in EXAMPLES])
def test_an_example_becomes_what_the_page_says(example: Example):
    reading = read_line(example.line, CONTEXT)
    assert reading.can_be_written, (reading.unread, reading.problems)
    assert reading.questions == ()
    shown = [" · ".join(part for part in (title_of(d), more_of(d)) if part) for d in reading.drafts]
    assert tuple(words.replace("\u2009", " ") for words in shown) == example.becomes


def test_the_page_has_examples_of_every_kind_that_the_line_writes():
    kinds = {draft.detail.kind for example in EXAMPLES for draft in read_line(example.line, CONTEXT).drafts}
    assert kinds == {"pick", "feed", "pollination", "training", "reading", "fruit-check", "stage", "note"}


def test_the_page_names_the_key_that_reaches_the_line():
    (row,) = [row for row in TABLE if row.name == "quick_line"]
    assert any(f"{row.key} goes to the line" in sentence for s in help_sections() for sentence in s.sentences)
    assert [r.name for r in TABLE if r.key == row.key] == ["quick_line"]


def test_a_section_is_its_title_its_sentences_and_its_examples():
    page = "# Page\n\n## One\n\nA sentence.\n\n| line | becomes |\n|---|---|\n| a | b ; c · d |\n\n## Two\n"
    one, two = sections_of(page)
    assert (one.title, one.sentences) == ("One", ("A sentence.",))
    assert one.examples == (Example("a", ("b", "c · d")),)
    assert (two.title, two.sentences, two.examples) == ("Two", (), ())


def test_the_dialog_shows_every_example_and_closes(qtbot: QtBot):
    dialog = QuickLineHelp()
    qtbot.addWidget(dialog)
    dialog.show()
    shown = {label.text() for label in dialog.findChildren(TextLabel)}
    assert {example.line for example in EXAMPLES} <= shown
    dialog.close_button.click()
    assert not dialog.isVisible()
