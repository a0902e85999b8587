"""Which flowers carried a tag: those of two weeks of Boxroom Gold, numbered as they opened."""

TAGGED = {"Boxroom Gold": range(12, 30)}


def tag_of(crop: str | None, flower_number: int) -> str | None:
    """The number on a flower's tag, None where it carried none."""
    tagged = TAGGED.get(crop or "", range(0))
    return str(flower_number - tagged.start + 1) if flower_number in tagged else None
