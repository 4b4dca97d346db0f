"""A joint under current: its resistance, its heat, and how hot its contact spots run.

Two pieces of metal that are pressed together touch at few small spots. The current crowds through
them, so a joint has a resistance and warms; oxide and slackening leave fewer spots.
"""

from dataclasses import dataclass
from functools import cache
from math import pi, sqrt

from calc.tables import table
from calc.units.compare import at_least, at_most

MOST_DROP = 0.1  # V, a connection that carries high current: SAE as quoted in a workshop manual
GOOD_BOLTED = 15e-6  # ohm, top of the range of good bolted busbar joints: instrument maker
WELL_KEPT = 300e-6  # ohm, top of the range of well-kept power contacts: substation article
GLOWS_LEAST, GLOWS_MOST = 5.0, 35.0  # W, glowing loose connections: NBSIR 76-1011, abstract
LITTLE_HEAT = 0.5  # W, what a small plug-in terminal gives off: common practice, no source
WARM_METAL = 90.0  # °C, what lugs and holders are commonly made for: common practice, no source
HOT_METAL = 105.0  # °C, insulation of good boat cable: a column of 33 CFR 183.425, table 5
GROWTH_LEAST = 2.0  # times the resistance may grow before the drop is too much: common practice
LIKE_MOST = 1.5  # times the lowest of like connections: ANSI/NETA as restated, 50 % above it
SMALL_DROP = 1e-3  # V, where a usual meter's last digit shows: common practice, no source
SMALL_LOAD = 0.2  # of the full current, for a reading of voltage: common practice, no source
THERMAL_LOAD = 0.4  # of full load, the least for a reading of temperature: thermography check list
RISE_ROOT = 0.61  # I1/I2 = (rise1/rise2)^0.61: IEC 61439-1, 10.10.2.3.1, as quoted

ABSOLUTE_ZERO = -273.15  # °C
SOFTENS, MELTS = 190.0, 1083.0  # °C, contact spots of copper: 463 K and 1356 K, with the relation
BOLTZMANN, CHARGE = 1.380649e-23, 1.602176634e-19  # J/K and C, exact by the SI of 2019
VOLTS_PER_KELVIN = 2 * pi / sqrt(3) * BOLTZMANN / CHARGE
"""Twice the root of the Lorenz number L = pi²/3 (k/e)² of metals [V/K]."""


def spot_temperature(*, drop: float, metal: float) -> float | None:
    """Return the highest temperature [°C] within a contact that drops `drop` [V].

    T² = T0² + U²/(4 L) in kelvin, Kohlrausch's relation (Holm, Electric Contacts): it holds for
    spots of any size or number, since all of them lie between the same two voltages. `metal` [°C]
    is the metal on both sides. A drop that is partly lost in the metal gives too high a figure,
    which is the safe side. None above the melting point of copper, where it ends.
    """
    hottest = ABSOLUTE_ZERO + sqrt((metal - ABSOLUTE_ZERO) ** 2 + (drop / VOLTS_PER_KELVIN) ** 2)
    return hottest if at_most(hottest, MELTS) else None


def softening_drop(metal: float) -> float:
    """Return the drop [V] at which spots of copper soften, `metal` [°C] being on both sides.

    The same relation solved for the voltage; 0.112 V from cold metal. `metal` is at most SOFTENS.
    """
    warm, soft = metal - ABSOLUTE_ZERO, SOFTENS - ABSOLUTE_ZERO
    return VOLTS_PER_KELVIN * sqrt(soft**2 - warm**2)


@dataclass(frozen=True, kw_only=True)
class Contact:
    """What a reading says of a joint, in [ohm], [W] and [V]; None where there is no real figure.

    `reaches` is False where the supply can't push the full current through this joint; then
    `feeds` [A] is all it could. `growth_left` is how often the resistance may yet grow before the
    joint drops `MOST_DROP` at full current.
    """

    resistance: float
    heat: float
    feeds: float
    reaches: bool
    full_drop: float | None
    full_heat: float | None
    drop_share: float | None
    growth_left: float | None


def contact(*, drop: float, current: float, full_current: float, voltage: float) -> Contact:
    """Return what a joint that drops `drop` [V] at `current` [A] does at `full_current` [A].

    R = U/I; heat = U I; at another current heat goes with its square. `voltage` [V] is the
    supply's. All above nought.
    """
    resistance = drop / current
    full_drop = resistance * full_current
    reaches = full_drop < voltage
    return Contact(
        resistance=resistance,
        heat=drop * current,
        feeds=voltage / resistance,
        reaches=reaches,
        full_drop=full_drop if reaches else None,
        full_heat=resistance * full_current**2 if reaches else None,
        drop_share=full_drop / voltage if reaches else None,
        growth_left=MOST_DROP / full_drop if at_most(full_drop, MOST_DROP) else None,
    )


@dataclass(frozen=True)
class Grown:
    """A joint whose resistance has grown by `factor`, at full current: drop [V] and heat [W].

    They are None where the supply can no longer push the full current through it.
    """

    factor: int
    resistance: float
    drop: float | None
    heat: float | None


def growth(*, resistance: float, full_current: float, voltage: float) -> tuple[Grown, ...]:
    """Return the joint as it is and with two, four and eight times its `resistance` [ohm].

    Heat feeds oxide and creep, which feed the resistance: what comes next is known, when is not.
    """
    found = []
    for factor in (1, 2, 4, 8):
        grown = factor * resistance
        drop = grown * full_current
        flows = drop < voltage
        heat = grown * full_current**2
        found.append(Grown(factor, grown, drop if flows else None, heat if flows else None))
    return tuple(found)


@dataclass(frozen=True)
class Rise:
    """A temperature rise [K] at full load: `upper` by the square, `lower` by IEC 61439-1."""

    upper: float
    lower: float


def rise_at_full(*, rise: float, current: float, full_current: float) -> Rise | None:
    """Return a `rise` [K] measured at `current` [A] taken to `full_current` [A].

    By the square of the current, as heat goes: cooling improves as things get hotter, so this is
    the upper figure above the measured current. IEC 61439-1 has the power 1/0.61, and that only
    for corrections of 5 K. None below 40 % of full load, where no such reading is taken.
    """
    if not at_least(current, THERMAL_LOAD * full_current):
        return None
    share = full_current / current
    return Rise(rise * share**2, rise * share ** (1 / RISE_ROOT))


@dataclass(frozen=True)
class Severity:
    """A class of temperature rise: `priority` 1 is the worst; `printed` is its range in print."""

    priority: int
    printed: str
    action: str


@cache
def _classes(scale: str, over: str) -> tuple[tuple[float, bool, Severity], ...]:
    rows = [r for r in table("thermal_severity").rows if (r["scale"], r["over"]) == (scale, over)]
    return tuple(
        (
            float(row["from_k"]),
            row["begins"] == "at",
            Severity(int(row["priority"]), row["printed"], row["action"]),
        )
        for row in rows
    )


def severity(scale: str, over: str, rise: float) -> Severity | None:
    """Return the class of a `rise` [K] on a 'NETA' or 'military' scale, or None below its lowest.

    `over` is 'like joint' or 'air' (the military scale makes no difference: 'either'). A rise
    between two printed classes takes the more severe.
    """
    for least, itself, found in _classes(scale, over):
        if at_least(rise, least) if itself else not at_most(rise, least):
            return found
    return None
