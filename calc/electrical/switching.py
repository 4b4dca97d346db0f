"""Switching from afar: the contact that breaks a line, and the circuit of a relay's coil.

In scope: one contact that makes and breaks a steady load, and a coil fed over a run from a bank.
Out of scope: breaking a short circuit (a fuse does that), and d.c. above the published table.
"""

from dataclasses import dataclass
from functools import cache
from typing import Annotated

from calc.electrical.ampacity import BASE_AMBIENT, RuleSet, Surroundings
from calc.electrical.cable import UNMARKED_INSULATION
from calc.electrical.conductors import Finish, GaugeReading, Series, Strands
from calc.electrical.drop import longest_run
from calc.electrical.drop_limits import Duty, drop_limit
from calc.electrical.fuses import CONTINUOUS
from calc.electrical.run import LoadedRun
from calc.electrical.single_cable import SingleCable, single_cable
from calc.electrical.sizing import CHARGED, Circuit, SizedCircuit, size_circuit
from calc.tables import table
from calc.units.compare import at_least, at_most
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import (
    Amperes,
    Celsius,
    Coulombs,
    Metres,
    Number,
    Seconds,
    Share,
    Tag,
    Volts,
    Watts,
)

# Of the least pull-in voltage: a state department's rule for its vehicles
PULL_IN_MARGIN: Annotated[Number, Tag("margin on the pull-in voltage of a coil")] = 1.1
# What switches for a panel are made for: common practice, no source
PANEL_SWITCH: Annotated[Amperes, Tag("rating of a panel switch")] = 15.0
# Of any country's mains: common practice, no source
LEAST_MAINS: Annotated[Volts, Tag("lowest mains voltage")] = 100.0
# A bank called 48 V while it charges, with something over: common practice, no source
MOST_OF_BANK: Annotated[Volts, Tag("highest voltage of a line on a bank")] = 65.0
# A warm, well loaded wire: common practice, no source
WARM_WIRE: Annotated[Celsius, Tag("copper of a warm, well loaded wire")] = 60.0


class Supply(Enumeration):
    """What feeds a line."""

    AC = "AC"
    DC = "DC"


class SwitchedLoad(Enumeration):
    """What a contact makes and breaks, as the table of factors parts it."""

    HEATER = "heater"
    MOTOR = "motor"
    COIL = "coil"
    LAMP = "lamp"


class Marking(Enumeration):
    """What the rating printed on a switch is for."""

    UNSAID = "not-said"
    AC = "AC"
    DC = "DC"


class Route(Enumeration):
    """What a switch within reach works."""

    LINE = "switch-the-line"
    RELAY = "switch-a-relay"


@cache
def _rows() -> tuple[tuple[str, float, str, float], ...]:
    return tuple(
        (row["kind"], float(row["up_to_v"]), row["load"], float(row["factor"]))
        for row in table("switch_derating").rows
    )


def derating(*, supply: Supply, voltage: float, load: SwitchedLoad) -> float | None:
    """Return the factor of table 11-4 of AC 43.13-1B for a `load`, or None where none is printed.

    `voltage` [V] is the highest on the circuit. None above 32 V d.c.: an arc there does not go out
    by itself, and only the maker's d.c. rating at that voltage tells. Raises NotCovered for a name
    that is not in an enumeration.
    """
    asked = Supply(supply), SwitchedLoad(load)
    for row_supply, up_to, row_load, factor in _rows():
        if (row_supply, row_load) == asked and at_most(voltage, up_to):
            return factor
    return None


def contact_rating(*, current: float, factor: float) -> float:
    """Return the least rating [A] of a contact for a steady `current` [A].

    The larger of the load's `factor` and the margin of 125 % for hours (NEC 210.20(A)): both speak
    of the same heat, so they are not multiplied.
    """
    return current * max(factor, CONTINUOUS)


def coil_allowance(*, voltage: float, lowest: float, pull_in: float) -> float:
    """Return the drop [V] that a coil's run may have: U (lowest - 1.1 pull_in); below 0 none.

    `voltage` [V] is the coil's nominal; `lowest` the share of it that the bank sags to and
    `pull_in` the share at which the relay surely closes, both [0..1].
    """
    return voltage * (lowest - PULL_IN_MARGIN * pull_in)


@dataclass(frozen=True, kw_only=True)
class SwitchedLine:
    """A steady load on a line, and the contact that makes and breaks it.

    `factor` is that of the load, `rating` the least of the contact: None where none is published.
    `sustained` is what it must carry for hours.
    """

    power: Watts
    kind: Supply
    voltage: Volts
    power_factor: Number
    load: SwitchedLoad
    current: Amperes
    sustained: Amperes
    factor: Number | None
    rating: Amperes | None

    @property
    def margin(self) -> Share:
        """What a contact must be rated above a current that goes on for hours."""
        return CONTINUOUS

    @property
    def dc(self) -> bool:
        """Whether it is d.c."""
        return self.kind is Supply.DC


@dataclass(frozen=True, kw_only=True)
class Switch:
    """A switch for the line, if one is at hand: its printed rating, and what that is for."""

    rated: Amperes | None
    marked: Marking

    @property
    def at_hand(self) -> bool:
        """Whether there is one."""
        return self.rated is not None

    def carries(self, current: float | None) -> bool:
        """Return whether there is one that is rated for `current` [A], if that is known."""
        return self.rated is not None and current is not None and at_least(self.rated, current)

    def marked_for(self, supply: Supply) -> bool:
        """Return whether its rating is for a `supply`."""
        return self.marked.value == supply.value


@dataclass(frozen=True, kw_only=True)
class CoilCircuit:
    """A relay's coil and the run to it over `distance`, from a bank that sags to `sags_to`.

    `lowest` and `pull_in` are shares of the coil's `voltage`. It `must_see` a voltage at which it
    surely closes; so the run may lose what is `allowed`, and must carry `need`. `sized` is the
    conductor for that, None where the coil has nothing to spare.
    """

    current: Amperes
    voltage: Volts
    lowest: Share
    pull_in: Share
    distance: Metres
    hours: Seconds
    must_see: Volts
    sags_to: Volts
    allowed: Volts
    need: Amperes
    sized: SizedCircuit | None

    @property
    def run(self) -> LoadedRun | None:
        """The run to the coil, None where no size brings enough to it."""
        return self.sized.loaded if self.sized else None

    @property
    def fuse(self) -> Amperes | None:
        """The fuse for its wire."""
        found = self.sized.protection if self.sized else None
        return found.fuse if found else None

    @property
    def pull_in_margin(self) -> Number:
        """What the coil must see above its pull-in voltage."""
        return PULL_IN_MARGIN

    @property
    def coil_voltage(self) -> Volts | None:
        """What is left at the coil at the worst moment."""
        drop = self.run.drop if self.run else None
        return None if drop is None else self.sags_to - drop

    @property
    def longest(self) -> Metres | None:
        """How far this wire could bring enough."""
        run = self.run
        return longest_run(self.current, run.laid.per_length, self.allowed) if run else None

    @property
    def held_charge(self) -> Coulombs:
        """What the coil takes in a day."""
        return self.current * self.hours

    @property
    def power(self) -> Watts:
        """The heat of the coil while it is held."""
        return self.current * self.voltage


@dataclass(frozen=True, kw_only=True)
class RemoteSwitch:
    """How a `line` is switched from afar: directly or by a relay.

    `line_sized` is the conductor that a line on a bank would need to the switch and back,
    `single_cable` tells whether one cable carries it at all. Both are None for mains.
    """

    line: SwitchedLine
    switch: Switch
    route: Route
    coil: CoilCircuit
    series: Series
    line_sized: SizedCircuit | None
    single_cable: SingleCable | None

    @property
    def relayed(self) -> bool:
        """Whether the switch works a relay."""
        return self.route is Route.RELAY

    @property
    def line_conductor(self) -> str | None:
        """The size that carries a line on a bank to the switch and back, None where none does."""
        chosen = self.line_sized.chosen if self.line_sized else None
        return chosen.name if chosen else None

    @property
    def panel_switch(self) -> Amperes:
        """What switches for a panel go to."""
        return PANEL_SWITCH


def remote_switch(
    *,
    power: float,
    voltage: float,
    kind: Supply,
    load: SwitchedLoad,
    distance: float,
    coil_current: float,
    control_voltage: float,
    hours: float,
    switch: float | None,
    marked: Marking,
    lowest: float,
    pull_in: float,
    series: Series,
    power_factor: float,
) -> RemoteSwitch:
    """Return how to switch `power` [W] from `distance` [m] away.

    The line has `voltage` [V], a relay's coil takes `coil_current` [A] at `control_voltage` [V] and
    is held for `hours` [s] a day. A `switch` [A] may be at hand, `marked` for its rating. Wires are
    of a `series`, with insulation that bears no marking, at 60 °C. Raises NotCovered for a voltage
    that is not of its `kind`, or a name that is not in an enumeration.
    """
    supply, load = Supply(kind), SwitchedLoad(load)
    dc = supply is Supply.DC
    if dc and not at_most(voltage, MOST_OF_BANK):
        own = f"must be the bank's own for DC, up to {MOST_OF_BANK:g} V, like 12.8 V."
        raise NotCovered("voltage", own)
    if not dc and not at_least(voltage, LEAST_MAINS):
        mains = f"must be that of the mains for AC, {LEAST_MAINS:g} V or more, like 120 V."
        raise NotCovered("voltage", mains)
    current = power / (voltage * power_factor)
    factor = derating(supply=supply, voltage=voltage, load=load)
    line = SwitchedLine(
        power=power,
        kind=supply,
        voltage=voltage,
        power_factor=power_factor,
        load=load,
        current=current,
        sustained=current * CONTINUOUS,
        factor=factor,
        rating=None if factor is None else contact_rating(current=current, factor=factor),
    )
    at_hand = Switch(rated=switch, marked=Marking(marked))
    line_sized = cable = None
    if dc:
        cable = single_cable(current=current, max_voltage=CHARGED * voltage)
        line_sized = _sized(
            current=current,
            length=distance,
            voltage=voltage,
            limit=drop_limit(Duty.CRITICAL),
            series=series,
        )
    coil = _coil(
        current=coil_current,
        voltage=control_voltage,
        lowest=lowest,
        pull_in=pull_in,
        distance=distance,
        hours=hours,
        series=series,
    )
    return RemoteSwitch(
        line=line,
        switch=at_hand,
        route=_route(line, at_hand),
        coil=coil,
        series=Series(series),
        line_sized=line_sized,
        single_cable=cable,
    )


def _route(line: SwitchedLine, switch: Switch) -> Route:
    """Return the line for what a panel switch breaks, or the one at hand; else a relay."""
    small = line.rating is not None and at_most(line.rating, PANEL_SWITCH)
    fits = switch.carries(line.rating) and switch.marked_for(line.kind)
    return Route.LINE if small or fits else Route.RELAY


def _coil(
    *,
    current: float,
    voltage: float,
    lowest: float,
    pull_in: float,
    distance: float,
    hours: float,
    series: Series,
) -> CoilCircuit:
    allowed = max(0.0, coil_allowance(voltage=voltage, lowest=lowest, pull_in=pull_in))
    sized = None
    if allowed > 0:
        sized = _sized(
            current=current,
            length=distance,
            voltage=voltage,
            limit=allowed / voltage,
            series=series,
        )
    return CoilCircuit(
        current=current,
        voltage=voltage,
        lowest=lowest,
        pull_in=pull_in,
        distance=distance,
        hours=hours,
        must_see=PULL_IN_MARGIN * pull_in * voltage,
        sags_to=lowest * voltage,
        allowed=allowed,
        need=CONTINUOUS * current,
        sized=sized,
    )


def _sized(
    *, current: float, length: float, voltage: float, limit: float, series: Series
) -> SizedCircuit:
    """Return the conductor of two wires that bear no marking, by the boats' rules."""
    circuit = Circuit(
        current=current,
        length=length,
        voltage=voltage,
        limit=limit,
        max_voltage=CHARGED * voltage,
        series=Series(series),
        parallel=1,
        temperature=WARM_WIRE,
        finish=Finish.PLAIN,
        strands=Strands.FLEXIBLE,
        gauge_reading=GaugeReading.AWG,
        insulation=UNMARKED_INSULATION,
        surroundings=Surroundings.OUTSIDE,
        bundled=2,
        ambient=BASE_AMBIENT,
        rule_set=RuleSet.CFR33,
    )
    return size_circuit(circuit)
