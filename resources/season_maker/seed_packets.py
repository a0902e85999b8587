"""What came with the seed and what the grower meant to find out; all of it invented."""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True)
class Packet:
    """Seed, its habit of flowering and the grower's intent for one crop."""

    habit: str
    about: str
    seed_lot: str
    seeds_sown: int
    seeds_emerged: int
    trying: str
    planned_clearing_on: date | None = None


PACKETS = {
    "Boxroom Gold": Packet(
        habit="separate",
        about="bush pattypan, yellow",
        seed_lot="own seed, 2025",
        seeds_sown=2,
        seeds_emerged=2,
        trying="How much one bush gives when every flower is pollinated by hand",
    ),
    "Skylight Round": Packet(
        habit="sets-alone",
        about="bush pattypan, pale green",
        seed_lot="packet, 2025",
        seeds_sown=2,
        seeds_emerged=2,
        trying="A pattypan that needs no pollination",
    ),
    "Landing Light": Packet(
        habit="perfect",
        about="chilli, orange when ripe",
        seed_lot="own seed, 2024",
        seeds_sown=6,
        seeds_emerged=4,
        trying="Chilli in the smaller pot, beside the squash",
        planned_clearing_on=date(2026, 5, 31),
    ),
    "Porch Violet": Packet(
        habit="perfect",
        about="aubergine, dark violet",
        seed_lot="packet, 2025",
        seeds_sown=4,
        seeds_emerged=2,
        trying="Aubergine under the squash's light",
        planned_clearing_on=date(2026, 6, 15),
    ),
}
