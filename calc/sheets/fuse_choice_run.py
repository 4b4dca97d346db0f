"""What fuse-choice works out: the window between load and wire, and the fuse in it."""

from dataclasses import dataclass
from typing import Any

from calc.compare import at_least
from calc.electrical import conductors, fuses
from calc.electrical.ampacity import BASE_AMBIENT, NotCovered, ampacity, crowding, ratings
from calc.electrical.conductors import SAE, copper_area, series_of
from calc.electrical.limits import (
    USUAL_INSULATION,
    beyond_rows,
    copper_rise,
    uncounted_bundle,
    unmarked,
)
from calc.electrical.nec import cool_terminals
from calc.sheets.shared import refusal

_UNMARKED = ("name", "surroundings", "bundled", "ambient", "rule_set", "gauge_reading")


@dataclass(frozen=True, kw_only=True)
class FuseChoice:
    """The window from load to wire [A], the fuse in it [A] or None, and why.

    `crowded` is what the wire would bear [A] with the bundling factor that its rule set leaves out
    at this voltage; `at_60` what it would bear with 60 °C insulation, `cool_terminals` what NEC lets
    terminals of 60 °C bear on it. `warm` [°C] is an estimate of the copper, `rise` [K] of it above
    the air.
    """

    table_row: str
    metric: bool
    as_sae: bool
    sae_area: float
    sae_share: float | None
    thin: bool
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
    rise: float | None
    warm: float | None
    thickest: bool
    crowded: float
    uncounted_bundle: bool
    at_60: float | None
    margin: float
    lowest: float
    highest: float
    window_open: bool
    fuse: float | None
    families: tuple[str, ...]
    also: tuple[str, ...]
    remedies: tuple[str, ...]
    ceiling: float
    enough: bool
    too_low_in_voltage: tuple[str, ...]
    cannot_break: tuple[str, ...]
    versioned: tuple[str, ...]
    from_memory: bool
    some_from_memory: bool


def run(
    *, current: float, conductor: str, insulation: str, surroundings: str, bundled: float, ambient: float,
    voltage: float, fault_current: float, rule_set: str, gauge_reading: str,
) -> FuseChoice:
    """Return the fuse for a wire and a continuous load, or the reason there is none."""
    given: dict[str, Any] = {
        "name": conductor, "insulation": float(insulation.split()[0]), "surroundings": surroundings,
        "bundled": int(bundled), "ambient": ambient, "voltage": voltage, "rule_set": rule_set,
        "gauge_reading": gauge_reading,
    }
    try:
        bears = ampacity(**given)
    except NotCovered as gap:
        raise refusal(gap) from None
    lowest, highest = fuses.CONTINUOUS * current, bears.largest_fuse
    suitable = fuses.suitable(voltage, fault_current)
    between = fuses.ratings_between(lowest, highest, suitable)
    fuse = between[0] if between else None
    fitting = tuple(family for family in suitable if fuse in family.ratings)
    low_volts = fuses.too_low_in_voltage(voltage)
    weak = tuple(f for f in fuses.families() if f not in low_volts and f not in suitable)
    uncounted = uncounted_bundle(rule_set, bears, int(bundled))
    one = conductors.conductor(conductor)
    rise = copper_rise(insulation=given["insulation"], air=bears.air, current=current, bears=bears.ampacity)
    return FuseChoice(
        table_row=bears.row,
        metric=one.series == "mm2",
        as_sae=gauge_reading == SAE and one.series == "AWG",
        sae_area=copper_area(conductor, gauge_reading),
        sae_share=1 - one.sae_area / one.area if one.sae_area else None,
        thin=bears.row == "18 AWG",
        table_ampacity=bears.table_ampacity,
        rating=given["insulation"],
        air=bears.air,
        base_air=BASE_AMBIENT,
        printed_factor=bears.printed_factor,
        ambient_factor=bears.ambient_factor,
        bundle_factor=bears.bundle_factor,
        ampacity=bears.ampacity,
        small_ceiling=bears.small_ceiling,
        terminal_ceiling=bears.terminal_ceiling,
        cool_terminals=cool_terminals(bears.row.removesuffix(" AWG")),
        rise=rise if fuse else None,
        warm=bears.air + rise if fuse else None,
        thickest=beyond_rows(conductor, gauge_reading),
        crowded=bears.ampacity * crowding(int(bundled)) if uncounted else bears.ampacity,
        uncounted_bundle=uncounted,
        at_60=unmarked(**{key: given[key] for key in _UNMARKED}),
        margin=fuses.CONTINUOUS,
        lowest=lowest,
        highest=highest,
        window_open=at_least(highest, lowest),
        fuse=fuse,
        families=tuple(family.named_for(voltage) for family in fitting),
        also=tuple(_offered(rating, suitable, voltage) for rating in between[1:3]),
        remedies=() if fuse is not None else _remedies(given, current, lowest, suitable),
        ceiling=fuses.CEILING * highest,
        enough=bool(suitable),
        too_low_in_voltage=tuple(family.name for family in low_volts),
        cannot_break=tuple(family.name for family in weak),
        versioned=tuple(f.name for f in fitting if f.marked_higher(voltage)),
        from_memory=bool(fitting) and all(family.from_memory for family in fitting),
        some_from_memory=any(f.from_memory for f in suitable if {*f.ratings} & {*between[:3]}),
    )


def _offered(rating: float, among: tuple[fuses.Family, ...], voltage: float) -> str:
    names = [family.named_for(voltage) for family in among if rating in family.ratings]
    return f"{rating:g} A ({' or '.join(names)})"


def _remedies(
    given: dict[str, Any], current: float, lowest: float, suitable: tuple[fuses.Family, ...]
) -> tuple[str, ...]:
    """Return the changes that open the window, each worked by running the rule set again."""
    if not suitable:
        return ("a source with less fault current, or a fuse whose data sheet gives the d.c. voltage and interrupting rating asked for",)

    def opens(load: float = lowest, **change: object) -> float | None:
        try:
            bears = ampacity(**{**given, **change})
        except NotCovered:
            return None
        return fuses.standard_rating(load, bears.largest_fuse, suitable)

    thicker = [one.name for one in series_of(given["name"]) if one.area > conductors.conductor(given["name"]).area]
    hotter = ratings(given["rule_set"])
    changes = (
        [("thicker wire: {}", name, {"name": name}) for name in thicker],
        [("insulation rated {:g} °C", c, {"insulation": c}) for c in hotter if given["insulation"] < c <= USUAL_INSULATION],
        [("no more than {} loaded conductors together", 2, {"bundled": 2})] if given["bundled"] > 2 else [],
    )
    found = []
    for choices in changes:
        fuse = None
        for says, value, change in choices:
            if fuse := opens(**change):
                found.append(f"{says.format(value)}, with a fuse of {fuse:g} A")
                break
    for parts in (2, 3, 4):
        if fuse := opens(lowest / parts):
            found.append(f"split the load into {parts} circuits of {current / parts:.3g} A, each on this wire with a fuse of {fuse:g} A")
            break
    return tuple(found) or (
        "no single change: take thicker wire, cooler surroundings and several circuits together",
    )
