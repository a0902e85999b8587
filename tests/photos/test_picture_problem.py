"""What is wrong with a picture, said in one plain sentence."""

import errno
import pickle

import pytest

from growlog.photos.picture_problem import PictureProblem, Reason, problem_from_os_error


@pytest.mark.parametrize("reason", Reason)
def test_every_reason_has_a_sentence_that_names_the_file(reason: Reason) -> None:
    sentence = PictureProblem(reason, "decoder error -2").sentence("leaf.jpg")
    assert "leaf.jpg" in sentence
    assert sentence.endswith(".")
    assert "!" not in sentence
    assert "decoder" not in sentence


@pytest.mark.parametrize("reason", Reason)
def test_a_problem_survives_the_way_between_processes(reason: Reason) -> None:
    problem = pickle.loads(pickle.dumps(PictureProblem(reason, "why")))
    assert (problem.reason, problem.detail) == (reason, "why")


@pytest.mark.parametrize("name", ["a{file}.jpg", "{0}.jpg", "100%.jpg", "🌱.jpg", "für.jpg"])
def test_a_name_with_odd_letters_stands_in_the_sentence_as_it_is(name: str) -> None:
    assert name in PictureProblem(Reason.EMPTY).sentence(name)


@pytest.mark.parametrize("name", ["a\nb.jpg", "a\u202egpj.exe", "a\udcffb.jpg", "a\u2028b.jpg"])
def test_what_cannot_be_shown_is_replaced(name: str) -> None:
    sentence = PictureProblem(Reason.EMPTY).sentence(name)
    assert "�" in sentence
    assert sentence.isprintable()


@pytest.mark.parametrize(
    "number, reason",
    [
        (errno.ENOENT, Reason.MISSING),
        (errno.EACCES, Reason.NO_RIGHTS),
        (errno.EPERM, Reason.NO_RIGHTS),
        (errno.EROFS, Reason.NO_RIGHTS),
        (errno.ENOSPC, Reason.DISK_FULL),
        (errno.EIO, Reason.UNREADABLE),
        (None, Reason.UNREADABLE),
    ],
)
def test_the_systems_word_becomes_a_reason(number: int | None, reason: Reason) -> None:
    error = OSError("broken") if number is None else OSError(number, "said so")
    assert problem_from_os_error(error).reason is reason
