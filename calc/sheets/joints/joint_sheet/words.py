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
    Step(of="without_maker", source="terminal-torque", text="Counted. If the maker gives no value, the first one published for that thread is used; on an oiled thread it is reduced with the nut factor."),
    Step(of="joint_count", formula="with_maker + without_maker", text="Rows with a name."),
    Step(of="torque_least", source="practice", when=lambda s: s.torque_least is not None, text="Use a torque wrench with this well inside its scale, away from the low end, where it is least accurate."),
    Step(of="torque_most", source="practice", when=lambda s: s.torque_most is not None, text="And this one. One wrench rarely does both."),
    Step(of="tightest", text="Of all the joints, the one whose torque is the largest share of its thread's limit."),
    Step(of="proof", source="strength", text="{tightest_stud}, {tightest_grade}: as printed, or stress area times proof stress."),
    Step(of="preload_limit", formula="preload_share * proof", source="preload", text="For a joint that is opened again."),
    Step(of="factor", source="nut-factor", text="Usual for a {tightest_condition} steel thread."),
    Step(of="tightest_ceiling", formula="factor * diameter * preload_limit", source="nut-factor", text="Torque that uses the thread's full allowance. A limit, not a target, so it is not on the printed sheet."),
    Step(of="tightest_share", formula="tightest_torque / tightest_ceiling", text="More than 100 % is too much."),
    Step(of="schedule", source="terminal-torque", text="Calculated for each joint as in joint torque, which shows every step."),
)

FINE_UNMARKED = Rule[JointSheet](
    id="joint-sheet.fine-unmarked", level=Level.FINE,
    when=lambda s: any(row.joint.thread.grade is Grade.UNKNOWN for row in s.rows),
    headline="Every joint has its maker’s torque, within the limit even of brass or mild steel.",
)
FINE = Rule[JointSheet](
    id="joint-sheet.fine", level=Level.FINE,
    headline="Every joint has its maker’s torque, within the limit of its thread.",
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
        judged.TOO_TIGHT, headline="Over the thread's limit: {those}. Check the stud, its material, and N·m against lbf·ft.",
        text="Over the thread's limit: {those}.",
    ),
    _of_each(
        judged.OVER_ANY, headline="Do not tighten to this torque: {those}. It is too much for any such stud. Check lbf·in against N·m.",
        text="Too much torque for a stud of any listed metal: {those}.",
    ),
    _of_each(
        judged.NO_TORQUE, headline="No reliable torque: {those}. The published value is over the thread's limit: find the maker’s.",
        text="The published value is for a part with a stronger stud, so no torque is given here: {those}.",
    ),
    _of_each(
        judged.PUBLISHED_TOO_TIGHT_IF_WEAK, headline="Find the metal or the maker's torque: {those}. The published one is too much for brass or mild steel.",
        text="Find the metal or the maker’s torque: the published one is too much for a stud of brass or mild steel, so none is given here: {those}.",
    ),
    _of_each(
        judged.TOO_TIGHT_IF_WEAK, headline="Too much for a stud of brass or mild steel: {those}. Make sure that it is stronger.",
        text="Too much torque for a stud of brass or mild steel: {those}.",
    ),
    _of_each(
        judged.BELOW_PUBLISHED, headline="Below every published torque: {those}. Check the value and its unit: a loose joint heats.",
        text="Below every published torque: {those}.",
    ),
    _of_each(
        judged.ABOVE_PUBLISHED, headline="Above every published torque: {those}. The maker’s value comes first, but check N·m against lbf·ft and lbf·in.",
        text="Above every published torque: {those}. A battery post or a plastic body breaks far below the limit of a steel thread.",
    ),
    _of_each(
        judged.BORROWED, headline="No maker’s torque: {those}. The torque there is published for another part.",
        text="Makers’ torques for one thread differ several-fold. Find the data sheet of the part, above all for battery posts and plastic-bodied studs: {those}.",
    ),
    _of_each(
        judged.LUBRICATED, headline="Lubricated: {those}. Make sure that the maker means a lubricated thread; most torques are for a dry one.",
        text="Oil or grease turns the same torque into more clamping force. Clean the thread, or ask the maker: {those}.",
    ),
    _of_each(
        judged.MAY_STRETCH, headline="May stretch the thread past its proof load: {those}.",
        text="With the lowest published friction, the thread passes its proof load and may stretch permanently: {those}.",
    ),
)
BESIDE = (
    _of_each(judged.DISCONNECT_FIRST),
    _of_each(judged.DRY_STAINLESS, text="Dry stainless on stainless seizes, and gives less clamping force for the same torque. Ask the maker which anti-seize and which torque."),
    _of_each(judged.UNKNOWN_MATERIAL, text="If the material is not known, brass or mild steel is assumed. A copper stud allows a third less: choose copper if a scratch looks reddish."),
    _of_each(judged.INCH_GRADES, text="Inch bolts have other grades. Here the strength of the material you chose is used for the inch thread."),
    _of_each(judged.BATTERY_TERMINAL, text="A battery terminal is soft: lead, or a thin insert in plastic. Only its maker’s torque counts: {those}."),
    _of_each(judged.PLASTIC_BODY, text="The body of a fuse holder or breaker is plastic: it cracks long before the stud yields. Only the maker’s torque counts: {those}."),
    _of_each(judged.CHASSIS_GROUND, text="A ground on the body: use bare metal, paint or grease over the finished joint, and never a part of the fuel, brake or gas system: {those}."),
    _of_each(judged.INITIAL_EACH),
    _of_each(judged.TORQUE_FROM_MEMORY, text="At least one published torque used here is from memory."),
    _of_each(judged.TORQUE_IS_ROUGH),
)  # what stands beside the numbers, whatever the verdict
HOW_KEPT_TIGHT = Rule[JointSheet](
    id="joint-sheet.how-kept-tight", level=Level.NOTE, source="practice",
    text="Locks are chosen by joint and lugs, as joint torque explains. A conical washer is a spring under the nut, over a flat washer; a nylon nut’s ring grips the thread; a flange nut is serrated. Split washers and wing nuts are not relied on.",
)
