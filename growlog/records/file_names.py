"""Names of files as they can be kept: a name that is not UTF-8 comes from the system with halves of letters in it."""


def keepable(name: str) -> str:
    """The name with each part that no database can keep replaced by a question mark."""
    return name.encode("utf-8", "replace").decode("utf-8")
