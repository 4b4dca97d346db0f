"""The working of joint-torque in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.electrical.joints import Joint
from calc.electrical.locking import JointKind
from calc.electrical.threads import Condition
from calc.judge import Level, Rule
from calc.worksheet.declare import Step

STEPS: tuple[Step[Joint], ...] = (
    Step(of="torque", formula="maker_torque", when=lambda j: j.from_maker, text="The maker's value comes first."),
    Step(of="table_torque", source="terminal-torque", when=lambda j: not j.from_maker, text="{stud}: {figure_kind} ({figure_from})."),
    Step(of="factor_share", source="nut-factor", when=lambda j: j.thread.condition is Condition.LUBRICATED, text="Oil on the thread turns the same torque into more clamping force, so published dry values are reduced with the nut factor."),
    Step(of="withheld", formula="table_torque * factor_share", when=lambda j: j.withheld is not None, text="Published for another part ({figure_kind}), whose stud must be stronger."),
    Step(of="torque", formula="table_torque * factor_share", when=lambda j: not j.from_maker and j.withheld is None, text="There is no maker's value, so one published for another part ({figure_kind}) is used."),
    Step(of="table_low", source="terminal-torque", text="The lowest value found for this stud, dry: {spread_from}."),
    Step(of="torque_low", formula="table_low * factor_share", text="Corrected for a {condition} thread."),
    Step(of="table_high", source="terminal-torque", text="The highest of them. They are for different parts, not for yours."),
    Step(of="torque_high", formula="table_high * factor_share", text="Corrected for a {condition} thread."),
    Step(of="stress_area", source="iso-898", when=lambda j: not j.thread.inch, text="{stud}, coarse thread, as printed."),
    Step(of="stress_area", formula="3.141592653589793 / 4 * (diameter - 0.9743 * pitch) ** 2", source="b1.1", when=lambda j: j.thread.inch, text="{stud}, coarse thread."),
    Step(of="proof_stress", source="strength", text="{grade}, from the table of materials."),
    Step(of="proof", source="iso-898", when=lambda j: j.thread.proof_printed, text="Class {grade}, {stud}, as printed."),
    Step(of="proof", formula="stress_area * proof_stress", when=lambda j: not j.thread.proof_printed, text="The force that stretches the thread permanently."),
    Step(of="preload_limit", formula="preload_share * proof", source="preload", text="For a joint that is opened again."),
    Step(of="factor", source="nut-factor", text="Usual for a {condition} steel thread."),
    Step(of="ceiling", formula="factor * diameter * preload_limit", source="nut-factor", text="Torque that uses the thread's full allowance. A limit, not a target."),
    Step(of="grip", source="nut-factor", when=lambda j: not j.thread.dry_stainless, text="Published from {grip_low} to {grip_high} for a {condition} steel thread."),
    Step(of="grip", source="nut-factor", when=lambda j: j.thread.dry_stainless, text="Dry stainless on stainless has more friction: published from {grip_low} to {grip_high}; the middle is used."),
    Step(of="preload", formula="torque / (grip * diameter)", source="nut-factor", when=lambda j: j.torque is not None, text="Clamping force from this torque: {preload_low} to {preload_high} over the published nut factors."),
    Step(of="clamp_share", formula="preload / proof", when=lambda j: j.torque is not None, text="Share of the load that stretches it permanently. At most about 75 % is used in practice."),
    Step(of="power_torque", source="terminal-torque", when=lambda j: j.switchgear is not None, text="Published for a bolted joint of switchgear on {stud}, corrected for a {condition} thread: for comparison."),
    Step(of="power_share", formula="power_torque / (grip * diameter * proof)", source="nut-factor", when=lambda j: j.switchgear is not None, text="Share of this thread's strength that this torque uses."),
)

FINE_BATTERY = Rule[Joint](
    id="joint-torque.fine-battery", level=Level.FINE, when=lambda j: j.kind is JointKind.BATTERY,
    headline="{torque}, as the maker says, never more: a battery post breaks long before its thread.",
)
FINE_FUSE = Rule[Joint](
    id="joint-torque.fine-fuse", level=Level.FINE, when=lambda j: j.kind is JointKind.FUSE,
    headline="{torque}, as the maker says, never more: the plastic cracks long before the thread.",
)
FINE = Rule[Joint](
    id="joint-torque.fine", level=Level.FINE,
    headline="{torque}, as the maker says. The thread can take {thread.max_torque}.",
)
