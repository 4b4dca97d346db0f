"""Judgements on what burns aboard. They are about life: none is ever folded away."""

# fmt: off
from calc.comfort.flame import Alarm, Exhaust, Flame, HeatSource
from calc.judge import Change, Level, Rule

EXHAUST_INSIDE = Rule[Flame](
    id="flame.exhaust-inside", level=Level.STOP, when=lambda f: f.exhaust is Exhaust.INSIDE, source="co-limits",
    headline="Do not light it: a flame that takes air from the room, or sends its exhaust there, can kill.",
    text="Danger of death: do not light it. A flame with air or exhaust in the room fills it with carbon monoxide; an open window does not make it safe.",
    mend=lambda f: Change({"exhaust": Exhaust.OUTSIDE}),
)
NO_ALARM = Rule[Flame](
    id="flame.no-alarm", level=Level.STOP, when=lambda f: f.alarm is Alarm.MISSING,
    headline="Fit a carbon monoxide alarm before anything burns aboard.",
    mend=lambda f: Change({"alarm": Alarm.FITTED}),
)
UNCHECKED = Rule[Flame](
    id="flame.unchecked", level=Level.CAUTION, when=lambda f: f.unchecked, source="practice",
    headline="Check exhaust, combustion air and alarm first.",
    text="Carbon monoxide: before you light it, check that combustion air and exhaust lead outside by sound, tight pipes, and that the alarm is fitted and works.",
    mend=lambda f: Change({
        "exhaust": Exhaust.OUTSIDE if f.exhaust is Exhaust.UNKNOWN else f.exhaust,
        "alarm": Alarm.FITTED if f.alarm is Alarm.UNKNOWN else f.alarm,
    }),
)
CARBON_MONOXIDE = Rule[Flame](
    id="flame.carbon-monoxide", level=Level.ADVICE, source="co-alarm",
    text="Carbon monoxide has no smell: sleep with a tested alarm near the bed, where its maker says.",
)
ALARM_SOUNDS = Rule[Flame](
    id="flame.alarm-sounds", level=Level.ADVICE, source="co-alarm",
    text="If the carbon monoxide alarm sounds, or anyone has a headache or nausea, get everyone out and call for help. Stay out: turn fuel off only from outside.",
)
FITTING = Rule[Flame](
    id="flame.fitting", level=Level.ADVICE, source="practice",
    text="Fit a fuel heater by its instructions and local rules, gas by a licensed fitter. Turn the heater off to refuel. Above 1500 m it must suit thin air.",
)
CLEAR_PIPES = Rule[Flame](
    id="flame.clear-pipes", level=Level.ADVICE, source="practice",
    text="Carbon monoxide: keep a fuel heater's exhaust clear of windows, floor and air intake, and both pipes free of snow.",
)
GAS_LEAKS = Rule[Flame](
    id="flame.gas-leaks", level=Level.ADVICE, when=lambda f: f.fuel is HeatSource.PROPANE, source="practice",
    text="Explosion: gas is heavier than air and gathers on the floor. Have a drop-out hole and a tight system, and sniff before any spark.",
)
BUTANE_IN_FROST = Rule[Flame](
    id="flame.butane-in-frost", level=Level.ADVICE, when=lambda f: f.fuel is HeatSource.PROPANE, source="practice",
    text="In frost butane stays liquid and only propane burns. The bottle cools as gas is drawn.",
)
