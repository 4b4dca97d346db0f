"""Fields of a bank that several worksheets ask in the same words, and its usual figures as text."""

from collections.abc import Mapping

from calc.energy import battery
from calc.energy.battery import Chemistry, ColdCutOff
from calc.energy.voltages import usual_voltages
from calc.sheets.parts.fields import HIGHEST_BANK
from calc.units.kinds import CHARGE, RATIO, TEMPERATURE, VOLTAGE
from calc.worksheet.fields import Choice, Option, Quantity

CHEMISTRY_OPTIONS = (
    Option(Chemistry.LFP, "LFP (lithium iron phosphate)"),
    Option(Chemistry.AGM, "AGM lead-acid"),
    Option(Chemistry.GEL, "gel lead-acid"),
    Option(Chemistry.FLOODED, "flooded lead-acid"),
)


def percents(shares: Mapping[str, str]) -> dict[str, str]:
    """Return shares of 1 by chemistry as percent, as a reader would type them."""
    return {name: f"{float(share) * 100:g} %" for name, share in shares.items()}


USUAL_SHARE = percents(battery.by_chemistry("usable_share", "share"))
USUAL_LEFT = {
    name: f"{(1 - float(share)) * 100:g} %"
    for name, share in battery.by_chemistry("usable_share", "share").items()
}
USUAL_VOLTAGE = {name: f"{volts:g} V" for name, volts in usual_voltages().items()}
USUAL_EXPONENT = battery.by_chemistry("peukert", "default")
USUAL_CHARGE_EFFICIENCY = percents(battery.by_chemistry("battery_limits", "coulombic"))
USUAL_SELF_DISCHARGE = {
    name: f"{float(share) * 100:g} %/month"
    for name, share in battery.by_chemistry("battery_limits", "self_discharge").items()
}
USUAL_MANAGEMENT_DRAW = {
    name: f"{amps} mA"
    for name, amps in battery.by_chemistry("battery_limits", "management_ma").items()
}


def chemistry_field(default: str, *, more: bool = False) -> Choice:
    """Return the field for the bank's chemistry."""
    return Choice(
        id="chemistry",
        label="Chemistry",
        of=Chemistry,
        default=default,
        options=CHEMISTRY_OPTIONS,
        hint="Printed on the battery.",
        advanced=more,
    )


# A battery's own charge cut-off in the cold, asked wherever something charges it
COLD_CUT_OFF = Choice(
    id="cold_cut_off",
    label="Cold cut-off of the battery",
    of=ColdCutOff,
    default=ColdCutOff.NOT_PROVEN,
    options=(
        Option(ColdCutOff.NOT_PROVEN, "not proven", aliases=("unknown", "not known")),
        Option(ColdCutOff.PROVEN, "proven", aliases=("tested",)),
    ),
    only_if=("chemistry", Chemistry.LFP),
    hint="Proven: tested, and charging stopped in the cold.",
    advanced=True,
)
BANK_TEMPERATURE = Quantity(
    id="temperature",
    label="Battery temperature",
    symbol="T",
    kinds=(TEMPERATURE,),
    default="15 °C",
    low="-40 °C",
    high="70 °C",
    hint="Of the battery while it is charged, not of the air.",
    advanced=True,
)


def rested_voltage(*, advanced: bool = True) -> Quantity:
    """Return the field for the voltage of a bank at rest."""
    return Quantity(
        id="rested_voltage",
        label="Rested voltage",
        symbol="V_r",
        kinds=(VOLTAGE,),
        optional=True,
        low="1 V",
        high=HIGHEST_BANK,
        example="12.6 V",
        hint="After 6 h (LFP: 24 h) without load or charge.",
        advanced=advanced,
    )


def capacity_field(default: str) -> Quantity:
    """Return the field for the bank's capacity."""
    return Quantity(
        id="capacity",
        label="Bank capacity",
        symbol="C",
        kinds=(CHARGE,),
        default=default,
        low="1 Ah",
        high="20000 Ah",
        hint="As rated by the maker; parallel batteries add.",
    )


CHEMISTRY = chemistry_field(Chemistry.LFP)
CAPACITY = capacity_field("200 Ah")


def from_state(default: str) -> Quantity:
    """Return the field for the state of charge at the start."""
    return Quantity(
        id="from_state",
        label="State of charge at the start",
        symbol="s_1",
        kinds=(RATIO,),
        default=default,
        low="0 %",
        high="100 %",
        hint="As the monitor counts it. 100 % is full.",
    )


def to_state(default: str = "", *, usual: Mapping[str, str] | None = None) -> Quantity:
    """Return the field for the state of charge at the end: `default`, or `usual` by chemistry."""
    return Quantity(
        id="to_state",
        label="State of charge at the end",
        symbol="s_2",
        kinds=(RATIO,),
        default=default,
        default_by=("chemistry", usual) if usual else None,
        low="0 %",
        high="100 %",
        hint="Where you stop.",
    )
