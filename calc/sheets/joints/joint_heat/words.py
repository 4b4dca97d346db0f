"""The working of joint-heat in words, and what its answer says when nothing is wrong."""

# fmt: off
from collections.abc import Callable

from calc.electrical.contact import MeasuredJoint
from calc.electrical.sound_parts import Part
from calc.judge import Level, Rule
from calc.worksheet.declare import Step


def _is(*parts: Part) -> Callable[[MeasuredJoint], bool]:
    return lambda j: j.sound.part in parts


STEPS: tuple[Step[MeasuredJoint], ...] = (
    Step(of="resistance", formula="drop / current", source="ohm", text="Ohm's law across the joint alone."),
    Step(of="heat", formula="drop * current", source="ohm", text="All of it comes out in this one place."),
    Step(of="feeds", formula="voltage / resistance", source="ohm", when=lambda j: j.full is None, text="With only this joint in the circuit, no more can flow."),
    Step(of="full_drop", formula="resistance * full_current", source="ohm", when=lambda j: j.full is not None, text="The drop is proportional to the current."),
    Step(of="full_heat", formula="resistance * full_current ** 2", source="ohm", when=lambda j: j.full is not None, text="Heat rises with the square of the current: twice the current, four times the heat."),
    Step(of="drop_share", formula="full_drop / voltage", when=lambda j: j.full is not None, text="Of the system voltage, in one joint."),
    Step(of="sound_high", source="busbar-joint", when=_is(Part.BOLTED, Part.CRIMP), text="A lug on a stud, a busbar joint or a crimp: good busbar joints are published with 5 to 15 µΩ; up to 100 µΩ for a lug is common practice."),
    Step(of="sound_high", source="practice", when=_is(Part.UNKNOWN), text="The part is not known, so it is judged as a bolted joint."),
    Step(of="sound_high", source="small-connector", when=_is(Part.PLUG), text="A small connector, published with 4 mV an amp."),
    Step(of="sound_high", source="power-contact", when=_is(Part.SWITCH), text="A well-kept power contact."),
    Step(of="rated_drop", source="fuse-drop", when=_is(Part.FUSE), text="The largest drop of such a fuse link at its rating. Below 15 A from memory, from 15 A by the standard."),
    Step(of="rated_drop", source="practice", when=_is(Part.BREAKER), text="The largest usual drop of a breaker of this size at its rating, from memory."),
    Step(of="contacts", source="practice", when=_is(Part.FUSE), text="Both contacts of the holder: plugged in up to 40 A, bolted above."),
    Step(of="sound_high", formula="rated_drop / fuse_rating + contacts", source="ohm", when=_is(Part.FUSE), text="Link and holder."),
    Step(of="sound_high", formula="rated_drop / breaker_rating", source="ohm", when=_is(Part.BREAKER), text="Between its terminals."),
    Step(of="sound_high", source="practice", when=_is(Part.CABLE), text="10 % more than the published table gives for {length} of {conductor} at {temperature}."),
    Step(of="sound_most", formula="2 * sound_high", source="practice", text="Above this a like part proves nothing: both may be bad."),
    Step(of="most_drop", source="sae-drop", when=lambda j: j.contact, text="For a connection that carries high current."),
    Step(of="most_drop", source="sae-drop", when=_is(Part.SWITCH), text="For a switch."),
    Step(of="most_drop", source="practice", when=lambda j: j.sound.warm_by_nature, text="Twice the drop of a good one: a fuse or breaker at its rating, a cable at the larger of the two currents."),
    Step(of="growth_left", formula="most_drop / full_drop", when=lambda j: j.growth_left is not None, text="How many times the resistance may rise before the drop is that large."),
    Step(of="ratio", formula="drop / good_drop", source="neta-resistance", when=lambda j: j.ratio is not None, text="At the same current. Inspect above 1.5, which is 50 % over the lower of the two."),
    Step(of="hot_metal", source="33cfr-table", text="Insulation of good boat cable. The law's table has hotter columns, for types rarely sold for vans."),
    Step(of="per_kelvin", source="kohlrausch", when=lambda j: j.contact, text="2√L: the Lorenz number of metals is π²/3·(k_B/e)²."),
    Step(of="soft", source="kohlrausch", when=lambda j: j.contact, text="Contact spots of copper."),
    Step(of="softening", formula="per_kelvin * sqrt((soft - zero) ** 2 - (temperature - zero) ** 2)", source="kohlrausch", when=lambda j: j.contact, text="The drop alone sets how hot the spots get, whatever their size."),
    Step(of="spot_rise", formula="sqrt((temperature - zero) ** 2 + (full_drop / per_kelvin) ** 2) - (temperature - zero)", source="kohlrausch", when=lambda j: j.spot is not None, text="At full current, if the whole drop is in the contact: an upper value."),
    Step(of="spot", source="kohlrausch", when=lambda j: j.spot is not None, text="{spot_rise} above the {temperature} of the metal."),
    Step(of="rise_full", formula="rise * (full_current / current) ** 2", source="ohm", when=lambda j: j.warmth is not None and j.warmth.at_full is not None, text="Proportional to the heat: the cautious value, because hotter parts lose heat better."),
    Step(of="rise_low", formula="rise * (full_current / current) ** (1 / 0.61)", source="iec-61439", when=lambda j: j.warmth is not None and j.warmth.at_full is not None, text="As a switchgear standard corrects small differences; here for comparison only."),
    Step(of="severity", source="neta-thermal", when=lambda j: j.warmth is None, text="A thermometer shows what the drop cannot: how well the heat gets away."),
    Step(of="severity", source="neta-thermal", when=lambda j: j.warmth is not None, text="For {worst_rise} over {rise_over}. A value between two printed classes gets the more severe one."),
    Step(of="military", source="mil-thermal", when=lambda j: j.warmth is not None, text="A less strict scale, for comparison only."),
    Step(of="growth", source="oxide", when=lambda j: not j.sound.warm_by_nature, text="At {full_current}. Heat builds oxide and makes soft metal creep; both raise the resistance, and that raises the heat. How fast is not known: it depends on metal, vibration, damp and load."),
)

FINE_ALONE = Rule[MeasuredJoint](
    id="joint-heat.fine-alone", level=Level.FINE, when=lambda j: j.ratio is None,
    headline="Good: {resistance}, and up to {sound.high} is usual. It gives off {full.heat} at {reading.full_current}.",
)
FINE = Rule[MeasuredJoint](
    id="joint-heat.fine", level=Level.FINE,
    headline="Good: {resistance}, in line with like joints. It gives off {full.heat} at {reading.full_current}.",
)
