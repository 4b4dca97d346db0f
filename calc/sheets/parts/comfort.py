"""Fields, cautions and lines that the worksheets of comfort share."""

from collections.abc import Callable
from dataclasses import replace
from types import SimpleNamespace

from calc.comfort.heaters import USUAL
from calc.sheets.parts.fields import bank_voltage
from calc.units.compare import at_least, at_most
from calc.units.kinds import CHARGE, CURRENT, ENERGY, POWER, RATIO, heat
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import NOTE, STOP, Output, Remark, Step, Test, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.result_table import Table

UNCHECKED, BOTH_OUTSIDE, INSIDE = "not checked", "both outside", "into the living space"
FITTED, NO_ALARM = "fitted and tested", "not fitted"
ELECTRIC = "electric"
ONE_BATTERY = 100.0  # A, what one battery is usually allowed: common practice, no source
LOWEST_STEP = 800.0  # W, what small fuel heaters still give throttled: common practice, no source
USUAL_HEATER = 4000.0  # W, what larger van heaters give: common practice, no source

EXHAUST = Choice(
    id="exhaust", label="Combustion air and exhaust", default=UNCHECKED,
    options=(
        Option(UNCHECKED),
        Option(BOTH_OUTSIDE, aliases=("room sealed", "flued")),
        Option(INSIDE, "air or exhaust in the living space", aliases=("unflued", "inside")),
    ),
    hint="Both must lead through the shell, by pipes that are whole and tight.",
)
ALARM = Choice(
    id="alarm", label="Carbon monoxide alarm", default=UNCHECKED,
    options=(Option(UNCHECKED), Option(FITTED, aliases=("fitted", "yes")), Option(NO_ALARM, aliases=("none", "no"))),
    hint="To EN 50291-2, the part for vehicles (from memory), or UL 2034; within its date, pressed to test before you sleep.",
)
BANK = Quantity(
    id="capacity", label="Bank capacity", symbol="C", kinds=(CHARGE,), default="200 A·h", low="1 A·h", high="20000 A·h",
    hint="As rated by the maker; parallel batteries add.",
)
USABLE = Quantity(
    id="usable", label="Share you use", symbol="u", kinds=(RATIO,), default="50 %", low="1 %", high="100 %",
    hint="Of the capacity: about 50 % of lead-acid, 80 % of LFP, less in the cold.",
)
VOLTAGE_FIELD = replace(
    bank_voltage("12.8 V"), high="60 V",
    hint="The bank's own, under this load, not the mains behind an inverter. A 12 V LFP bank sits near 12.8 V, a lead-acid one near 12.2 V.",
)
BURNT = (Option("diesel"), Option("petrol", aliases=("gasoline",)), Option("propane", aliases=("lpg",)))
HEAT_FROM = Choice(
    id="fuel", label="Heat from", default="diesel",
    options=(*BURNT, Option(ELECTRIC, "electric, from the bank", aliases=("battery",))), hint="Propane stands for bottled gas.",
)
HEATER_EFFICIENCY = Quantity(
    id="efficiency", advanced=True, label="Efficiency of the heater", symbol="η", kinds=(RATIO,), low="10 %", high="100 %",
    default_by=("fuel", {name: f"{share * 100:g} %" for name, share in USUAL.items()}),
    hint="Heat into the van from what goes in: fuel heaters 75 to 85 % (no source). Electric through an inverter: its efficiency.",
)
DRAW = Quantity(
    id="draw", label="Draw while it runs", symbol="P_d", kinds=(POWER,), default="30 W", low="0 W", high="500 W",
    hint="Fan, pump and controls of a fuel heater, on average. Not used for electric heat.",
)

FUEL_USED = Output(id="fuel_used", label="Fuel used", symbol="V_f", kind=heat.VOLUME, rounding=UP, both=True)
CHARGE_TAKEN = Output(id="charge", label="Charge from the bank", symbol="Q", kind=CHARGE, rounding=UP)
ELECTRIC_CHARGE = Output(id="electric_charge", label="Charge if heated electrically", symbol="Q_e", kind=CHARGE, rounding=UP)
BANK_SHARE = Output(id="bank_share", label="Share of what you use of the bank", symbol="s", kind=RATIO, rounding=UP)
CO_POINTS = Output(id="co_points", label="Carbon monoxide: alarms and limits", hide_if_none=True)
CO_TABLE = Table(of="co_points", folded=True, columns=(Output(id="level", label="In the air"), Output(id="means", label="What it means"), Output(id="source", label="By")))
NIGHT_BETWEEN = (
    Output(id="night_heat", label="Heat in that time", symbol="E", kind=ENERGY, rounding=UP),
    Output(id="heating", label="Lower heating value", symbol="H", kind=heat.ENERGY_DENSITY, digits=4),
    Output(id="running", label="Energy to run it", symbol="E_d", kind=ENERGY, rounding=UP),
    Output(id="electric_factor", label="Efficiency of electric heat", symbol="η_e", kind=RATIO),
    Output(id="electric_current", label="Current of electric heat", symbol="I_e", kind=CURRENT, rounding=UP),
    Output(id="gives", label="What you use of the bank", symbol="Q_u", kind=CHARGE, rounding=DOWN),
)


def burns(v: SimpleNamespace) -> bool:
    """Return whether something burns for this heat."""
    return bool(v.flame)


def unchecked(v: SimpleNamespace) -> bool:
    """Return whether something burns and nobody has looked at its exhaust or its alarm."""
    return v.flame and UNCHECKED in (v.exhaust, v.alarm)


def throttled(v: SimpleNamespace) -> bool:
    """Return whether a burner is asked for less than the lowest step of most."""
    return v.flame and not at_least(v.loss, LOWEST_STEP)


def by_inverter(v: SimpleNamespace) -> bool:
    """Return whether electric heat is taken through an inverter."""
    return not v.flame and not at_least(v.efficiency, 1.0)


def _both(one: Test, other: Test) -> Callable[..., bool]:
    return lambda v: one(v) and other(v)


CO_STEP = Step(of="co_points", source="co-limits", when=burns, says="Parts per million by volume, with the time an alarm takes or a person may.")
FLAME_STOPS = (
    Verdict(verdict=STOP, when=lambda v: v.flame and v.exhaust == INSIDE, says="Do not light it: a flame that takes its air from where you live, or sends its exhaust there, can kill, soonest in sleep or in a small wet room."),
    Verdict(verdict=STOP, when=lambda v: v.flame and v.alarm == NO_ALARM, says="Fit a carbon monoxide alarm before anything burns aboard. The sum itself stands below."),
)


def night_steps(starting: str, gives: str) -> tuple[Step[SimpleNamespace], ...]:
    """Return the working of a night's heat by fuel or from the bank.

    `starting` is the formula of the energy to start, `gives` says what the bank gives.
    """
    return (
        Step(of="night_heat", formula="loss * hours", says="Heat flow over time is heat."),
        Step(of="heating", source="fuel-heat", when=burns, says="{fuel}, with the steam leaving as steam."),
        Step(of="fuel_used", formula="night_heat / (heating * efficiency)", source="fuel-heat", when=burns, says="What goes up the exhaust has to be burnt too."),
        Step(of="running", formula=f"draw * hours + {starting}", source="practice", when=burns, says="Fan, pump and lighting it."),
        Step(of="charge", formula="running / voltage", source="ohm", when=burns, says="A fuel heater still needs the bank."),
        Step(of="electric_factor", source="practice", says="A resistor straight on the bank turns all of it into heat; an inverter takes its part."),
        Step(of="electric_current", formula="loss / (electric_factor * voltage)", source="ohm", says="All night long."),
        Step(of="electric_charge", formula="loss * hours / (electric_factor * voltage)", source="ohm", says="The same heat from the bank alone."),
        Step(of="charge", formula="electric_charge", when=lambda v: not v.flame, says="Electric heat is all charge; the fan's draw becomes heat as well."),
        Step(of="gives", formula="capacity * usable", says=gives),
        Step(of="bank_share", formula="charge / gives", says="Everything else aboard comes on top."),
    )


def flame_remarks(flame: Test) -> tuple[Remark, ...]:
    """Return the cautions that stand wherever something burns."""
    return (
        Remark(when=_both(flame, lambda v: v.exhaust == INSIDE), source="co-limits",
               says="Danger of death: a flame that takes its air from the room, or sends its exhaust there, fills it with carbon monoxide and water and uses up its oxygen. An open window does not make it safe. Do not light it."),
        Remark(when=_both(flame, lambda v: UNCHECKED in (v.exhaust, v.alarm)), source="practice",
               says="Not looked at yet: see that combustion air and exhaust both lead outside by whole, tight pipes, and that the alarm is there and sounds, before anything is lit."),
        Remark(when=flame, source="co-alarm",
               says="Carbon monoxide has no smell. Sleep with a tested alarm where its maker says, near the bed; when it sounds, or with headache and nausea, get everyone out, then turn the heat off and call for help."),
        Remark(when=flame, source="practice",
               says="Fuel heaters are fitted to the maker's instructions and local rules, gas by a licensed fitter. Exhaust ends clear of windows, of the floor and of the heater's own air; keep snow away from both pipes. Turn it off before you refuel. From about 1500 m up it must be made or set for thin air (no source)."),
        Remark(when=_both(flame, lambda v: v.fuel == "propane"), source="practice",
               says="Gas is heavier than air and gathers on the floor: a drop-out hole, a tight system, and a sniff before any spark. In frost butane stays liquid and only propane burns; the bottle takes a chill as it gives."),
    )


def inverter_remark(test: Test) -> Remark:
    """Return the caution about the mains voltage behind an inverter."""
    return Remark(when=test, source="practice",
                  says="An inverter's output is mains voltage and can kill; its fixed wiring is for a licensed person. It must bear the start and run within its steady rating, and its idle draw is not in this sum.")


NIGHT_REMARKS = (
    *flame_remarks(burns),
    Remark(when=lambda v: not v.flame, source="practice", says="{electric_current} for hours heats every loose joint on the way: check wire, fuse and torque first. Keep elements clear of bedding, and never leave one on that lies or can fall against cloth."),
    inverter_remark(by_inverter),
    Remark(when=throttled, source="practice", says="Most small fuel heaters still give about 800 W at their lowest step (no source). Asked for {loss} they start again and again, soot up, and take more fuel and charge than this sum says."),
    Remark(when=lambda v: v.flame and not at_most(v.bank_share, 0.25), source="practice", says="A tired or cold bank may sag below the heater's cut-out before morning, and in frost that is when it is missed. Leave a reserve."),
    Remark(level=NOTE, when=burns, source="fuel-heat", says="Lower heating values. Higher ones stand in many tables and would promise about 7 to 9 % more. Petrol with a tenth of ethanol holds 3 % less."),
)
