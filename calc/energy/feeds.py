"""What joins an engine and a second bank: a relay, or a regulated charger.

A relay is a closed switch: Ohm's law alone decides. A charger takes constant power for a constant
output. In scope: an engine whose regulator holds its voltage.
"""

from dataclasses import dataclass
from math import sqrt
from typing import Annotated

from calc.electrical.run import RunResult
from calc.units.compare import at_least, at_most
from calc.units.covered import Enumeration
from calc.units.si import Amperes, Count, Ohms, Share, Tag, Volts, Watts

# For a nominal 12 V, at its input: 13.0 to 13.3 V as makers set it. Common practice, no source
STARTS_AT: Annotated[Volts, Tag("voltage from which a charger that goes by voltage runs")] = 13.2


class Method(Enumeration):
    """What joins the two."""

    RELAY = "relay"
    CHARGER = "charger"


class Fused(Enumeration):
    """At which of its two batteries a run has a fuse."""

    BOTH = "both-ends"
    STARTER = "starter-battery-only"
    HOUSE = "house-bank-only"
    NEITHER = "no-fuse"
    UNKNOWN = "not-known"


class StopsBy(Enumeration):
    """What stops a charger as the engine stops."""

    SIGNAL = "run-signal"
    VOLTAGE = "voltage"
    UNKNOWN = "not-checked"


_UNFUSED = {
    Fused.STARTER: "the house bank",
    Fused.HOUSE: "the starter battery",
    Fused.NEITHER: "each battery",
}


@dataclass(frozen=True, kw_only=True)
class EngineRun:
    """The run between engine and bank: what is laid, with `joints` of a resistance each.

    `fused` says at which ends it has a fuse. `known` is its whole resistance where that is known,
    out and back, and stands in for the sum.
    """

    laid: RunResult
    joints: Count
    joint_resistance: Ohms
    fused: Fused
    known: Ohms | None

    @property
    def unfused(self) -> str | None:
        """Where a fuse is missing, None where none is or nobody knows."""
        return _UNFUSED.get(self.fused)

    @property
    def joints_total(self) -> Ohms:
        """The resistance of all joints."""
        return self.joints * self.joint_resistance

    @property
    def total(self) -> Ohms:
        """The resistance of the whole run."""
        return self.laid.resistance + self.joints_total if self.known is None else self.known

    @property
    def read(self) -> RunResult | None:
        """What is laid where its resistance is read from a table, None where the run's is known."""
        return self.laid if self.known is None else None


@dataclass(frozen=True, kw_only=True)
class RelayFeed:
    """A closed relay between an engine and a bank.

    The `loop` is the run and the bank's own resistance. `current` flows into the bank, or out of it
    where it is negative.
    """

    engine_voltage: Volts
    bank_voltage: Volts
    bank_resistance: Ohms
    loop: Ohms
    current: Amperes

    @property
    def flows(self) -> bool:
        """Whether anything flows into the bank."""
        return not at_most(self.engine_voltage, self.bank_voltage)

    @property
    def into_bank(self) -> Amperes | None:
        """What the bank gets at first, None where it gets nothing."""
        return self.current if self.flows else None

    @property
    def drain(self) -> Amperes | None:
        """The most that flows out of the bank, None where it is charged."""
        return None if self.flows else max(0.0, -self.current)

    @property
    def asked(self) -> Amperes | None:
        """What is asked of the alternator for it."""
        return max(0.0, self.current)

    @property
    def run_current(self) -> Amperes | None:
        """The most that the run carries, either way."""
        return abs(self.current)


@dataclass(frozen=True, kw_only=True)
class Input:
    """What stands at the input of a charger."""

    current: Amperes
    voltage: Volts


@dataclass(frozen=True, kw_only=True)
class ChargerFeed:
    """A charger of output `limit` that gives what heat leaves of it, and works down to a voltage.

    `stops_by` says what stops it as the engine stops; one that goes by voltage runs from `starts`
    at the engine on, and `engine` is what is there.
    `first` and `last` are its input at the bank's voltage now and as the charge ends, for the input
    powers `power_first` and `power_last`; None where the run cannot pass as much.
    """

    limit: Amperes
    efficiency: Share
    output_left: Share
    lowest_input: Volts
    stops_by: StopsBy
    starts: Volts
    engine: Volts
    gives: Amperes
    power_first: Watts
    power_last: Watts
    first: Input | None
    last: Input | None

    @property
    def unfed(self) -> bool:
        """Whether the voltage at its input breaks down."""
        return self.last is None

    @property
    def starved(self) -> bool:
        """Whether it gets less voltage than it works on."""
        return self.last is not None and not at_least(self.last.voltage, self.lowest_input)

    @property
    def stays_off(self) -> bool:
        """Whether it goes by voltage and takes such an engine for one that stands."""
        return self.stops_by is StopsBy.VOLTAGE and not at_least(self.engine, self.starts)

    @property
    def flows(self) -> bool:
        """Whether it charges."""
        return not (self.unfed or self.starved or self.stays_off)

    @property
    def into_bank(self) -> Amperes | None:
        """What the bank gets at first, None where it gets nothing."""
        return self.gives if self.flows else None

    @property
    def input_current(self) -> Amperes | None:
        """What it takes at first, None where the run cannot feed it to the end."""
        return None if self.first is None or self.last is None else self.first.current

    @property
    def asked(self) -> Amperes | None:
        """What is asked of the alternator for it, as the charge ends."""
        return None if self.last is None else self.last.current

    @property
    def run_current(self) -> Amperes | None:
        """The most on either side of it, for one size of cable throughout."""
        return None if self.last is None else max(self.last.current, self.gives)


def relay_current(*, engine_voltage: float, bank_voltage: float, resistance: float) -> float:
    """Return the current [A] into the bank through a closed relay: (Ve - Vb)/R, Ohm's law.

    `resistance` [ohm] is that of the whole loop, bank included. Negative where the bank feeds the
    vehicle. Nothing else limits it, so long as the regulator holds `engine_voltage` [V].
    """
    return (engine_voltage - bank_voltage) / resistance


def charger_input(*, power: float, engine_voltage: float, resistance: float) -> Input | None:
    """Return what stands at the input of a charger that takes `power` [W].

    `resistance` [ohm] is that of the run from the engine, out and back. I (Ve - I R) = P; of its
    two solutions the one with the higher voltage, which is the one that stands. None where the run
    cannot pass that much power: more than Ve²/4R.
    """
    room = engine_voltage**2 - 4 * resistance * power
    if room < 0:
        return None
    current = 2 * power / (engine_voltage + sqrt(room))
    return Input(current=current, voltage=engine_voltage - current * resistance)


def charger_current(*, limit: float, output_left: float, fed: float = 1.0) -> float:
    """Return what a charger gives [A]: its `limit` [A] times what heat and alternator leave.

    `output_left` [0..1] is its own derating, `fed` [0..1] the share of its input that there is.
    """
    return limit * output_left * fed


def relay_feed(
    *, engine_voltage: float, bank_voltage: float, bank_resistance: float, run_resistance: float
) -> RelayFeed:
    """Return what a closed relay passes between an engine [V] and a bank [V].

    The resistances [ohm] are those of the bank inside and of the run. An alternator whose regulator
    holds its voltage adds none.
    """
    loop = run_resistance + bank_resistance
    return RelayFeed(
        engine_voltage=engine_voltage,
        bank_voltage=bank_voltage,
        bank_resistance=bank_resistance,
        loop=loop,
        current=relay_current(
            engine_voltage=engine_voltage, bank_voltage=bank_voltage, resistance=loop
        ),
    )


def charger_feed(
    *,
    limit: float,
    efficiency: float,
    output_left: float,
    lowest_input: float,
    stops_by: StopsBy,
    starts: float,
    engine_voltage: float,
    bank_voltage: float,
    ends_at: float,
    resistance: float,
) -> ChargerFeed:
    """Return what a charger of output `limit` [A] takes and gives, fed over `resistance` [ohm].

    It charges a bank from `bank_voltage` to `ends_at` [V]. P = I U/η at its input. One that goes by
    voltage runs from `starts` [V] on.
    """
    gives = charger_current(limit=limit, output_left=output_left)
    first, last = (gives * volts / efficiency for volts in (bank_voltage, ends_at))
    inputs = (
        charger_input(power=power, engine_voltage=engine_voltage, resistance=resistance)
        for power in (first, last)
    )
    return ChargerFeed(
        limit=limit,
        efficiency=efficiency,
        output_left=output_left,
        lowest_input=lowest_input,
        stops_by=StopsBy(stops_by),
        starts=starts,
        engine=engine_voltage,
        gives=gives,
        power_first=first,
        power_last=last,
        first=next(inputs),
        last=next(inputs),
    )
