"""What can be wrong with a picture, and the one plain sentence that says so."""

import errno
import unicodedata
from enum import StrEnum

from growlog.words import mark, say


class Reason(StrEnum):
    """Why a picture did not go in."""

    EMPTY = "empty"
    TRUNCATED = "truncated"
    NOT_A_PICTURE = "not_a_picture"
    UNSUPPORTED = "unsupported"
    TOO_MANY_PIXELS = "too_many_pixels"
    TOO_SLOW = "too_slow"
    NO_RIGHTS = "no_rights"
    MISSING = "missing"
    CHANGED = "changed"
    WORKER_DIED = "worker_died"
    DISK_FULL = "disk_full"
    UNREADABLE = "unreadable"


_SENTENCES = {
    Reason.EMPTY: mark("{file} is empty. Copy it again from the camera or phone."),
    Reason.TRUNCATED: mark("{file} ends too early; part of it is missing. Copy it again from the source."),
    Reason.NOT_A_PICTURE: mark("{file} is not a picture, so it was left where it is."),
    Reason.UNSUPPORTED: mark(
        "{file} is a kind of picture that cannot be read here. Save it as JPEG, PNG, WebP, TIFF or HEIC."
    ),
    Reason.TOO_MANY_PIXELS: mark(
        "{file} has more than 250 million pixels, more than is read here. Save a smaller copy and add that."
    ),
    Reason.TOO_SLOW: mark(
        "{file} took too long to read and was stopped. Save a fresh copy in a picture program and add that."
    ),
    Reason.NO_RIGHTS: mark(
        "The system refuses access for {file}. Check the rights of the file and of the logbook's folder."
    ),
    Reason.MISSING: mark("{file} is no longer there. Check whether the card or drive is still connected."),
    Reason.CHANGED: mark("{file} changed while it was being read. Wait until it is copied and add it again."),
    Reason.WORKER_DIED: mark(
        "{file} stopped the part of the program that reads pictures. Only this file was left out."
    ),
    Reason.DISK_FULL: mark("The disk is full, so {file} was not kept. Free some space and add it again."),
    Reason.UNREADABLE: mark("{file} is damaged or could not be read. Copy it again from the source."),
}

_REASON_OF_ERRNO = {
    errno.ENOENT: Reason.MISSING,
    errno.ENOTDIR: Reason.MISSING,
    errno.ENODEV: Reason.MISSING,
    errno.EACCES: Reason.NO_RIGHTS,
    errno.EPERM: Reason.NO_RIGHTS,
    errno.EROFS: Reason.NO_RIGHTS,
    errno.ENOSPC: Reason.DISK_FULL,
    getattr(errno, "EDQUOT", errno.ENOSPC): Reason.DISK_FULL,
}


class PictureProblem(Exception):
    """A picture that could not be taken in. Pickles, so that a worker process can hand it back."""

    def __init__(self, reason: Reason, detail: str = "") -> None:
        super().__init__(reason, detail)
        self.reason = reason
        self.detail = detail  # for the log, never for the screen

    def sentence(self, file_name: str) -> str:
        """One sentence for the screen that names the file and a way on."""
        return say(_SENTENCES[self.reason], file=readable_name(file_name))

    def __str__(self) -> str:
        return f"{self.reason}: {self.detail}" if self.detail else str(self.reason)


def problem_from_os_error(error: OSError) -> PictureProblem:
    """The problem behind what the operating system said."""
    reason = _REASON_OF_ERRNO.get(error.errno or 0, Reason.UNREADABLE)
    return PictureProblem(reason, str(error))


def readable_name(file_name: str) -> str:
    """The name with undecodable bytes and invisible characters replaced, fit for a sentence."""
    return "".join("\N{REPLACEMENT CHARACTER}" if _unprintable(letter) else letter for letter in file_name)


def _unprintable(letter: str) -> bool:
    # Joiners (Cf) belong inside many emoji and scripts; direction overrides do not belong in a sentence.
    if letter in "\N{ZERO WIDTH JOINER}\N{ZERO WIDTH NON-JOINER}":
        return False
    return unicodedata.category(letter) in ("Cc", "Cf", "Cs", "Zl", "Zp")
