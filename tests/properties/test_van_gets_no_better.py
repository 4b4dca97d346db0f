"""What is worse in one part of a van never gets its review a better end."""

import pytest

from calc.judge import Level
from calc.van.demos import demo
from calc.van.review import ORDER, review

SOUND = demo("marram")
NO_FAN = SOUND.changed({"bay.fan": "none"})
# From good to bad, each step worse for a careful electrician (common practice, no source).
WORSE = {
    "circuits[1].length": ("2 m", "4 m", "8 m", "16 m", "32 m"),
    "circuits[1].current": ("3 A", "6 A", "12 A", "24 A", "48 A"),
    "circuits[1].conductor": ("8 AWG", "10 AWG", "12 AWG", "14 AWG", "16 AWG", "18 AWG"),
    "circuits[1].fuse": ("15 A", "30 A", "60 A", "100 A"),
    "circuits[1].bundled": ("2", "7", "12", "25"),
    "circuits[1].ambient": ("30 °C", "40 °C", "50 °C"),
    "batteries[1].resistance": ("13 mΩ", "8 mΩ", "4 mΩ", "2 mΩ"),
    "heater.output": ("4 kW", "2 kW", "1 kW", "0.5 kW"),
    "patterns[1].outside": ("0 °C", "-5 °C", "-10 °C", "-20 °C"),
    "patterns[1].nights": ("2", "4", "8"),
    "patterns[1].temperature": ("12 °C", "6 °C", "1 °C", "-4 °C"),
    "bay.vents": ("400 cm²", "200 cm²", "100 cm²", "20 cm²"),
    "shore.charger": ("20 A", "40 A", "80 A", "150 A"),
    "alternator.charger_limit": ("30 A", "60 A", "90 A", "120 A"),
    "bars[1].rating": ("250 A", "150 A", "100 A", "50 A"),
    "isolators[1].rating": ("300 A", "200 A", "150 A", "50 A"),
    "regulators[1].max_voltage": ("100 V", "60 V", "40 V"),
    "joints[1].maker_torque": ("12 N·m", "20 N·m", "30 N·m"),
    "mains.supply_limit": ("16 A", "10 A", "6 A", "2 A"),
    "inverter.rating": ("1000 W", "2000 W", "3000 W"),
    "management.charge_limit": ("100 A", "58 A", "29 A"),
    "shunt.rating": ("500 A", "200 A", "50 A"),
}


def worst(found):
    """Return how grave the worst finding is, 0 the gravest, 9 where there is none."""
    grave = (Level.STOP, Level.CAUTION)
    return min((ORDER[one.level] for one in found.findings if one.level in grave), default=9)


@pytest.mark.parametrize(("place", "texts"), WORSE.items(), ids=WORSE)
def test_each_step_to_the_worse_is_no_better(place, texts):
    van = NO_FAN if place == "bay.vents" else SOUND
    ends = [worst(review(van.changed({place: text}))) for text in texts]
    assert ends == sorted(ends, reverse=True)
    assert ends[0] > 0
