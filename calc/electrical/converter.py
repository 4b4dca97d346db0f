"""A d.c. converter between two voltages: what it takes, what it loses, its cables and fuses.

In scope: step-down and step-up at a steady load, and what a higher system voltage saves in copper.
Out of scope: chargers, whose output follows a battery (`calc.energy`), and start-up currents.
"""

from dataclasses import dataclass, replace
from typing import Annotated

from calc.comfort.airflow import dissipated, output_left
from calc.electrical.conductors import conductor
from calc.electrical.protection import Protection, select_fuse
from calc.electrical.sizing import Circuit, SizedCircuit, size_circuit
from calc.units.compare import at_least, at_most
from calc.units.covered import Enumeration
from calc.units.si import (
    Amperes,
    Celsius,
    Coulombs,
    Joules,
    Kilograms,
    KilogramsPerCubicMetre,
    Metres,
    Seconds,
    Share,
    SharePerKelvin,
    Tag,
    Volts,
    Watts,
)

# Of standard annealed copper: IEC 60028
COPPER: Annotated[KilogramsPerCubicMetre, Tag("density of copper")] = 8890.0
# Under load, before it is cut off: common practice, no source
BANK_LOW: Annotated[Share, Tag("lowest working voltage of a bank to its nominal one")] = 0.9
# On charge: common practice, no source
BANK_HIGH: Annotated[Share, Tag("highest working voltage of a bank to its nominal one")] = 1.25


class System(Enumeration):
    """A nominal voltage of a bank."""

    V12 = "12-V"
    V24 = "24-V"
    V48 = "48-V"

    @property
    def volts(self) -> Volts:
        """The nominal voltage."""
        return float(self.value.removesuffix("-V"))


class RatedFor(Enumeration):
    """What the current on a converter's label is for."""

    HOURS = "hours"
    PEAK = "peak-or-not-said"


class Isolation(Enumeration):
    """How a converter's two sides are joined."""

    COMMON = "common-negative"
    ISOLATED = "isolated"
    NOT_KNOWN = "not-known"


@dataclass(frozen=True, kw_only=True)
class ConverterLabel:
    """What a converter's label and sheet say.

    It works from `input_low` to `input_high` and gives `rated` at `output`, full up to `rated_to`
    and then the share `derating` less for each degree. `standby` is what it takes without a load.
    """

    input_low: Volts
    input_high: Volts
    output: Volts
    rated: Amperes
    rated_for: RatedFor
    rated_to: Celsius
    derating: SharePerKelvin
    efficiency: Share
    standby: Amperes
    isolation: Isolation


@dataclass(frozen=True, kw_only=True)
class Feed:
    """What a converter is fed from: a bank of a `system`, at its `lowest` and `highest` voltage.

    `fault_current` is what it drives into a short where the converter's cable begins.
    """

    system: System
    lowest: Volts
    highest: Volts
    fault_current: Amperes


@dataclass(frozen=True, kw_only=True)
class Side:
    """One side's cable as sized, and the fuse on it that also breaks the fault, if one does."""

    sized: SizedCircuit
    protection: Protection | None

    @property
    def copper(self) -> Kilograms | None:
        """The copper in it, out and back."""
        return copper_mass(self.sized)


@dataclass(frozen=True, kw_only=True)
class AtVoltage:
    """The same power from a bank of a `system`: its current, its cable, what converters lose."""

    system: System
    current: Amperes
    sized: SizedCircuit
    lost: Joules

    @property
    def name(self) -> str:
        """The system's nominal voltage, as it is written."""
        return f"{self.system.volts:g} V"

    @property
    def cable(self) -> str:
        """The cable's size, if one does."""
        return self.sized.chosen.name if self.sized.chosen else "none fits"

    @property
    def fuse(self) -> Amperes | None:
        """The smallest standard fuse on it."""
        return self.sized.protection.fuse if self.sized.protection else None

    @property
    def copper(self) -> Kilograms | None:
        """The copper in it, out and back."""
        return copper_mass(self.sized)


@dataclass(frozen=True, kw_only=True)
class Converter:
    """A converter at work: `load` at its output for `load_time` a day, switched on for `on_time`.

    `systems` is the largest load of the bank itself, `power` over `length`, at each system voltage.
    """

    label: ConverterLabel
    feed: Feed
    load: Amperes
    load_time: Seconds
    on_time: Seconds
    air: Celsius
    input: Side
    output: Side
    power: Watts
    length: Metres
    systems: tuple[AtVoltage, ...]

    @property
    def output_power(self) -> Watts:
        """Power of the load."""
        return self.label.output * self.load

    @property
    def input_power(self) -> Watts:
        """What the converter takes."""
        return self.output_power / self.label.efficiency

    @property
    def loss(self) -> Watts:
        """What it turns into heat under load."""
        return dissipated(self.output_power, self.label.efficiency)

    @property
    def input_current(self) -> Amperes:
        """What it takes at the lowest voltage: the power stays, so the current rises."""
        return self.input_power / self.feed.lowest

    @property
    def left(self) -> Share:
        """The share of its rating that the air around it leaves."""
        return output_left(self.air, self.label.rated_to, self.label.derating)

    @property
    def available(self) -> Amperes:
        """The most that it gives in that air."""
        return self.label.rated * self.left

    @property
    def idle_time(self) -> Seconds:
        """How long of a day it is on without a load."""
        return max(0.0, self.on_time - self.load_time)

    @property
    def standby_charge(self) -> Coulombs:
        """What it takes from the bank in a day without a load."""
        return self.label.standby * self.idle_time

    @property
    def standby_energy(self) -> Joules:
        """The same as energy, at the bank's nominal voltage."""
        return self.standby_charge * self.feed.system.volts

    @property
    def delivered(self) -> Joules:
        """What the load takes in a day."""
        return self.output_power * self.load_time

    @property
    def lost(self) -> Joules:
        """What the converter costs in a day, under load and idle."""
        return self.loss * self.load_time + self.standby_energy

    @property
    def here(self) -> AtVoltage:
        """The row of this system."""
        return next(one for one in self.systems if one.system is self.feed.system)

    @property
    def at_12(self) -> AtVoltage:
        """The row of a 12 V system."""
        return next(one for one in self.systems if one.system is System.V12)

    @property
    def copper_saved(self) -> Kilograms | None:
        """The copper that this system saves against 12 V; None at 12 V, or without a cable."""
        there, here = self.at_12.copper, self.here.copper
        if self.feed.system is System.V12 or there is None or here is None:
            return None
        return max(0.0, there - here)

    @property
    def ideal_share(self) -> Share | None:
        """The share of 12 V's copper that the drop alone asks for here; None at 12 V."""
        if self.feed.system is System.V12:
            return None
        return (System.V12.volts / self.feed.system.volts) ** 2

    @property
    def overloaded(self) -> bool:
        """Whether the load is more than it gives."""
        return not at_most(self.load, self.available)

    @property
    def too_high(self) -> bool:
        """Whether the bank's charge goes above what it takes."""
        return not at_most(self.feed.highest, self.label.input_high)

    @property
    def too_low(self) -> bool:
        """Whether it stops before the bank is empty."""
        return not at_least(self.feed.lowest, self.label.input_low)


def copper_mass(sized: SizedCircuit) -> float | None:
    """Return the copper [kg] in a sized circuit, out and back: 2 L A ρ. None where no size does."""
    if sized.chosen is None:
        return None
    circuit = sized.circuit
    return 2 * circuit.length * conductor(sized.chosen.name).area * circuit.parallel * COPPER


def _side(circuit: Circuit, fault_current: float) -> Side:
    """Return the cable of a circuit, with the fuse that breaks `fault_current` [A] as well."""
    sized = size_circuit(circuit)
    if sized.chosen is None or sized.chosen.cable is None:
        return Side(sized=sized, protection=None)
    fuse = select_fuse(cable=sized.chosen.cable, current=circuit.each, fault_current=fault_current)
    return Side(sized=sized, protection=fuse)


def converter(
    *,
    label: ConverterLabel,
    feed: Feed,
    load: float,
    load_time: float,
    on_time: float,
    air: float,
    laid: Circuit,
    output_length: float,
    power: float,
    power_length: float,
) -> Converter:
    """Return what a converter does between a bank and a `load` [A].

    `laid` is the input's circuit but for its current and voltages; the output's differs in its
    `output_length` [m]. `power` [W] over `power_length` [m] is the largest load of the bank itself,
    for the comparison of system voltages: the lowest and highest voltage in proportion, the same
    share of drop. Raises NotCovered.
    """
    given = label.output * load
    heat = dissipated(given, label.efficiency)
    nominal = feed.system.volts
    lost = heat * load_time + label.standby * nominal * max(0.0, on_time - load_time)
    into = replace(
        laid,
        current=(given + heat) / feed.lowest,
        voltage=nominal,
        max_voltage=feed.highest,
    )
    out = replace(
        laid, current=load, voltage=label.output, max_voltage=label.output, length=output_length
    )

    def at(system: System) -> AtVoltage:
        times = system.volts / nominal
        current = power / (feed.lowest * times)
        circuit = replace(
            laid,
            current=current,
            length=power_length,
            voltage=system.volts,
            max_voltage=feed.highest * times,
        )
        # At the load's own voltage no converter stands between
        direct = nearest(label.output) is system
        return AtVoltage(
            system=system,
            current=current,
            sized=size_circuit(circuit),
            lost=0.0 if direct else lost,
        )

    return Converter(
        label=label,
        feed=feed,
        load=load,
        load_time=load_time,
        on_time=on_time,
        air=air,
        input=_side(into, feed.fault_current),
        output=_side(out, feed.fault_current),
        power=power,
        length=power_length,
        systems=tuple(at(system) for system in System),
    )


def nearest(volts: float) -> System | None:
    """Return the system whose bank works near `volts` [V], or None where none does."""
    for system in System:
        if at_least(volts, BANK_LOW * system.volts) and at_most(volts, BANK_HIGH * system.volts):
            return system
    return None
