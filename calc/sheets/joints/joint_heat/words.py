"""The working of joint-heat in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.electrical.contact import MeasuredJoint
from calc.judge import Level, Rule
from calc.worksheet.declare import Step

STEPS: tuple[Step[MeasuredJoint], ...] = (
    Step(of="resistance", formula="drop / current", source="ohm", text="Ohm's law across the joint alone."),
    Step(of="heat", formula="drop * current", source="ohm", text="All of it comes out in this one place."),
    Step(of="feeds", formula="voltage / resistance", source="ohm", when=lambda j: j.full is None, text="Through this joint alone, with nothing else in the circuit, no more can flow."),
    Step(of="full_drop", formula="resistance * full_current", source="ohm", when=lambda j: j.full is not None, text="The drop goes with the current."),
    Step(of="full_heat", formula="resistance * full_current ** 2", source="ohm", when=lambda j: j.full is not None, text="Heat goes with the square of the current: twice the current, four times the heat."),
    Step(of="drop_share", formula="full_drop / voltage", when=lambda j: j.full is not None, text="Of the system voltage, in one joint."),
    Step(of="most_drop", source="sae-drop", text="For a connection that carries high current."),
    Step(of="growth_left", formula="most_drop / full_drop", when=lambda j: j.growth_left is not None, text="How often the resistance may grow before the joint loses that much."),
    Step(of="ratio", formula="drop / good_drop", source="neta-resistance", when=lambda j: j.ratio is not None, text="At the same current. Above 1.5, that is 50 % over the lower of the two, is to be looked into."),
    Step(of="hot_metal", source="33cfr-table", text="Insulation of good boat cable. The law's table has hotter columns, for kinds that are rarely sold for vans."),
    Step(of="per_kelvin", source="kohlrausch", text="2√L: the Lorenz number of metals is π²/3·(k_B/e)²."),
    Step(of="soft", source="kohlrausch", text="Contact spots of copper."),
    Step(of="softening", formula="per_kelvin * sqrt((soft - zero) ** 2 - (temperature - zero) ** 2)", source="kohlrausch", text="The drop alone sets how hot the spots get, whatever their size."),
    Step(of="spot_rise", formula="sqrt((temperature - zero) ** 2 + (full_drop / per_kelvin) ** 2) - (temperature - zero)", source="kohlrausch", when=lambda j: j.full is not None and j.full.spot is not None, text="At full current, if the whole drop is in the contact: an upper figure."),
    Step(of="spot", source="kohlrausch", when=lambda j: j.full is not None and j.full.spot is not None, text="{spot_rise} above the {temperature} of the metal."),
    Step(of="rise_full", formula="rise * (full_current / current) ** 2", source="ohm", when=lambda j: j.warmth is not None and j.warmth.at_full is not None, text="With the square, as the heat: the careful figure, for hot things shed heat better."),
    Step(of="rise_low", formula="rise * (full_current / current) ** (1 / 0.61)", source="iec-61439", when=lambda j: j.warmth is not None and j.warmth.at_full is not None, text="As a switchgear standard corrects small differences; here for comparison only."),
    Step(of="severity", source="neta-thermal", when=lambda j: j.warmth is None, text="A thermometer would tell what the drop cannot: how well the heat gets away."),
    Step(of="severity", source="neta-thermal", when=lambda j: j.warmth is not None, text="For {worst_rise} over {rise_over}. What falls between two printed classes takes the more severe."),
    Step(of="military", source="mil-thermal", when=lambda j: j.warmth is not None, text="A laxer scale, for comparison; it decides nothing here."),
    Step(of="growth", source="oxide", text="At {full_current}. Heat grows oxide and makes soft metal creep; both raise the resistance, and that the heat. How soon is not known: it depends on metal, shaking, damp and load."),
)

FINE_ALONE = Rule[MeasuredJoint](
    id="joint-heat.fine-alone", level=Level.FINE, when=lambda j: j.ratio is None,
    headline="{resistance}, as a good bolted joint; {full.heat} at {reading.full_current}.",
)
FINE = Rule[MeasuredJoint](
    id="joint-heat.fine", level=Level.FINE,
    headline="{resistance}, in line with its like; {full.heat} at {reading.full_current}.",
)
