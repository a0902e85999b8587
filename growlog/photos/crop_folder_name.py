"""A crop's name made into the name of a folder that every common file system takes."""

import re
import unicodedata

_LONGEST_BYTES = 96  # leaves room for the file's name within the 260 characters of an old Windows path
_FALLBACK = "crop"
_FORBIDDEN = re.compile(r'[<>:"/\\|?*]')
_INVISIBLE = ("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp")
_RESERVED = (
    {"CON", "PRN", "AUX", "NUL", "CONIN$", "CONOUT$"}
    | {f"COM{digit}" for digit in "0123456789¹²³"}
    | {f"LPT{digit}" for digit in "0123456789¹²³"}
)


def crop_folder_name(crop_name: str) -> str:
    """The folder's name: letters of every script stay, what some file system refuses becomes a dash."""
    name = unicodedata.normalize("NFC", crop_name)
    name = "".join(" " if letter.isspace() else _visible(letter) for letter in name)
    name = re.sub(r" +", " ", _FORBIDDEN.sub("-", name))
    name = _trimmed(_shortened(_trimmed(name)))
    if not name:
        return _FALLBACK
    return f"_{name}" if _is_reserved(name) else name


def _visible(letter: str) -> str:
    return "" if unicodedata.category(letter) in _INVISIBLE else letter


def _trimmed(name: str) -> str:
    """A leading dot hides a folder, a leading dash looks like an option, Windows drops what trails."""
    return unicodedata.normalize("NFC", name).lstrip(" .-~").rstrip(" .")


def _shortened(name: str) -> str:
    return name.encode("utf-8")[:_LONGEST_BYTES].decode("utf-8", errors="ignore")


def _is_reserved(name: str) -> bool:
    """Windows keeps these names for devices, with any ending and trailing spaces too."""
    return name.split(".")[0].strip().upper() in _RESERVED
