"""runtime: how long will the bank carry this?"""

from dataclasses import dataclass

from calc.energy import battery
from calc.energy.battery import Chemistry
from calc.energy.limits import MOST_OF_LFP
from calc.energy.loads import bank_current
from calc.sheets.parts.bank import CAPACITY, CHEMISTRY_OPTIONS, USUAL_SHARE
from calc.sheets.parts.fields import EFFICIENCY, INVERTER, ROUTE, bank_voltage
from calc.units.compare import at_least, at_most
from calc.units.kinds import CHARGE, CURRENT, NUMBER, POWER, RATIO, TEMPERATURE, TIME
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Measured, Quantity
from calc.worksheet.work import Worksheet

ONE_HOUR = 3600.0  # s


@dataclass(frozen=True, kw_only=True)
class Runtime:
    """Run time [s] and what leads to it.

    `shortest` and `longest` span the published exponents; `fast` tells that the whole bank would be
    empty within an hour.
    """

    load_is_power: bool
    factor: float
    current: float
    cold_factor: float
    cold_capacity: float
    rated_current: float
    runtime: float
    usable_charge: float
    exponent_low: float
    exponent_high: float
    shortest: float
    longest: float
    nameplate_time: float
    lead_acid: bool
    fast: bool


def run(
    *, capacity: float, chemistry: Chemistry, load: Measured, voltage: float, usable: float, exponent: float,
    rated_hours: float, temperature: float, route: str, efficiency: float,
) -> Runtime:
    """Return how long `capacity` [A·s], rated over `rated_hours` [s], carries `load` [W or A]."""
    is_power = load.kind is POWER
    factor = efficiency if route == INVERTER and is_power else 1.0
    current = bank_current(load.value, voltage, factor) if is_power else load.value
    lead_acid = chemistry.lead_acid
    cold = battery.capacity_factor(chemistry, temperature)
    cold_capacity = capacity / cold

    def time(k: float) -> float:
        return battery.peukert_runtime(
            capacity=cold_capacity, rated_time=rated_hours, current=current, exponent=k, usable=usable
        )

    low, high = battery.exponent_range(chemistry)
    span = sorted((time(low), time(high)))
    runtime = time(exponent)
    return Runtime(
        load_is_power=is_power,
        factor=factor,
        current=current,
        cold_factor=cold,
        cold_capacity=cold_capacity,
        rated_current=cold_capacity / rated_hours,
        runtime=runtime,
        usable_charge=current * runtime,
        exponent_low=low,
        exponent_high=high,
        shortest=span[0],
        longest=span[1],
        nameplate_time=usable * cold_capacity / current,
        lead_acid=lead_acid,
        fast=not at_least(runtime, usable * ONE_HOUR),
    )


WORKSHEET = Worksheet(
    id="runtime",
    title="Run time",
    question="How long will the bank carry this?",
    entry_question="Will it last until morning?",
    about="Run time of a bank, in the cold and under a heavy load.",
    calculate=run,
    fields=(
        CAPACITY,
        Choice(id="chemistry", label="Chemistry", of=Chemistry, default=Chemistry.LFP,
               options=CHEMISTRY_OPTIONS, hint="Printed on the battery. It sets the share used and the exponent."),
        Quantity(id="load", label="Load", symbol="P", kinds=(POWER, CURRENT), default="100 W",
                 low="0.01 W | 0.001 A", high="20000 W | 2000 A",
                 hint="In watts, or in amps as measured at the bank."),
        bank_voltage("12.8 V"),
        ROUTE,
        EFFICIENCY,
        Quantity(id="usable", label="Share you use", symbol="u", kinds=(RATIO,), low="1 %", high="100 %",
                 default_by=("chemistry", USUAL_SHARE), hint="Of the capacity, before you call it empty."),
        Quantity(id="temperature", label="Battery temperature", symbol="T", kinds=(TEMPERATURE,), default="25 °C",
                 low="-30 °C", high="60 °C", hint="Of the battery, not of the air."),
        Quantity(id="rated_hours", advanced=True, label="Hours of the rating", symbol="H", kinds=(TIME,), default="20 h",
                 low="0.5 h", high="120 h", hint="The time over which the label's capacity is meant: 20 h on most."),
        Quantity(id="exponent", advanced=True, label="Peukert exponent", symbol="k", kinds=(NUMBER,), low="1", high="2",
                 default_by=("chemistry", battery.by_chemistry("peukert", "default")),
                 hint="How much a heavy load takes from the capacity."),
    ),
    results=(
        Output(id="runtime", label="Run time", symbol="t", kind=TIME, rounding=DOWN),
        Output(id="usable_charge", label="Charge it gives at this load", symbol="Q", kind=CHARGE, rounding=DOWN),
        Output(id="current", label="Current from the bank", symbol="I", kind=CURRENT, rounding=UP),
        Output(id="shortest", label="Shortest by the published exponents", kind=TIME, rounding=DOWN),
        Output(id="longest", label="Longest by the published exponents", kind=TIME, rounding=DOWN),
    ),
    intermediates=(
        Output(id="factor", label="Efficiency applied", symbol="η", kind=RATIO),
        Output(id="cold_factor", label="Factor for cold", symbol="f", kind=NUMBER, digits=4),
        Output(id="cold_capacity", label="Capacity at this temperature", symbol="C_T", kind=CHARGE),
        Output(id="rated_current", label="Rated current", symbol="I_H", kind=CURRENT),
        Output(id="nameplate_time", label="Time by the label alone", kind=TIME, rounding=DOWN),
        Output(id="exponent_low", label="Lowest published exponent", symbol="k_low", kind=NUMBER, digits=4),
        Output(id="exponent_high", label="Highest published exponent", symbol="k_high", kind=NUMBER, digits=4),
    ),
    steps=(
        Step(of="current", formula="load / voltage", source="ohm", says="Power is voltage times current.",
             when=lambda v: v.load_is_power and v.route != INVERTER),
        Step(of="current", formula="load / (voltage * factor)", source="ohm",
             says="Power is voltage times current; the inverter's loss comes on top.",
             when=lambda v: v.load_is_power and v.route == INVERTER),
        Step(of="current", formula="load", says="As measured at the bank, so voltage and inverter do not come in.",
             when=lambda v: not v.load_is_power),
        Step(of="cold_factor", source="ieee-485", when=lambda v: v.lead_acid,
             says="A lead-acid bank gives less in the cold; from 25 °C up the factor is taken as one."),
        Step(of="cold_capacity", formula="capacity / cold_factor", source="ieee-485", when=lambda v: v.lead_acid,
             says="The published factor multiplies the capacity needed, so what is there is divided by it."),
        Step(of="rated_current", formula="cold_capacity / rated_hours", source="peukert",
             says="At this current the bank gives this capacity, in the rated hours."),
        Step(of="runtime", formula="usable * rated_hours * (cold_capacity / (current * rated_hours)) ** exponent",
             source="peukert", says="Peukert's law in rated-hours form, times the share you use."),
        Step(of="usable_charge", formula="current * runtime", source="ohm", says="What has gone out by then."),
        Step(of="shortest", source="peukert", when=lambda v: v.lead_acid,
             formula="min(usable * rated_hours * (cold_capacity / (current * rated_hours)) ** exponent_high, usable * rated_hours * (cold_capacity / (current * rated_hours)) ** exponent_low)",
             says="With the exponent least kind to this load, from {exponent_low} to {exponent_high} as published for {chemistry}."),
        Step(of="longest", source="peukert", when=lambda v: v.lead_acid,
             formula="max(usable * rated_hours * (cold_capacity / (current * rated_hours)) ** exponent_high, usable * rated_hours * (cold_capacity / (current * rated_hours)) ** exponent_low)",
             says="With the exponent kindest to it."),
        Step(of="shortest", source="peukert-li", when=lambda v: not v.lead_acid, formula="usable * rated_hours * (cold_capacity / (current * rated_hours)) ** exponent_low",
             says="No exponent is published for this chemistry: the same capacity was measured at a light and a heavy load, so it counts as one."),
        Step(of="longest", when=lambda v: not v.lead_acid, formula="shortest", says="The same figure."),
    ),
    rules=(
        Verdict(verdict=CAUTION, when=lambda v: v.fast,
             says="About {runtime} by charge alone; few batteries may give {current}."),
        Verdict(verdict=CAUTION, when=lambda v: v.lead_acid and v.usable > 0.5 + 1e-9,
             says="About {runtime}, but deeper than half wears a lead-acid bank fast."),
        Verdict(verdict=CAUTION, when=lambda v: v.chemistry == "LFP" and v.temperature < 0,
             says="About {runtime} at best in this frost; the bank must not be charged until it is warmer."),
        Verdict(verdict=CAUTION, when=lambda v: not v.lead_acid and not at_most(v.usable, MOST_OF_LFP),
             says="About {runtime}, but with nothing kept back: at the end the management system cuts everything off at once."),
        Verdict(verdict=CAUTION, when=lambda v: v.lead_acid and v.runtime > v.nameplate_time * (1 + 1e-9),
             says="About {runtime} by the formula; by the label alone, {nameplate_time}. Count on the shorter."),
        Verdict(verdict=FINE, says="The bank carries this for about {runtime}."),
    ),
    remarks=(
        Remark(when=lambda v: v.lead_acid and v.runtime > v.nameplate_time * (1 + 1e-9), source="peukert",
               says="This load is lighter than the rated current of {rated_current}, so the formula credits more than the label does. By the label alone it is {nameplate_time}."),
        Remark(when=lambda v: v.chemistry == "LFP" and v.temperature < 0, source="lfp-frost",
               says="Never charge an LFP battery below 0 °C: lithium plates out and the loss is permanent. Discharging is allowed further down; the data sheet says how far."),
        Remark(when=lambda v: v.chemistry == "LFP" and 0 <= v.temperature < 10, source="practice",
               says="Near freezing an LFP battery takes a charge slowly; most makers ask for a reduced current below 5 to 10 °C, and none at all below 0 °C."),
        Remark(when=lambda v: v.chemistry == "LFP" and v.temperature < 25, source="practice",
               says="No published factor for cold LFP capacity is used here: expect less than this in the cold. In hard frost it may be far less, and many management systems switch off."),
        Remark(when=lambda v: v.lead_acid and v.temperature < battery.seen_from(), source="memory",
               says="The factor for cold below 4.4 °C is from memory, not from a text."),
        Remark(when=lambda v: v.lead_acid and v.usable > 0.8 + 1e-9, source="practice",
               says="Below a fifth of its charge a lead-acid battery is damaged, and in frost its weak acid can freeze."),
        Remark(when=lambda v: v.route == INVERTER and v.load_is_power, source="practice",
               says="Add the inverter's own idle draw to the load if it stays on."),
        Remark(when=lambda v: v.route == INVERTER and not v.load_is_power, source="practice",
               says="A load in amps is taken as measured at the bank, so the inverter's efficiency is not applied again."),
        Remark(when=lambda v: v.fast, source="practice",
               says="At {current} the whole bank would be empty within an hour. Many batteries, cables and fuses may not give that current: read the data sheets. Under such a load the voltage sags, and an inverter may give up sooner."),
        Remark(level=NOTE, source="peukert", when=lambda v: v.lead_acid,
               says="Published exponents for {chemistry} run from {exponent_low} to {exponent_high}: the time lies between {shortest} and {longest}. Two ratings from the maker's sheet give your battery's own."),
        Remark(level=NOTE, source="practice",
               says="An aged bank holds less than its label. A monitor that counts charge tells how much; voltage alone misleads."),
    ),
    valid="One steady load on a healthy, fully charged bank, near its rated current or above. A bank that rests between loads gives more.",
    summary="about {runtime}",
)
