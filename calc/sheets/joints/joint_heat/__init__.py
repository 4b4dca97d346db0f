"""joint-heat: is this joint bad?"""

# fmt: off
from dataclasses import replace

from calc.electrical.contact import SOFTENS, VOLTS_PER_KELVIN, RiseOver
from calc.electrical.rules import contact as judged
from calc.electrical.sound_parts import Part
from calc.sheets.joints.joint_heat.calculate import calculate, growth, military, severity
from calc.sheets.joints.joint_heat.words import FINE, FINE_ALONE, STEPS
from calc.sheets.parts.fields import conductor_field
from calc.units.constants import ABSOLUTE_ZERO
from calc.units.kinds import (
    CURRENT,
    LENGTH,
    NUMBER,
    POWER,
    RATIO,
    RESISTANCE,
    RISE,
    TEMPERATURE,
    VOLTAGE,
)
from calc.units.kinds.joints import VOLTAGE_PER_KELVIN
from calc.worksheet.declare import Placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.outputs import Output
from calc.worksheet.pictures import Bar
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="joint-heat",
    title="Joint heat",
    question="Is this joint bad?",
    about="What a millivolt reading across a loaded joint means in heat.",
    calculate=calculate,
    picture=Bar(value="full_drop", limit="most_drop", caption="Voltage drop in this one joint at full current"),
    fields=(
        Choice(id="probed", label="Between the probes", of=Part, default=Part.BOLTED, since=2, before=Part.UNKNOWN,
               options=(
                   Option(Part.BOLTED, "bolted joint or lug on a stud", aliases=("bolted joint", "lug")), Option(Part.CRIMP, "crimp"),
                   Option(Part.PLUG, "push-on or screw terminal", aliases=("push-on", "screw terminal")),
                   Option(Part.FUSE, "fuse with its holder"), Option(Part.SWITCH, "main switch or relay", aliases=("relay", "isolator")),
                   Option(Part.BREAKER, "breaker"), Option(Part.CABLE, "length of cable"), Option(Part.UNKNOWN, "not known"),
               ), hint="Each kind of part has its own usual range."),
        Quantity(id="fuse_rating", label="Rating of the fuse", symbol="I_n", kinds=(CURRENT,), default="30 A", low="0.5 A", high="1000 A", since=2, only_if=("probed", Part.FUSE), hint="Printed on it."),
        Quantity(id="breaker_rating", label="Rating of the breaker", symbol="I_n", kinds=(CURRENT,), default="50 A", low="0.5 A", high="1000 A", since=2, only_if=("probed", Part.BREAKER), hint="Printed on it."),
        replace(conductor_field("2/0 AWG"), since=2, only_if=("probed", Part.CABLE)),
        Quantity(id="length", label="Length between the probes", symbol="L", kinds=(LENGTH,), default="1 m", low="1 cm", high="100 ft", since=2, only_if=("probed", Part.CABLE), hint="One conductor, probe to probe."),
        Quantity(id="drop", label="Drop between the probes", symbol="U", kinds=(VOLTAGE,), default="4 mV", low="0.01 mV", high="5 V", hint="Under steady load, probes on the metal. Leave out the sign."),
        Quantity(id="current", label="Current while measuring", symbol="I", kinds=(CURRENT,), default="100 A", low="0.5 A", high="2000 A", hint="Through this part, read at the same moment."),
        Quantity(id="full_current", label="Full current", symbol="I_f", kinds=(CURRENT,), default="200 A", low="0.5 A", high="2000 A", hint="The largest current it ever carries."),
        Quantity(id="good_drop", label="Drop of a like part", symbol="U_g", kinds=(VOLTAGE,), optional=True, low="0.01 mV", high="5 V", example="12 mV", hint="Same parts, same current: the best comparison."),
        Quantity(id="rise", advanced=True, label="Temperature rise", symbol="ΔT", kinds=(RISE,), optional=True, low="0.1 K", high="300 K", example="8 K", hint="At the same current, once steady. Empty: not measured."),
        Choice(id="rise_over", advanced=True, label="Warmer than", of=RiseOver, default=RiseOver.LIKE_JOINT,
               options=(Option(RiseOver.LIKE_JOINT, "a like joint", aliases=("like joint", "like")), Option(RiseOver.AIR, "the air round it", aliases=("ambient",))), hint="What the temperature was compared with."),
        Quantity(id="voltage", label="System voltage", symbol="V", kinds=(VOLTAGE,), default="12 V", low="6 V", high="120 V", advanced=True, hint="Nominal: 12, 24 or 48 V."),
        Quantity(id="temperature", label="Metal round the joint", symbol="T₀", kinds=(TEMPERATURE,), default="60 °C", low="0 °C", high="150 °C", advanced=True, hint="Lug and bar at full current; 60 °C is warm."),
    ),
    results=(
        Output(id="resistance", label="Resistance", symbol="R", kind=RESISTANCE),
        Output(id="sound_high", at="sound.high", label="A good one has up to", symbol="R_s", kind=RESISTANCE),
        Output(id="heat", label="Heat now", symbol="P", kind=POWER),
        Output(id="full_heat", at="full.heat", label="Heat at full current", symbol="P_f", kind=POWER, hide_if_none=True),
        Output(id="full_drop", at="full.drop", label="Drop at full current", symbol="U_f", kind=VOLTAGE, unit="millivolt", hide_if_none=True),
        Output(id="drop_share", at="full.drop_share", label="Voltage drop here as a share of the supply", kind=RATIO, hide_if_none=True),
        Output(id="ratio", label="Drop compared with the like joint", kind=NUMBER, hide_if_none=True),
        Output(id="severity", find=severity, label="Class of the temperature (NETA)"),
        Output(id="spot", label="Hottest contact spot, up to", symbol="T_s", kind=TEMPERATURE, hide_if_none=True),
        Output(id="growth_left", label="Rise in resistance until the drop is too much", kind=NUMBER, hide_if_none=True),
        Output(id="growth", find=growth, label="What happens as it loosens, at full current", hide_if_none=True),
    ),
    intermediates=(
        Output(id="sound_low", at="sound.low", label="A good one has at least", kind=RESISTANCE),
        Output(id="sound_most", at="sound.most", label="Limit even if a like part agrees", symbol="R_m", kind=RESISTANCE),
        Output(id="rated_drop", at="sound.drop", label="Drop of the part at its rating", symbol="U_n", kind=VOLTAGE, unit="millivolt"),
        Output(id="contacts", at="sound.contacts", label="Contacts of the holder", symbol="R_h", kind=RESISTANCE),
        Output(id="worst_heat", label="Heat, now or at full current", kind=POWER),
        Output(id="feeds", at="max_current", label="Short-circuit current", kind=CURRENT),
        Output(id="most_drop", label="Largest drop for one connection", symbol="U_max", kind=VOLTAGE, unit="millivolt"),
        Output(id="warm_metal", label="Highest temperature of usual lugs and holders", kind=TEMPERATURE, unit="degree_Celsius"),
        Output(id="hot_metal", label="Highest temperature of good cable", kind=TEMPERATURE, unit="degree_Celsius"),
        Output(id="zero", find=lambda _: ABSOLUTE_ZERO, label="Absolute zero", symbol="T_z", kind=TEMPERATURE, unit="degree_Celsius", digits=5),
        Output(id="per_kelvin", find=lambda _: VOLTS_PER_KELVIN, label="Voltage per degree in a contact", symbol="k", kind=VOLTAGE_PER_KELVIN, digits=4),
        Output(id="soft", find=lambda _: SOFTENS, label="Copper softens", symbol="T_c", kind=TEMPERATURE, unit="degree_Celsius"),
        Output(id="softening", label="Drop at which copper spots soften", symbol="U_c", kind=VOLTAGE, unit="millivolt"),
        Output(id="spot_rise", label="Temperature rise of contact spots above the metal", kind=RISE),
        Output(id="rise_full", at="warmth.at_full.upper", label="Warmer at full current, upper value", symbol="ΔT_f", kind=RISE),
        Output(id="rise_low", at="warmth.at_full.lower", label="Warmer at full current, lower value", kind=RISE),
        Output(id="worst_rise", at="warmth.worst", label="Temperature rise judged", kind=RISE),
        Output(id="military", find=military, label="The same on the military scale"),
    ),
    steps=STEPS,
    rules=(
        *judged.JUDGEMENTS, FINE_ALONE, FINE,
        judged.WHERE_THE_PROBES_GO, judged.LIKE_IS_WORSE, judged.WARM_FUSE,
        judged.NO_FUSE_SEES_IT, judged.HOW_TO_MEND, judged.LEAVE_OFF, judged.GLOWED_IN_TESTS, judged.SPOT_WOULD_MELT,
        judged.WARM_AS_ITS_LIKE, judged.NO_LIKE, judged.CABLE_IS_WARM_TOO,
        Placed(rule=judged.SCALES_DISAGREE, text="The scales differ. On a less strict military one: {military}. The stricter one is used here."),
        judged.RISE_AT_FULL,
        judged.BUSBAR_RANGE, judged.POWER_CONTACT_RANGE, judged.DROP_LIMITS, judged.OXIDE_GLOWS, judged.MOVE_THE_PROBES,
    ),
    valid="Steady direct current through one joint or part of copper or plated copper. A load of constant power draws more as voltage drops, so it heats the joint more than shown.",
    summary="{resistance}, {heat} now",
    older_defaults=({"drop": "35 mV", "current": "80 A"},),
)
