"""The plant itself: milestones, medium and system, pollination and set, climate, quality."""

from datetime import date
from statistics import median

from growlog.calculations.explained_figure import DEFINITION, Figure, Input, Sure
from growlog.calculations.milestones import MILESTONE_WORDS, Milestone, milestone_ages
from growlog.calculations.plant_age import day_at
from growlog.records.crop import StartedFrom
from growlog.records.cultivar import FloweringHabit
from growlog.records.display import fixed
from growlog.services.review.crop_figures import CropFigures
from growlog.services.review.lines import LineOf, Shown
from growlog.services.review.wording import amount, day_of_crop, days, joined, of_figure
from growlog.words import say, say_count, show_day_of_year, show_number


def milestone_lines(own: CropFigures) -> list[LineOf]:
    """When what was reached, beside the packet; male and female flowers only where the crop bears them apart."""
    separate = own.cultivar.habit is FloweringHabit.SEPARATE
    shown = [_milestone_line(w, separate) for w in Milestone if separate or w is not Milestone.FIRST_MALE]
    shown.insert(1, LineOf("transplanting", say("Transplanting"), lambda c: _on(c, c.crop.transplanted_on)))
    first = say("first female flower") if separate else say("first flower")
    label = say("From {first} to first pick", first=first)
    return [*shown, LineOf("flower-to-pick", label, _flower_to_pick), _cleared()]


def flower_words(which: Milestone, separate: bool) -> str:
    """A milestone in words; where flowers are all alike the first one is just that."""
    if which is Milestone.FIRST_FEMALE and not separate:
        return say("first flower")
    return say("best week") if which is Milestone.PEAK_WEEK else say(MILESTONE_WORDS[which])


def _milestone_line(which: Milestone, separate: bool) -> LineOf:
    packet = _packet_age if which is Milestone.FIRST_PICK else None
    words = say(MILESTONE_WORDS[which]) if which is Milestone.PEAK_WEEK else flower_words(which, separate)
    age = _milestone(which, day_of_crop_only=True)
    return LineOf(which.value, _upper(words), _milestone(which), packet=packet, beside=age)


def _cleared() -> LineOf:
    def beside(crop: CropFigures) -> str:
        return "" if crop.crop.cleared_on is None else day_of_crop(crop.age_of(crop.crop.cleared_on))

    return LineOf("cleared", say("Cleared"), lambda c: _on(c, c.crop.cleared_on), beside=beside)


def growing_lines() -> list[LineOf]:
    """Medium, system, containers, plants and place."""
    return [
        LineOf("medium", say("Medium"), lambda c: c.crop.medium.strip()),
        LineOf("system", say("System"), lambda c: c.crop.system.strip()),
        LineOf("container", say("Container"), _container),
        LineOf("plants", say("Plants"), _plants),
        LineOf("seed", say("Seed"), _seed),
        LineOf("emerged", say("Emerged of the seeds sown"), _emerged),
        LineOf("room", say("Room"), lambda c: ", ".join(c.rooms)),
        LineOf("floor", say("Its part of the floor"), lambda c: amount(c.floor_m2, 2, "m²")),
    ]


def pollination_lines() -> list[LineOf]:
    """Flowers and what became of them. Picked of pollinated is not called fruit set."""
    return [
        LineOf("rounds", say("Rounds of pollination"), _rounds),
        LineOf("pollinated", say("Flowers pollinated"), _pollinated),
        LineOf("picked-of", say("Fruit picked, culls too, for 100 pollinated"), _picked_of, _picked_of_figure),
        LineOf("tags", say("Tagged flowers, days to pick"), _tag_days),
        LineOf("fruit-set", say("Fruit set"), _fruit_set, _fruit_set_figure),
        LineOf("checked", say("Fruit checks: set of open"), _checked, _checked_figure),
        LineOf("habit", say("Flowers"), lambda c: say(c.cultivar.habit.label)),
    ]


def climate_lines() -> list[LineOf]:
    """The air of the room on the days of which it is known."""
    return [
        LineOf("climate-days", say("Days known"), _climate_days),
        LineOf("temperature", say("Temperature, lowest to highest"), _temperature, "lowest-temperature"),
        LineOf("mean-temperature", say("Temperature, mean"), _figure("mean-temperature", 1)),
        LineOf("humidity", say("Relative humidity, mean"), _figure("mean-humidity", 0)),
        LineOf("vpd", say("Vapour pressure deficit, mean"), _figure("mean-vpd", 2), "mean-vpd"),
        LineOf("humid-nights", say("Humid nights"), _figure("humid-nights", 0), "humid-nights"),
        LineOf("condensation", say("Days on which water may have condensed"), _figure("condensation-days", 0),
               "condensation-days"),
        LineOf("degree-days", say("Degree days"), _figure("degree-days", 0), "degree-days"),
    ]  # fmt: skip


def quality_lines() -> list[LineOf]:
    """Quality in the grower's words."""
    return [
        LineOf("taste", say("Taste"), lambda c: c.crop.taste.strip()),
        LineOf("shape", say("Shape"), lambda c: c.crop.fruit_shape.strip()),
        LineOf("keeping", say("Keeping"), lambda c: c.crop.keeping.strip()),
    ]


def picked_of_pollinated(crop: CropFigures) -> tuple[int, int] | None:
    """Fruit picked, culls too, and flowers pollinated; None where either was not noted or more were picked."""
    picked, pollinated = crop.facts.fruit_count + crop.facts.culled_count, crop.flowers_pollinated
    return (picked, pollinated) if pollinated and picked <= pollinated else None


def _milestone(which: Milestone, *, day_of_crop_only: bool = False) -> Shown:
    def show(crop: CropFigures) -> str:
        age = milestone_ages(crop.seen, crop.picks)[which]
        if which is Milestone.FIRST_PICK and crop.crop.first_pick_on:
            age = crop.age_of(crop.crop.first_pick_on)
        if age is None:
            return ""
        return day_of_crop(age) if day_of_crop_only else _at(crop, age)

    return show


def _at(crop: CropFigures, age: int) -> str:
    return f"{day_of_crop(age)}, {show_day_of_year(day_at(crop.crop.day_zero, age))}"


def _on(crop: CropFigures, day: date | None) -> str:
    if day is None or (day == crop.crop.day_zero and crop.crop.started_from is StartedFrom.BOUGHT_PLANT):
        return ""
    return _at(crop, crop.age_of(day))


def _packet_age(crop: CropFigures) -> str:
    return "" if crop.packet_age is None else day_of_crop(crop.packet_age)


def _flower_to_pick(crop: CropFigures) -> str:
    seen, first = crop.seen, milestone_ages(crop.seen, crop.picks)[Milestone.FIRST_PICK]
    if first is None or seen.first_female is None or first < seen.first_female:
        return ""
    return days(first - seen.first_female)


def _container(crop: CropFigures) -> str:
    sizes = [] if crop.crop.container_l is None else [crop.crop.container_l]
    sizes += [litres for e in crop.of_kind("potting-on") if (litres := getattr(e.detail, "container_l", None))]
    kept = [size for i, size in enumerate(sizes) if i == 0 or size != sizes[i - 1]]
    return ", ".join(fixed(size, 0 if size == int(size) else 1, "L") for size in kept)


def _plants(crop: CropFigures) -> str:
    lost = sum(p.lost_on is not None and p.lost_on <= crop.as_of for p in crop.plants)
    count = say_count("{n} plant", "{n} plants", len(crop.plants))
    return joined(count, say("{n} of them lost", n=lost) if lost else "") if crop.plants else ""


def _seed(crop: CropFigures) -> str:
    return joined(say("bought as a plant") if crop.crop.started_from is StartedFrom.BOUGHT_PLANT else "",
                  say("lot {lot}", lot=crop.crop.seed_lot) if crop.crop.seed_lot else "")  # fmt: skip


def _emerged(crop: CropFigures) -> str:
    sown, emerged = crop.crop.seeds_sown, crop.crop.seeds_emerged
    return "" if not sown or emerged is None else say("{emerged} of {sown}", emerged=emerged, sown=sown)


def _rounds(crop: CropFigures) -> str:
    return show_number(len(crop.pollinations), 0) if crop.pollinations else ""


def _pollinated(crop: CropFigures) -> str:
    trusses = sum(d.trusses_vibrated or 0 for d in crop.pollinations)
    flowers = show_number(crop.flowers_pollinated, 0) if crop.flowers_pollinated else ""
    return joined(flowers, say_count("{n} truss shaken", "{n} trusses shaken", trusses) if trusses else "")


def _picked_of(crop: CropFigures) -> str:
    found = picked_of_pollinated(crop)
    return "" if found is None else show_number(100 * found[0] / found[1], 0)


def _picked_of_figure(crop: CropFigures) -> Figure | None:
    found = picked_of_pollinated(crop)
    if found is None:
        return None
    given = (Input("picked", found[0]), Input("pollinated", found[1]))
    method = say(
        "All fruit picked so far for a hundred flowers pollinated so far. It is not fruit set: some flowers are too "
        "young, and some fruit came without a hand."
    )
    return Figure("picked-of-pollinated", 100 * found[0] / found[1], "%", given, method, DEFINITION, Sure.PUBLISHED)


def _tag_days(crop: CropFigures) -> str:
    if not crop.days_to_pick:
        return ""
    middle = show_number(float(median(crop.days_to_pick)), 0)
    return say("{days} in the middle of {n}", days=middle, n=len(crop.days_to_pick))


def _fruit_set(crop: CropFigures) -> str:
    if crop.fruit_set is None:
        return ""
    low, high = (show_number(100 * rate, 0) for rate in (crop.fruit_set.rate.low, crop.fruit_set.rate.high))
    return say("{low} to {high} of 100", low=low, high=high)


def _fruit_set_figure(crop: CropFigures) -> Figure | None:
    return None if crop.fruit_set is None else crop.fruit_set.figures[0]


def _checked(crop: CropFigures) -> str:
    found = _set_of_open(crop)
    return "" if found is None else say("{some} of {all}", some=found[0], all=found[1])


def _checked_figure(crop: CropFigures) -> Figure | None:
    found = _set_of_open(crop)
    if found is None:
        return None
    given = (Input("set", found[0]), Input("set and dropped", found[1]), Input("checks", len(crop.fruit_checks)))
    method = say("Of the flowers whose fate fruit checks saw, those that had set.")
    return Figure("set-of-checked", found[0], "", given, method, DEFINITION, Sure.PUBLISHED)


def _set_of_open(crop: CropFigures) -> tuple[int, int] | None:
    fruit_set = sum(c.fruit_set or 0 for c in crop.fruit_checks)
    clear = fruit_set + sum(c.dropped or 0 for c in crop.fruit_checks)
    return (fruit_set, clear) if clear else None


def _climate_days(crop: CropFigures) -> str:
    known = crop.number("climate-days")
    return say("{some} of {all}", some=show_number(known, 0), all=crop.age + 1) if known else ""


def _temperature(crop: CropFigures) -> str:
    low, high = crop.number("lowest-temperature"), crop.number("highest-temperature")
    if low is None or high is None:
        return ""
    return say("{low} to {high}", low=amount(low, 1, "°C"), high=amount(high, 1, "°C"))


def _figure(key: str, decimals: int) -> Shown:
    unit = {"humid-nights": "", "condensation-days": "", "degree-days": "°C·d"}.get(key)
    return lambda crop: of_figure(crop.figure(key), decimals, unit)


def _upper(text: str) -> str:
    return text[:1].upper() + text[1:]
