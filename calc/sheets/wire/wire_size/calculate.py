"""What wire-size works out: the size for the drop, for the heat and for a fuse to fit."""

from dataclasses import dataclass
from typing import Any

from calc.electrical import fuses
from calc.electrical.ampacity import (
    BASE_AMBIENT,
    RuleSet,
    Surroundings,
    crowding,
    insulation_rating,
)
from calc.electrical.conductors import (
    SAE,
    STRANDED,
    ZERO_RESISTANCE,
    Finish,
    GaugeReading,
    Series,
    Strands,
    at_temperature,
    conductor,
    copper_area,
    tabulated,
)
from calc.electrical.drop import largest_current, loop_resistance
from calc.electrical.limits import beyond_rows, copper_rise, uncounted_bundle, unmarked
from calc.electrical.nec import cool_terminals
from calc.electrical.sizing import THINNEST_PARALLEL, Chosen, Size, rating_between
from calc.sheets.parts.fields import wires
from calc.sheets.wire.wire_size.ask import CHARGED, Ask, remedies, standard_fuses
from calc.units.kinds import CURRENT
from calc.units.shown import DOWN, UP, quantity_text
from calc.worksheet.pictures import Rung

DROP, HEAT, BOTH, MORE = "the drop", "the heat", "drop and heat alike", "a fuse that fits"
SHOWN = 5  # rungs


@dataclass(frozen=True, kw_only=True)
class AtWork:
    """The chosen size at work; everything is None where no size does.

    `highest` is the most its fuse may be rated [A]. `warm` [°C] is an estimate of the copper at this
    current, `rise` [K] of it above the air, `warm_drop` [V] the drop with it. `crowded` is what each conductor would bear [A] with
    a bundling factor that the rule set leaves out, `bears_bundle` the size with room for a fuse
    even so, `at_60` what the chosen one bears with 60 °C insulation [A], `cool_terminals` what NEC
    lets terminals of 60 °C bear on it [A].
    """

    wires: str | None = None
    table_row: str | None = None
    table_ampacity: float | None = None
    air: float | None = None
    printed_factor: bool = False
    ambient_factor: float | None = None
    bundle_factor: float | None = None
    ampacity: float | None = None
    small_ceiling: float | None = None
    terminal_ceiling: float | None = None
    cool_terminals: float | None = None
    highest: float | None = None
    at_60: float | None = None
    uncounted_bundle: bool = False
    crowded: float | None = None
    bears_bundle: str | None = None
    thickest: bool = False
    thin: bool = False
    too_thin_to_join: bool = False
    reference: float | None = None
    gauge_resistance: float | None = None
    gauge_area: float | None = None
    sae_area: float | None = None
    sae_share: float | None = None
    stated: float | None = None
    per_length: float | None = None
    resistance: float | None = None
    drop: float | None = None
    drop_percent: float | None = None
    load_voltage: float | None = None
    loss: float | None = None
    rise: float | None = None
    warm: float | None = None
    warm_drop: float | None = None


@dataclass(frozen=True, kw_only=True)
class WireSize(AtWork):
    """The conductor of a run and what leads to it.

    `each` is the current in each of the conductors in parallel [A], `need` what each must bear [A],
    `resistance_limit` the largest resistance of each [ohm/m]; `larger` is the thicker of `for_drop` and
    `for_heat`, `obstacle` why that one would not do.
    """

    conductor: str | None
    for_drop: str | None
    for_heat: str | None
    decides: str | None
    fuse: float | None
    remedies: tuple[str, ...]
    larger: str | None
    obstacle: str
    each: float
    margin: float
    need: float
    allowed: float
    resistance_limit: float
    together: float
    charged: float
    charging: float
    rated: bool
    fuse_from_memory: bool
    metric: bool
    as_sae: bool
    class_2: bool
    computed: bool
    rating: float
    base_air: float
    zero: float
    rungs: tuple[Rung, ...]


def run(
    *, current: float, length: float, voltage: float, limit: float, insulation: str, series: Series,
    surroundings: Surroundings, bundled: float, ambient: float, rule_set: RuleSet, temperature: float, finish: Finish,
    strands: Strands, gauge_reading: GaugeReading, parallel: float,
) -> WireSize:
    """Return the conductor for a run of one-way `length` [m] at `current` [A], or why there is none."""
    given: dict[str, Any] = {
        "series": series, "temperature": temperature, "finish": finish, "strands": strands,
        "gauge_reading": gauge_reading, "insulation": insulation_rating(insulation),
        "surroundings": surroundings, "ambient": ambient, "rule_set": rule_set,
    }
    ask = Ask(current, length, voltage, limit, int(parallel), int(bundled), given)
    among = ask.sizes()
    chosen = ask.chosen(among)
    return WireSize(
        conductor=_name(chosen.size),
        for_drop=_name(chosen.for_drop),
        for_heat=_name(chosen.for_heat),
        decides=_decides(chosen),
        fuse=chosen.fuse,
        remedies=() if chosen.size else remedies(ask, among),
        larger=_name(chosen.larger),
        obstacle=_obstacle(chosen, ask),
        each=ask.each,
        margin=fuses.CONTINUOUS,
        need=ask.need,
        allowed=ask.allowed,
        resistance_limit=ask.allowed / (2 * length * ask.each),
        together=float(ask.together),
        charged=CHARGED,
        charging=ask.charging,
        rated=bool(ask.ratings),
        fuse_from_memory=_from_memory(chosen.fuse, ask),
        metric=series == "mm2",
        as_sae=gauge_reading == SAE and series == "AWG",
        class_2=strands == STRANDED and series == "mm2",
        computed=False,
        rating=given["insulation"],
        base_air=BASE_AMBIENT,
        zero=-ZERO_RESISTANCE,
        rungs=_rungs(among, chosen, ask),
        **(_at_work(chosen.size, among, ask) if chosen.size else {}),
    )


def _name(size: Size | None) -> str | None:
    return size.name if size else None


def _decides(chosen: Chosen) -> str | None:
    if chosen.size is None:
        return None
    if chosen.size is not chosen.larger:
        return MORE
    if chosen.for_drop is chosen.for_heat:
        return BOTH
    return DROP if chosen.larger is chosen.for_drop else HEAT


def _obstacle(chosen: Chosen, ask: Ask) -> str:
    if chosen.larger is None or chosen.larger is chosen.size:
        return ""
    if chosen.larger.bears is None:
        return f"{ask.given['rule_set'].cited} has no figure for it"
    lowest = quantity_text(ask.need, CURRENT, way=UP)
    highest = quantity_text(chosen.larger.largest_fuse, CURRENT, way=DOWN)
    return f"no standard fuse lies from {lowest} to {highest}, the most for it"


def _from_memory(fuse: float | None, ask: Ask) -> bool:
    made = [family for family in standard_fuses(ask) if fuse in family.ratings]
    return bool(made) and all(family.from_memory for family in made)


def _at_work(size: Size, among: tuple[Size, ...], ask: Ask) -> dict[str, Any]:
    """Return the values of `AtWork` for the chosen `size`."""
    one, bears, given = conductor(size.name), size.bears, ask.given
    assert bears is not None  # a size without a figure is never chosen
    copper = copper_area(size.name, given["gauge_reading"])
    printed = tabulated(size.name, finish=given["finish"], strands=given["strands"])
    drop = ask.each * loop_resistance(ask.length, size.per_length)
    uncounted = uncounted_bundle(given["rule_set"], bears, ask.together)
    rise = copper_rise(insulation=given["insulation"], air=bears.air, current=ask.each, bears=bears.ampacity)
    warm = bears.air + rise
    return {
        "wires": wires(size.name, ask.parallel, given["gauge_reading"]),
        "table_row": bears.table_row,
        "table_ampacity": bears.table_ampacity,
        "air": bears.air,
        "printed_factor": bears.printed_factor,
        "ambient_factor": bears.ambient_factor,
        "bundle_factor": bears.bundle_factor,
        "ampacity": bears.ampacity,
        "small_ceiling": bears.small_ceiling,
        "terminal_ceiling": bears.terminal_ceiling,
        "cool_terminals": cool_terminals(bears.table_row.removesuffix(" AWG")),
        "highest": bears.largest_fuse,
        "at_60": _at_60(size, ask),
        "uncounted_bundle": uncounted,
        "crowded": bears.ampacity * crowding(ask.together) if uncounted else None,
        "bears_bundle": _bears_bundle(size, among, ask) if uncounted else None,
        "thickest": beyond_rows(size.name, given["gauge_reading"]),
        "thin": bears.table_row == "18 AWG",
        "too_thin_to_join": ask.parallel > 1 and copper < conductor(THINNEST_PARALLEL).area,
        "reference": one.reference,
        "gauge_resistance": printed,
        "gauge_area": one.area,
        "sae_area": copper,
        "sae_share": 1 - one.sae_area / one.area if one.sae_area else None,
        "stated": printed * one.area / copper,
        "per_length": size.per_length,
        "resistance": loop_resistance(ask.length, size.per_length) / ask.parallel,
        "drop": drop,
        "drop_percent": drop / ask.voltage,
        "load_voltage": ask.voltage - drop,
        "loss": ask.current * drop,
        "rise": rise,
        "warm": warm,
        "warm_drop": at_temperature(drop, given["temperature"], warm),
    }


def _at_60(size: Size, ask: Ask) -> float | None:
    given = {k: ask.given[k] for k in ("surroundings", "ambient", "rule_set", "gauge_reading")}
    return unmarked(name=size.name, bundled=ask.together, **given)


def _bears_bundle(size: Size, among: tuple[Size, ...], ask: Ask) -> str | None:
    """Return the thinnest size, from `size` on, with room for a fuse though the bundle counts."""
    factor = crowding(ask.together)
    for one in among[among.index(size) :]:
        if rating_between(ask.ratings, ask.need, one.largest_fuse * factor) is not None:
            return one.name
    return None


def _rungs(among: tuple[Size, ...], chosen: Chosen, ask: Ask) -> tuple[Rung, ...]:
    """Return the sizes around the chosen one, or the thickest, each with the load it allows [A]."""
    place = among.index(chosen.size) if chosen.size else len(among)
    first = max(0, min(place - SHOWN // 2, len(among) - SHOWN))
    return tuple(
        Rung(
            size.name,
            by_drop=ask.parallel
            * largest_current(allowed=ask.allowed, length=ask.length, per_length=size.per_length),
            by_heat=ask.parallel * size.largest_fuse / fuses.CONTINUOUS,
            chosen=size is chosen.size,
        )
        for size in among[first : first + SHOWN]
    )
