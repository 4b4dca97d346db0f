"""Fields, results, lines and judgements that the worksheets of comfort share."""

# fmt: off
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any, Protocol

from calc.comfort.flame import Alarm, Exhaust, Flame, HeatSource, carbon_monoxide
from calc.comfort.heaters import USUAL_EFFICIENCY, HeatedTime
from calc.comfort.rules import flame as of_flames
from calc.comfort.rules import heaters as of_heaters
from calc.energy.battery import Chemistry
from calc.energy.rules import draw as of_draws
from calc.energy.rules import loads as of_loads
from calc.energy.rules.inverter import OUTPUT_CAN_KILL
from calc.sheets.parts.bank import USUAL_SHARE, USUAL_VOLTAGE, chemistry_field
from calc.sheets.parts.fields import HIGHEST_BANK, bank_voltage
from calc.units.kinds import CHARGE, CURRENT, ENERGY, POWER, RATIO, heat
from calc.worksheet.declare import Placed, Step, placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.outputs import Output
from calc.worksheet.result_table import Table


class Lit(Protocol):
    """A result in which something may burn."""

    @property
    def flame(self) -> Flame | None: ...


class Heated(Lit, Protocol):
    """A result with some hours of heat in it."""

    @property
    def heating(self) -> HeatedTime: ...


BURNS: Mapping[str, Any] = {  # the fields of a flame, which electric heat does not have
    "only_if": ("fuel", HeatSource.DIESEL), "or_if": (HeatSource.PETROL, HeatSource.PROPANE),
}
EXHAUST = Choice(
    **BURNS, id="exhaust", label="Combustion air and exhaust", of=Exhaust, default=Exhaust.OUTSIDE,
    options=(
        Option(Exhaust.UNKNOWN, "not checked"),
        Option(Exhaust.OUTSIDE, "both outside", aliases=("room sealed", "flued")),
        Option(Exhaust.INSIDE, "air or exhaust in the living space", aliases=("into the living space", "unflued", "inside")),
    ),
    hint="Both must go outside, by pipes that are whole and tight.",
)
ALARM = Choice(
    **BURNS, id="alarm", label="Carbon monoxide alarm", of=Alarm, default=Alarm.FITTED,
    options=(
        Option(Alarm.UNKNOWN, "not checked"),
        Option(Alarm.FITTED, "fitted and tested", aliases=("fitted", "yes")),
        Option(Alarm.MISSING, "not fitted", aliases=("none", "no")),
    ),
    hint="To EN 50291-2 or UL 2034, in date, tested before you sleep.",
)
BANK = Quantity(
    id="capacity", label="Bank capacity", symbol="C", kinds=(CHARGE,), default="200 Ah", low="1 Ah", high="20000 Ah",
    hint="As rated by the maker; parallel batteries add.",
)
BANK_CHEMISTRY = replace(chemistry_field(Chemistry.LFP), since=2, before=Chemistry.LFP)
USABLE = Quantity(
    id="usable", label="Share you use", symbol="u", kinds=(RATIO,), low="1 %", high="100 %",
    default_by=("chemistry", USUAL_SHARE), hint="Of the capacity; less in the cold.",
)
VOLTAGE_FIELD = replace(
    bank_voltage(""), high=HIGHEST_BANK, default_by=("chemistry", USUAL_VOLTAGE),
    hint="The bank's voltage under this load, not the mains behind an inverter.",
)
# What older links leave out
OLDER_BANK: Mapping[str, str] = {"usable": "50 %", "voltage": "12.8 V"}
OLDER_FLAME: Mapping[str, str] = {"exhaust": Exhaust.UNKNOWN, "alarm": Alarm.UNKNOWN}
BURNT = (
    Option(HeatSource.DIESEL),
    Option(HeatSource.PETROL, aliases=("gasoline",)),
    Option(HeatSource.PROPANE, aliases=("lpg",)),
)
HEAT_FROM = Choice(
    id="fuel", label="Heat from", of=HeatSource, default=HeatSource.DIESEL,
    options=(*BURNT, Option(HeatSource.ELECTRIC, "electric, directly from the bank", aliases=("electric, straight on the bank", "electric, from the bank", "battery")), Option(HeatSource.INVERTER, "electric, through an inverter")), hint="Propane means bottled gas.",
)
HEATER_EFFICIENCY = Quantity(
    id="efficiency", advanced=True, label="Efficiency of the heater", symbol="η", kinds=(RATIO,), low="10 %", high="100 %",
    default_by=("fuel", {source: f"{share * 100:g} %" for source, share in USUAL_EFFICIENCY.items()}),
    hint="Fuel heaters 75 to 85 % (no source). Through an inverter: the inverter's.",
)
DRAW = Quantity(
    **BURNS, id="draw", label="Draw while it runs", symbol="P_d", kinds=(POWER,), default="30 W", low="0 W", high="500 W",
    hint="Fan, pump and controls of a fuel heater, on average.",
)


def constant(value: float) -> Callable[[Any], float]:
    """Return what finds a constant of the book in any result."""
    return lambda _: value


def _points(result: Lit) -> tuple[Any, ...] | None:
    return carbon_monoxide() if result.flame else None


FUEL_USED = Output(id="fuel_used", label="Fuel used", symbol="V_f", kind=heat.VOLUME, both=True, hide_if_none=True, at="heating.fuel_used")
CHARGE_TAKEN = Output(id="charge", label="Charge from the bank", symbol="Q", kind=CHARGE, at="heating.draw.charge")
ELECTRIC_CHARGE = Output(id="electric_charge", label="Electric, directly from the bank", symbol="Q_e", kind=CHARGE, at="heating.direct.charge")
INVERTER_CHARGE = Output(id="inverter_charge", label="Electric, through an inverter", symbol="Q_i", kind=CHARGE, at="heating.by_inverter.charge")
BANK_SHARE = Output(id="bank_share", label="Share of the usable bank", symbol="s", kind=RATIO, at="heating.draw.share")
CO_POINTS = Output(id="co_points", label="Carbon monoxide: alarms and limits", hide_if_none=True, find=_points)
CO_TABLE = Table(of="co_points", folded=True, columns=(Output(id="level", label="In the air"), Output(id="means", label="What it means"), Output(id="source", label="By")))
NIGHT_BETWEEN = (
    Output(id="night_heat", label="Heat in that time", symbol="E", kind=ENERGY, at="heating.night_heat"),
    Output(id="heating", label="Lower heating value", symbol="H", kind=heat.ENERGY_DENSITY, digits=4, at="heating.fuel.heating"),
    Output(id="running", label="Energy to run it", symbol="E_d", kind=ENERGY, at="heating.running"),
    Output(id="electric_current", label="Current, directly from the bank", symbol="I_e", kind=CURRENT, at="heating.direct.load.current"),
    Output(id="inverter_factor", label="Efficiency of the inverter", symbol="η_i", kind=RATIO, at="heating.by_inverter.load.factor"),
    Output(id="inverter_current", label="Current, through an inverter", symbol="I_i", kind=CURRENT, at="heating.by_inverter.load.current"),
    Output(id="gives", label="Usable charge of the bank", symbol="Q_u", kind=CHARGE, at="heating.draw.bank.gives"),
)


def burns(result: Lit) -> bool:
    """Return whether something burns for this heat."""
    return result.flame is not None


def _straight(result: Heated) -> bool:
    return result.heating.source is HeatSource.ELECTRIC


def _by_inverter(result: Heated) -> bool:
    return result.heating.source is HeatSource.INVERTER


CO_STEP = Step[Lit](of="co_points", source="co-limits", when=burns, text="Parts per million by volume, with the time to an alarm or the limit for a person.")


def night_steps(starting: str, gives: str) -> tuple[Step[Heated], ...]:
    """Return the working of a night's heat by fuel or from the bank.

    `starting` is the formula of the energy to start, `gives` says what the bank gives.
    """
    return (
        Step(of="night_heat", formula="loss * hours", text="Heat flow times time is heat."),
        Step(of="heating", source="fuel-heat", when=burns, text="{fuel}, with the water in the exhaust as steam."),
        Step(of="fuel_used", formula="night_heat / (heating * efficiency)", source="fuel-heat", when=burns, text="The heat that leaves through the exhaust is burnt too."),
        Step(of="running", formula=f"draw * hours + {starting}", source="practice", when=burns, text="Fan, pump and ignition."),
        Step(of="charge", formula="running / voltage", source="ohm", when=burns, text="A fuel heater still needs the bank."),
        Step(of="electric_current", formula="loss / voltage", source="ohm", text="All night. A resistor directly on the bank turns all of it into heat."),
        Step(of="electric_charge", formula="loss * hours / voltage", source="ohm", text="The same heat directly from the bank."),
        Step(of="inverter_factor", source="practice", text="The inverter's losses: your value, or the usual one."),
        Step(of="inverter_current", formula="loss / (inverter_factor * voltage)", source="ohm", text="All night, through an inverter."),
        Step(of="inverter_charge", formula="loss * hours / (inverter_factor * voltage)", source="ohm", text="The same heat through an inverter."),
        Step(of="charge", formula="electric_charge", when=_straight, text="Electric heat is all charge; the fan's draw becomes heat as well."),
        Step(of="charge", formula="inverter_charge", when=_by_inverter, text="Electric heat is all charge; the fan's draw becomes heat as well."),
        Step(of="gives", formula="capacity * usable", text=gives),
        Step(of="bank_share", formula="charge / gives", text="All other loads come on top."),
    )


FLAME_STOPS = placed("flame", of_flames.EXHAUST_INSIDE, of_flames.NO_ALARM)
FLAME_ADVICE = placed(
    "flame",
    of_flames.CARBON_MONOXIDE, of_flames.ALARM_SOUNDS, of_flames.FITTING, of_flames.CLEAR_PIPES,
    of_flames.GAS_LEAKS, of_flames.BUTANE_IN_FROST,
)


def inverter_kills(at: str) -> Placed:
    """Return the caution about the mains voltage behind an inverter, for the load `at`."""
    return Placed(
        rule=OUTPUT_CAN_KILL, at=at,
        text="An inverter's mains output can kill: leave fixed wiring to a licensed person. The inverter must start the load and run it continuously. Its idle draw is not included.",
    )


LITTLE_LEFT_BY_HEATER = Placed(
    rule=of_draws.LITTLE_TO_SPARE, at="heating.burner_draw",
    headline="Leave a reserve: running the heater takes {charge}, {bank_share} of the usable bank.",
    text="An old or cold bank may sag below the heater's low-voltage cut-off before morning, when you need the heat most.",
)
NIGHT_ADVICE = (
    *FLAME_ADVICE,
    *placed("heating.burner_draw", of_draws.LARGE_DRAW),
    *placed("heating.from_bank.load", of_loads.LOOSE_JOINT_HEATS),
    inverter_kills("heating.from_bank.load"),
    *placed("heating.from_bank", of_heaters.BEDDING),
    *placed("flame", of_heaters.LOWER_HEATING_VALUE),
)
