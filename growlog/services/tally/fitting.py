"""What is counted at a crop, by how its flowers come to fruit."""

from growlog.records.cultivar import FloweringHabit

# Common practice, no source: plain names of the gourd family.
_CUCURBITS = (
    "courgette",
    "cucumber",
    "gherkin",
    "gourd",
    "marrow",
    "melon",
    "pattypan",
    "pumpkin",
    "squash",
    "zucchini",
)
_WORK = ("old_leaves_removed", "side_shoots_removed")


def is_cucurbit(species: str) -> bool:
    """Whether a plain name is one of the gourd family."""
    word = species.casefold()
    return any(name in word for name in _CUCURBITS)


def counters_for(species: str, habit: FloweringHabit) -> tuple[str, ...]:
    """The counters that fit: females and males where they stand apart, trusses where each flower has both."""
    if habit is FloweringHabit.SEPARATE or (habit is FloweringHabit.SETS_ALONE and is_cucurbit(species)):
        return ("females_pollinated", "males_open", *_WORK)
    if habit is FloweringHabit.NEEDS_ANOTHER:  # brought by hand from another plant, flower by flower
        return ("females_pollinated", *_WORK)
    return ("trusses_vibrated", *_WORK)


def flowers_shut_by_noon(species: str, habit: FloweringHabit) -> bool:
    """Whether its flowers open for one morning only, so that a pollination after 12:00 is worth a question.

    Flowers of cucurbits open early in the morning and close by noon, sooner in heat, and open once only: Russ, K.,
    Clemson University Home and Garden Information Center (2007); the same on a page crediting Wilson, C., Colorado
    State University (2009). A crop of another name counts as one where its male and female flowers stand apart.
    """
    return habit is FloweringHabit.SEPARATE or (is_cucurbit(species) and habit is not FloweringHabit.PERFECT)
