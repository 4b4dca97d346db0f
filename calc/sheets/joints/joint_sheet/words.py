"""The working of joint-sheet in words, its own words for the rules of a joint, and its fine ones."""

# fmt: off
from collections.abc import Callable

from calc.electrical.joints import Joint
from calc.electrical.rules import joints as judged
from calc.electrical.threads import Grade
from calc.judge import Level, Rule
from calc.sheets.joints.joint_sheet.calculate import JointSheet
from calc.worksheet.declare import Placed, Step
from calc.worksheet.rows import listed

STEPS: tuple[Step[JointSheet], ...] = (
    Step(of="without_maker", source="terminal-torque", text="Counted. Where the maker gives no figure, the first one published for that thread stands in, for want of better; on an oiled thread it comes down with the nut factor."),
    Step(of="joint_count", formula="with_maker + without_maker", text="Rows with a name."),
    Step(of="torque_least", source="practice", when=lambda s: s.torque_least is not None, text="Take a torque wrench that holds this within its scale, well off the low end, where it is least sure."),
    Step(of="torque_most", source="practice", when=lambda s: s.torque_most is not None, text="And this one. One wrench seldom does both."),
    Step(of="tightest", text="Of all the joints, the one whose torque is the largest share of what its thread takes."),
    Step(of="proof", source="strength", text="{tightest_stud}, {tightest_grade}: as printed, or stress area times proof stress."),
    Step(of="preload_limit", formula="preload_share * proof", source="preload", text="For a joint that is opened again."),
    Step(of="factor", source="nut-factor", text="Usual for a {tightest_condition} steel thread."),
    Step(of="tightest_ceiling", formula="factor * diameter * preload_limit", source="nut-factor", text="Torque at which the thread has its fill. A ceiling, not a target, so it is not on the printed sheet."),
    Step(of="tightest_share", formula="tightest_torque / tightest_ceiling", text="More than the whole is too much."),
    Step(of="schedule", source="terminal-torque", text="Worked for each joint as in the sheet for one joint, which shows every step."),
)

FINE_UNMARKED = Rule[JointSheet](
    id="joint-sheet.fine-unmarked", level=Level.FINE,
    when=lambda s: any(row.joint.thread.grade is Grade.UNKNOWN for row in s.rows),
    headline="Every joint has its maker’s figure, and even a thread of brass or mild steel takes it.",
)
FINE = Rule[JointSheet](
    id="joint-sheet.fine", level=Level.FINE,
    headline="Every joint has its maker’s figure, and every thread takes it.",
)


OVER_THREAD = (judged.TOO_TIGHT, judged.OVER_ANY, judged.NO_TORQUE, judged.TOO_TIGHT_IF_WEAK, judged.PUBLISHED_TOO_TIGHT_IF_WEAK)
_SAID_ALREADY = frozenset({judged.ABOVE_PUBLISHED.id, judged.MAY_STRETCH.id})  # where a torque is over the thread's


def named(*rules: Rule[Joint], but: tuple[Rule[Joint], ...] = ()) -> Callable[[JointSheet], str | None]:
    """Return what lists the joints on which one of the `rules` fires `but` none of those."""

    def names(sheet: JointSheet) -> str | None:
        found = [row for row in sheet.rows if any(rule.when(row.joint) for rule in rules)]
        return listed([row.name for row in found if not any(rule.when(row.joint) for rule in but)]) or None

    return names


def _of_each(rule: Rule[Joint], *, headline: str = "", text: str = "") -> Placed:
    covers = _SAID_ALREADY if rule in OVER_THREAD else frozenset()
    return Placed(rule=rule, at="rows.joint", headline=headline, text=text, covers=covers)


JUDGED = (
    _of_each(
        judged.TOO_MANY_LUGS, headline="More than four lugs on one stud: {those}. Use a bus bar or a second stud.",
        text="More than four terminals on one stud do not stay tight: {those}.",
    ),
    _of_each(
        judged.TOO_TIGHT, headline="More torque than the thread takes: {those}. Check the stud, its material, and N·m against lbf·ft.",
        text="More torque than the thread takes: {those}.",
    ),
    _of_each(
        judged.OVER_ANY, headline="Do not tighten so far: {those}. No such stud takes it. Check lbf·in against N·m.",
        text="More torque than a stud of any listed metal takes: {those}.",
    ),
    _of_each(
        judged.NO_TORQUE, headline="No torque to be trusted: {those}. The published value is more than the thread takes: find the maker’s.",
        text="The published figure is for a part whose stud is stronger, and no torque is given here: {those}.",
    ),
    _of_each(
        judged.PUBLISHED_TOO_TIGHT_IF_WEAK, headline="Find the metal or the maker's torque: {those}. The published one is too much for brass or mild steel.",
        text="Find the metal or the maker’s torque: the published one is more than a stud of brass or mild steel takes, and none is given here: {those}.",
    ),
    _of_each(
        judged.TOO_TIGHT_IF_WEAK, headline="Too much for a stud of brass or mild steel: {those}. Make sure that it is stronger.",
        text="More torque than a stud of brass or mild steel takes: {those}.",
    ),
    _of_each(
        judged.BELOW_PUBLISHED, headline="Below every published torque: {those}. Check the value and its unit: a loose joint heats.",
        text="Below every published torque: {those}.",
    ),
    _of_each(
        judged.ABOVE_PUBLISHED, headline="Above every published torque: {those}. The maker’s figure governs, but check N·m against lbf·ft and lbf·in.",
        text="Above every published torque: {those}. A battery post or a plastic body breaks far below what a steel thread takes.",
    ),
    _of_each(
        judged.BORROWED, headline="No maker’s figure: {those}. The torque there is one published for another part.",
        text="Makers’ figures for one thread differ several-fold. Find the sheet of the part, above all for battery posts and plastic-bodied studs: {those}.",
    ),
    _of_each(
        judged.LUBRICATED, headline="Lubricated: {those}. Make sure that the maker means a lubricated thread; most torques are for a dry one.",
        text="Oil or grease turns the same torque into more clamping force. Clean the thread, or ask the maker: {those}.",
    ),
    _of_each(
        judged.MAY_STRETCH, headline="May stretch the thread past its proof load: {those}.",
        text="With the least friction published, the thread passes its proof load and may stretch for good: {those}.",
    ),
)
BESIDE = (
    _of_each(judged.DISCONNECT_FIRST),
    _of_each(judged.DRY_STAINLESS, text="Dry stainless on stainless seizes, and clamps less for the same torque. Ask the maker which anti-seize and which torque."),
    _of_each(judged.UNKNOWN_MATERIAL, text="Where the material is not known, the thread is taken for brass or mild steel. A copper stud takes a third less: choose copper if it is reddish where it is scratched."),
    _of_each(judged.INCH_GRADES, text="Inch bolts are graded otherwise. Here the strength of the material you chose is put on the inch thread."),
    _of_each(judged.BATTERY_TERMINAL, text="A battery terminal is soft: lead, or a thin insert in plastic. Only its maker’s torque counts: {those}."),
    _of_each(judged.PLASTIC_BODY, text="The body of a fuse holder or breaker is plastic: it cracks long before the stud gives. Only the maker’s torque counts: {those}."),
    _of_each(judged.CHASSIS_GROUND, text="A ground on the body: bare metal, paint or grease over the finished joint, and never on a part of the fuel, brake or gas system: {those}."),
    _of_each(judged.INITIAL_EACH),
    _of_each(judged.TORQUE_FROM_MEMORY, text="At least one published torque used here is from memory."),
    _of_each(judged.TORQUE_IS_ROUGH),
)  # what stands beside the numbers, whatever the verdict
HOW_KEPT_TIGHT = Rule[JointSheet](
    id="joint-sheet.how-kept-tight", level=Level.NOTE, source="practice",
    text="What keeps a joint tight is chosen by the kind of joint and the lugs on it, as in joint torque, with its reasons there. A conical washer is a spring washer on the nut’s side, over a flat one; a nylon nut has a ring that grips the thread; a flange nut is serrated. No split washer and no wing nut is relied on.",
)
