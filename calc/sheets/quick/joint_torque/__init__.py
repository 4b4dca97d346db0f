"""joint-torque: how tight, and how does it stay tight?"""

# fmt: off
from dataclasses import replace

from calc.electrical.locking import Opened
from calc.electrical.rules import joints as judged
from calc.sheets.parts.joint_fields import CONDITION, GRADE, KIND, LUGS, MAKER_TORQUE, STUD
from calc.sheets.parts.joint_parts import routine, stack
from calc.sheets.quick.joint_torque.calculate import calculate, doubt, spread, suitable, unsuitable
from calc.sheets.quick.joint_torque.words import FINE, FINE_BATTERY, FINE_FUSE, STEPS
from calc.units.kinds import AREA, DIAMETER, FORCE, NUMBER, RATIO, TORQUE
from calc.units.kinds.joints import STRESS
from calc.worksheet.declare import Output
from calc.worksheet.fields import Choice, Option
from calc.worksheet.pictures import Stack
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="joint-torque",
    title="Joint torque",
    question="How tight should this joint be, and what keeps it tight?",
    about="Torque for a cable joint, the order of parts and what locks it.",
    calculate=calculate,
    picture=Stack(parts="stack", caption="Order of parts on the stud: current flows from lug to lug, never through a washer"),
    fields=(
        STUD, replace(MAKER_TORQUE, default="10 N·m"), replace(GRADE, advanced=True), CONDITION, LUGS, KIND,
        Choice(id="opened", label="It is opened", of=Opened, default=Opened.SELDOM, advanced=True, options=(Option(Opened.SELDOM), Option(Opened.OFTEN)),
               hint="Often: at every service, or to isolate something."),
    ),
    results=(
        Output(id="torque", label="Torque", symbol="T", kind=TORQUE, both=True),
        Output(id="torque_low", at="published.low", label="Lowest published, corrected for this thread", kind=TORQUE, both=True),
        Output(id="torque_high", at="published.high", label="Highest published, corrected for this thread", kind=TORQUE, both=True),
        Output(id="ceiling", at="thread.max_torque", label="Largest torque for the thread", symbol="T_max", kind=TORQUE, both=True),
        Output(id="preload", at="clamping.preload", label="Clamping force, about", symbol="F", kind=FORCE, hide_if_none=True),
        Output(id="clamp_share", at="clamping.share", label="Share of the thread's strength used", kind=RATIO, hide_if_none=True),
        Output(id="stack", find=stack, label="Order of parts, from the seat out", needs_step=False),
        Output(id="locking", find=suitable, label="What keeps it tight", needs_step=False),
        Output(id="unfit", find=unsuitable, label="What is not suitable, and why", needs_step=False),
        Output(id="routine", find=routine, label="How to maintain it", needs_step=False),
    ),
    intermediates=(
        Output(id="withheld", label="Torque published for another part", symbol="T_o", kind=TORQUE, both=True),
        Output(id="doubt", find=doubt, label="Reasons against it"),
        Output(id="table_torque", at="published.first.low", label="Torque in the table", symbol="T_t", kind=TORQUE),
        Output(id="table_low", at="published.dry_low", label="Lowest in the table", symbol="T_tl", kind=TORQUE, both=True),
        Output(id="table_high", at="published.dry_high", label="Highest in the table", symbol="T_th", kind=TORQUE, both=True),
        Output(id="factor_share", at="published.share", label="Share for this thread", symbol="s", kind=RATIO),
        Output(id="diameter", at="thread.stud.diameter", label="Diameter of the thread", symbol="d", kind=DIAMETER),
        Output(id="pitch", at="thread.stud.pitch", label="Pitch of the thread", symbol="p_t", kind=DIAMETER),
        Output(id="stress_area", at="thread.stud.stress_area", label="Stress area", symbol="A_s", kind=AREA, digits=4),
        Output(id="proof_stress", at="thread.proof_stress", label="Proof stress", symbol="S_p", kind=STRESS),
        Output(id="proof", at="thread.proof_load", label="Proof load", symbol="F_p", kind=FORCE),
        Output(id="preload_share", at="thread.preload_share", label="Share of proof load used", symbol="p", kind=RATIO),
        Output(id="preload_limit", at="thread.preload_limit", label="Most clamping force", symbol="F_max", kind=FORCE),
        Output(id="factor", at="thread.factor", label="Nut factor, usual", symbol="K", kind=NUMBER),
        Output(id="grip", at="thread.grip.usual", label="Nut factor for the clamping force", symbol="K_F", kind=NUMBER),
        Output(id="grip_low", at="thread.grip.low", label="Lowest nut factor", kind=NUMBER),
        Output(id="grip_high", at="thread.grip.high", label="Highest nut factor", kind=NUMBER),
        Output(id="preload_low", at="clamping.preload_low", label="Least clamping force", kind=FORCE),
        Output(id="preload_high", at="clamping.preload_high", label="Greatest clamping force", kind=FORCE),
        Output(id="power_torque", at="switchgear.torque", label="Torque of a busbar joint in switchgear", kind=TORQUE),
        Output(id="power_share", at="switchgear.share", label="Share of the thread's strength used by that", kind=RATIO),
        Output(id="figure_kind", at="published.first.kind", label="Kind of joint"),
        Output(id="figure_from", at="published.first.source", label="Torque taken from"),
        Output(id="spread_from", find=spread, label="Every torque found"),
    ),
    steps=STEPS,
    rules=(
        *judged.JUDGEMENTS, FINE_BATTERY, FINE_FUSE, FINE,
        judged.LUG_ORDER, judged.UNKNOWN_MATERIAL, judged.BATTERY_TERMINAL, judged.PLASTIC_BODY, judged.CHASSIS_GROUND,
        judged.DRY_STAINLESS, judged.TORQUE_FROM_MEMORY, judged.INCH_GRADES, judged.DISCONNECT_FIRST,
        judged.OILED_PUBLISHED, judged.NO_WASHER_BELOW, judged.PRELOAD_HOLDS, judged.WRENCH_NO_JUDGE,
        judged.SPLIT_DISPUTED, judged.SPLIT_TESTED, judged.LOCKNUT_KEEPS_NUT, judged.SPRING_WASHER_TORQUE,
        judged.SWITCHGEAR_TORQUE, judged.BRASS, judged.NO_SPRING_CONTACT, judged.TORQUE_IS_ROUGH,
    ),
    valid="A clean, flat joint of copper lugs on a steel, stainless, brass or copper stud, tightened once with a torque wrench on the nut.",
    summary="{torque}{doubt}",
    summary_none="no reliable torque",
    keep_distinct=(("torque", "torque_low"), ("torque", "torque_high"), ("torque", "ceiling"), ("withheld", "ceiling")),
    tables=(Table(of="unfit", folded=True, columns=(Output(id="method", label="Part"), Output(id="why", label="Why not"))),),
    older_defaults=({"maker_torque": ""},),
)
