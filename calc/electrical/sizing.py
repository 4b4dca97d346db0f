"""Which conductor a circuit needs: thick enough for the drop, for the heat, and for a fuse to fit.

A fuse stands between the load, with a margin, and what the conductor can carry; so it must carry
the load with that margin, and a standard rating must lie between the two.
"""

from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Annotated

from calc.electrical import fuses
from calc.electrical.ampacity import (
    RuleSet,
    Surroundings,
    table_ampacity,
)
from calc.electrical.cable import THICKEST_ROW, USUAL_INSULATION, Cable, cable
from calc.electrical.conductors import (
    HARDLY_SOLD,
    Conductor,
    Finish,
    GaugeReading,
    Series,
    Strands,
    at_temperature,
    conductor,
    conductors,
    resistance_per_length,
)
from calc.electrical.drop import thinnest_within
from calc.electrical.protection import (
    Protection,
    Warmth,
    copper_warmth,
    select_fuse,
    standard_ratings,
)
from calc.electrical.run import THINNEST_PARALLEL, LoadedRun, Run, loaded, run_of
from calc.units.compare import at_least, at_most
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import (
    Amperes,
    Celsius,
    Count,
    Metres,
    Number,
    OhmsPerMetre,
    Share,
    Tag,
    Volts,
)

THINNEST = {Series.AWG: "18 AWG", Series.METRIC: "0.75 mm2"}  # thinner ones are for signals
# A 12 V bank of LFP is charged at 14.6 V, others in proportion: common practice, no source
CHARGED: Annotated[Number, Tag("charging voltage against the nominal one")] = 14.6 / 12

# How many lie together where each is apart from all others: what the word says
ALONE: Annotated[Count, Tag("a conductor apart from all others")] = 1.0


def together(bundled: float, parallel: float) -> float:
    """Return how many loaded conductors lie together where `parallel` of them share a load.

    `bundled` counts those of one circuit and its neighbours; those in parallel, for plus and for
    minus, count as together unless it is 1: then each lies apart from all others.
    """
    return max(bundled, 2 * parallel) if parallel > 1 and bundled > ALONE else bundled


class Decides(Enumeration):
    """What a circuit's conductor is as thick as it is for."""

    DROP = "drop"
    HEAT = "heat"
    BOTH = "drop-and-heat"
    FUSE = "fuse"


@dataclass(frozen=True, kw_only=True)
class Circuit:
    """What asks for a conductor of a `series`, `parallel` of them each way.

    It carries `current` for hours over a one-way `length`, from a supply of `voltage` that may lose
    the share `limit`; `max_voltage` is the highest on it. `temperature` is that of the copper, for
    the drop; `ambient` that of the hottest air on its way, and `bundled` counts the loaded
    conductors that lie together, 1 where each lies apart. `terminals` is the rating of the weakest
    terminal, None where not known.
    """

    current: Amperes
    length: Metres
    voltage: Volts
    limit: Share
    max_voltage: Volts
    series: Series
    parallel: Count
    temperature: Celsius
    finish: Finish
    strands: Strands
    gauge_reading: GaugeReading
    insulation: Celsius
    surroundings: Surroundings
    bundled: Count
    ambient: Celsius
    rule_set: RuleSet
    terminals: Celsius | None = None

    @property
    def each(self) -> Amperes:
        """The current in each of the conductors in parallel."""
        return self.current / self.parallel

    @property
    def margin(self) -> Share:
        """What a fuse must be rated above a load that goes on for hours."""
        return fuses.CONTINUOUS

    @property
    def need(self) -> Amperes:
        """What each conductor must carry for a fuse on it to carry the load for hours."""
        return fuses.CONTINUOUS * self.each

    @property
    def allowed(self) -> Volts:
        """The drop that is allowed."""
        return self.limit * self.voltage

    @property
    def resistance_limit(self) -> OhmsPerMetre:
        """The largest resistance of each conductor that keeps within the drop allowed."""
        return self.allowed / (2 * self.length * self.each)

    @property
    def together(self) -> Count:
        """How many loaded conductors lie together, those in parallel counted too."""
        return together(self.bundled, self.parallel)

    @property
    def charge_ratio(self) -> Share:
        """The highest voltage over the nominal one."""
        return self.max_voltage / self.voltage

    @property
    def ratings(self) -> tuple[float, ...]:
        """The standard fuse ratings [A] for this voltage; none where no family is rated for it."""
        return standard_ratings(self.rule_set, self.max_voltage)

    @property
    def metric(self) -> bool:
        """Whether the sizes are named by their area."""
        return self.series is Series.METRIC

    @property
    def by_nec(self) -> bool:
        """Whether NEC is the rule set."""
        return self.rule_set is RuleSet.NEC


@dataclass(frozen=True)
class Size:
    """A size at work: its resistance when warm, and the cable where the rule set has a row."""

    name: str
    per_length: OhmsPerMetre
    cable: Cable | None

    @property
    def largest_fuse(self) -> Amperes:
        """The most that a fuse on it may be rated; nothing where there is no figure."""
        return self.cable.largest_fuse if self.cable else 0.0


@dataclass(frozen=True, kw_only=True)
class SizedCircuit:
    """The conductor of a circuit and what leads to it.

    Of `sizes`, `for_drop` and `for_heat` are the thinnest for the one or the other alone and
    `larger` the thicker of both; `chosen` is what the circuit needs in the end, with its fuse
    (`protection`), all its conductors at work (`loaded`) and an estimate of how warm their copper
    gets (`warmth`). Each is None where no size does.
    """

    circuit: Circuit
    sizes: tuple[Size, ...]
    for_drop: Size | None
    for_heat: Size | None
    larger: Size | None
    chosen: Size | None
    protection: Protection | None
    loaded: LoadedRun | None
    warmth: Warmth | None

    @property
    def decides(self) -> Decides | None:
        """What the chosen size is as thick as it is for."""
        if self.chosen is None:
            return None
        if self.chosen is not self.larger:
            return Decides.FUSE
        if self.for_drop is self.for_heat:
            return Decides.BOTH
        return Decides.DROP if self.larger is self.for_drop else Decides.HEAT

    @property
    def warm_drop(self) -> Volts | None:
        """The drop with the copper as warm as that."""
        run, warmth = self.loaded, self.warmth
        if run is None or run.drop is None or warmth is None:
            return None
        return at_temperature(run.drop, self.circuit.temperature, warmth.warm)


@cache
def offered(
    series: Series, gauge_reading: GaugeReading, laid: str = "", *, in_vehicles: bool = True
) -> tuple[Conductor, ...]:
    """Return the sizes of a `series` that a run is made of, thinnest first.

    From 18 AWG or 0.75 mm² up, or from the size that is `laid` where that is thinner; sizes without
    a published SAE area are left out where gauges are read as SAE, and `in_vehicles` what is hardly
    sold as flexible cable, unless it is laid.
    """
    first = conductor(THINNEST[Series(series)]).area
    if laid:
        first = min(first, conductor(laid).area)
    as_sae = GaugeReading(gauge_reading) is GaugeReading.SAE and series == Series.AWG
    return tuple(
        one
        for one in conductors()
        if one.series == series
        and one.area >= first
        and (one.sae_area is not None or not as_sae)
        and not (in_vehicles and one.name in HARDLY_SOLD and one.name != laid)
    )


def sizes_for(circuit: Circuit) -> tuple[Size, ...]:
    """Return every size of the series under a circuit's conditions, thinnest first.

    NEC joins only 1/0 AWG and thicker in parallel.
    Raises NotCovered where the rule set has no figure for any size.
    """
    return _sizes(
        circuit.series,
        circuit.parallel > 1,
        circuit.temperature,
        circuit.finish,
        circuit.strands,
        circuit.gauge_reading,
        circuit.insulation,
        circuit.surroundings,
        circuit.together,
        circuit.ambient,
        circuit.max_voltage,
        circuit.rule_set,
    )


@lru_cache(32)
def _sizes(
    series: Series,
    joined: bool,
    temperature: float,
    finish: Finish,
    strands: Strands,
    gauge_reading: GaugeReading,
    insulation: float,
    surroundings: Surroundings,
    bundled: float,
    ambient: float,
    max_voltage: float,
    rule_set: RuleSet,
) -> tuple[Size, ...]:
    found = []
    for one in offered(series, gauge_reading, in_vehicles=RuleSet(rule_set) is not RuleSet.NEC):
        too_thin = one.area < conductor(THINNEST_PARALLEL).area
        if RuleSet(rule_set) is RuleSet.NEC and joined and too_thin:
            continue
        per_length = resistance_per_length(
            one.name, temperature, finish=finish, strands=strands, gauge_reading=gauge_reading
        )
        try:
            laid = cable(
                conductor=one.name,
                insulation=insulation,
                surroundings=surroundings,
                bundled=bundled,
                ambient=ambient,
                max_voltage=max_voltage,
                rule_set=rule_set,
                gauge_reading=gauge_reading,
            )
        except NotCovered as gap:
            if gap.parameter != "conductor":
                raise
            laid = None
        if laid is not None and laid.below_table:
            laid = None  # a size is chosen by what is published
        found.append(Size(one.name, per_length, laid))
    return tuple(found)


def size_circuit(circuit: Circuit) -> SizedCircuit:
    """Return the conductor that a `circuit` needs, with the smallest standard fuse on it.

    The thinnest that keeps within the drop and carries the load with its margin, its copper no
    hotter than the terminals are rated for, or the next on which a fuse fits. Where no fuse family
    is rated for the voltage, the fuse is left open. Raises NotCovered where the rule set has no
    figure for any size.
    """
    sizes = sizes_for(circuit)
    by_resistance = tuple((size, size.per_length) for size in sizes)
    for_drop = thinnest_within(by_resistance, circuit.length, circuit.each, circuit.allowed)
    for_heat = next((size for size in sizes if _carries(size, circuit)), None)
    larger = chosen = protection = None
    if for_drop is not None and for_heat is not None:
        start = max(sizes.index(for_drop), sizes.index(for_heat))
        larger = sizes[start]
        for size in sizes[start:]:
            protection = protected(size, circuit)
            if protection is not None:
                chosen = size
                break
    return SizedCircuit(
        circuit=circuit,
        sizes=sizes,
        for_drop=for_drop,
        for_heat=for_heat,
        larger=larger,
        chosen=chosen,
        protection=protection,
        loaded=_at_work(chosen, circuit) if chosen else None,
        warmth=copper_warmth(protection.cable, circuit.each) if protection else None,
    )


def _carries(size: Size, circuit: Circuit) -> bool:
    """Return whether a size carries the load with its margin, cool enough for its terminals."""
    if size.cable is None or not at_least(size.cable.largest_fuse, circuit.need):
        return False
    most = circuit.terminals
    return most is None or at_most(copper_warmth(size.cable, circuit.each).warm, most)


def _at_work(size: Size, circuit: Circuit) -> LoadedRun:
    """Return all conductors of a `size` at work in a `circuit`."""
    run = Run(
        conductor=size.name,
        length=circuit.length,
        parallel=circuit.parallel,
        temperature=circuit.temperature,
        finish=circuit.finish,
        strands=circuit.strands,
        gauge_reading=circuit.gauge_reading,
        maker_resistance=None,
    )
    return loaded(
        run_of(run), current=circuit.current, voltage=circuit.voltage, limit=circuit.limit
    )


def protected(size: Size, circuit: Circuit) -> Protection | None:
    """Return the fuse on a size that carries the load, or None where it does not or none fits."""
    if size.cable is None or not _carries(size, circuit):
        return None
    found = select_fuse(
        cable=size.cable, current=circuit.each, fault_current=None, terminals=circuit.terminals
    )
    fits = found.fuse is not None or not found.ratings
    return found if fits and found.window_open else None


def usual_ampacity(name: str) -> float:
    """Return what a cable `name` carries [A] by table 5 of 33 CFR 183.425, at 105 °C.

    Nothing below the table. Raises NotCovered for a name that is not known.
    """
    reading = GaugeReading.AWG
    return table_ampacity(name, insulation=USUAL_INSULATION, gauge_reading=reading) or 0.0


def thickest_ampacity() -> float:
    """Return what the thickest cable of that table carries [A], at 105 °C."""
    return usual_ampacity(THICKEST_ROW)
