"""Fields of a bank that several worksheets ask in the same words, and its usual figures as text."""

from collections.abc import Mapping

from calc.energy import battery
from calc.energy.battery import Chemistry
from calc.units.kinds import CHARGE, RATIO
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
USUAL_EXPONENT = battery.by_chemistry("peukert", "default")
USUAL_CHARGE_EFFICIENCY = percents(battery.by_chemistry("battery_limits", "coulombic"))
USUAL_SELF_DISCHARGE = {
    name: f"{float(share) * 100:g} %/month"
    for name, share in battery.by_chemistry("battery_limits", "self_discharge").items()
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


def capacity_field(default: str) -> Quantity:
    """Return the field for the bank's capacity."""
    return Quantity(
        id="capacity",
        label="Bank capacity",
        symbol="C",
        kinds=(CHARGE,),
        default=default,
        low="1 A·h",
        high="20000 A·h",
        hint="As rated by the maker; parallel batteries add.",
    )


CHEMISTRY = chemistry_field(Chemistry.LFP)
CAPACITY = capacity_field("200 A·h")


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
