"""fault-current in words: its result that is an id, its working, and its fine sentences."""

# fmt: off
from calc.electrical.clearing import Clears, FaultStudy
from calc.electrical.fault_source import SourceKnown
from calc.judge import Level, Rule
from calc.worksheet.declare import Step

CLEARS: dict[str, str] = {
    Clears.IN_TIME: "in time for certain",
    Clears.NOT_CERTAIN: "not certain",
    Clears.FROM_MEMORY: "not certain (from memory)",
    Clears.NO_CURVE: "no published curve",
    Clears.TOO_LATE: "too late",
    Clears.TOO_MUCH: "lets too much through",
    Clears.NEVER: "never: it can carry the lowest short",
    Clears.NO_FUSE: "no fuse named",
}


def _by_maker(study: FaultStudy) -> bool:
    return study.short.source.known is SourceKnown.MAKER


def _read(study: FaultStudy) -> bool:
    return study.short.source.known is SourceKnown.TWO_READINGS


def _estimated(study: FaultStudy) -> bool:
    return study.short.source.known is SourceKnown.ESTIMATE


def _metric(study: FaultStudy) -> bool:
    return study.short.laid.run.metric


def _sae(study: FaultStudy) -> bool:
    return study.short.laid.copper.as_sae


def _fused(study: FaultStudy) -> bool:
    return study.protection is not None


def _rises(study: FaultStudy) -> bool:
    return study.short.rise is not None


STEPS: tuple[Step[FaultStudy], ...] = (
    Step(of="sag", formula="open_voltage - loaded_voltage", when=_read, text="Voltage sag at the battery posts under load."),
    Step(of="off", formula="2 * meter_error", when=_read, text="Both readings may be off, one up and one down."),
    Step(of="one_low", formula="(sag - off) / loaded_current", when=_read, source="two-readings", text="The lowest resistance that the readings allow."),
    Step(of="one_high", formula="(sag + off) / loaded_current", when=_read, source="two-readings", text="The highest that they allow."),
    Step(of="per_amp_hour_low", when=_estimated, source="dc-guide", text="Lead-acid, {chemistry}: close to this."),
    Step(of="per_amp_hour_high", when=_estimated, source="dc-guide", text="And below this, by the same source."),
    Step(of="per_amp_hour_most", when=_estimated, source="breaking-article", text="Another source goes up to this for thin-plate batteries. The highest short is calculated from it."),
    Step(of="usual_low", formula="per_amp_hour_low * capacity * batteries", when=_estimated, source="dc-guide", text="Low end of the usual range."),
    Step(of="usual_high", formula="per_amp_hour_high * capacity * batteries", when=_estimated, source="dc-guide", text="High end of the usual range."),
    Step(of="one_low", formula="voltage / (per_amp_hour_most * capacity)", when=_estimated, source="ohm", text="The highest current means the lowest resistance."),
    Step(of="one_high", formula="voltage / (per_amp_hour_low * capacity)", when=_estimated, source="ohm", text="The lowest current means the highest resistance."),
    Step(of="one_low", formula="source_resistance", when=lambda s: _by_maker(s) and not s.short.source.maker_current, text="As the maker states it."),
    Step(of="one_low", formula="voltage / (series * source_resistance)", when=lambda s: _by_maker(s) and s.short.source.maker_current, source="ohm", text="From the short-circuit current of one battery and its share of the voltage."),
    Step(of="one_high", formula="one_low", when=_by_maker, text="Only one value is known; ageing is added below for the lowest short."),
    Step(of="source_low", formula="one_low * series / batteries", when=_by_maker, source="abyc-strings", text="In series resistances add; in parallel currents add."),
    Step(of="source_high", formula="one_high * series / batteries", when=_by_maker, source="abyc-strings", text="The same for the lowest short."),
    Step(of="source_low", formula="one_low / batteries", when=lambda s: not _by_maker(s), source="abyc-strings", text="In parallel currents add."),
    Step(of="source_high", formula="one_high / batteries", when=lambda s: not _by_maker(s), source="abyc-strings", text="The same for the lowest short."),
    Step(of="near_fault", formula="voltage / source_low", source="ohm", text="A short right behind the fuse: only the source limits it."),
    Step(of="interrupt_near", source="interrupting", text="The next published class. It counts only at a d.c. voltage of {charged} or more."),
    Step(of="gauge_resistance", source="nec-8", when=lambda s: s.short.laid.copper.as_sae and not s.short.laid.computed, text="{conductor}, {finish} copper, from the table at {reference}."),
    Step(of="named_area", source="awg-area", when=lambda s: not _metric(s), text="By the definition of the gauge."),
    Step(of="named_area", source="iec-60228", when=_metric, text="As the size is named."),
    Step(of="area", source="sae-area", when=_sae, text="The least that a wire made to the SAE size of this number holds."),
    Step(of="area", formula="named_area", when=lambda s: not _sae(s) and not _metric(s), text="A wire to SAE size holds less: say so under “Gauge sizes”."),
    Step(of="area", formula="named_area", when=_metric, text="The copper that a short heats, in one conductor."),
    Step(of="stated", formula="gauge_resistance * named_area / area", when=_sae, text="Less copper has more resistance, in proportion."),
    Step(of="stated", source="nec-8", when=lambda s: not _metric(s) and not _sae(s) and not s.short.laid.computed, text="{conductor}, {finish} copper, from the table at {reference}."),
    Step(of="stated", source="copper-iacs", when=lambda s: s.short.laid.computed and not _sae(s), text="{conductor}, from the definition of annealed copper, at {reference}."),
    Step(of="stated", source="iec-60228", when=lambda s: _metric(s) and not s.short.laid.run.class_2, text="{conductor}, {finish} flexible copper, the most the standard permits at {reference}."),
    Step(of="stated", source="iec-60228-2", when=lambda s: s.short.laid.run.class_2, text="{conductor}, {finish} stranded copper, the most the standard permits at {reference}."),
    Step(of="per_length", formula="stated * (temperature - zero) / (reference - zero)", source="copper-temperature", text="Cold copper has the lowest resistance."),
    Step(of="cable", formula="2 * length * per_length / parallel", source="ohm", text="Out and back, conductors side by side sharing."),
    Step(of="joints_total", formula="joints * joint_resistance", source="ohm", text="All joints of the loop, new and clean."),
    Step(of="resistance", formula="source_low + cable + joints_total", source="ohm", text="The loop by the table, for comparison."),
    Step(of="least_stated", source="copper-iacs", text="Annealed copper, solid, of {named_area} at {annealed_at}: no cable of that size has less. A table has more, so it is not used for the highest short."),
    Step(of="per_length_least", formula="least_stated * (temperature - zero) / (annealed_at - zero)", source="copper-temperature", text="At the cold end."),
    Step(of="cable_least", formula="2 * length * per_length_least / parallel", source="ohm", text="Out and back, conductors side by side sharing."),
    Step(of="resistance_low", formula="source_low + cable_least + joints_total", source="ohm", text="Lowest loop resistance."),
    Step(of="fault_current", formula="voltage / resistance_low", source="ohm", text="A bolted short at the far end, with the source at its best and the copper cold."),
    Step(of="interrupt_needed", source="interrupting", text="The next published class for a device at the far end."),
    Step(of="lowest_voltage", formula="empty * voltage", text="The bank nearly empty."),
    Step(of="hot", source="short-temperatures", text="Where {insulation} ends, the hottest that a short may make it."),
    Step(of="per_length_hot", formula="stated * (hot - zero) / (reference - zero)", source="copper-temperature", text="Hot copper has more resistance."),
    Step(of="cable_hot", formula="2 * length * per_length_hot", source="ohm", text="Out and back through one conductor each way: one of several may lie alone."),
    Step(of="resistance_high", formula="(source_high + joints_total) * (1 + ageing) + cable_hot", source="neta-resistance", text="The loop at its worst: we assume that source and joints have aged by {ageing}."),
    Step(of="fault_low", formula="lowest_voltage / resistance_high", source="ohm", text="A bolted short at the far end on a bad day: the one that a fuse may open slowly."),
    Step(of="initial", source="short-temperatures", text="{insulation}, fully loaded before the short."),
    Step(of="k", formula="copper * sqrt(ln((hot - zero) / (initial - zero)))", source="copper-heat", text="All heat stays in the copper while it lasts."),
    Step(of="energy_limit", formula="(k * area) ** 2", source="adiabatic", text="I²t that heats the wire to {hot}."),
    Step(of="withstand", formula="energy_limit / fault_current ** 2", source="adiabatic", text="At the highest short. The formula holds up to 5 s and errs to the safe side beyond."),
    Step(of="per_length_warm", formula="stated * (initial - zero) / (reference - zero)", source="copper-temperature", text="The lowest short begins in a wire at work."),
    Step(of="cable_warm", formula="2 * length * per_length_warm", source="ohm", text="Out and back."),
    Step(of="low_start", formula="lowest_voltage / ((source_high + joints_total) * (1 + ageing) + cable_warm)", source="ohm", text="The current falls as the copper heats; the wire is judged by the higher one."),
    Step(of="withstand_low", formula="energy_limit / low_start ** 2", source="adiabatic", text="The low current that heats the wire slowly."),
    Step(of="withstand_near", formula="energy_limit / near_fault ** 2", source="adiabatic", text="At a short right behind the fuse."),
    Step(of="charged", formula="highest_voltage", when=lambda s: s.short.max_voltage_known, text="As given."),
    Step(of="charged", formula="charging * voltage", when=lambda s: not s.short.max_voltage_known, source="practice", text="A fifth above rest covers the usual charges, not equalising."),
    Step(of="breaks", source="fuse-ratings", when=lambda s: s.protection is not None and s.protection.duty.interrupting_rating is not None, text="{fuse_family}, at {charged} d.c. or more."),
    Step(of="fuse_percent", formula="fault_low / fuse", when=_fused, text="The lowest short as a multiple of the fuse rating, to read on its curve."),
    Step(of="fuse_time", source="fuse-gates", when=lambda s: s.latest is not None, text="The slowest opening by the published time limits at or below this current, or by the maker. Nothing is interpolated."),
    Step(of="opens", when=lambda s: not _fused(s), text="Name the fuse and its family to have them checked."),
    Step(of="opens", source="fuse-gates", when=_fused, text="Compared with what the wire withstands: {withstand_low} at the lowest short, {withstand_near} at the source."),
    Step(of="ampacity", source="33cfr-table", when=_fused, text="By 33 CFR table 5 at 30 °C, for this insulation's rating; 70 °C is between two columns."),
    Step(of="all_bear", formula="parallel * ampacity", when=_fused, source="33cfr-table", text="All conductors of the run together."),
    Step(of="ceiling", when=_fused, source="33cfr-place", text="As a share of what the run can carry; a ceiling, not a target."),
    Step(of="time_constant", formula="inductance / resistance_low", when=_rises, source="dc-guide", text="How fast the current rises."),
    Step(of="settled", formula="3 * time_constant", when=_rises, source="dc-guide", text="1 − e⁻³ is 95 %."),
    Step(of="early", when=_rises, source="dc-guide", text="i = I (1 − e^(−t/τ)) after a millisecond, the highest short."),
    Step(of="tested_at", when=_rises, source="fuse-test", text="Or more, for fuses that break a current of this size."),
)

FINE_AS_TYPED = Rule[FaultStudy](
    id="fault-current.fine-as-typed", level=Level.FINE, when=lambda s: s.by_typed,
    headline="By the maker's values you typed, the fuse opens the lowest short, {fault_low}, in time; it breaks {near_fault}.",
)
FINE = Rule[FaultStudy](
    id="fault-current.fine", level=Level.FINE, when=lambda s: s.clears is Clears.IN_TIME and not s.by_typed,
    headline="The fuse breaks {near_fault} and opens the lowest short, {fault_low}, before the wire is damaged.",
)
