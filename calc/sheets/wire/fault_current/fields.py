"""What fault-current asks for."""

# fmt: off
from calc.electrical.clearing import FarEnd
from calc.electrical.fault_source import SourceKnown
from calc.electrical.sound_parts import GOOD_JOINT
from calc.electrical.withstand import insulations
from calc.energy.battery import Chemistry
from calc.sheets.parts.fields import COPPER, GAUGE_READING, PARALLEL, STRANDS, conductor_field
from calc.sheets.parts.fuse_families import FAMILIES, NOT_NAMED
from calc.units.kinds import (
    CHARGE,
    COUNT,
    CURRENT,
    DURATION,
    LENGTH,
    RATIO,
    RESISTANCE,
    TEMPERATURE,
    VOLTAGE,
)
from calc.units.kinds.faults import INDUCTANCE, JOULE_INTEGRAL
from calc.worksheet.fields import Choice, Option, Quantity

UNKNOWN = "not-known"
_SHORT = {"70 C PVC": ("70 C",), "90 C PVC": ("90 C",), "105 C PVC": ("105 C",)}

FIELDS = (
    Quantity(id="voltage", label="Voltage of the bank", symbol="V", kinds=(VOLTAGE,), default="13.3 V", low="1 V", high="500 V",
             hint="Full, at rest, at 12 V: LFP near 13.3 V, lead-acid 12.8 V."),
    Choice(id="known", label="How the source is known", of=SourceKnown, default=SourceKnown.MAKER,
           options=(Option(SourceKnown.MAKER, "from the maker"), Option(SourceKnown.TWO_READINGS, "from two readings under load", aliases=("two readings",)), Option(SourceKnown.ESTIMATE, "not at all: estimate", aliases=("estimated",))),
           hint="The maker's value is best. An estimate fits lead-acid only."),
    Quantity(id="source_resistance", label="Source resistance, or short-circuit current", symbol="R_1", kinds=(RESISTANCE, CURRENT), default="4 mΩ",
             low="50 µΩ | 10 A", high="1 Ω | 200 kA", only_if=("known", SourceKnown.MAKER),
             hint="Of the whole bank. For one battery's value see More options."),
    Quantity(id="open_voltage", label="Voltage without load", symbol="V_0", kinds=(VOLTAGE,), default="12.80 V", low="1 V", high="500 V", only_if=("known", SourceKnown.TWO_READINGS),
             hint="At the posts, after minutes of rest."),
    Quantity(id="loaded_voltage", label="Voltage under load", symbol="V_L", kinds=(VOLTAGE,), default="12.45 V", low="0.5 V", high="500 V", only_if=("known", SourceKnown.TWO_READINGS),
             hint="At the posts, within two seconds of switching on; later reads low."),
    Quantity(id="loaded_current", label="Current of that load", symbol="I_L", kinds=(CURRENT,), default="80 A", low="0.1 A", high="5000 A", only_if=("known", SourceKnown.TWO_READINGS),
             hint="The larger the better: an inverter under load, not a lamp."),
    Quantity(id="meter_error", advanced=True, label="Either reading may be off by", symbol="e", kinds=(VOLTAGE,), default="10 mV", low="0 mV", high="150 mV", only_if=("known", SourceKnown.TWO_READINGS),
             hint="From the meter's manual; at least one step of its last digit."),
    Choice(id="chemistry", label="Chemistry", of=Chemistry, default=Chemistry.AGM, only_if=("known", SourceKnown.ESTIMATE),
           options=(Option(Chemistry.LFP, "LFP (lithium iron phosphate)", aliases=("LiFePO4", "lithium")), Option(Chemistry.AGM), Option(Chemistry.GEL), Option(Chemistry.FLOODED)),
           hint="For LFP use the data sheet's short-circuit current, not the BMS limit."),
    Quantity(id="capacity", label="Capacity of one battery", symbol="C", kinds=(CHARGE,), default="100 Ah", low="1 Ah", high="5000 Ah", only_if=("known", SourceKnown.ESTIMATE),
             hint="At the 20-hour rate, of one string. More strings: More options."),
    Quantity(id="batteries", advanced=True, label="Batteries or strings side by side", symbol="n", kinds=(COUNT,), default="1", low="1", high="20",
             hint="Leave 1 if the value above is for the whole bank."),
    Quantity(id="series", advanced=True, label="Batteries in series in each string", symbol="s", kinds=(COUNT,), default="1", low="1", high="20", only_if=("known", SourceKnown.MAKER),
             hint="Leave 1 if the value above is for the string or bank."),
    Choice(id="each_fused", advanced=True, since=2, before=UNKNOWN, label="Each battery has its own fuse", default=UNKNOWN, options=(Option(UNKNOWN, "not known"), Option("yes"), Option("no")),
           hint="At its own post. It matters with several in parallel."),
    conductor_field("8 AWG"),
    Quantity(id="length", label="Length, one way", symbol="L", kinds=(LENGTH,), default="3 m", low="1 cm", high="200 m",
             hint="From source to short, one way. The return is counted."),
    Choice(id="insulation", advanced=True, label="Insulation", default="105 C PVC",
           options=tuple(Option(one.name, one.label, aliases=_SHORT.get(one.name, ())) for one in insulations()),
           hint="Printed on the cable. Not known: 105 °C PVC is the safe choice."),
    Quantity(id="joints", advanced=True, label="Joints in the loop", symbol="j", kinds=(COUNT,), default="4", low="0", high="50",
             hint="Lugs on studs, fuse holders, switches: out and back."),
    Quantity(id="fuse", advanced=True, label="Fuse at the source", symbol="I_n", kinds=(CURRENT,), optional=True, low="0.5 A", high="1000 A", example="60 A",
             hint="The fuse of this run, to have it checked. May be empty."),
    Choice(id="fuse_family", advanced=True, label="Family of the fuse", default=NOT_NAMED, options=(Option(NOT_NAMED, "not named"), *FAMILIES), example="like blade, large (type E) or SF51",
           hint="By construction. For some classes no direct-current rating is published."),
    Quantity(id="fuse_voltage", since=2, optional=True, advanced=True, label="Voltage printed on the fuse", symbol="V_b", kinds=(VOLTAGE,), low="1 V", high="1500 V", example="32 V",
             hint="Its d.c. rating. Empty: not read."),
    Choice(id="far_end", since=2, before=FarEnd.LOAD, advanced=True, label="At the far end", of=FarEnd, default=FarEnd.LOAD,
           options=(Option(FarEnd.LOAD, "a load"), Option(FarEnd.FUSED, "another source, fused there"), Option(FarEnd.UNFUSED, "another source, no fuse there")),
           hint="A second battery feeds a short from its own end."),
    Quantity(id="let_through", label="Let-through of the fuse", symbol="I²t", kinds=(JOULE_INTEGRAL,), optional=True, advanced=True, low="0.001 A²·s", high="1000000000000 A²·s", example="5000 A²·s",
             hint="Total clearing I²t at the highest fault, from its data sheet."),
    Quantity(id="opening_time", label="Latest opening at the lowest fault", symbol="t_o", kinds=(DURATION,), optional=True, advanced=True, low="0.1 ms", high="1 h", example="2 s",
             hint="From the slow edge of the maker's curve. Empty: published limits."),
    Quantity(id="joint_resistance", advanced=True, label="Resistance of each joint", symbol="r_j", kinds=(RESISTANCE,), default=f"{GOOD_JOINT * 1e3:g} mΩ", low="0 mΩ", high="20 mΩ",
             hint="A good bolted joint has less, a fuse holder more."),
    Quantity(id="temperature", advanced=True, label="Copper at the start, cold", symbol="T", kinds=(TEMPERATURE,), default="20 °C", low="-40 °C", high="100 °C",
             hint="The coldest copper gives the highest fault current."),
    Quantity(id="ageing", advanced=True, label="Ageing of source and joints", symbol="a", kinds=(RATIO,), default="50 %", low="0 %", high="300 %",
             hint="For the lowest fault. Inspect a joint 50 % worse than its twin."),
    Quantity(id="empty", advanced=True, label="Voltage nearly empty, as a share of full", symbol="q", kinds=(RATIO,), default="90 %", low="50 %", high="100 %",
             hint="For the lowest fault. At 12 V: some 11.9 V against 13.3 V."),
    Quantity(id="highest_voltage", advanced=True, label="Highest voltage, charging", symbol="V_c", kinds=(VOLTAGE,), optional=True, low="1 V", high="600 V", example="14.6 V",
             hint="The fuse must be rated for it. Empty: a fifth above rest."),
    GAUGE_READING,
    STRANDS,
    COPPER,
    PARALLEL,
    Quantity(id="inductance", advanced=True, label="Inductance of the loop", symbol="L_i", kinds=(INDUCTANCE,), optional=True, low="0.01 µH", high="100 mH", example="5 µH",
             hint="About 1 µH per metre of a spaced pair. It slows a short."),
)
