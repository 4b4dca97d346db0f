"""How a bank gets full again after a trip, with nothing on it."""

from dataclasses import dataclass, replace

from calc.energy import charging
from calc.energy.balance import HOURS, NOTHING_ON, Hours, hour
from calc.energy.outlook import HORIZON
from calc.energy.week import Recovery, WeekInputs
from calc.units.compare import at_least
from calc.units.constants import HOUR
from calc.units.si import Seconds, Share


@dataclass(frozen=True, kw_only=True)
class Recovered:
    """How a bank gets full again after a trip, with nothing on it: by `way`, in a `time` or never.

    Full is where a charger of the chemistry ends, `full` [0..1].
    """

    way: Recovery
    full: Share
    time: Seconds | None


def recovered(inputs: WeekInputs) -> Recovered:
    """Return how the bank of a trip gets full again, with every load off.

    On shore power its charger gives all day, and the sun as well; each is counted at the bank.
    """
    bank, day = inputs.bank, inputs.day
    full = charging.by_chemistry(inputs.chemistry).full
    lead = inputs.lead * bank.charge_voltage * HOUR
    drive = {
        Recovery.SHORE: (lead,) * HOURS,
        Recovery.SUN: (0.0,) * HOURS,
        Recovery.DRIVING: day.drive,
    }[inputs.recovery]
    none = (0.0,) * HOURS
    resting = replace(
        day, drive=drive, useful=none, conversion=none, idle=none, levels=((NOTHING_ON,),) * HOURS
    )
    hours, state = Hours(bank, resting, 0), inputs.week.states[-1]
    for number in range(HORIZON):
        for place, parts in enumerate(hours.of(number)):
            if at_least(state, full):
                time = (number * HOURS + place) * HOUR
                return Recovered(way=inputs.recovery, full=full, time=time)
            state = hour(bank, state, parts).state
    return Recovered(way=inputs.recovery, full=full, time=None)
