"""What fuse-choice works out: the window between load and wire, and the fuse in it."""

from dataclasses import dataclass
from typing import Any

from calc.electrical import conductors, fuses
from calc.electrical.ampacity import RuleSet, Surroundings, ratings
from calc.electrical.conductors import SAE, GaugeReading, copper_area, series_of
from calc.electrical.limits import USUAL_INSULATION, beyond_rows
from calc.sheets.parts import cable as cables
from calc.units.covered import NotCovered


@dataclass(frozen=True, kw_only=True)
class FuseChoice(cables.Cable):
    """The window from load to wire [A], the fuse in it [A] or None, and why.

    `warm` [°C] is an estimate of the copper, `rise` [K] of it above the air.
    """

    metric: bool
    as_sae: bool
    sae_area: float
    sae_share: float | None
    rise: float | None
    warm: float | None
    thickest: bool
    margin: float
    lowest: float
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
    *, current: float, conductor: str, insulation: str, surroundings: Surroundings, bundled: float, ambient: float,
    voltage: float, fault_current: float, rule_set: RuleSet, gauge_reading: GaugeReading,
) -> FuseChoice:
    """Return the fuse for a wire and a continuous load, or the reason there is none."""
    on: dict[str, Any] = {
        "conductor": conductor, "insulation": insulation, "surroundings": surroundings, "bundled": bundled,
        "ambient": ambient, "voltage": voltage, "rule_set": rule_set, "gauge_reading": gauge_reading,
    }  # fmt: skip
    wire = cables.cable(**on)
    guard = cables.guard(wire, current, voltage, fault_current)
    lowest = fuses.CONTINUOUS * current
    suitable = fuses.suitable(voltage, fault_current)
    between = fuses.ratings_between(lowest, wire.highest, suitable)
    fitting = tuple(family for family in suitable if guard.fuse in family.ratings)
    low_volts = fuses.too_low_in_voltage(voltage)
    weak = tuple(f for f in fuses.families() if f not in low_volts and f not in suitable)
    one = conductors.conductor(conductor)
    return FuseChoice(
        **vars(wire),
        **vars(guard),
        metric=one.series == "mm2",
        as_sae=gauge_reading == SAE and one.series == "AWG",
        sae_area=copper_area(conductor, gauge_reading),
        sae_share=1 - one.sae_area / one.area if one.sae_area else None,
        thickest=beyond_rows(conductor, gauge_reading),
        margin=fuses.CONTINUOUS,
        families=tuple(family.named_for(voltage) for family in fitting),
        also=tuple(_offered(rating, suitable, voltage) for rating in between[1:3]),
        remedies=() if guard.fuse is not None else _remedies(on, current, lowest, suitable),
        ceiling=fuses.CEILING * wire.highest,
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
    on: dict[str, Any], current: float, lowest: float, suitable: tuple[fuses.Family, ...]
) -> tuple[str, ...]:
    """Return the changes that open the window, each worked by running the rule set again."""
    if not suitable:
        return ("a source with less fault current, or a fuse whose data sheet gives the d.c. voltage and interrupting rating asked for",)

    def opens(load: float = lowest, **change: object) -> float | None:
        try:
            wire = cables.ampacity_of(**{**on, **change})
        except NotCovered:
            return None
        return fuses.standard_rating(load, wire.largest_fuse, suitable)

    thicker = [one.name for one in series_of(on["conductor"]) if one.area > conductors.conductor(on["conductor"]).area]
    hotter, rating = ratings(on["rule_set"]), float(on["insulation"].split()[0])
    changes = (
        [("thicker wire: {}", name, {"conductor": name}) for name in thicker],
        [("insulation rated {:g} °C", c, {"insulation": f"{c:g} C"}) for c in hotter if rating < c <= USUAL_INSULATION],
        [("no more than {} loaded conductors together", 2, {"bundled": 2})] if on["bundled"] > 2 else [],
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
