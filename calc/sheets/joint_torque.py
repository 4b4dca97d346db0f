"""joint-torque: how tight, and how does it stay tight?"""

from dataclasses import dataclass

from calc.compare import at_most
from calc.declare import CAUTION, FINE, NOTE, STOP, Named, Remark, Rule, Step
from calc.electrical import joints
from calc.fields import Choice, Option, Quantity
from calc.kinds import COUNT, DIAMETER, FORCE, NUMBER, RATIO, TORQUE
from calc.pictures import Part, Stack
from calc.shown import DOWN
from calc.worksheet import Worksheet

DRY, LUBRICATED = "dry", "lubricated"
UNKNOWN = "unknown"


@dataclass(frozen=True)
class Locking:
    """One way to keep a nut where it is: whether it fits a cable joint, and why."""

    method: str
    fits: bool
    why: str

    def __str__(self) -> str:
        return f"{self.method}: {'yes' if self.fits else 'no'}, {self.why}"


LOCKING = (
    Locking("prevailing-torque nut (nylon ring)", True, "it cannot spin off when preload is lost; use it once, and not where the joint runs hot"),
    Locking("serrated (knurled) flange nut", True, "its teeth bite a steel or brass washer face; not straight onto soft lug or lead"),
    Locking("conical spring washer, or a wedge-locking pair", True, "it keeps preload while soft metal settles; on the nut's side, over a flat washer"),
    Locking("split lock washer", False, "sources disagree: it lies flat at full torque and some tests find no effect; never rely on it alone"),
    Locking("thread locker", False, "keep it off every face that carries current; on the thread only where the maker asks for it"),
    Locking("wing nut", False, "fingers do not reach the torque"),
    Locking("paint mark across nut and stud", True, "it holds nothing, but shows at a glance whether the nut has moved"),
)


@dataclass(frozen=True, kw_only=True)
class JointTorque:
    """Torque [N·m] to use and the spread of the sources, what the thread bears, and the stack.

    `preload` [N] is what the torque buys by the nut factor `grip`, from `grip_low` to `grip_high`
    as published; `factor` is the nut factor of the ceiling.
    """

    table_torque: float
    table_low: float
    table_high: float
    factor_share: float
    torque: float
    torque_low: float
    torque_high: float
    diameter: float
    proof: float
    preload_share: float
    preload_limit: float
    factor: float
    ceiling: float
    grip: float
    grip_low: float
    grip_high: float
    preload: float
    preload_low: float
    preload_high: float
    locking: tuple[Locking, ...]
    stack: tuple[Part, ...]
    from_maker: bool
    one_source: bool
    figure_kind: str
    figure_from: str
    spread_from: str
    dry_stainless: bool
    torque_from_memory: bool
    inch: bool


def run(*, stud: str, grade: str, maker_torque: float | None, condition: str, lugs: float) -> JointTorque:
    """Return the torque for a joint on `stud`, and what keeps it tight."""
    thread = joints.stud(stud)
    published = joints.published_torques(stud)
    factor = joints.nut_factor(condition)[1]
    share = factor / joints.nut_factor(DRY)[1]
    dry_stainless = grade == "A2-70" and condition == DRY
    grip_low, grip, grip_high = joints.nut_factor("stainless" if dry_stainless else condition)
    low, high = min(p.low for p in published), max(p.high for p in published)
    torque = published[0].low * share if maker_torque is None else maker_torque
    proof = joints.proof_load(thread, grade)
    limit = joints.PRELOAD_SHARE * proof
    return JointTorque(
        table_torque=published[0].low,
        table_low=low,
        table_high=high,
        factor_share=share,
        torque=torque,
        torque_low=low * share,
        torque_high=high * share,
        diameter=thread.diameter,
        proof=proof,
        preload_share=joints.PRELOAD_SHARE,
        preload_limit=limit,
        factor=factor,
        ceiling=joints.tightening_torque(factor, thread.diameter, limit),
        grip=grip,
        grip_low=grip_low,
        grip_high=grip_high,
        preload=torque / (grip * thread.diameter),
        preload_low=torque / (grip_high * thread.diameter),
        preload_high=torque / (grip_low * thread.diameter),
        locking=LOCKING,
        stack=stack(int(lugs)),
        from_maker=maker_torque is not None,
        one_source=low == high,
        figure_kind=published[0].kind,
        figure_from=published[0].source,
        spread_from="; ".join(map(_figure, published)),
        dry_stainless=dry_stainless,
        torque_from_memory=published[0].from_memory,
        inch=thread.series == joints.INCH,
    )


def _figure(one: joints.Published) -> str:
    span = f"{one.low:g}" if one.low == one.high else f"{one.low:g} to {one.high:g}"
    return f"{span} N·m {one.kind}"


def stack(lugs: int) -> tuple[Part, ...]:
    """Return the parts on the stud in order, first at the seat: no washer in the current's path."""
    first = Part("lug", "lug" if lugs == 1 else "lug, largest current")
    return (
        Part("seat", "seat of the stud, or busbar, clean and bright"),
        first,
        *(Part("lug", f"lug {number}") for number in range(2, lugs + 1)),
        Part("washer", "flat washer"),
        Part("locking", "locking washer, if used"),
        Part("nut", "nut"),
    )


WORKSHEET = Worksheet(
    id="joint-torque",
    title="Joint torque",
    question="How tight, and how does it stay tight?",
    asks="How tight, and will it stay?",
    about="Torque for a cable joint, order of parts, what locks it.",
    run=run,
    picture=Stack(parts="stack", caption="Order of parts on the stud: current passes from lug to lug, never through a washer"),
    fields=(
        Choice(id="stud", label="Stud", default="M8", example="like M8 or 5/16 in",
               options=tuple(Option(one.name, one.name, one.series,
                                    aliases=(one.name.removesuffix(" in"), f'{one.name.removesuffix(" in")}"', one.name.replace("No. ", "#")))
                             for one in joints.studs()),
               hint="Measured or read from the part. An M8 nut binds on a 5/16 in stud."),
        Quantity(id="maker_torque", label="Maker's torque", symbol="T_m", kinds=(TORQUE,), optional=True, low="0.1 N·m", high="300 N·m",
                 example="12 N·m", hint="From the part's own sheet. It governs; leave empty if there is none."),
        Choice(id="grade", label="Stud material", default=UNKNOWN,
               options=(Option("8.8", "steel 8.8"), Option("A2-70", "stainless A2-70"), Option("brass"), Option(UNKNOWN, "not known")),
               hint="Marked on the head of a bolt; a plain stud seldom says."),
        Choice(id="condition", label="Thread", default=DRY, options=(Option(DRY), Option(LUBRICATED, aliases=("oiled", "greased"))),
               hint="Oil, grease or anti-seize means lubricated."),
        Quantity(id="lugs", label="Lugs on the stud", symbol="n", kinds=(COUNT,), default="1", low="1", high="12",
                 hint="Ring terminals that share the stud."),
    ),
    results=(
        Named(id="torque", label="Torque", symbol="T", kind=TORQUE, both=True),
        Named(id="torque_low", label="Lowest published", kind=TORQUE, both=True),
        Named(id="torque_high", label="Highest published", kind=TORQUE, both=True),
        Named(id="ceiling", label="The thread bears at most", symbol="T_max", kind=TORQUE, way=DOWN, both=True),
        Named(id="preload", label="Clamping force, about", symbol="F", kind=FORCE),
        Named(id="stack", label="Order of parts, from the seat out"),
        Named(id="locking", label="What keeps it tight"),
    ),
    between=(
        Named(id="table_torque", label="Torque in the table", symbol="T_t", kind=TORQUE),
        Named(id="table_low", label="Lowest in the table", symbol="T_tl", kind=TORQUE),
        Named(id="table_high", label="Highest in the table", symbol="T_th", kind=TORQUE),
        Named(id="factor_share", label="Share for this thread", symbol="s", kind=RATIO),
        Named(id="diameter", label="Diameter of the thread", symbol="d", kind=DIAMETER),
        Named(id="proof", label="Proof load", symbol="F_p", kind=FORCE),
        Named(id="preload_share", label="Share of proof load used", symbol="p", kind=RATIO),
        Named(id="preload_limit", label="Most clamping force", symbol="F_max", kind=FORCE),
        Named(id="factor", label="Nut factor, usual", symbol="K", kind=NUMBER),
        Named(id="grip", label="Nut factor for the clamping force", symbol="K_F", kind=NUMBER),
        Named(id="grip_low", label="Lowest nut factor", kind=NUMBER),
        Named(id="grip_high", label="Highest nut factor", kind=NUMBER),
        Named(id="preload_low", label="Least clamping force", kind=FORCE, way=DOWN),
        Named(id="preload_high", label="Greatest clamping force", kind=FORCE),
        Named(id="figure_kind", label="Kind of joint"),
        Named(id="figure_from", label="Figure taken from"),
        Named(id="spread_from", label="Every figure found"),
    ),
    steps=(
        Step(of="torque", formula="maker_torque", when=lambda v: v.from_maker, says="The maker's figure governs."),
        Step(of="table_torque", source="terminal-torque", when=lambda v: not v.from_maker, says="{stud}: {figure_kind} ({figure_from})."),
        Step(of="factor_share", source="nut-factor", when=lambda v: v.condition != DRY,
             says="Oil on the thread turns the same torque into more clamping force, so published dry figures come down with the nut factor."),
        Step(of="torque", formula="table_torque * factor_share", when=lambda v: not v.from_maker,
             says="No maker's figure, so a published one for another part ({figure_kind}), for want of better."),
        Step(of="table_low", source="terminal-torque", says="The lowest of the figures found for this stud, dry: {spread_from}."),
        Step(of="torque_low", formula="table_low * factor_share", says="For this thread."),
        Step(of="table_high", source="terminal-torque", says="The highest of them. They are for different parts, not for yours."),
        Step(of="torque_high", formula="table_high * factor_share", says="For this thread."),
        Step(of="proof", source="iso-898", when=lambda v: v.grade == "8.8" and not v.inch, says="Class 8.8, {stud}, as printed."),
        Step(of="proof", source="strength", when=lambda v: not (v.grade == "8.8" and not v.inch),
             says="Stress area of {stud} times the proof stress of the material ({grade})."),
        Step(of="preload_limit", formula="preload_share * proof", source="preload", says="For a joint that is opened again."),
        Step(of="factor", source="nut-factor", says="Usual for a {condition} steel thread."),
        Step(of="ceiling", formula="factor * diameter * preload_limit", source="nut-factor", says="Torque at which the thread has its fill. A ceiling, not a target."),
        Step(of="grip", source="nut-factor", when=lambda v: not v.dry_stainless, says="Published from {grip_low} to {grip_high} for a {condition} steel thread."),
        Step(of="grip", source="nut-factor", when=lambda v: v.dry_stainless,
             says="Dry stainless on stainless rubs harder: published from {grip_low} to {grip_high}; the middle is taken."),
        Step(of="preload", formula="torque / (grip * diameter)", source="nut-factor",
             says="What the torque buys: from {preload_low} to {preload_high} over the published nut factors."),
        Step(of="stack", source="stack", says="A washer under a lug puts steel in the current's path and heats."),
        Step(of="locking", source="loosening", says="Clamping force is what holds; locking keeps the nut when that is lost."),
    ),
    rules=(
        Rule(verdict=STOP, when=lambda v: v.lugs > joints.MOST_LUGS,
             says="Too many lugs on one stud: four at most. Use a busbar or a second stud."),
        Rule(verdict=STOP, when=lambda v: v.from_maker and v.grade != UNKNOWN and not at_most(v.torque, v.ceiling),
             says="The maker's {torque} is more than this thread bears: {ceiling}. Check the stud, its material, and N·m against lbf·ft."),
        Rule(verdict=CAUTION, when=lambda v: v.from_maker and not at_most(v.torque, v.ceiling),
             says="{torque}, as the maker says. A stud of brass or mild steel would bear only {ceiling}: make sure that yours is stronger."),
        Rule(verdict=CAUTION, when=lambda v: v.from_maker and v.torque < 0.5 * v.torque_low,
             says="{torque} is far below every published figure for this stud, {torque_low} and up. Check the figure and its unit: a loose joint heats."),
        Rule(verdict=CAUTION, when=lambda v: v.from_maker and v.condition != DRY,
             says="{torque}, if the maker means a lubricated thread; most figures are for a dry one."),
        Rule(verdict=CAUTION, when=lambda v: not at_most(v.torque, v.ceiling),
             says="The published {torque} is more than this thread bears: {ceiling}. Stay below, and find the maker's figure."),
        Rule(verdict=CAUTION, when=lambda v: not at_most(v.preload_high, v.proof),
             says="{torque}; by the lowest published friction this stretches the thread past its proof load."),
        Rule(verdict=CAUTION, when=lambda v: not v.from_maker and v.one_source,
             says="About {torque}, from the one source found for this stud; makers differ several-fold."),
        Rule(verdict=CAUTION, when=lambda v: not v.from_maker,
             says="About {torque} for want of the maker's figure; sources run from {torque_low} to {torque_high}."),
        Rule(verdict=FINE, says="{torque}, as the maker says; the thread bears {ceiling}."),
    ),
    remarks=(
        Remark(when=lambda v: v.lugs > joints.MOST_LUGS, source="four-lugs",
               says="More than four terminals on one stud do not stay tight: the stack settles and the outer lugs share poorly."),
        Remark(when=lambda v: v.lugs > 1, source="four-lugs",
               says="Put the lug with the largest current next to the seat, and fan the lugs so that each lies flat on the next."),
        Remark(when=lambda v: not v.from_maker, source="terminal-torque",
               says="Makers' figures for the same thread differ up to five-fold. Find the sheet of the part, above all for battery posts and plastic-bodied studs, which break or pull out far below what the steel bears."),
        Remark(when=lambda v: v.grade == UNKNOWN, source="strength", says="Material not known, so the ceiling is that of the weakest: brass or mild steel."),
        Remark(when=lambda v: v.grade == "A2-70", source="memory", says="The strength of A2-70 is from memory."),
        Remark(when=lambda v: v.dry_stainless, source="nut-factor",
               says="Dry stainless on stainless seizes, and clamps less for the same torque: {preload_low} to {preload_high} here. A drop of anti-seize counts as lubricated; ask the maker for the torque then."),
        Remark(when=lambda v: not at_most(v.preload_high, v.proof), source="nut-factor",
               says="With the least friction published the clamping force is {preload_high}, and the thread is proof to {proof}. It may stretch for good."),
        Remark(when=lambda v: v.torque_from_memory and not v.from_maker, source="memory", says="The published figure for this stud is from memory."),
        Remark(when=lambda v: v.inch and v.grade == "8.8", source="b1.1",
               says="Inch bolts are graded otherwise; the strength of 8.8 is put on the inch thread's stress area, whose threads per inch are from memory."),
        Remark(when=lambda v: v.condition != DRY and v.from_maker, source="nut-factor",
               says="Is the maker's figure for a dry thread? If so, oil raises the clamping force by about a third; the torque would have to come down by a quarter. Clean the thread, or ask."),
        Remark(source="recheck",
               says="Check again after the first drives: soft copper settles. Then mark nut and stud with paint and look at the mark. A later torque reading does not tell what was used at first; a joint in doubt is opened, cleaned and made anew."),
        Remark(source="practice",
               says="A loose joint heats with the square of the current until insulation burns. Disconnect the bank before you put a spanner near a live stud: a slip across the poles burns and welds."),
        Remark(level=NOTE, source="split-washer",
               says="Split lock washers are disputed: summaries of a design manual call them flat and useless once torqued, one test found no difference, sellers say the opposite."),
        Remark(level=NOTE, source="33cfr-battery", says="A battery connector must not depend on spring tension."),
        Remark(level=NOTE, source="nut-factor", says="The same torque gives a clamping force known to about ±30 %."),
    ),
    valid="A clean, flat joint of copper lugs on a steel, stainless or brass stud, tightened once with a torque wrench on the nut.",
    gist="{torque}",
    apart=(("torque", "ceiling"),),
)
