"""Judgements on a bolted joint: its lugs, its torque, its thread."""

# fmt: off
from calc.electrical.joints import MOST_LUGS, Joint, bolted_joint
from calc.electrical.locking import JointKind
from calc.electrical.threads import Condition, Grade, strength
from calc.judge import Change, Level, Rule


def _remade(joint: Joint, *, grade: Grade, condition: Condition) -> Joint:
    return bolted_joint(
        stud=joint.thread.stud.name, grade=grade, condition=condition, maker_torque=joint.maker_torque,
        kind=joint.kind, lugs=joint.lugs, opened=joint.opened,
    )


def stronger_stud(joint: Joint) -> Change | None:
    """Return the weakest material whose thread can take the torque, or None."""
    for grade in sorted(Grade, key=lambda one: strength(one)[0]):
        if grade is not Grade.UNKNOWN and not _remade(joint, grade=grade, condition=joint.thread.condition).too_tight:
            return Change({"grade": grade})
    return None


def _above_published(joint: Joint) -> bool:
    """A known metal that takes it, in a joint of metal alone, needs no other maker's figure."""
    body_gives_first = joint.kind in (JointKind.BATTERY, JointKind.FUSE)
    proven = joint.thread.grade is not Grade.UNKNOWN and not joint.too_tight
    return joint.above_published and (body_gives_first or not proven)


def _over_any(joint: Joint) -> bool:
    """No listed material takes it, so that the metal need not be known."""
    unknown = joint.thread.grade is Grade.UNKNOWN
    return joint.from_maker and unknown and joint.too_tight and stronger_stud(joint) is None


def dry_thread(joint: Joint) -> Change | None:
    """Return a clean thread, if nothing speaks against the torque there that was silent before."""
    dry = _remade(joint, grade=joint.thread.grade, condition=Condition.DRY)
    worse = dry.may_stretch or any(rule.when(dry) and not rule.when(joint) for rule in JUDGEMENTS)
    return None if worse else Change({"condition": Condition.DRY})


TOO_MANY_LUGS = Rule[Joint](
    id="joint.too-many-lugs", level=Level.STOP, when=lambda j: j.lugs > MOST_LUGS, source="four-lugs",
    headline="Too many lugs on one stud: four at most. Use a busbar or a second stud.",
    text="More than four terminals on one stud do not stay tight: the stack settles and the outer lugs carry too little.",
    mend=lambda j: Change({"lugs": MOST_LUGS}),
)
TOO_TIGHT = Rule[Joint](
    id="joint.torque-over-thread", level=Level.STOP, source="strength",
    when=lambda j: j.from_maker and j.thread.grade is not Grade.UNKNOWN and j.too_tight,
    headline="Do not tighten to {torque}: this thread allows {thread.max_torque}. Check metal and unit.",
    mend=stronger_stud,
)
OVER_ANY = Rule[Joint](
    id="joint.torque-over-any-stud", level=Level.STOP, source="strength", when=_over_any,
    headline="Do not tighten to {torque}: too much for any {thread.stud.name} stud. Check lbf·in against N·m.",
    text="It is more than the strongest material listed allows. Usually a value in lbf·in or lbf·ft was read as N·m.",
    covers=frozenset({"joint.torque-over-weak-thread", "joint.torque-above-published"}),
)
NO_TORQUE = Rule[Joint](
    id="joint.no-torque-to-trust", level=Level.STOP, when=lambda j: j.withheld is not None, source="terminal-torque",
    headline="Find the maker's torque: the published {withheld} is for a stronger stud, and this thread allows {thread.max_torque}.",
    mend=stronger_stud,
)
PUBLISHED_TOO_TIGHT_IF_WEAK = Rule[Joint](
    id="joint.published-torque-over-weak-thread", level=Level.STOP, source="strength",
    when=lambda j: not j.from_maker and j.thread.grade is Grade.UNKNOWN and j.too_tight,
    headline="Do not use the published {torque}: brass or mild steel allows {thread.max_torque}. Find metal or maker's torque.",
    mend=stronger_stud,
)
TOO_TIGHT_IF_WEAK = Rule[Joint](
    id="joint.torque-over-weak-thread", level=Level.CAUTION, source="strength",
    when=lambda j: j.from_maker and j.thread.grade is Grade.UNKNOWN and j.too_tight,
    headline="Make sure the stud is strong steel: {torque} strips brass or mild steel ({thread.max_torque}).",
    text="Check N·m against lbf·ft too. Class 8.8 is marked on the head; soft or unmarked metal is weaker.",
    mend=stronger_stud,
)
FAR_BELOW_PUBLISHED = Rule[Joint](
    id="joint.torque-far-below-published", level=Level.CAUTION, when=lambda j: j.far_below_published, source="terminal-torque",
    headline="Check the value and its unit: {torque} is far below the lowest published, {published.low}. A loose joint heats.",
)
ABOVE_PUBLISHED = Rule[Joint](
    id="joint.torque-above-published", level=Level.CAUTION, when=_above_published, source="terminal-torque",
    headline="Check the unit: {torque} is above every published value, {published.high} at most.",
)
BELOW_PUBLISHED = Rule[Joint](
    id="joint.torque-below-published", level=Level.CAUTION, when=lambda j: j.below_published, source="terminal-torque",
    headline="Check the unit: {torque} is below every published value, {published.low} at least.",
)
LUBRICATED = Rule[Joint](
    id="joint.maker-torque-lubricated", level=Level.CAUTION, source="nut-factor",
    when=lambda j: j.from_maker and j.thread.condition is Condition.LUBRICATED,
    headline="Ask whether the maker means a lubricated thread: most values, {torque} perhaps too, are for a dry one.",
    text="Clean the thread, or ask the maker: if the torque is meant for a dry one, oil adds a third to the clamping force, and a quarter less is right.",
    mend=dry_thread,
)
MAY_STRETCH = Rule[Joint](
    id="joint.may-stretch", level=Level.CAUTION, when=lambda j: j.may_stretch, source="nut-factor",
    headline="{torque}; with the lowest published friction this stretches the thread past its proof load.",
    text="With the lowest friction published the clamping force is {clamping.preload_high}, and the proof load is {thread.proof_load}. The thread may stretch permanently.",
    mend=dry_thread,
)
NONE_FOR_BATTERY = Rule[Joint](
    id="joint.no-torque-for-battery", level=Level.CAUTION,
    when=lambda j: not j.from_maker and j.kind is JointKind.BATTERY,
    headline="Get the maker's torque before you load it: about {torque} is published, but none for a battery terminal.",
)
ONE_SOURCE_OILED = Rule[Joint](
    id="joint.one-source-oiled", level=Level.CAUTION,
    when=lambda j: not j.from_maker and j.published.one_source and j.thread.condition is Condition.LUBRICATED,
    headline="Find the maker's torque: about {torque} on an oiled thread, by the one source, {published.first.low} dry.",
)
ONE_SOURCE = Rule[Joint](
    id="joint.one-source", level=Level.CAUTION, when=lambda j: not j.from_maker and j.published.one_source,
    headline="Find the maker's torque: about {torque} by the one source for this stud, and makers differ several-fold.",
)
BORROWED_OILED = Rule[Joint](
    id="joint.torque-borrowed-oiled", level=Level.CAUTION,
    when=lambda j: not j.from_maker and j.thread.condition is Condition.LUBRICATED,
    headline="Find the maker's torque: about {torque} on an oiled thread, {published.dry_low} to {published.dry_high} on a dry one.",
)
BORROWED = Rule[Joint](
    id="joint.torque-borrowed", level=Level.CAUTION, when=lambda j: not j.from_maker, source="terminal-torque",
    headline="Find the maker's torque: about {torque}, but sources run from {published.low} to {published.high}.",
    text="Find the data sheet of the part: makers' torques for one thread differ up to five-fold. Battery posts and studs in plastic pull out far below the limit of steel.",
)
JUDGEMENTS = (
    TOO_MANY_LUGS, TOO_TIGHT, OVER_ANY, NO_TORQUE, PUBLISHED_TOO_TIGHT_IF_WEAK,
    TOO_TIGHT_IF_WEAK, FAR_BELOW_PUBLISHED, ABOVE_PUBLISHED, BELOW_PUBLISHED, LUBRICATED,
    MAY_STRETCH, NONE_FOR_BATTERY, ONE_SOURCE_OILED, ONE_SOURCE,
    BORROWED_OILED, BORROWED,
)  # what makes the verdict on a joint, the gravest first

LUG_ORDER = Rule[Joint](
    id="joint.order-of-lugs", level=Level.ADVICE, when=lambda j: j.lugs > 1, source="four-lugs",
    text="Put the lug with the largest current next to the seat, and fan the lugs so that each is flat on the next.",
)
UNKNOWN_MATERIAL = Rule[Joint](
    id="joint.material-unknown", level=Level.ADVICE, when=lambda j: j.thread.grade is Grade.UNKNOWN, source="strength",
    text="Set copper if a scratch looks reddish: it allows a third less than the brass or mild steel assumed here. Soft, unmarked stainless is between.",
)
BATTERY_TERMINAL = Rule[Joint](
    id="joint.battery-terminal", level=Level.ADVICE, when=lambda j: j.kind is JointKind.BATTERY, source="33cfr-battery",
    text="Never bridge the terminals with a spanner; cover them, and vent the box if the cells gas. The thread's limit does not apply to lead or thin inserts in plastic.",
)
PLASTIC_BODY = Rule[Joint](
    id="joint.plastic-body", level=Level.ADVICE, when=lambda j: j.kind is JointKind.FUSE, source="practice",
    text="Use only the maker's torque: the thread's limit does not apply. The plastic body of a fuse holder or breaker cracks or softens long before the stud yields.",
)
CHASSIS_GROUND = Rule[Joint](
    id="joint.chassis-ground", level=Level.ADVICE, when=lambda j: j.kind is JointKind.CHASSIS, source="practice",
    text="Use bare metal and a lug as large as the positive one: it carries all return current. Grease the finished joint. Never ground to fuel, brake or gas parts.",
)
DRY_STAINLESS = Rule[Joint](
    id="joint.dry-stainless", level=Level.ADVICE, when=lambda j: j.thread.dry_stainless, source="nut-factor",
    text="Dry stainless on stainless seizes, and gives less clamping force for the same torque: {clamping.preload_low} to {clamping.preload_high} here. Anti-seize counts as lubricated: ask the maker for the torque then.",
)
TORQUE_FROM_MEMORY = Rule[Joint](
    id="joint.torque-from-memory", level=Level.ADVICE,
    when=lambda j: j.published.first.from_memory and not j.from_maker, source="memory",
    text="The published torque for this stud is from memory.",
)
INCH_GRADES = Rule[Joint](
    id="joint.inch-grades", level=Level.ADVICE, source="sae-j429",
    when=lambda j: j.thread.inch and j.thread.proof_stress > strength(Grade.UNKNOWN)[0],
    text="Check the lines on an inch bolt's head. None: grade 2, 379 MPa proof; three: grade 5, 586 MPa; six: grade 8, 827 MPa. Here {thread.grade} strength is used.",
)
DISCONNECT_FIRST = Rule[Joint](
    id="joint.disconnect-first", level=Level.ADVICE, source="practice",
    text="Disconnect the bank before you put a spanner near a live stud: a slip across the poles burns and welds. A loose joint heats with the square of the current.",
)
INITIAL_EACH = Rule[Joint](
    id="joint.initial-each", level=Level.ADVICE, source="recheck",
    text="Initial each torqued joint and paint a line across nut and stud. After the first rough miles check lines, torque and initial again: copper settles. Remake any joint in doubt.",
)
OILED_PUBLISHED = Rule[Joint](
    id="joint.published-are-dry", level=Level.NOTE, when=lambda j: j.thread.condition is Condition.LUBRICATED, source="nut-factor",
    text="No published torque is for an oiled thread: the lowest and highest here are the dry {published.dry_low} and {published.dry_high}, reduced to {published.share} for the same clamping force.",
)
NO_WASHER_BELOW = Rule[Joint](
    id="joint.no-washer-in-path", level=Level.NOTE, source="terminal-stack",
    text="A washer under a lug puts steel in the current path, which heats.",
)
PRELOAD_HOLDS = Rule[Joint](
    id="joint.clamping-holds", level=Level.NOTE, source="loosening",
    text="Clamping force holds the joint; a lock only keeps the nut on when that force is lost.",
)
WRENCH_NO_JUDGE = Rule[Joint](
    id="joint.wrench-is-no-judge", level=Level.NOTE, source="recheck",
    text="That a later torque check proves nothing is from a note to a code; when to check again is common practice.",
)
SPLIT_DISPUTED = Rule[Joint](
    id="joint.split-washer-disputed", level=Level.NOTE, source="split-washer",
    text="Split lock washers are disputed: summaries of a design manual call them flat and useless once torqued; sellers say the opposite.",
)
SPLIT_TESTED = Rule[Joint](
    id="joint.split-washer-tested", level=Level.NOTE, source="split-test",
    text="A fastener engineer reports no significant difference with and without a split washer under vibration.",
)
LOCKNUT_KEEPS_NUT = Rule[Joint](
    id="joint.locknut-keeps-the-nut", level=Level.NOTE, source="practice",
    text="A prevailing-torque nut keeps the nut, not the clamping force. Wedge-locking pairs kept the force in vibration tests that their makers ran; no independent tests were found.",
)
SPRING_WASHER_TORQUE = Rule[Joint](
    id="joint.torque-over-spring-washer", level=Level.NOTE, source="spring-torque",
    text="A car maker's workshop table takes 85 % of the torque where a spring washer lies under the nut. Ask which case a value is for.",
)
SWITCHGEAR_TORQUE = Rule[Joint](
    id="joint.switchgear-torque", level=Level.NOTE, when=lambda j: j.switchgear is not None, source="terminal-torque",
    text="A busbar joint of switchgear on {thread.stud.name} is published with the equivalent of {switchgear.torque} on a {thread.condition} thread: {switchgear.share} of the strength of yours. Small terminals allow far less, because plastic or a screw head fails first.",
)
BRASS = Rule[Joint](
    id="joint.brass-varies", level=Level.NOTE, when=lambda j: j.thread.grade is Grade.BRASS, source="iso-8839",
    text="The standard for brass screws has 250 MPa and more for the common alloys, and 180 MPa for one leaded brass above M6.",
)
NO_SPRING_CONTACT = Rule[Joint](
    id="joint.no-spring-contact", level=Level.NOTE, source="33cfr-battery",
    text="A battery connector must not depend on spring tension.",
)
TORQUE_IS_ROUGH = Rule[Joint](
    id="joint.torque-is-rough", level=Level.NOTE, source="nut-factor",
    text="The same torque gives a clamping force known to about ±30 %.",
)
