"""The working of panel-string in words, and what it says when all is well."""

# fmt: off
from calc.energy.panel_string import PanelString
from calc.energy.panels import Regulator
from calc.judge import Level, Rule
from calc.worksheet.declare import Step


def _plain(s: PanelString) -> bool:
    return s.array.regulator is Regulator.PWM


def _joined(s: PanelString) -> bool:
    return s.reverse_current is not None


def _fuses(s: PanelString) -> bool:
    return s.needs_fuses or s.string_fuse is not None


STEPS: tuple[Step[PanelString], ...] = (
    Step(of="panel_power", source="panel-rating", text="As the label says, or its current times {vmp}."),
    Step(of="fall", source="panel-rating", when=lambda s: not s.by_table, text="The label's coefficient as a share of {voc}, its sign left out."),
    Step(of="colder", formula="standard - cold", source="panel-rating", when=lambda s: not s.by_table, text="Labels are for cells at {standard}. At dawn cells are as cold as the air."),
    Step(of="cold_factor", formula="1 + fall * colder", source="nec-690-7", when=lambda s: not s.by_table, text="Cold raises the open-circuit voltage."),
    Step(of="cold_factor", source="nec-690-7", when=lambda s: s.by_table, text="No coefficient: table 690.7(A) at {cold}, for crystalline silicon."),
    Step(of="cold_voc", formula="series * voc * cold_factor", source="nec-690-7", text="In series the voltages add; strings in parallel change nothing."),
    Step(of="most_series", source="nec-690-7", text="Whole panels of this open-circuit voltage that stay below {volts_limit} in that cold."),
    Step(of="rise", formula="full_sun * warming", source="panel-heat", text="In full sun and a light wind of 1 m/s."),
    Step(of="cell", source="panel-heat", text="The rise on top of the air's {hot_air}."),
    Step(of="over", formula="hot_air + rise - standard", source="panel-rating", text="Hotter than the label's cells."),
    Step(of="power_fall", source="panel-coefficients", text="As typed, its sign left out."),
    Step(of="keeps", formula="max(1 - power_fall * over, 0)", source="panel-coefficients", text="Heat hardly changes the current at maximum power, so all the power lost is counted as voltage lost."),
    Step(of="string_vmp", formula="series * vmp", text="At maximum power, by the label."),
    Step(of="hot_vmp", formula="string_vmp * keeps", source="panel-coefficients", text="Of the string, in the hottest hour."),
    Step(of="hot_fall", source="panel-rating", text="By the coefficient of the open-circuit voltage; without one, that of the power, which is larger."),
    Step(of="hot_voc", formula="series * voc * max(1 - hot_fall * over, 0)", source="panel-rating", text="With no current at all."),
    Step(of="wanted", formula="voltage + headroom", when=lambda s: not _plain(s), text="The charging voltage and what the regulator needs above it."),
    Step(of="least_series", source="panel-heat", when=lambda s: s.least_series is not None, text="The fewest panels that give {wanted} in that heat."),
    Step(of="array_isc", formula="parallel * isc", text="In parallel the currents add; panels in series change nothing."),
    Step(of="max_current", formula="bright * array_isc", source="iec-62548", text="Cloud edges and snow make light brighter than standard; {bright} is the usual allowance."),
    Step(of="nec_current", formula="continuous * max_current", source="nec-690-8", text="NEC's second factor of 1.25, for continuous current."),
    Step(of="reverse_current", formula="(parallel - 1) * bright * isc", source="iec-62548", when=_joined, text="The current of all other strings through a faulty one."),
    Step(of="least_fuse", formula="continuous * bright * isc", source="nec-690-8", when=_fuses, text="Both factors of 1.25; IEC 62548 has 1.5 times the short-circuit current."),
    Step(of="most_fuse", source="iec-62548", when=_fuses, text="The smaller of the label's largest fuse and 2.4 times {isc}."),
    Step(of="fuse", source="fuse-ratings", when=lambda s: s.fuse is not None, text="The smallest rating between the two in the family made for strings (gPV)."),
    Step(of="array_power", formula="series * parallel * panel_power", text="All labels together."),
    Step(of="peak_current", formula="array_power / voltage", source="ohm", when=lambda s: not _plain(s), text="Into the battery in full sun, cells cool."),
    Step(of="peak_current", formula="array_power / string_vmp", source="ohm", when=_plain, text="Into the battery: a plain switch passes the panels' own current."),
)

FINE_BY_TABLE = Rule[PanelString](
    id="panel-string.fine-by-table", level=Level.FINE, when=lambda s: s.label.voc_fall is None,
    headline="The string suits the regulator: {cold_voc} at {cold} by NEC's table, {limits.volts} allowed; {hot_vmp} at maximum power when hot.",
)
FINE = Rule[PanelString](
    id="panel-string.fine", level=Level.FINE,
    headline="The string suits the regulator: {cold_voc} at {cold} by {coefficient}, {limits.volts} allowed; {hot_vmp} at maximum power when hot.",
)
