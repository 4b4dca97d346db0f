"""bank-size: how large a bank?"""

from dataclasses import dataclass
from math import ceil
from types import SimpleNamespace

from calc.energy import battery
from calc.energy.battery import Chemistry
from calc.energy.limits import MOST_OF_LFP
from calc.sheets.parts.bank import CHEMISTRY, USUAL_CHARGE_EFFICIENCY, USUAL_SHARE
from calc.units.compare import at_least, at_most
from calc.units.kinds import (
    CHARGE,
    COUNT,
    CURRENT,
    ENERGY,
    NUMBER,
    POWER,
    RATIO,
    TEMPERATURE,
    TIME,
    VOLTAGE,
)
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, Output, Remark, Step, Verdict
from calc.worksheet.fields import Quantity
from calc.worksheet.work import Worksheet

DAY = 86400.0  # s
HOUR = 3600.0  # s
MOST_PARALLEL = 4  # batteries side by side: common practice
RATED = 20 * HOUR  # s, over which a lead-acid label is meant
LABEL = 12.5  # V a 12 V battery: above it lead-acid gives no charge worth naming
HARD = {"LFP": 0.5, "AGM": 0.25, "gel": 0.2, "flooded": 0.2}  # A for each A·h: common practice


@dataclass(frozen=True, kw_only=True)
class BankSize:
    """Capacity [A·s] and energy [J] as rated, batteries (whole), and what leads to them.

    `together` is what those batteries hold, `lasts_new` how long they carry it while they are new,
    `put_back` the charge [A·s] that refills what was used, `rate` the heaviest load's current
    against capacity [1/s].
    """

    lead_acid: bool
    day: float
    charge: float
    cold_factor: float
    capacity: float
    energy: float
    units: float
    together: float
    lasts_new: float
    put_back: float
    current: float | None
    rate: float | None


def run(
    *, daily_energy: float, days: float, chemistry: Chemistry, usable: float, voltage: float, temperature: float,
    ageing: float, unit_capacity: float, heaviest: float | None, efficiency: float,
) -> BankSize:
    """Return the bank that gives `daily_energy` [J] a day for `days` [s] without a charge."""
    lead_acid = chemistry.lead_acid
    cold = battery.capacity_factor(chemistry, temperature)
    charge = daily_energy * days / DAY / voltage
    capacity = battery.size(charge=charge, usable=usable, cold=cold, ageing=ageing)
    units = float(ceil(capacity / unit_capacity * (1 - 1e-9)))
    together = units * unit_capacity
    current = heaviest / voltage if heaviest is not None else None
    return BankSize(
        lead_acid=lead_acid,
        day=DAY,
        charge=charge,
        cold_factor=cold,
        capacity=capacity,
        energy=capacity * voltage,
        units=units,
        together=together,
        lasts_new=days * together * (usable / cold) / charge,
        put_back=charge / efficiency,
        current=current,
        rate=current / together if current is not None else None,
    )


def _hard(v: SimpleNamespace) -> bool:
    return v.rate is not None and not at_most(v.rate * HOUR, HARD[v.chemistry])


def _quick(v: SimpleNamespace) -> bool:
    """The whole of it is drawn harder than a label is meant, or than LFP is commonly asked."""
    gives = v.together / v.cold_factor / RATED if v.lead_acid else v.together * HARD[v.chemistry] / HOUR
    return not at_most(v.charge / v.days, gives)


def _deep(v: SimpleNamespace) -> bool:
    return bool(v.lead_acid) and not at_most(v.usable, 0.5)


def _by_label(v: SimpleNamespace) -> bool:
    return bool(v.lead_acid) and v.voltage / max(1, round(v.voltage / 12)) > LABEL


def _frost(v: SimpleNamespace) -> bool:
    return not v.lead_acid and not battery.may_charge(chemistry=v.chemistry, temperature=v.temperature)


def _strings(v: SimpleNamespace) -> bool:
    return bool(v.units > MOST_PARALLEL)


def _hot(v: SimpleNamespace) -> bool:
    return not at_most(v.temperature, battery.charge_range(v.chemistry)[1])


WORKSHEET = Worksheet(
    id="bank-size",
    title="Bank size",
    question="How large a bank?",
    entry_question="How many batteries do I need?",
    about="Capacity for so many days without a charge, in the cold and when it is old.",
    calculate=run,
    fields=(
        Quantity(id="daily_energy", label="Energy a day", symbol="E", kinds=(ENERGY,), default="1200 W·h", low="1 W·h", high="100000 W·h",
                 hint="At the bank, with inverter losses and idle draw in it."),
        Quantity(id="days", label="Time without a charge", symbol="d", kinds=(TIME,), default="2 days", low="1 h", high="60 days",
                 hint="No sun, no drive, no lead: as long as that may last."),
        CHEMISTRY,
        Quantity(id="usable", label="Share you use", symbol="u", kinds=(RATIO,), low="1 %", high="100 %", default_by=("chemistry", USUAL_SHARE),
                 hint="Of the capacity, before you call it empty."),
        Quantity(id="voltage", label="Bank voltage", symbol="V", kinds=(VOLTAGE,), default="12.8 V", low="1 V", high="60 V",
                 hint="Mean over the discharge. Lead-acid: about 12.2 V at 12 V."),
        Quantity(id="temperature", label="Coldest battery", symbol="T", kinds=(TEMPERATURE,), default="10 °C", low="-30 °C", high="60 °C",
                 hint="Of the battery, on the coldest of those days."),
        Quantity(id="ageing", label="Room for ageing", symbol="a", kinds=(RATIO,), default="20 %", low="0 %", high="60 %",
                 hint="Share of the capacity lost by the time you replace it."),
        Quantity(id="unit_capacity", label="One battery", symbol="C_1", kinds=(CHARGE,), default="100 A·h", low="1 A·h", high="20000 A·h",
                 hint="At the bank's own voltage: two 12 V in series are one at 24 V."),
        Quantity(id="heaviest", advanced=True, label="Heaviest load at one time", symbol="P", kinds=(POWER,), optional=True, low="1 W", high="50000 W", example="1700 W",
                 hint="At the bank, to see whether the bank is large enough for its current too."),
        Quantity(id="efficiency", advanced=True, label="Charge efficiency", symbol="η", kinds=(RATIO,), low="30 %", high="100 %", default_by=("chemistry", USUAL_CHARGE_EFFICIENCY),
                 hint="Charge that comes out for the charge put in."),
    ),
    results=(
        Output(id="capacity", label="Capacity needed", symbol="C", kind=CHARGE, rounding=UP),
        Output(id="energy", label="As rated energy", symbol="E_C", kind=ENERGY, rounding=UP),
        Output(id="units", label="Batteries", symbol="n", kind=COUNT),
        Output(id="together", label="Together they hold", symbol="C_n", kind=CHARGE),
        Output(id="lasts_new", label="While new they last", symbol="t_new", kind=TIME, rounding=DOWN, unit="day"),
        Output(id="put_back", label="Charge to put back", symbol="Q_in", kind=CHARGE, rounding=UP),
        Output(id="current", label="Current of the heaviest load", symbol="I", kind=CURRENT, rounding=UP, hide_if_none=True),
    ),
    intermediates=(
        Output(id="day", label="One day", symbol="t_d", kind=TIME, unit="hour"),
        Output(id="charge", label="Charge used", symbol="Q", kind=CHARGE, rounding=UP),
        Output(id="cold_factor", label="Factor for cold", symbol="f", kind=NUMBER, digits=4),
    ),
    steps=(
        Step(of="charge", formula="daily_energy * days / day / voltage", source="ohm", says="Energy of all those days over voltage is charge."),
        Step(of="cold_factor", source="ieee-485", when=lambda v: v.lead_acid,
             says="A lead-acid bank gives less in the cold; from 25 °C up the factor is taken as one."),
        Step(of="capacity", formula="charge * cold_factor / (usable * (1 - ageing))", source="ieee-485", when=lambda v: v.lead_acid,
             says="Only the share you use counts, and when old only what ageing has left. The published factor multiplies what is needed."),
        Step(of="capacity", formula="charge / (usable * (1 - ageing))", source="practice", when=lambda v: not v.lead_acid,
             says="Only the share you use counts, and when old only what ageing has left."),
        Step(of="energy", formula="capacity * voltage", source="ohm", says="The same as energy, as batteries are often sold."),
        Step(of="units", source="practice", says="The next whole number of {unit_capacity}: half a battery is not sold."),
        Step(of="together", formula="units * unit_capacity", says="Side by side, so capacities add."),
        Step(of="lasts_new", formula="days * together * usable / charge", when=lambda v: not v.lead_acid, says="Before ageing, and with what rounding up has given."),
        Step(of="lasts_new", formula="days * together * usable / (cold_factor * charge)", when=lambda v: v.lead_acid, says="Before ageing, and with what rounding up has given."),
        Step(of="put_back", formula="charge / efficiency", source="charge-efficiency", when=lambda v: v.lead_acid,
             says="Part of what goes in makes heat and gas, most of all near full."),
        Step(of="put_back", formula="charge / efficiency", source="practice", when=lambda v: not v.lead_acid, says="Nearly all of what goes in comes out."),
        Step(of="current", formula="heaviest / voltage", source="ohm", when=lambda v: v.current is not None, says="Power is voltage times current."),
    ),
    rules=(
        Verdict(verdict=CAUTION, when=_frost, says="{capacity}, {units} of {unit_capacity}, by charge alone; but at {temperature} an LFP bank must not be charged until it is warmer."),
        Verdict(verdict=CAUTION, when=_hard, says="{capacity}, {units} of {unit_capacity}, hold the energy. But {current} is a hard load for so few: read the maker's limit, or take more."),
        Verdict(verdict=CAUTION, when=_quick, says="{capacity}, {units} of {unit_capacity}, by charge alone. Drawn within {days} it may give less: check it as a run time, and read the maker's limit."),
        Verdict(verdict=CAUTION, when=_deep, says="{capacity}, {units} of {unit_capacity}, but deeper than half wears a lead-acid bank fast."),
        Verdict(verdict=CAUTION, when=lambda v: not v.lead_acid and not at_most(v.usable, MOST_OF_LFP), says="{capacity}, {units} of {unit_capacity}, but with nothing kept back: at the end the management system cuts everything off at once."),
        Verdict(verdict=CAUTION, when=_hot, says="{capacity}, {units} of {unit_capacity}, but {temperature} is too hot for a battery: most may not be charged there."),
        Verdict(verdict=CAUTION, when=_strings, says="{capacity}: {units} of {unit_capacity} side by side. That is many to keep alike: take fewer, larger ones."),
        Verdict(verdict=CAUTION, when=lambda v: at_most(v.ageing, 0.05), says="{capacity}, {units} of {unit_capacity}, while new. With no room for ageing it falls short within a few years."),
        Verdict(verdict=CAUTION, when=lambda v: v.lead_acid and not at_least(v.temperature, battery.seen_from()),
             says="About {capacity}, {units} of {unit_capacity}, by a factor for cold that we have only from memory."),
        Verdict(verdict=FINE, when=lambda v: v.lead_acid, says="{capacity} carry this for {days}, cold and old: {units} of {unit_capacity}."),
        Verdict(verdict=FINE, says="{capacity} carry this for {days}, even when old: {units} of {unit_capacity}."),
    ),
    remarks=(
        Remark(when=lambda v: not v.lead_acid, source="lfp-frost", says="Never charge an LFP battery below 0 °C: lithium plates out and the loss is permanent. Warm the bank, or let a heater or the management system hold the charge back."),
        Remark(when=lambda v: not v.lead_acid and 0 <= v.temperature < 10, source="practice",
               says="Near freezing an LFP battery takes a charge slowly; most makers ask for a reduced current below 5 to 10 °C, and none at all below 0 °C."),
        Remark(when=lambda v: not v.lead_acid and v.temperature < 25, source="practice",
               says="No published factor for cold LFP is used: it gives less in the cold, so keep some in hand."),
        Remark(when=lambda v: v.lead_acid and not at_least(v.temperature, battery.seen_from()), source="memory",
               says="The factor for cold below 4.4 °C is from memory, not from a text. One page has 1.40 at 30 °F, where this has 1.43."),
        Remark(when=_by_label, source="practice", says="Lead-acid gives its charge at about 12.2 V for each 12 V battery, not {voltage}: with that it takes more ampere-hours."),
        Remark(when=_hard, source="practice", says="Cables, fuse and management system must bear {current} too, and under it the voltage sags: an inverter may give up early. The data sheet says what each battery may give."),
        Remark(when=_strings, source="practice", says="Batteries side by side share a load only if they are alike: same make, age and state, equal cables, feed and return at opposite corners, and a fuse for each. Four are commonly called the most."),
        Remark(when=lambda v: v.lead_acid, source="practice", says="A lead-acid bank must be brought to full often, or it loses capacity for good. See whether the charging you have can put back {put_back}."),
        Remark(level=NOTE, source="practice", says="Share used and room for ageing are common practice. A fifth lost is when most call a battery worn out."),
        Remark(level=NOTE, source="practice", says="Self-discharge and the monitor's own draw come on top when the van stands for weeks."),
    ),
    valid="Loads spread over the days. A bank emptied within a few hours gives less if it is lead-acid: check it as a run time.",
    summary="{capacity}: {units} of {unit_capacity}",
)
