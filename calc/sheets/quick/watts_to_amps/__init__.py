"""watts-to-amps: what current does this load ask of the bank?"""

from dataclasses import dataclass

from calc.electrical.ampacity import bears
from calc.energy.loads import bank_current
from calc.sheets.parts.fields import EFFICIENCY, INVERTER, ROUTE, bank_voltage
from calc.units.compare import at_most
from calc.units.kinds import CHARGE, CURRENT, ENERGY, POWER, RATIO, TIME
from calc.units.shown import UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.work import Worksheet

ONE_BATTERY = 100.0  # A, what one 100 A·h LFP battery is usually allowed: common practice, no source


@dataclass(frozen=True, kw_only=True)
class BankLoad:
    """Current [A], charge [A·s] and energy [J], all at the bank; `factor` is the efficiency applied.

    The cables are what 2/0 and 4/0 AWG bear [A] with 105 °C insulation, 33 CFR 183.425 table 5.
    """

    factor: float
    current: float
    charge: float
    energy: float
    heavy_cable: float
    thickest_cable: float


def run(*, power: float, voltage: float, route: str, efficiency: float, hours: float, load_type: str) -> BankLoad:
    """Return what `power` [W] for `hours` [s] asks of a bank at `voltage` [V]."""
    factor = efficiency if route == INVERTER else 1.0
    current = bank_current(power, voltage, factor)
    return BankLoad(
        factor=factor,
        current=current,
        charge=current * hours,
        energy=power * hours / factor,
        heavy_cable=bears("2/0 AWG") or 0.0,
        thickest_cable=bears("4/0 AWG") or 0.0,
    )


WORKSHEET = Worksheet(
    id="watts-to-amps",
    title="Watts to amps",
    question="What current does this load ask of the bank?",
    entry_question="Can the bank run this?",
    about="Watts to amps and amp-hours: a kettle, a fridge, an inverter.",
    calculate=run,
    fields=(
        Quantity(
            id="power", label="Power of the load", symbol="P", kinds=(POWER,), default="1500 W",
            low="0.01 W", high="20000 W", hint="From the rating plate, or measured while it works.",
        ),
        bank_voltage("12.5 V"),
        ROUTE,
        EFFICIENCY,
        Quantity(
            id="hours", label="How long it runs", symbol="t", kinds=(TIME,), default="1 h",
            low="0 h", high="8760 h", hint="The time it really draws power, not the time it is plugged in.",
        ),
        Choice(
            id="load_type", label="Kind of load", default="any load",
            options=(Option("any load"), Option("resistive heat", aliases=("heat", "heater"))),
            hint="Resistive heat: a kettle, hob, fan heater, hair dryer, water heater element.",
        ),
    ),
    results=(
        Output(id="current", label="Current from the bank", symbol="I", kind=CURRENT, rounding=UP),
        Output(id="charge", label="Charge taken", symbol="Q", kind=CHARGE, rounding=UP),
        Output(id="energy", label="Energy taken", symbol="E", kind=ENERGY, rounding=UP),
    ),
    intermediates=(
        Output(id="factor", label="Efficiency applied", symbol="η", kind=RATIO),
        Output(id="heavy_cable", label="What 2/0 AWG bears", kind=CURRENT),
        Output(id="thickest_cable", label="What 4/0 AWG bears", kind=CURRENT),
    ),
    steps=(
        Step(of="factor", says="The inverter turns part of the power into heat, so the bank gives more than the load takes.",
             when=lambda v: v.route == INVERTER, source="practice"),
        Step(of="current", formula="power / voltage", says="Power is voltage times current.", source="ohm",
             when=lambda v: v.route != INVERTER),
        Step(of="current", formula="power / (voltage * factor)", says="Power is voltage times current; the inverter's loss comes on top.",
             source="ohm", when=lambda v: v.route == INVERTER),
        Step(of="charge", formula="current * hours", says="Current over time is charge, which is what a battery's label counts.", source="ohm"),
        Step(of="energy", formula="power * hours", says="Power over time is energy.", source="ohm",
             when=lambda v: v.route != INVERTER),
        Step(of="energy", formula="power * hours / factor", says="Energy at the bank, the inverter's loss included.", source="ohm",
             when=lambda v: v.route == INVERTER),
    ),
    rules=(
        Verdict(verdict=STOP, when=lambda v: not at_most(v.current, v.thickest_cable),
             says="{current} is more than any single cable in the table bears ({thickest_cable}). Use a higher bank voltage or another way to do the job."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.current, ONE_BATTERY),
             says="{current} is more than one usual battery is made to give; {charge} goes in {hours}."),
        Verdict(verdict=CAUTION, when=lambda v: v.load_type == "resistive heat",
             says="{current}, and all of it becomes heat: {charge} in {hours}."),
        Verdict(verdict=FINE, says="The bank gives {current}, {charge} in {hours}."),
    ),
    remarks=(
        Remark(when=lambda v: v.load_type == "resistive heat", source="practice",
               says="Heat made from a battery is the dearest use of it: {charge} for {hours} of this. A flame outside the living space, the engine, or shore power does the same job without the bank."),
        Remark(when=lambda v: v.load_type != "resistive heat" and v.power >= 1000, source="practice",
               says="Loads of this size are mostly heat (kettle, hob, hair dryer). If this one is, set the kind of load to resistive heat."),
        Remark(when=lambda v: not at_most(v.current, ONE_BATTERY), source="practice",
               says="One battery is usually allowed about 100 A by its maker or its management system. Read the data sheet, and share a larger current between batteries joined in parallel with equal cables."),
        Remark(when=lambda v: not at_most(v.current, v.heavy_cable) and at_most(v.current, v.thickest_cable), source="33cfr-table",
               says="This current is beyond 2/0 AWG with 105 °C insulation ({heavy_cable}). Cable, fuse, switch and every joint must be rated for it, and short."),
        Remark(when=lambda v: v.current > 30, source="practice",
               says="At this current a loose joint becomes a heater. Check wire, fuse and torque before it is switched on, and keep within the maker's instructions."),
        Remark(when=lambda v: v.route == INVERTER, source="practice",
               says="The inverter draws its own idle current all the while it is on; that is not in this sum."),
        Remark(when=lambda v: v.route == INVERTER, source="practice",
               says="The output of an inverter is mains voltage and can kill. Its fixed wiring is work for a licensed person, to local rules."),
        Remark(level=NOTE, source="practice",
               says="Check figure: a 1500 W heater is about 120 A on a 12 V bank, 120 A·h every hour."),
    ),
    valid="Steady power. A motor or compressor asks several times its running current for a moment when it starts.",
    summary="{current} from the bank",
)
