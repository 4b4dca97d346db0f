"""Fields that several worksheets ask in the same words."""

from dataclasses import replace

from calc.electrical.ampacity import RuleSet, Surroundings, insulations
from calc.electrical.conductors import Finish, GaugeReading, Series, Strands, conductors
from calc.electrical.drop_limits import Duty, limit_text
from calc.energy.loads import Route
from calc.units.kinds import COUNT, RATIO, TEMPERATURE, VOLTAGE
from calc.units.shown import with_mm2
from calc.worksheet.fields import Choice, Option, Quantity

DIRECT, INVERTER = Route.DIRECT, Route.INVERTER

ROUTE = Choice(
    id="route",
    label="How it is fed",
    of=Route,
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
    hint="At this load, from the maker's curve; worse when lightly loaded.",
)


# Of a bank of 48 V, equalised and misread: our choice
HIGHEST_BANK = "70 V"


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
        hint="Under this load. 12 V LFP: about 12.8 V; lead-acid: 12.2 V.",
    )


def _aliases(name: str) -> tuple[str, ...]:
    size = name.split()[0]
    if name.endswith("AWG"):
        noughts = {"1/0": "0", "2/0": "00", "3/0": "000", "4/0": "0000"}.get(size)
        # A bare 2/0 is no metric size, a bare 6 might be
        others = (size, f"{noughts} AWG", f"AWG {noughts}", f"#{noughts}") if noughts else ()
        return (f"AWG {size}", f"#{size}", f"{size} gauge", f"{size} ga", *others)
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
                "AWG" if one.series is Series.AWG else "mm²",
                _aliases(one.name),
            )
            for one in conductors()
        ),
        hint="Stranded copper, by the size printed on its insulation.",
    )


COPPER = Choice(
    id="finish",
    advanced=True,
    label="Copper",
    of=Finish,
    default=Finish.PLAIN,
    options=(Option(Finish.PLAIN), Option(Finish.TINNED, aliases=("coated", "tin"))),
    hint="Tinned strands conduct slightly less.",
)
STRANDS = Choice(
    id="strands",
    advanced=True,
    label="Strands",
    of=Strands,
    default=Strands.FLEXIBLE,
    options=(
        Option(Strands.FLEXIBLE, "flexible (class 5)", aliases=("flexible", "class 5")),
        Option(Strands.STRANDED, "stranded (class 2)", aliases=("stranded", "class 2")),
    ),
    hint="For metric sizes: class 5 is fine-stranded flex, class 2 is stiffer.",
)
GAUGE_READING = Choice(
    id="gauge_reading",
    advanced=True,
    label="Gauge sizes",
    of=GaugeReading,
    default=GaugeReading.AWG,
    options=(Option(GaugeReading.AWG), Option(GaugeReading.SAE)),
    hint="Vehicle cable is often SAE: less copper than AWG. Check the reel.",
)
PARALLEL = Quantity(
    id="parallel",
    advanced=True,
    label="Conductors in parallel",
    symbol="n_p",
    kinds=(COUNT,),
    default="1",
    low="1",
    high="8",
    hint="For plus, and as many for minus. Usually one.",
)
DROP_LIMIT = Quantity(
    id="limit",
    label="Drop you allow",
    symbol="d",
    kinds=(RATIO,),
    default=limit_text(Duty.CRITICAL),
    low="0.1 %",
    high="50 %",
    hint=f"{limit_text(Duty.CRITICAL)} for feeders, chargers and electronics; {limit_text(Duty.OTHER)} for plain lighting.",
)
INSULATION = Choice(
    id="insulation",
    label="Insulation rating",
    default="105 C",
    options=tuple(Option(text, text.replace(" C", " °C")) for text in insulations()),
    hint="As printed on the cable. Nothing printed: take 60 °C.",
)
SURROUNDINGS = Choice(
    id="surroundings",
    advanced=True,
    label="Where it runs",
    of=Surroundings,
    default=Surroundings.OUTSIDE,
    options=(
        Option(Surroundings.OUTSIDE, "outside engine space"),
        Option(Surroundings.INSIDE, "inside engine space"),
    ),
    hint="Under the bonnet, or beside an engine or generator, is inside.",
)
BUNDLED = Quantity(
    id="bundled",
    advanced=True,
    label="Loaded conductors together",
    symbol="n",
    kinds=(COUNT,),
    default="2",
    low="1",
    high="100",
    hint="One circuit: two. Parallel ones are added. 1: all spaced apart.",
)
# Where conductors in parallel may be asked for: their bundle is as laid, not taken for granted
BUNDLED_OR_APART = replace(
    BUNDLED, default="1", hint="All that touch, parallel ones added. 1: each spaced apart."
)
AMBIENT = Quantity(
    id="ambient",
    advanced=True,
    label="Air around the wire",
    kinds=(TEMPERATURE,),
    default="30 °C",
    low="-40 °C",
    high="150 °C",
    hint="The hottest place on the run.",
)
TERMINALS = Quantity(
    id="terminals",
    advanced=True,
    label="Terminals rated for",
    kinds=(TEMPERATURE,),
    optional=True,
    low="60 °C",
    high="200 °C",
    example="90 °C",
    hint="The weakest lug, fuse holder or switch. Empty: not known.",
)
RULE_SET = Choice(
    id="rule_set",
    advanced=True,
    label="Rule set",
    of=RuleSet,
    default=RuleSet.CFR33,
    options=(
        Option(RuleSet.CFR33, "33 CFR 183.425, table 5"),
        Option(RuleSet.ABYC, "ABYC E-11, 105 °C table", aliases=("ABYC",)),
        Option(RuleSet.NEC, "NEC 310.16, mains side", aliases=("NEC",)),
    ),
    hint="Sets the wire's limits. The first two: boats; the third: mains wiring.",
)
