"""What an appliance takes from the bank in a day, straight from it or through an inverter.

In scope: appliances that run part of the time, by a thermostat or by hand, on a steady average.
Out of scope: the moment of the start, and part-load efficiency beyond a fixed figure and an idle
draw.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated

from calc.energy.battery import Chemistry
from calc.units.compare import at_least, at_most
from calc.units.constants import DAY
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import (
    Celsius,
    Coulombs,
    Joules,
    Number,
    Seconds,
    Share,
    Tag,
    Volts,
    Watts,
)

# As energy labels have it
YEAR: Annotated[Number, Tag("days of a year on an energy label")] = 365.0
# Of the larger, within which figures do not part two appliances: common practice, no source
CLOSE: Annotated[Share, Tag("difference that does not part two appliances")] = 0.1
# Of the time it is fed, beyond which a cold box has nothing in hand: common practice, no source
BUSY: Annotated[Share, Tag("longest running of a cold box with something in hand")] = 0.9

Taken = Callable[[float], float]  # energy [J] from the bank for a running time [s]


class Use(Enumeration):
    """What switches an appliance: a thermostat may call at any hour."""

    THERMOSTAT = "thermostat"
    BY_HAND = "by-hand"


class Figures(Enumeration):
    """Where an appliance's power and share of the day are from."""

    LABELS = "from-labels"
    MEASURED = "measured"


@dataclass(frozen=True, kw_only=True)
class ApplianceDay:
    """An appliance's day: `need` is the time it would run, `running` that for which it can.

    `energy` and `charge` are what it takes from the bank; `hot_running` and `hot_charge` the same
    on a hot day, None where nothing is kept cold. `hot_share` is the share of its `hours_on`, in
    which it is fed, that it would run then.
    """

    power: Watts
    duty: Share
    hours_on: Seconds
    banked: Share
    need: Seconds
    running: Seconds
    energy: Joules
    charge: Coulombs
    hot_running: Seconds | None
    hot_charge: Coulombs | None
    hot_share: Share | None

    @property
    def served(self) -> bool:
        """Whether it is fed for as long as it needs to run."""
        return at_most(self.need, self.hours_on)

    @property
    def holds_in_heat(self) -> bool:
        """Whether a hot day leaves it something in hand."""
        return self.hot_share is None or at_most(self.hot_share, BUSY)


@dataclass(frozen=True, kw_only=True)
class Routes:
    """A battery-voltage appliance (`direct`) beside a household one on an inverter, day by day.

    `carried` of the `fed` hours of the household one are fed by others than the bank. None where
    the household one takes less (`extra…`) or more (`spared_charge`), and `idle_share` where it
    takes nothing at all.
    """

    use: Use
    figures: Figures
    chemistry: Chemistry
    voltage: Volts
    efficiency: Share
    idle: Watts
    carried: Seconds
    days: Number
    sun_hours: Seconds
    hot: Celsius
    direct: ApplianceDay
    household: ApplianceDay
    day: Seconds
    from_bank: Seconds
    off: Seconds
    idle_energy: Joules
    idle_charge: Coulombs
    idle_share: Share | None
    hot_factor: Number | None
    extra_charge: Coulombs | None
    spared_charge: Coulombs | None
    extra_bank: Coulombs | None
    extra_array: Watts | None

    @property
    def through_inverter(self) -> bool:
        """Whether an inverter feeds one of the two: always."""
        return True

    extra_drive: Seconds | None
    year: Number
    year_energy: Joules

    @property
    def keeps_cold(self) -> bool:
        """Whether a thermostat keeps something cold."""
        return self.use is Use.THERMOSTAT

    @property
    def pauses(self) -> bool:
        """Whether something is kept cold that is switched off for a part of the day."""
        return self.keeps_cold and self.off > 0

    @property
    def dearer(self) -> bool:
        """Whether the household one takes more, or as much."""
        return self.extra_charge is not None

    @property
    def near(self) -> bool:
        """Whether the two are too near each other to be told apart by such figures."""
        one, other = self.direct.charge, self.household.charge
        return at_least(one, other * (1 - CLOSE)) and at_least(other, one * (1 - CLOSE))


def routes(
    *,
    dc_power: float,
    dc_duty: float,
    ac_power: float,
    ac_duty: float,
    idle: float,
    efficiency: float,
    voltage: float,
    use: Use,
    figures: Figures,
    hours_on: float,
    carried: float,
    days: float,
    chemistry: Chemistry,
    usable: float,
    bank_efficiency: float,
    sun_hours: float,
    losses: float,
    charger: float,
    room: float,
    hot: float,
    cold: float,
) -> Routes:
    """Return what each route takes in a day [A·s, J], and what would make up the difference.

    `dc_…` [W, share of the day] are of the battery-voltage appliance, `ac_…` of the household one,
    which is fed for `hours_on` [s], `carried` [s] of it by others than the bank. `idle` [W] is the
    inverter's own draw, `days` without charging are bridged at the share `usable`; `sun_hours` [s]
    are a day's sun as if at full strength, `charger` [A] what an engine gives. Shares hold in air
    of `room` [°C]; `hot` and `cold` [°C] are the air of a hot day and inside the box.
    Raises NotCovered if others feed it for longer than it is fed.
    """
    use = Use(use)
    if not at_most(carried, hours_on):
        raise NotCovered("carried", "must be no more than the hours it has power.")
    from_bank = hours_on - carried
    kept = use is Use.THERMOSTAT
    banked = from_bank / hours_on
    factor = warmth_factor(room=room, hot=hot, cold=cold) if kept else None

    direct_banked = (DAY - carried) / DAY if kept else banked

    def direct_taken(running: float) -> float:
        return direct_energy(power=dc_power, running=running, banked=direct_banked)

    def household_taken(running: float) -> float:
        return inverter_energy(
            power=ac_power,
            running=running,
            banked=banked,
            efficiency=efficiency,
            idle=idle,
            on=from_bank,
        )

    def day_of(power: float, duty: float, fed: float, banked: float, taken: Taken) -> ApplianceDay:
        running = running_time(duty=duty, fed=fed)
        hot_running = None if factor is None else running_time(duty=duty * factor, fed=fed)
        return ApplianceDay(
            power=power,
            duty=duty,
            hours_on=fed,
            banked=banked,
            need=DAY * duty,
            running=running,
            energy=taken(running),
            charge=taken(running) / voltage,
            hot_running=hot_running,
            hot_charge=None if hot_running is None else taken(hot_running) / voltage,
            hot_share=None if factor is None else DAY * duty * factor / fed,
        )

    direct = day_of(dc_power, dc_duty, DAY, direct_banked, direct_taken)
    household = day_of(ac_power, ac_duty, hours_on, banked, household_taken)
    difference = household.charge - direct.charge
    extra = difference if difference >= 0 else None
    return Routes(
        use=use,
        figures=Figures(figures),
        chemistry=Chemistry(chemistry),
        voltage=voltage,
        efficiency=efficiency,
        idle=idle,
        carried=carried,
        days=days,
        sun_hours=sun_hours,
        hot=hot,
        direct=direct,
        household=household,
        day=DAY,
        from_bank=from_bank,
        off=DAY - hours_on,
        idle_energy=idle * from_bank,
        idle_charge=idle * from_bank / voltage,
        idle_share=idle * from_bank / household.energy if household.energy else None,
        hot_factor=factor,
        extra_charge=extra,
        spared_charge=-difference if extra is None else None,
        extra_bank=None if extra is None else extra * days / usable,
        extra_array=None
        if extra is None
        else array_for(
            energy=extra * voltage, efficiency=bank_efficiency, losses=losses, sun_time=sun_hours
        ),
        extra_drive=None if extra is None else extra / (bank_efficiency * charger),
        year=YEAR,
        year_energy=ac_power * DAY * ac_duty * YEAR,
    )


def running_time(*, duty: float, fed: float) -> float:
    """Return how long [s] an appliance runs in a day of which it is `fed` for some time [s].

    `duty` is the share [0..1] of the whole day that it would run if it were always fed. What leaks
    into a cold box while it is off has to be pumped out afterwards, so the need of a day is not
    less for that (a little less in truth, since the box is warmer meanwhile: the high side). It
    never runs longer than it is fed.
    """
    return min(DAY * duty, fed)


def direct_energy(*, power: float, running: float, banked: float) -> float:
    """Return the energy [J] from the bank for `power` [W] over `running` [s] of a day.

    `banked` is the share [0..1] of that running for which the bank feeds it.
    """
    return power * running * banked


def inverter_energy(
    *, power: float, running: float, banked: float, efficiency: float, idle: float, on: float
) -> float:
    """Return the energy [J] from the bank for `power` [W] through an inverter that is `on` [s].

    P t/eta, and the `idle` draw [W] for all of the time that the inverter is on from the bank. A
    peak `efficiency` holds part of the idle draw already: a little on the high side.
    """
    return idle * on + power * running * banked / efficiency


def warmth_factor(*, room: float, hot: float, cold: float) -> float:
    """Return by how much more a box at `cold` [°C] runs in air at `hot` than at `room` [°C].

    What leaks in goes with the difference in temperature. Low side: the compressor also gets less
    efficient in warm air. Never below 1: a day cooler than the `room` is no hot day. `cold` must be
    below both others.
    """
    return max(1.0, (hot - cold) / (room - cold))


def array_for(*, energy: float, efficiency: float, losses: float, sun_time: float) -> float:
    """Return the array [W, rated] that brings `energy` [J] a day out of the bank.

    P = E/(eta (1 - losses) t), `sun_time` [s] being the day's sun as if at full strength,
    `efficiency` the bank's for energy, as if all of it were stored.
    """
    return energy / (efficiency * (1 - losses) * sun_time)
