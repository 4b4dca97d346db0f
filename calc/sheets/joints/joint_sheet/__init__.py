"""joint-sheet: which joints are there, how tight, and who has checked them?"""

# fmt: off
from calc.electrical.rules import joints as judged
from calc.sheets.joints.joint_sheet.calculate import calculate
from calc.sheets.joints.joint_sheet.schedule import schedule
from calc.sheets.joints.joint_sheet.words import (
    BESIDE,
    FINE,
    FINE_UNMARKED,
    HOW_KEPT_TIGHT,
    JUDGED,
    OVER_THREAD,
    STEPS,
    named,
)
from calc.sheets.parts.joint_fields import JOINT_FIELDS
from calc.units.kinds import COUNT, DIAMETER, FORCE, NUMBER, RATIO, TORQUE
from calc.worksheet.declare import Output
from calc.worksheet.pictures import Bars, Limit, RowsOf
from calc.worksheet.result_table import Blank, Table
from calc.worksheet.rows import Rows, Text
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="joint-sheet",
    title="Joint sheet",
    question="Which joints are there, at what torque, and who checked them?",
    about="A list of joints with torques, to print and to initial.",
    calculate=calculate,
    picture=Bars(
        rows=RowsOf("rows", "name", "joint.share_of_limit"), limits=(Limit("The thread takes", 1.0),),
        caption="Torque of each joint against what its thread takes, the tightest first",
    ),
    fields=(
        Text(id="vehicle", label="Vehicle", example="Marram", optional=True, hint="Its name, for the top of the print. May be empty."),
        Rows(
            id="joints", label="Joints", one="joint", most=40,
            default="battery plus:M8:8 N.m:brass:dry:1:battery terminal; battery minus:M8:8 N.m:brass:dry:2:battery terminal; main fuse, bus bar side:M8:12 N.m:8.8:dry:1:fuse holder; bus bar, charger:M6:4 N.m:unknown:dry:2:busbar",
            hint="Every bolted joint: cable ends, bus bars, fuse holders, ground points.",
            columns=(
                Text(id="name", label="Name", example="battery plus", hint="So that someone else finds it. Without “:” and “;”."),
                *JOINT_FIELDS,
            ),
        ),
    ),
    results=(
        Output(id="joint_count", label="Joints on the sheet", symbol="n", kind=COUNT),
        Output(id="without_maker", label="Without a maker’s torque", symbol="n_0", kind=COUNT),
        Output(id="torque_least", label="Smallest torque to set", kind=TORQUE, both=True),
        Output(id="torque_most", label="Largest torque to set", kind=TORQUE, both=True),
        Output(id="tightest", at="tightest.name", label="Thread nearest its limit"),
        Output(id="tightest_share", at="tightest.joint.share_of_limit", label="Share of its limit", symbol="s", kind=RATIO),
        Output(id="tightest_ceiling", at="tightest.joint.thread.max_torque", label="Its limit", symbol="T_max", kind=TORQUE, both=True),
        Output(id="schedule", find=schedule, label="Joint sheet"),
    ),
    intermediates=(
        Output(id="with_maker", label="With a maker’s torque", symbol="n_m", kind=COUNT),
        Output(id="tightest_stud", at="tightest.joint.thread.stud.name", label="Its stud"),
        Output(id="tightest_grade", at="tightest.joint.thread.grade", label="Its material"),
        Output(id="tightest_condition", at="tightest.joint.thread.condition", label="Its thread"),
        Output(id="tightest_torque", at="tightest.joint.chosen_torque", label="Its torque", symbol="T", kind=TORQUE),
        Output(id="diameter", at="tightest.joint.thread.stud.diameter", label="Diameter of its thread", symbol="d", kind=DIAMETER),
        Output(id="proof", at="tightest.joint.thread.proof_load", label="Its proof load", symbol="F_p", kind=FORCE),
        Output(id="preload_share", at="tightest.joint.thread.preload_share", label="Share of proof load used", symbol="p", kind=RATIO),
        Output(id="preload_limit", at="tightest.joint.thread.preload_limit", label="Most clamping force", symbol="F_max", kind=FORCE),
        Output(id="factor", at="tightest.joint.thread.factor", label="Nut factor, usual", symbol="K", kind=NUMBER),
        Output(id="crowded", find=named(judged.TOO_MANY_LUGS), label="More than four lugs"),
        Output(id="over", find=named(judged.TOO_TIGHT, judged.OVER_ANY), label="Over the thread's limit"),
        Output(id="no_figure", find=named(judged.NO_TORQUE), label="No reliable torque"),
        Output(id="perhaps_over", find=named(judged.TOO_TIGHT_IF_WEAK, judged.PUBLISHED_TOO_TIGHT_IF_WEAK), label="Over the limit of a weak thread"),
        Output(id="slack", find=named(judged.BELOW_PUBLISHED), label="Below every published torque"),
        Output(id="excess", find=named(judged.ABOVE_PUBLISHED, but=OVER_THREAD), label="Above every published torque"),
        Output(id="stretching", find=named(judged.MAY_STRETCH, but=OVER_THREAD), label="May stretch"),
        Output(id="oiled", find=named(judged.LUBRICATED), label="Lubricated"),
        Output(id="borrowed", find=named(judged.BORROWED), label="By a torque for another part"),
        Output(id="batteries", find=named(judged.BATTERY_TERMINAL), label="At a battery"),
        Output(id="fuses", find=named(judged.PLASTIC_BODY), label="At a fuse holder or breaker"),
        Output(id="grounds", find=named(judged.CHASSIS_GROUND), label="At the chassis"),
    ),
    steps=STEPS,
    rules=(*JUDGED, FINE_UNMARKED, FINE, *BESIDE, HOW_KEPT_TIGHT),
    valid="Clean, flat joints of copper lugs on steel, stainless, brass or copper studs, tightened with a torque wrench on the nut. The thread's limit does not apply to a battery post’s lead or the plastic round a stud.",
    summary="{joint_count} joints, {without_maker} without a maker’s value",
    tables=(
        Table(
            of="schedule",
            paper_note="Disconnect the bank before a spanner goes near a live stud. The part’s own instructions come before this sheet. Paint a line across nut and stud once it is torqued.",
            columns=(
                Output(id="name", label="Joint"),
                Output(id="stud", label="Stud"),
                Output(id="torque", label="Torque", kind=TORQUE, both=True),
                Output(id="figure", label="Value from"),
                Output(id="locking", label="Kept tight by"),
                Output(id="lugs", label="Lugs", kind=COUNT),
            ),
            blanks=(
                Blank(label="initials", group="Torqued"),
                Blank(label="date", group="Torqued", wide=True),
                Blank(label="initials", group="Checked again"),
                Blank(label="date", group="Checked again", wide=True),
            ),
        ),
    ),
    older_defaults=(
        {"joints": "battery plus:M8:8 N.m:brass:dry:1:battery terminal; battery minus:M8:8 N.m:brass:dry:2:battery terminal; main fuse, bus bar side:M8:12 N.m:8.8:dry:1:fuse holder; bus bar, charger:M6::unknown:dry:2:busbar"},
    ),
)
