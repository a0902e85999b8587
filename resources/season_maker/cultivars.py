"""The traits of the two pattypans of the season; names are invented."""

from .pattypan_model import PattypanTraits

GOLD_TRAITS = PattypanTraits(
    leaf_width_cm=25.0,
    stalk_length_cm=33.0,
    first_male_age=31,
    first_female_age=36,
    last_female_age=102,
    females_a_day=1.16,
    males_a_day=3.6,
    set_chance_early=0.66,
    set_chance_late=0.44,
    late_from_age=80,
    pick_weight_g=62.0,
    fruit_potential_g=130.0,
    culls=((9, "misshapen"), (20, "blossom-end rot"), (31, "misshapen")),
    visit_every_days=2.4,
    training_ages=(38, 45, 52, 58, 64, 72, 91, 98),
    mildew_age=83,
    away_ages=(77, 78),
)
ROUND_TRAITS = PattypanTraits(
    leaf_width_cm=23.5,
    stalk_length_cm=30.0,
    first_male_age=34,
    first_female_age=38,
    last_female_age=88,
    females_a_day=1.2,
    males_a_day=1.8,
    set_chance_early=0.86,
    set_chance_late=0.74,
    late_from_age=75,
    pick_weight_g=58.0,
    fruit_potential_g=110.0,
    culls=((12, "misshapen"), (30, "blossom-end rot")),
    visit_every_days=2.4,
    training_ages=(40, 48, 55, 62, 69, 76, 84),
)
