"""fuse-choice: which fuse protects this wire and carries this load?"""

from dataclasses import dataclass
from typing import Any

from calc.compare import at_least, at_most
from calc.declare import CAUTION, FINE, NOTE, STOP, Named, Remark, Rule, Step
from calc.electrical import fuses
from calc.electrical.ampacity import (
    ABYC,
    BASE_AMBIENT,
    INSIDE,
    LAW,
    OUTSIDE,
    NotCovered,
    ampacity,
    crowding,
    insulations,
)
from calc.electrical.conductors import conductor, series_of
from calc.fields import Choice, Option, Problem, Quantity
from calc.kinds import COUNT, CURRENT, RATIO, TEMPERATURE, VOLTAGE
from calc.pictures import Window
from calc.sheets.shared import conductor_field
from calc.shown import DOWN, UP
from calc.worksheet import Worksheet

COMMON_RATING = 32.0  # V, what blade and strip fuses are made for unless marked higher


@dataclass(frozen=True, kw_only=True)
class FuseChoice:
    """The window from load to wire [A], the fuse in it [A] or None, and why.

    `crowded` is what the wire would bear [A] with the bundling factor that its rule set leaves out
    at this voltage; `at_60` what it would bear with 60 °C insulation.
    """

    row: str
    metric: bool
    thin: bool
    table_ampacity: float
    rating: float
    air: float
    base_air: float
    printed_factor: bool
    ambient_factor: float
    bundle_factor: float
    ampacity: float
    crowded: float
    uncounted_bundle: bool
    at_60: float | None
    margin: float
    lowest: float
    highest: float
    window_open: bool
    fuse: float | None
    families: tuple[str, ...]
    also: tuple[str, ...]
    remedies: tuple[str, ...]
    ceiling: float
    enough: bool
    too_low_in_voltage: tuple[str, ...]
    cannot_break: tuple[str, ...]
    higher_version: bool
    from_memory: bool
    some_from_memory: bool


def run(
    *, current: float, conductor: str, insulation: str, surroundings: str, bundled: float, ambient: float,
    voltage: float, fault_current: float, rule_set: str,
) -> FuseChoice:
    """Return the fuse for a wire and a continuous load, or the reason there is none."""
    given: dict[str, Any] = {
        "name": conductor, "insulation": float(insulation.split()[0]), "surroundings": surroundings,
        "bundled": int(bundled), "ambient": ambient, "voltage": voltage, "rule_set": rule_set,
    }
    try:
        bears = ampacity(**given)
    except NotCovered as gap:
        raise Problem(gap.field, f"{WORKSHEET.field(gap.field).label} {gap}") from None
    lowest, highest = fuses.CONTINUOUS * current, bears.ampacity
    suitable = fuses.suitable(voltage, fault_current)
    between = fuses.ratings_between(lowest, highest, suitable)
    fuse = between[0] if between else None
    fitting = tuple(family for family in suitable if fuse in family.ratings)
    low_volts = fuses.too_low_in_voltage(voltage)
    weak = tuple(f for f in fuses.families() if f not in low_volts and f not in suitable)
    uncounted = rule_set == LAW and bears.bundle_factor == 1 and bundled > 2
    return FuseChoice(
        row=bears.row,
        metric=bears.row != conductor,
        thin=bears.row == "18 AWG",
        table_ampacity=bears.table_ampacity,
        rating=given["insulation"],
        air=bears.air,
        base_air=BASE_AMBIENT,
        printed_factor=bears.printed_factor,
        ambient_factor=bears.ambient_factor,
        bundle_factor=bears.bundle_factor,
        ampacity=bears.ampacity,
        crowded=bears.ampacity * crowding(int(bundled)) if uncounted else bears.ampacity,
        uncounted_bundle=uncounted,
        at_60=_with_insulation(given, 60.0),
        margin=fuses.CONTINUOUS,
        lowest=lowest,
        highest=highest,
        window_open=at_least(highest, lowest),
        fuse=fuse,
        families=tuple(family.named_for(voltage) for family in fitting),
        also=tuple(_offered(rating, suitable, voltage) for rating in between[1:3]),
        remedies=() if fuse is not None else _remedies(given, current, lowest, suitable),
        ceiling=fuses.CEILING * highest,
        enough=bool(suitable),
        too_low_in_voltage=tuple(family.name for family in low_volts),
        cannot_break=tuple(family.name for family in weak),
        higher_version=voltage > COMMON_RATING and any(f.version(voltage) for f in fitting),
        from_memory=bool(fitting) and all(family.from_memory for family in fitting),
        some_from_memory=any(f.from_memory for f in suitable if {*f.ratings} & {*between[:3]}),
    )


def _offered(rating: float, among: tuple[fuses.Family, ...], voltage: float) -> str:
    names = [family.named_for(voltage) for family in among if rating in family.ratings]
    return f"{rating:g} A ({' or '.join(names)})"


def _with_insulation(given: dict[str, Any], insulation: float) -> float | None:
    """Return the ampacity by law with another insulation rating, or None where there is none."""
    try:
        return ampacity(**{**given, "insulation": insulation, "rule_set": LAW}).ampacity
    except NotCovered:
        return None


def _remedies(
    given: dict[str, Any], current: float, lowest: float, suitable: tuple[fuses.Family, ...]
) -> tuple[str, ...]:
    """Return the changes that open the window, each worked by running the rule set again."""
    if not suitable:
        return ("a source with less fault current, or a fuse whose data sheet gives the d.c. voltage and interrupting rating asked for",)

    def opens(load: float = lowest, **change: object) -> float | None:
        try:
            bears = ampacity(**{**given, **change})
        except NotCovered:
            return None
        return fuses.standard_rating(load, bears.ampacity, suitable)

    thicker = [one.name for one in series_of(given["name"]) if one.area > conductor(given["name"]).area]
    hotter = [float(text.split()[0]) for text in insulations() if given["rule_set"] == LAW]
    changes = (
        [("thicker wire: {}", name, {"name": name}) for name in thicker],
        [("insulation rated {:g} °C", c, {"insulation": c}) for c in hotter if c > given["insulation"]],
        [("no more than {} loaded conductors together", 2, {"bundled": 2})] if given["bundled"] > 2 else [],
    )
    found = []
    for choices in changes:
        fuse = None
        for says, value, change in choices:
            if fuse := opens(**change):
                found.append(f"{says.format(value)}, with a fuse of {fuse:g} A")
                break
    for parts in (2, 3, 4):
        if fuse := opens(lowest / parts):
            found.append(f"split the load into {parts} circuits of {current / parts:.3g} A, each on this wire with a fuse of {fuse:g} A")
            break
    return tuple(found) or (
        "no single change: take thicker wire, cooler surroundings and several circuits together",
    )


WORKSHEET = Worksheet(
    id="fuse-choice",
    title="Fuse choice",
    question="Which fuse protects this wire and carries this load?",
    asks="Which fuse for this wire?",
    about="Between what the load needs and what the wire bears.",
    run=run,
    picture=Window(low="lowest", high="highest", value="fuse",
                   caption="The fuse stands between what the load needs and what the wire bears"),
    fields=(
        Quantity(id="current", label="Continuous current", symbol="I", kinds=(CURRENT,), default="30 A", low="0.01 A", high="600 A",
                 hint="What the load draws for minutes and hours."),
        conductor_field("8 AWG"),
        Choice(id="insulation", label="Insulation rating", default="105 C",
               options=tuple(Option(text, text.replace(" C", " °C")) for text in insulations()),
               hint="Printed on the cable. If nothing is printed, take 60 °C."),
        Quantity(id="voltage", label="Highest voltage on the circuit", symbol="V", kinds=(VOLTAGE,), default="14.6 V", low="1 V", high="1000 V",
                 hint="While charging: 14.6 V, 29.2 V or 58.4 V for LFP at 12, 24 and 48 V."),
        Quantity(id="fault_current", label="Fault current at the fuse", symbol="I_f", kinds=(CURRENT,), default="2000 A", low="1 A", high="100000 A",
                 hint="What the bank can push into a dead short here. A lead-acid battery: ten to twenty times its A·h; LFP: ask the maker."),
        Choice(id="surroundings", more=True, label="Where it runs", default=OUTSIDE, options=(Option(OUTSIDE), Option(INSIDE)),
               hint="Under the bonnet, or beside an engine or generator, is inside."),
        Quantity(id="bundled", more=True, label="Loaded conductors together", symbol="n", kinds=(COUNT,), default="2", low="1", high="100",
                 hint="Plus and minus of one circuit are two."),
        Quantity(id="ambient", more=True, label="Air around the wire", kinds=(TEMPERATURE,), default="30 °C", low="-20 °C", high="150 °C",
                 hint="The hottest place on the run."),
        Choice(id="rule_set", more=True, label="Rule set", default=LAW,
               options=(Option(LAW, "33 CFR 183.425, table 5"), Option(ABYC, "ABYC E-11, 105 °C table", aliases=("ABYC",))),
               hint="Whose limits the wire is held to. Both are for boats."),
    ),
    results=(
        Named(id="fuse", label="Fuse", symbol="I_n", kind=CURRENT),
        Named(id="lowest", label="The load needs at least", symbol="I_min", kind=CURRENT, way=UP),
        Named(id="highest", label="The wire bears at most", symbol="I_max", kind=CURRENT, way=DOWN),
        Named(id="ampacity", label="Ampacity, corrected", symbol="I_z", kind=CURRENT, way=DOWN),
        Named(id="families", label="Fuse families that suit, best first"),
        Named(id="remedies", label="What would open the window"),
    ),
    between=(
        Named(id="row", label="Row of the table"),
        Named(id="table_ampacity", label="Ampacity in the table", symbol="I_t", kind=CURRENT),
        Named(id="rating", label="Insulation's rating", symbol="T_c", kind=TEMPERATURE, unit="degree_Celsius"),
        Named(id="air", label="Air taken", symbol="T_a", kind=TEMPERATURE, unit="degree_Celsius"),
        Named(id="base_air", label="Air of the table", symbol="T_b", kind=TEMPERATURE, unit="degree_Celsius"),
        Named(id="ambient_factor", label="Factor for the air around it", symbol="f_a", kind=RATIO),
        Named(id="bundle_factor", label="Factor for bundling", symbol="f_b", kind=RATIO),
        Named(id="margin", label="Margin for a continuous load", symbol="m", kind=RATIO),
        Named(id="ceiling", label="The law's ceiling", kind=CURRENT, way=DOWN),
        Named(id="crowded", label="Ampacity with the bundle counted", kind=CURRENT, way=DOWN),
        Named(id="at_60", label="Ampacity with 60 °C insulation", kind=CURRENT, way=DOWN),
        Named(id="also", label="Also within the window"),
        Named(id="too_low_in_voltage", label="Refused: d.c. voltage rating too low"),
        Named(id="cannot_break", label="Refused: cannot break this fault"),
    ),
    steps=(
        Step(of="lowest", formula="margin * current", source="nec-125", says="A fuse that carries its full rating for hours ages and opens by itself."),
        Step(of="row", source="wire-mm2", when=lambda v: v.metric, says="The table is by gauge: {conductor} is read as {row}, the next smaller by area."),
        Step(of="table_ampacity", source="33cfr-table", when=lambda v: v.rule_set == LAW,
             says="{row}, {insulation} insulation, at 30 °C, two loaded conductors."),
        Step(of="table_ampacity", source="abyc-105", when=lambda v: v.rule_set != LAW,
             says="{row}, 105 °C boat cable, at 30 °C, two loaded conductors."),
        Step(of="ambient_factor", source="33cfr-notes", when=lambda v: v.printed_factor,
             says="An engine space is taken as {air}; the factor for 105 °C insulation is printed."),
        Step(of="ambient_factor", source="nec-ambient", when=lambda v: not v.printed_factor,
             formula="min(1, sqrt((rating - air) / (rating - base_air)))",
             says="The law behind every published factor. An engine space counts as 50 °C at least; air cooler than {base_air} is not credited."),
        Step(of="bundle_factor", source="33cfr-notes", when=lambda v: v.rule_set == LAW,
             says="{bundled} together. This rule set limits bundles from 50 V on only."),
        Step(of="bundle_factor", source="abyc-105", when=lambda v: v.rule_set != LAW, says="{bundled} together, at any voltage."),
        Step(of="ampacity", formula="table_ampacity * ambient_factor * bundle_factor", says="Both corrections together."),
        Step(of="highest", formula="ampacity", says="The fuse may not let more through than the wire bears for hours."),
        Step(of="fuse", source="fuse-ratings", when=lambda v: v.fuse is not None,
             says="The smallest standard rating from {lowest} to {highest} among families rated for {voltage} and {fault_current}."),
        Step(of="fuse", source="fuse-ratings", when=lambda v: v.fuse is None and v.window_open,
             says="No standard rating lies from {lowest} to {highest} among families rated for {voltage} and {fault_current}."),
        Step(of="fuse", source="fuse-ratings", when=lambda v: v.fuse is None and not v.window_open,
             says="The load needs {lowest} and the wire bears {highest}: there is nothing between them."),
        Step(of="families", source="fuse-ratings", when=lambda v: v.fuse is not None,
             says="Rated for {voltage} d.c. or more, able to break {fault_current}, and made in this rating. Those seen in a text come first, then the least oversized."),
        Step(of="remedies", when=lambda v: v.fuse is None, says="Each worked by running the same rules again."),
    ),
    rules=(
        Rule(verdict=STOP, when=lambda v: not v.enough,
             says="No fuse family in our table is rated for {voltage} and a fault of {fault_current}."),
        Rule(verdict=STOP, when=lambda v: v.fuse is None and not v.window_open,
             says="No fuse can protect this wire and carry this load: the load needs {lowest}, the wire bears {highest}."),
        Rule(verdict=STOP, when=lambda v: v.fuse is None,
             says="No standard fuse rating lies between {lowest} for the load and {highest} for the wire."),
        Rule(verdict=CAUTION, when=lambda v: v.uncounted_bundle and not at_most(v.fuse, v.crowded),
             says="A {fuse} fuse by this rule set, which sets no limit for {bundled} together below 50 V; heat does."),
        Rule(verdict=CAUTION, when=lambda v: v.higher_version,
             says="A {fuse} fuse, but only the version rated for {voltage}: the common one is made for 32 V."),
        Rule(verdict=CAUTION, when=lambda v: v.from_memory,
             says="A {fuse} fuse; check the interrupting rating on the maker's data sheet, for ours is from memory."),
        Rule(verdict=FINE, says="A {fuse} fuse carries the load and protects the wire."),
    ),
    remarks=(
        Remark(when=lambda v: v.uncounted_bundle, source="33cfr-notes",
               says="{bundled} loaded conductors together heat each other. This rule set counts that from 50 V on only, ABYC E-11 at any voltage: with its factor the wire bears {crowded}."),
        Remark(when=lambda v: v.fuse is not None and v.at_60 is not None and not at_most(v.fuse, v.at_60), source="33cfr-table",
               says="Only with the insulation rating printed on the cable: with 60 °C insulation this wire bears {at_60}, less than the fuse."),
        Remark(when=lambda v: v.higher_version, source="fuse-ratings",
               says="Blade and strip fuses are made for 32 V unless marked higher. Above its d.c. rating a fuse can hold an arc instead of opening: read the marking."),
        Remark(when=lambda v: bool(v.too_low_in_voltage), source="fuse-ratings",
               says="Refused because their d.c. voltage rating is below {voltage}: {too_low_in_voltage}. A fuse above its d.c. rating can hold an arc instead of opening; a 58 V family is not for a 48 V bank that charges at 58.4 V."),
        Remark(when=lambda v: bool(v.cannot_break), source="fuse-ratings",
               says="Refused because they cannot break {fault_current}: {cannot_break}. A fuse that cannot break the fault can burst and burn."),
        Remark(when=lambda v: v.thin, source="33cfr-size",
               says="18 AWG is allowed only with other conductors in a sheath; a conductor on its own is 16 AWG or thicker."),
        Remark(source="33cfr-place",
               says="Fit it at the source: within 7 in (18 cm) of where the wire takes its current, 40 in (1 m) in a sheath or enclosure. An unfused length has only the battery to stop it."),
        Remark(source="practice", when=lambda v: v.fault_current >= 1000,
               says="A short on a bank burns and welds. Work with the battery disconnected, one insulated tool, no rings. Keep to the maker's instructions and local rules."),
        Remark(level=NOTE, source="33cfr-place", when=lambda v: v.voltage < 50,
               says="Below 50 V the law would let a fuse go up to one and a half times the wire's figure, here {ceiling}. That is a ceiling, not a target, and it is not used."),
        Remark(level=NOTE, source="33cfr-table",
               says="Both rule sets are for boats: insulated stranded copper, 30 °C outside and 50 °C inside an engine space. There is no van rule that we may show; the maker of the vehicle and local rules govern."),
        Remark(level=NOTE, source="fuse-ratings", when=lambda v: bool(v.also), says="Also within the window: {also}."),
        Remark(level=NOTE, source="memory", when=lambda v: v.some_from_memory,
               says="Families marked “from memory” have ratings we could not check against a text."),
    ),
    valid="Copper, continuous current, one fuse for one wire. Motors and inverters that start hard may need a slower fuse: the maker says.",
    gist="{fuse} fuse",
    gist_none="no standard fuse fits",
    apart=(("lowest", "highest"), ("lowest", "ampacity")),
)
