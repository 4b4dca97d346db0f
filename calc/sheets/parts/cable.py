"""What a conductor bears, and the fuse it can have: for the sheets that name both."""

from dataclasses import dataclass

from calc.electrical import cable as wires
from calc.electrical import fuses
from calc.electrical.ampacity import RuleSet, Surroundings, insulation_rating
from calc.electrical.conductors import GaugeReading
from calc.electrical.limits import copper_rise
from calc.units.compare import at_least


@dataclass(frozen=True, kw_only=True)
class Cable:
    """What a conductor bears [A] by its rule set.

    `crowded` is with the bundling factor that its rule set leaves out at this voltage; `at_60` with
    60 °C insulation, `cool_terminals` what NEC lets terminals of 60 °C bear on it; `highest` the
    largest fuse that it allows.
    """

    table_row: str
    table_ampacity: float
    rating: float
    air: float
    base_air: float
    printed_factor: bool
    ambient_factor: float
    bundle_factor: float
    ampacity: float
    small_ceiling: float | None
    terminal_ceiling: float | None
    cool_terminals: float | None
    thin: bool
    crowded: float
    uncounted_bundle: bool
    at_60: float | None
    highest: float


def ampacity_of(
    *, conductor: str, insulation: str, surroundings: Surroundings, bundled: float, ambient: float, voltage: float,
    rule_set: RuleSet, gauge_reading: GaugeReading,
) -> wires.Cable:
    """Return the ampacity of `conductor` with up to `voltage` [V] on it. Raises NotCovered."""
    return wires.cable(
        conductor=conductor, insulation=insulation_rating(insulation), surroundings=surroundings, bundled=bundled,
        ambient=ambient, max_voltage=voltage, rule_set=rule_set, gauge_reading=gauge_reading,
    )  # fmt: skip


def cable(
    *, conductor: str, insulation: str, surroundings: Surroundings, bundled: float, ambient: float, voltage: float,
    rule_set: RuleSet, gauge_reading: GaugeReading,
) -> Cable:
    """Return what `conductor` bears with up to `voltage` [V] on it, and by which steps. Raises NotCovered."""
    on = ampacity_of(
        conductor=conductor, insulation=insulation, surroundings=surroundings, bundled=bundled, ambient=ambient, voltage=voltage,
        rule_set=rule_set, gauge_reading=gauge_reading,
    )  # fmt: skip
    return Cable(
        table_row=on.table_row,
        table_ampacity=on.table_ampacity,
        rating=on.insulation,
        air=on.air,
        base_air=on.base_air,
        printed_factor=on.printed_factor,
        ambient_factor=on.ambient_factor,
        bundle_factor=on.bundle_factor,
        ampacity=on.ampacity,
        small_ceiling=on.small_ceiling,
        terminal_ceiling=on.terminal_ceiling,
        cool_terminals=on.cool_terminals,
        thin=on.table_row == "18 AWG",
        crowded=on.grouped_ampacity,
        uncounted_bundle=on.bundle_left_out,
        at_60=on.ampacity_at_60c_insulation,
        highest=on.largest_fuse,
    )


@dataclass(frozen=True, kw_only=True)
class Guard:
    """The fuse [A] for a current, or None, and the warmth [K, °C] of the copper beside it."""

    lowest: float | None
    window_open: bool
    fuse: float | None
    rise: float | None
    warm: float | None


def guard(on: Cable, current: float | None, voltage: float, fault_current: float) -> Guard:
    """Return the fuse that carries `current` [A] for hours and that the cable `on` bears."""
    if current is None:
        return Guard(lowest=None, window_open=True, fuse=None, rise=None, warm=None)
    lowest = fuses.CONTINUOUS * current
    fuse = fuses.standard_rating(lowest, on.highest, fuses.suitable(voltage, fault_current))
    rise = copper_rise(insulation=on.rating, air=on.air, current=current, bears=on.ampacity)
    return Guard(
        lowest=lowest,
        window_open=at_least(on.highest, lowest),
        fuse=fuse,
        rise=rise if fuse else None,
        warm=on.air + rise if fuse else None,
    )
