"""joint-torque: how tight, and how does it stay tight?"""

from dataclasses import dataclass

from calc.electrical import joints
from calc.electrical.joints import DRY, LUBRICATED, UNKNOWN
from calc.sheets.parts.joint_parts import (
    BATTERY,
    BUSBAR,
    CHASSIS,
    FUSE,
    OFTEN,
    SELDOM,
    Locking,
    locking,
    routine,
    stack,
)
from calc.units.kinds import AREA, COUNT, DIAMETER, FORCE, NUMBER, RATIO, TORQUE
from calc.units.kinds.joints import STRESS
from calc.units.shown import DOWN
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Part, Stack
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet

POWER_JOINT = "switchgear, bolted busbar joint"  # a kind of figure in the table of torques


@dataclass(frozen=True, kw_only=True)
class JointTorque(joints.Thread):
    """A joint with its parts, what keeps it tight, and where its figures come from.

    `torque` [N·m] and what it buys are None where there is none to be trusted; `doubt` goes with it.
    `power_torque` [N·m] is that of a published busbar joint on the same stud, as for this thread;
    `power_share` is the part of the proof load it would use.
    """

    torque: float | None
    preload: float | None
    preload_low: float | None
    preload_high: float | None
    clamp_share: float | None
    doubt: str
    power_torque: float | None
    power_share: float | None
    stack: tuple[Part, ...]
    locking: tuple[Locking, ...]
    unfit: tuple[Locking, ...]
    routine: tuple[str, ...]
    figure_kind: str
    figure_from: str
    spread_from: str


def run(
    *, stud: str, grade: str, maker_torque: float | None, condition: str, lugs: float, joint: str, opened: str,
) -> JointTorque:
    """Return the torque for a joint on `stud`, and what keeps it tight."""
    found = joints.joint(stud=stud, grade=grade, condition=condition, maker_torque=maker_torque)
    published = joints.published_torques(stud)
    power = next((one.low * found.factor_share for one in published if one.kind == POWER_JOINT), None)
    known = dict(vars(found))
    if found.withheld is not None:
        known |= dict.fromkeys(("torque", "preload", "preload_low", "preload_high", "clamp_share"))
    weakest = "brass or mild steel" if grade == UNKNOWN else "the thread"
    ways = locking(joint, opened, int(lugs))
    return JointTorque(
        **known,
        doubt=f", more than {weakest} bears" if found.too_tight else "",
        power_torque=power,
        power_share=None if power is None else power / (found.grip * found.diameter * found.proof),
        stack=stack(joint, int(lugs)),
        locking=tuple(way for way in ways if way.fits),
        unfit=tuple(way for way in ways if not way.fits),
        routine=routine(joint),
        figure_kind=published[0].kind,
        figure_from=published[0].source,
        spread_from="; ".join(map(_figure, published)),
    )


def _figure(one: joints.Published) -> str:
    span = f"{one.low:g}" if one.low == one.high else f"{one.low:g} to {one.high:g}"
    return f"{span} N·m {one.kind}"


WORKSHEET = Worksheet(
    id="joint-torque",
    title="Joint torque",
    question="How tight, and how does it stay tight?",
    entry_question="How tight, and will it stay?",
    about="Torque for a cable joint, order of parts, what locks it.",
    calculate=run,
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
               options=(Option("8.8", "steel 8.8"), Option("A2-70", "stainless A2-70"), Option("brass"), Option(UNKNOWN, "not known"),
                        Option("4.8", "steel 4.8"), Option("10.9", "steel 10.9"), Option("A4-80", "stainless A4-80"), Option("copper")),
               hint="Marked on the head of a bolt; a plain stud seldom says."),
        Choice(id="condition", label="Thread", default=DRY, options=(Option(DRY), Option(LUBRICATED, aliases=("oiled", "greased"))),
               hint="Oil, grease or anti-seize means lubricated."),
        Quantity(id="lugs", label="Lugs on the stud", symbol="n", kinds=(COUNT,), default="1", low="1", high="12",
                 hint="Ring terminals that share the stud."),
        Choice(id="joint", label="Kind of joint", default=BUSBAR,
               options=(Option(BUSBAR, aliases=("busbar", "stud")), Option(BATTERY, aliases=("battery", "battery post")),
                        Option(FUSE, aliases=("fuse holder", "breaker", "fuse")), Option(CHASSIS, aliases=("chassis", "ground", "earth"))),
               hint="It decides what may lock the nut, and what to look for later."),
        Choice(id="opened", label="It is opened", default=SELDOM, advanced=True, options=(Option(SELDOM), Option(OFTEN)),
               hint="Often: at every service, or to isolate something."),
    ),
    results=(
        Output(id="torque", label="Torque", symbol="T", kind=TORQUE, both=True),
        Output(id="torque_low", label="Lowest published, as for this thread", kind=TORQUE, both=True),
        Output(id="torque_high", label="Highest published, as for this thread", kind=TORQUE, both=True),
        Output(id="ceiling", label="The thread bears at most", symbol="T_max", kind=TORQUE, rounding=DOWN, both=True),
        Output(id="preload", label="Clamping force, about", symbol="F", kind=FORCE, hide_if_none=True),
        Output(id="clamp_share", label="Share of the thread's strength used", kind=RATIO, hide_if_none=True),
        Output(id="stack", label="Order of parts, from the seat out", needs_step=False),
        Output(id="locking", label="What keeps it tight", needs_step=False),
        Output(id="unfit", label="What does not suit, and why", needs_step=False),
        Output(id="routine", label="How it is looked after", needs_step=False),
    ),
    intermediates=(
        Output(id="withheld", label="Torque published for another part", symbol="T_o", kind=TORQUE, both=True),
        Output(id="doubt", label="What speaks against it"),
        Output(id="table_torque", label="Torque in the table", symbol="T_t", kind=TORQUE),
        Output(id="table_low", label="Lowest in the table", symbol="T_tl", kind=TORQUE, both=True),
        Output(id="table_high", label="Highest in the table", symbol="T_th", kind=TORQUE, both=True),
        Output(id="factor_share", label="Share for this thread", symbol="s", kind=RATIO),
        Output(id="diameter", label="Diameter of the thread", symbol="d", kind=DIAMETER),
        Output(id="pitch", label="Pitch of the thread", symbol="p_t", kind=DIAMETER),
        Output(id="stress_area", label="Stress area", symbol="A_s", kind=AREA, digits=4),
        Output(id="proof_stress", label="Proof stress", symbol="S_p", kind=STRESS),
        Output(id="proof", label="Proof load", symbol="F_p", kind=FORCE),
        Output(id="preload_share", label="Share of proof load used", symbol="p", kind=RATIO),
        Output(id="preload_limit", label="Most clamping force", symbol="F_max", kind=FORCE),
        Output(id="factor", label="Nut factor, usual", symbol="K", kind=NUMBER),
        Output(id="grip", label="Nut factor for the clamping force", symbol="K_F", kind=NUMBER),
        Output(id="grip_low", label="Lowest nut factor", kind=NUMBER),
        Output(id="grip_high", label="Highest nut factor", kind=NUMBER),
        Output(id="preload_low", label="Least clamping force", kind=FORCE, rounding=DOWN),
        Output(id="preload_high", label="Greatest clamping force", kind=FORCE),
        Output(id="power_torque", label="Torque of a busbar joint in switchgear", kind=TORQUE),
        Output(id="power_share", label="Share of the thread's strength that would use", kind=RATIO),
        Output(id="figure_kind", label="Kind of joint"),
        Output(id="figure_from", label="Figure taken from"),
        Output(id="spread_from", label="Every figure found"),
    ),
    steps=(
        Step(of="torque", formula="maker_torque", when=lambda v: v.from_maker, says="The maker's figure governs."),
        Step(of="table_torque", source="terminal-torque", when=lambda v: not v.from_maker, says="{stud}: {figure_kind} ({figure_from})."),
        Step(of="factor_share", source="nut-factor", when=lambda v: v.condition != DRY,
             says="Oil on the thread turns the same torque into more clamping force, so published dry figures come down with the nut factor."),
        Step(of="withheld", formula="table_torque * factor_share", when=lambda v: v.withheld is not None,
             says="Published for another part ({figure_kind}), whose stud must be stronger."),
        Step(of="torque", formula="table_torque * factor_share", when=lambda v: not v.from_maker and v.withheld is None,
             says="No maker's figure, so a published one for another part ({figure_kind}), for want of better."),
        Step(of="table_low", source="terminal-torque", says="The lowest of the figures found for this stud, dry: {spread_from}."),
        Step(of="torque_low", formula="table_low * factor_share", says="Brought to a {condition} thread."),
        Step(of="table_high", source="terminal-torque", says="The highest of them. They are for different parts, not for yours."),
        Step(of="torque_high", formula="table_high * factor_share", says="Brought to a {condition} thread."),
        Step(of="stress_area", source="iso-898", when=lambda v: not v.inch, says="{stud}, coarse thread, as printed."),
        Step(of="stress_area", formula="3.141592653589793 / 4 * (diameter - 0.9743 * pitch) ** 2", source="b1.1", when=lambda v: v.inch,
             says="{stud}, coarse thread."),
        Step(of="proof_stress", source="strength", says="{grade}, from the table of materials."),
        Step(of="proof", source="iso-898", when=lambda v: v.proof_printed, says="Class {grade}, {stud}, as printed."),
        Step(of="proof", formula="stress_area * proof_stress", when=lambda v: not v.proof_printed, says="What stretches the thread for good."),
        Step(of="preload_limit", formula="preload_share * proof", source="preload", says="For a joint that is opened again."),
        Step(of="factor", source="nut-factor", says="Usual for a {condition} steel thread."),
        Step(of="ceiling", formula="factor * diameter * preload_limit", source="nut-factor", says="Torque at which the thread has its fill. A ceiling, not a target."),
        Step(of="grip", source="nut-factor", when=lambda v: not v.dry_stainless, says="Published from {grip_low} to {grip_high} for a {condition} steel thread."),
        Step(of="grip", source="nut-factor", when=lambda v: v.dry_stainless,
             says="Dry stainless on stainless rubs harder: published from {grip_low} to {grip_high}; the middle is taken."),
        Step(of="preload", formula="torque / (grip * diameter)", source="nut-factor", when=lambda v: v.torque is not None,
             says="What the torque buys: from {preload_low} to {preload_high} over the published nut factors."),
        Step(of="clamp_share", formula="preload / proof", when=lambda v: v.torque is not None, says="Of the load that stretches it for good. About three quarters is the most that is used."),
        Step(of="power_torque", source="terminal-torque", when=lambda v: v.power_torque is not None,
             says="Published for a bolted joint of switchgear on {stud}, brought to a {condition} thread: for comparison."),
        Step(of="power_share", formula="power_torque / (grip * diameter * proof)", source="nut-factor", when=lambda v: v.power_share is not None,
             says="What that torque would use of this thread."),
    ),
    rules=(
        Verdict(verdict=STOP, when=lambda v: v.lugs > joints.MOST_LUGS,
             says="Too many lugs on one stud: four at most. Use a busbar or a second stud."),
        Verdict(verdict=STOP, when=lambda v: v.from_maker and v.grade != UNKNOWN and v.too_tight,
             says="The maker's {torque} is more than this thread bears: {ceiling}. Check the stud, its material, and N·m against lbf·ft."),
        Verdict(verdict=STOP, when=lambda v: v.withheld is not None,
             says="No torque to be trusted: the published {withheld} is for a stronger stud, and this thread bears only {ceiling}. Find the maker's figure."),
        Verdict(verdict=CAUTION, when=lambda v: v.from_maker and v.too_tight,
             says="{torque}, as the maker says. A stud of brass or mild steel would bear only {ceiling}: make sure that yours is stronger, and check N·m against lbf·ft."),
        Verdict(verdict=CAUTION, when=lambda v: v.too_loose,
             says="{torque} is far below every published figure, {torque_low} and up for a {condition} thread. Check the figure and its unit: a loose joint heats."),
        Verdict(verdict=CAUTION, when=lambda v: v.beyond,
             says="{torque}, as the maker says, but above every published figure; the highest is {torque_high} for a {condition} thread. Check N·m against lbf·ft and lbf·in."),
        Verdict(verdict=CAUTION, when=lambda v: v.below,
             says="{torque}, as the maker says, but below every published figure; the lowest is {torque_low} for a {condition} thread. Check N·m against lbf·ft and lbf·in."),
        Verdict(verdict=CAUTION, when=lambda v: v.from_maker and v.condition != DRY,
             says="{torque}, if the maker means a lubricated thread; most figures are for a dry one."),
        Verdict(verdict=CAUTION, when=lambda v: v.too_tight,
             says="The published {torque} is more than a stud of brass or mild steel bears. Stay below its {ceiling}, and find the maker's figure."),
        Verdict(verdict=CAUTION, when=lambda v: v.may_stretch,
             says="{torque}; by the lowest published friction this stretches the thread past its proof load."),
        Verdict(verdict=CAUTION, when=lambda v: not v.from_maker and v.joint == BATTERY,
             says="About {torque}, but no figure found is meant for a battery terminal. Get its maker's before you load it."),
        Verdict(verdict=CAUTION, when=lambda v: not v.from_maker and v.one_source and v.condition != DRY,
             says="About {torque} on an oiled thread, from the one source found for this stud, {table_torque} dry; makers differ several-fold."),
        Verdict(verdict=CAUTION, when=lambda v: not v.from_maker and v.one_source,
             says="About {torque}, from the one source found for this stud; makers differ several-fold."),
        Verdict(verdict=CAUTION, when=lambda v: not v.from_maker and v.condition != DRY,
             says="About {torque} on an oiled thread, for want of the maker's figure; for a dry one sources run from {table_low} to {table_high}."),
        Verdict(verdict=CAUTION, when=lambda v: not v.from_maker,
             says="About {torque} for want of the maker's figure; sources run from {torque_low} to {torque_high}."),
        Verdict(verdict=FINE, when=lambda v: v.joint == BATTERY,
             says="{torque}, as the maker says. That the thread bears {ceiling} says nothing of the post: never go past the maker's figure."),
        Verdict(verdict=FINE, when=lambda v: v.joint == FUSE,
             says="{torque}, as the maker says. That the thread bears {ceiling} says nothing of the plastic: never go past the maker's figure."),
        Verdict(verdict=FINE, says="{torque}, as the maker says; the thread bears {ceiling}."),
    ),
    remarks=(
        Remark(when=lambda v: v.lugs > joints.MOST_LUGS, source="four-lugs",
               says="More than four terminals on one stud do not stay tight: the stack settles and the outer lugs share poorly."),
        Remark(when=lambda v: v.lugs > 1, source="four-lugs",
               says="Put the lug with the largest current next to the seat, and fan the lugs so that each lies flat on the next."),
        Remark(when=lambda v: not v.from_maker, source="terminal-torque",
               says="Makers' figures for the same thread differ up to five-fold. Find the sheet of the part, above all for battery posts and plastic-bodied studs, which break or pull out far below what the steel bears."),
        Remark(when=lambda v: v.grade == UNKNOWN, source="strength",
               says="Material not known, so the ceiling is that of the weakest usual one: brass or mild steel. A copper stud bears a third less: choose copper if it is reddish where it is scratched. Soft, unmarked stainless lies between."),
        Remark(when=lambda v: v.joint == BATTERY, source="33cfr-battery",
               says="A battery terminal is soft: lead, or a thin insert in plastic. What the thread bears says nothing of it. Cover it, vent the box if the cells gas, and never bridge the terminals with a spanner."),
        Remark(when=lambda v: v.joint == FUSE, source="practice",
               says="The body of a fuse holder or breaker is plastic: it cracks or softens long before the stud gives. What the thread bears says nothing of it: only the maker's torque counts here."),
        Remark(when=lambda v: v.joint == CHASSIS, source="practice",
               says="A chassis ground carries all that returns through the body: bare metal, a lug as large as the positive one, and paint or grease over the finished joint. Never on a part of the fuel, brake or gas system."),
        Remark(when=lambda v: v.dry_stainless, source="nut-factor",
               says="Dry stainless on stainless seizes, and clamps less for the same torque: {preload_low} to {preload_high} here. A drop of anti-seize counts as lubricated; ask the maker for the torque then."),
        Remark(when=lambda v: v.may_stretch and v.torque is not None, source="nut-factor",
               says="With the least friction published the clamping force is {preload_high}, and the thread is proof to {proof}. It may stretch for good."),
        Remark(when=lambda v: v.torque_from_memory and not v.from_maker, source="memory", says="The published figure for this stud is from memory."),
        Remark(when=lambda v: v.inch and v.proof_stress > joints.strength(UNKNOWN)[0], source="sae-j429",
               says="Inch bolts are graded otherwise: no lines on the head, grade 2, proof 379 MPa; three lines, grade 5, 586 MPa; six, grade 8, 827 MPa. Here the strength of {grade} is put on the inch thread."),
        Remark(when=lambda v: v.condition != DRY and v.from_maker, source="nut-factor",
               says="Is the maker's figure for a dry thread? If so, oil raises the clamping force by about a third; the torque would have to come down by a quarter. Clean the thread, or ask."),
        Remark(source="practice",
               says="A loose joint heats with the square of the current until insulation burns. Disconnect the bank before you put a spanner near a live stud: a slip across the poles burns and welds."),
        Remark(level=NOTE, when=lambda v: v.condition != DRY, source="nut-factor",
               says="No figure found is for an oiled thread: the lowest and the highest here are the dry {table_low} and {table_high}, brought down to {factor_share} for the same clamping force."),
        Remark(level=NOTE, source="terminal-stack", says="A washer under a lug would put steel in the current's path, and heat."),
        Remark(level=NOTE, source="loosening", says="Clamping force is what holds; what locks the nut only keeps it on when that is lost."),
        Remark(level=NOTE, source="recheck", says="That the wrench is no judge later is from a note to a code; when to look again is common practice."),
        Remark(level=NOTE, source="split-washer",
               says="Split lock washers are disputed: summaries of a design manual call them flat and useless once torqued; those who sell them say the opposite."),
        Remark(level=NOTE, source="split-test", says="A fastener engineer reports no significant difference with and without a split washer under vibration."),
        Remark(level=NOTE, source="practice",
               says="A prevailing-torque nut keeps the nut, not the clamping force. Wedge-locking pairs kept the force in vibration tests that their makers ran; no independent figures were found."),
        Remark(level=NOTE, source="spring-torque",
               says="A car maker's workshop table takes 85 % of the torque where a spring washer lies under the nut. Ask which case a figure is for."),
        Remark(level=NOTE, when=lambda v: v.power_share is not None, source="terminal-torque",
               says="A busbar joint of switchgear on {stud} is published with what is {power_torque} on a {condition} thread: {power_share} of the strength of yours. Small terminals take far less, since plastic or a screw head gives first."),
        Remark(level=NOTE, when=lambda v: v.grade == "brass", source="iso-8839",
               says="The standard for brass screws has 250 MPa and more for the common alloys, and 180 MPa for one leaded brass above M6."),
        Remark(level=NOTE, source="33cfr-battery", says="A battery connector must not depend on spring tension."),
        Remark(level=NOTE, source="nut-factor", says="The same torque gives a clamping force known to about ±30 %."),
    ),
    valid="A clean, flat joint of copper lugs on a steel, stainless, brass or copper stud, tightened once with a torque wrench on the nut.",
    summary="{torque}{doubt}",
    summary_none="no torque to be trusted",
    keep_distinct=(("torque", "torque_low"), ("torque", "torque_high"), ("torque", "ceiling"), ("withheld", "ceiling")),
    tables=(Table(of="unfit", cards=True, folded=True, columns=(Output(id="method", label="Part"), Output(id="why", label="Why not"))),),
)
