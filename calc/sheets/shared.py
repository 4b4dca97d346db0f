"""Fields that several worksheets ask in the same words."""

from calc.electrical.conductors import conductors
from calc.fields import Choice, Option, Quantity
from calc.kinds import RATIO, VOLTAGE
from calc.shown import with_mm2

DIRECT, INVERTER = "direct", "inverter"

ROUTE = Choice(
    id="route",
    label="How it is fed",
    default=DIRECT,
    options=(
        Option(DIRECT, "direct", aliases=("direct from the bank", "dc")),
        Option(INVERTER, "inverter", aliases=("through an inverter", "ac")),
    ),
    hint="Direct from the bank, or through an inverter.",
)

EFFICIENCY = Quantity(
    id="efficiency",
    label="Inverter efficiency",
    symbol="η",
    kinds=(RATIO,),
    default="88 %",
    low="30 %",
    high="100 %",
    only_if=("route", INVERTER),
    hint="At this load, from the maker's curve. A lightly loaded inverter is worse.",
)


def bank_voltage(default: str) -> Quantity:
    """Return the field for the bank's voltage under this load."""
    return Quantity(
        id="voltage",
        label="Bank voltage",
        symbol="V",
        kinds=(VOLTAGE,),
        default=default,
        low="1 V",
        high="1000 V",
        hint="Under this load, not at rest. A 12 V LFP bank sits near 12.8 V, a lead-acid one near 12.2 V.",
    )


def _aliases(name: str) -> tuple[str, ...]:
    size = name.split()[0]
    if name.endswith("AWG"):
        noughts = {"1/0": "0", "2/0": "00", "3/0": "000", "4/0": "0000"}.get(size)
        others = (f"{noughts} AWG", f"AWG {noughts}", f"#{noughts}") if noughts else ()
        return (f"AWG {size}", f"#{size}", f"{size} gauge", *others)
    return (f"{size} mm²", f"{size} sq mm", f"{size} qmm")


def conductor_field(default: str) -> Choice:
    """Return the field for a named conductor size."""
    return Choice(
        id="conductor",
        label="Conductor",
        default=default,
        example="like 8 AWG or 10 mm2",
        options=tuple(
            Option(
                one.name,
                with_mm2(one.name),
                "AWG" if one.series == "AWG" else "mm²",
                _aliases(one.name),
            )
            for one in conductors()
        ),
        hint="Stranded copper, by the size printed on its insulation.",
    )
