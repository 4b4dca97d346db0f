"""What the worksheets about wire have in common: outputs, steps and rules of a run and a cable.

They are declared for the part that they are about; a worksheet places them where that part stands
in its result.
"""

# fmt: off
from types import SimpleNamespace
from typing import Any

from calc.electrical import nec
from calc.electrical.ampacity import ABYC, LAW, NEC, RuleSet
from calc.electrical.cable import Cable
from calc.electrical.conductors import STRANDED
from calc.electrical.limits import HOT_AIR, HOT_COPPER, UNMARKED, WARM_AIR
from calc.electrical.nec import COOL_TERMINAL
from calc.electrical.protection import Warmth
from calc.electrical.rules import protection as protection_rules
from calc.electrical.rules.cable import ONLY_IN_SHEATH
from calc.electrical.run import RunResult
from calc.units.compare import at_most
from calc.units.kinds import AREA, CURRENT, LINEAR_RESISTANCE, RATIO, RISE, TEMPERATURE
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import (
    CAUTION,
    NOTE,
    Output,
    Placed,
    Remark,
    Step,
    Test,
    Verdict,
    placed_steps,
)

AMPACITY = (  # of a Cable
    Output(id="table_row", label="Row of the table"),
    Output(id="table_ampacity", label="Ampacity in the table", symbol="I_t", kind=CURRENT),
    Output(id="rating", at="insulation", label="Insulation's rating", symbol="T_c", kind=TEMPERATURE, unit="degree_Celsius"),
    Output(id="air", label="Air taken", symbol="T_a", kind=TEMPERATURE, unit="degree_Celsius"),
    Output(id="base_air", label="Air of the table", symbol="T_b", kind=TEMPERATURE, unit="degree_Celsius"),
    Output(id="ambient_factor", label="Factor for the air around it", symbol="f_a", kind=RATIO),
    Output(id="bundle_factor", label="Factor for bundling", symbol="f_b", kind=RATIO),
    Output(id="small_ceiling", label="NEC's most for a small conductor", symbol="I_s", kind=CURRENT),
    Output(id="terminal_ceiling", label="What NEC takes terminals for", symbol="I_75", kind=CURRENT),
    Output(id="cool_terminals", label="What unmarked terminals bear", kind=CURRENT, rounding=DOWN),
    Output(id="crowded", at="grouped_ampacity", label="Ampacity with the bundle counted", kind=CURRENT, rounding=DOWN),
    Output(id="at_60", at="ampacity_at_60c_insulation", label="What it bears with 60 °C insulation", kind=CURRENT, rounding=DOWN),
)
SAE = (  # of a Copper
    Output(id="sae_area", at="area", label="Copper of the SAE size", symbol="A_s", kind=AREA, digits=4),
    Output(id="sae_share", label="Copper that the SAE size lacks", kind=RATIO, rounding=UP),
)
LAID = (  # of a RunResult
    Output(id="wires", at="run.designation", label="Conductors"),
    Output(id="gauge_resistance", label="Resistance per length of the AWG size", symbol="r_g", kind=LINEAR_RESISTANCE, digits=4),
    Output(id="gauge_area", at="copper.named_area", label="Copper of the AWG size", symbol="A_g", kind=AREA, digits=4),
    Output(id="reference", label="Temperature of the table", symbol="T₀", kind=TEMPERATURE, unit="degree_Celsius"),
    Output(id="zero", label="Copper's zero-resistance temperature", symbol="T_z", kind=TEMPERATURE, unit="degree_Celsius", digits=4),
    Output(id="stated", label="Stated resistance per length", symbol="r₀", kind=LINEAR_RESISTANCE, digits=4),
    Output(id="per_length", label="Resistance per length, warm", symbol="r", kind=LINEAR_RESISTANCE, digits=4),
)
WARMTH = (  # of a Warmth
    Output(id="rise", label="Rise of the copper above the air, estimated", symbol="ΔT", kind=RISE, unit="delta_degree_Celsius"),
    Output(id="warm", label="Copper at this current, estimated", symbol="T_w", kind=TEMPERATURE, unit="degree_Celsius"),
)


def ampacity_steps(at: str, *, together: str, volts: str) -> tuple[Step[Any], ...]:
    """Return the steps from the rule set's row to the largest fuse on the Cable that stands `at`.

    `together` is the name of the value that counts the loaded conductors, `volts` that of the
    highest voltage.
    """
    count = f"{{{together}}} together"

    def by(rule_set: RuleSet) -> Any:
        return lambda c: c.rule_set is rule_set

    def by_law(hotter: bool) -> Any:
        return lambda c: not c.printed_factor and (c.air > c.base_air) is hotter

    steps: tuple[Step[Cable], ...] = (
        Step(of="table_row", source="wire-mm2", when=lambda c: c.table_row != c.conductor,
             says="The table is by AWG: {conductor} is read as {table_row}, the thickest row with no more copper."),
        Step(of="table_ampacity", source="33cfr-table", when=by(RuleSet.CFR33), says="{table_row}, {insulation} insulation, at 30 °C, two loaded conductors."),
        Step(of="table_ampacity", source="abyc-105", when=by(RuleSet.ABYC), says="{table_row}, 105 °C boat cable, at 30 °C, two loaded conductors."),
        Step(of="table_ampacity", source="nec-310-16", when=by(RuleSet.NEC),
             says="{table_row}, {insulation} insulation, at 30 °C, not more than three loaded conductors in a raceway, cable or earth."),
        Step(of="ambient_factor", source="33cfr-notes", when=lambda c: c.printed_factor and not c.by_nec,
             says="An engine space is taken as {air}; the factor for 105 °C insulation is printed."),
        Step(of="ambient_factor", source="nec-ambient", when=by(RuleSet.NEC),
             says="Printed for the band that holds {air}. An engine space counts as 50 °C at least; the credit for air cooler than {base_air} is not taken."),
        Step(of="ambient_factor", source="nec-ambient", when=by_law(False), formula="min(1, sqrt((rating - air) / (rating - base_air)))",
             says="The table is for {base_air}; air cooler than that is not credited."),
        Step(of="ambient_factor", source="nec-ambient", when=by_law(True), formula="min(1, sqrt((rating - air) / (rating - base_air)))",
             says="{rule_set} as we have it prints no factor for {air}. The law behind NEC's printed factors is put to work instead: that step is ours. An engine space counts as 50 °C at least."),
        Step(of="bundle_factor", source="33cfr-notes", when=by(RuleSet.CFR33), says=f"{count} at {{{volts}}}. The law counts bundles from a nominal 50 V on; the highest voltage is taken here, the safer reading."),
        Step(of="bundle_factor", source="abyc-105", when=by(RuleSet.ABYC), says=f"{count}, at any voltage."),
        Step(of="bundle_factor", source="nec-bundle", when=by(RuleSet.NEC), says=f"{count}; more than three are counted, at any voltage."),
        Step(of="ampacity", formula="table_ampacity * ambient_factor * bundle_factor", says="Both corrections together."),
        Step(of="small_ceiling", source="nec-small", when=lambda c: c.small_ceiling is not None,
             says="On {table_row} NEC allows no larger fuse, whatever the ampacity."),
        Step(of="terminal_ceiling", source="nec-terminals", when=lambda c: c.terminal_ceiling is not None,
             says="The figure of the 75 °C column for {table_row}: NEC takes no terminal as hotter, and the 90 °C column is for corrections only."),
        Step(of="highest", source="nec-small", when=lambda c: c.small_ceiling is not None,
             says="The smaller of {ampacity} and {small_ceiling}: the fuse may exceed neither."),
        Step(of="highest", source="nec-terminals", when=lambda c: c.terminal_ceiling is not None,
             says="The smaller of {ampacity} and {terminal_ceiling}: the fuse may exceed neither."),
        Step(of="highest", formula="ampacity", when=lambda c: c.small_ceiling is None and c.terminal_ceiling is None,
             says="The fuse may not let more through than the wire bears for hours."),
    )
    return placed_steps(at, *steps)


def stated_steps(at: str) -> tuple[Step[Any], ...]:
    """Return the steps to the stated resistance per length of the RunResult that stands `at`."""

    def sae(r: RunResult) -> bool:
        return not r.run.from_maker and r.copper.as_sae

    def awg(r: RunResult) -> bool:
        return not (r.run.from_maker or r.copper.as_sae or r.run.metric or r.computed)

    steps: tuple[Step[RunResult], ...] = (
        Step(of="gauge_resistance", source="nec-8", when=sae, says="{conductor} read as AWG, {finish} copper, from the table at {reference}."),
        Step(of="gauge_area", source="awg-area", when=sae, says="By the definition of the gauge."),
        Step(of="sae_area", source="sae-area", when=sae, says="The least that a wire made to the SAE size of this number holds: {sae_share} less."),
        Step(of="stated", formula="gauge_resistance * gauge_area / sae_area", when=sae, says="Less copper resists more, in proportion."),
        Step(of="stated", source="nec-8", when=awg, says="{conductor}, {finish} copper, from the table at {reference}."),
        Step(of="stated", source="iec-60228", when=lambda r: not r.run.from_maker and r.run.metric and not r.run.class_2,
             says="{conductor}, {finish} flexible copper, the most the standard permits at {reference}."),
        Step(of="stated", source="iec-60228-2", when=lambda r: not r.run.from_maker and r.run.class_2,
             says="{conductor}, {finish} stranded copper, the most the standard permits at {reference}."),
    )
    return placed_steps(at, *steps)


def resistance_steps(at: str) -> tuple[Step[Any], ...]:
    """Return the steps from the stated resistance to that of the whole run that stands `at`."""
    steps: tuple[Step[RunResult], ...] = (
        Step(of="per_length", formula="stated * (temperature - zero) / (reference - zero)", source="copper-temperature",
             says="Warm copper resists more."),
        Step(of="resistance", formula="2 * length * per_length", source="ohm", when=lambda r: r.run.parallel == 1,
             says="The current goes out and comes back, so the length counts twice."),
        Step(of="resistance", formula="2 * length * per_length / parallel", source="ohm", when=lambda r: r.run.parallel > 1,
             says="Out and back, so the length counts twice; {parallel} alike side by side resist {parallel} times less."),
    )
    return placed_steps(at, *steps)


def steps_to_warmth(at: str, each: str) -> tuple[Step[Any], ...]:
    """Return the steps to the Warmth that stands `at`, at the current named `each`."""
    steps: tuple[Step[Warmth], ...] = (
        Step(of="rise", formula=f"(rating - air) * ({each} / ampacity) ** 2", source="practice",
             says="Our estimate: heat goes with the square of the current, and at its ampacity the copper is as hot as its insulation bears."),
        Step(of="warm", source="practice", says="That rise above the air of {air}."),
    )
    return placed_steps(at, *steps)


def heat(at: str, chosen: str, fields: tuple[tuple[str, str], ...] = ()) -> tuple[Placed, ...]:
    """Return the rules on heat for the Protection that stands `at`.

    `chosen` begins their sentences with what was chosen, as the rules' own begin with the fuse;
    `fields` as in `Placed`.
    """
    rules = protection_rules.HEAT
    return (
        *(Placed(rule=rule, at=at, fields=fields, headline=chosen + rule.headline.removeprefix("A {fuse} fuse")) for rule in rules),
        Placed(rule=ONLY_IN_SHEATH, at=f"{at}.cable", fields=fields,
               headline=f"{chosen}, but only with other conductors in a sheath: the wire holds {{sae_area}} of copper, and one on its own is 16 AWG (1.3 mm²) or thicker."),
    )


# What the sheets that have not moved use

WIDEST = 0.10  # ABYC E-11 11.14.2.6: circuits that are not critical

BEARING = (
    Output(id="table_row", label="Row of the table"),
    Output(id="table_ampacity", label="Ampacity in the table", symbol="I_t", kind=CURRENT),
    Output(id="rating", label="Insulation's rating", symbol="T_c", kind=TEMPERATURE, unit="degree_Celsius"),
    Output(id="air", label="Air taken", symbol="T_a", kind=TEMPERATURE, unit="degree_Celsius"),
    Output(id="base_air", label="Air of the table", symbol="T_b", kind=TEMPERATURE, unit="degree_Celsius"),
    Output(id="ambient_factor", label="Factor for the air around it", symbol="f_a", kind=RATIO),
    Output(id="bundle_factor", label="Factor for bundling", symbol="f_b", kind=RATIO),
    Output(id="small_ceiling", label="NEC's most for a small conductor", symbol="I_s", kind=CURRENT),
    Output(id="terminal_ceiling", label="What NEC takes terminals for", symbol="I_75", kind=CURRENT),
    Output(id="cool_terminals", label="What unmarked terminals bear", kind=CURRENT, rounding=DOWN),
    Output(id="crowded", label="Ampacity with the bundle counted", kind=CURRENT, rounding=DOWN),
    Output(id="at_60", label="What it bears with 60 °C insulation", kind=CURRENT, rounding=DOWN),
)
COPPER_READ = (
    Output(id="wires", label="Conductors"),
    Output(id="gauge_resistance", label="Resistance per length of the AWG size", symbol="r_g", kind=LINEAR_RESISTANCE, digits=4),
    Output(id="gauge_area", label="Copper of the AWG size", symbol="A_g", kind=AREA, digits=4),
    Output(id="sae_area", label="Copper of the SAE size", symbol="A_s", kind=AREA, digits=4),
    Output(id="sae_share", label="Copper that the SAE size lacks", kind=RATIO, rounding=UP),
    Output(id="reference", label="Temperature of the table", symbol="T₀", kind=TEMPERATURE, unit="degree_Celsius"),
    Output(id="zero", label="Copper's zero-resistance temperature", symbol="T_z", kind=TEMPERATURE, unit="degree_Celsius", digits=4),
    Output(id="stated", label="Stated resistance per length", symbol="r₀", kind=LINEAR_RESISTANCE, digits=4),
    Output(id="per_length", label="Resistance per length, warm", symbol="r", kind=LINEAR_RESISTANCE, digits=4),
)


def bearing_steps(found: Test, together: str, volts: str) -> tuple[Step[SimpleNamespace], ...]:
    """Return the steps from the rule set's row to the largest fuse, where `found` holds.

    `together` is the name of the value that counts the loaded conductors, `volts` that of the
    highest voltage.
    """
    count = f"{{{together}}} together"

    def by(*rule_sets: str) -> Test:
        return lambda v: found(v) and v.rule_set in rule_sets

    def by_law(hotter: bool) -> Test:
        return lambda v: found(v) and not v.printed_factor and (v.air > v.base_air) is hotter

    return (
        Step(of="table_row", source="wire-mm2", when=lambda v: found(v) and v.table_row != v.conductor,
             says="The table is by AWG: {conductor} is read as {table_row}, the thickest row with no more copper."),
        Step(of="table_ampacity", source="33cfr-table", when=by(LAW), says="{table_row}, {insulation} insulation, at 30 °C, two loaded conductors."),
        Step(of="table_ampacity", source="abyc-105", when=by(ABYC), says="{table_row}, 105 °C boat cable, at 30 °C, two loaded conductors."),
        Step(of="table_ampacity", source="nec-310-16", when=by(NEC),
             says="{table_row}, {insulation} insulation, at 30 °C, not more than three loaded conductors in a raceway, cable or earth."),
        Step(of="ambient_factor", source="33cfr-notes", when=lambda v: found(v) and v.printed_factor and v.rule_set != NEC,
             says="An engine space is taken as {air}; the factor for 105 °C insulation is printed."),
        Step(of="ambient_factor", source="nec-ambient", when=by(NEC),
             says="Printed for the band that holds {air}. An engine space counts as 50 °C at least; the credit for air cooler than {base_air} is not taken."),
        Step(of="ambient_factor", source="nec-ambient", when=by_law(False), formula="min(1, sqrt((rating - air) / (rating - base_air)))",
             says="The table is for {base_air}; air cooler than that is not credited."),
        Step(of="ambient_factor", source="nec-ambient", when=by_law(True), formula="min(1, sqrt((rating - air) / (rating - base_air)))",
             says="{rule_set} as we have it prints no factor for {air}. The law behind NEC's printed factors is put to work instead: that step is ours. An engine space counts as 50 °C at least."),
        Step(of="bundle_factor", source="33cfr-notes", when=by(LAW), says=f"{count} at {{{volts}}}. The law counts bundles from a nominal 50 V on; the highest voltage is taken here, the safer reading."),
        Step(of="bundle_factor", source="abyc-105", when=by(ABYC), says=f"{count}, at any voltage."),
        Step(of="bundle_factor", source="nec-bundle", when=by(NEC), says=f"{count}; more than three are counted, at any voltage."),
        Step(of="ampacity", formula="table_ampacity * ambient_factor * bundle_factor", when=found, says="Both corrections together."),
        Step(of="small_ceiling", source="nec-small", when=lambda v: v.small_ceiling is not None,
             says="On {table_row} NEC allows no larger fuse, whatever the ampacity."),
        Step(of="terminal_ceiling", source="nec-terminals", when=lambda v: v.terminal_ceiling is not None,
             says="The figure of the 75 °C column for {table_row}: NEC takes no terminal as hotter, and the 90 °C column is for corrections only."),
        Step(of="highest", source="nec-small", when=lambda v: v.small_ceiling is not None,
             says="The smaller of {ampacity} and {small_ceiling}: the fuse may exceed neither."),
        Step(of="highest", source="nec-terminals", when=lambda v: v.terminal_ceiling is not None,
             says="The smaller of {ampacity} and {terminal_ceiling}: the fuse may exceed neither."),
        Step(of="highest", formula="ampacity", when=lambda v: found(v) and v.small_ceiling is None and v.terminal_ceiling is None,
             says="The fuse may not let more through than the wire bears for hours."),
    )


def copper_steps(read: Test) -> tuple[Step[SimpleNamespace], ...]:
    """Return the steps to the stated resistance per length, where it is `read` from a table."""

    def sae(v: SimpleNamespace) -> bool:
        return read(v) and v.as_sae

    return (
        Step(of="gauge_resistance", source="nec-8", when=sae, says="{conductor} read as AWG, {finish} copper, from the table at {reference}."),
        Step(of="gauge_area", source="awg-area", when=sae, says="By the definition of the gauge."),
        Step(of="sae_area", source="sae-area", when=sae, says="The least that a wire made to the SAE size of this number holds: {sae_share} less."),
        Step(of="stated", formula="gauge_resistance * gauge_area / sae_area", when=sae, says="Less copper resists more, in proportion."),
        Step(of="stated", source="nec-8", when=lambda v: read(v) and not v.metric and not v.as_sae and not v.computed,
             says="{conductor}, {finish} copper, from the table at {reference}."),
        Step(of="stated", source="iec-60228", when=lambda v: read(v) and v.metric and not v.class_2,
             says="{conductor}, {finish} flexible copper, the most the standard permits at {reference}."),
        Step(of="stated", source="iec-60228-2", when=lambda v: read(v) and v.class_2,
             says="{conductor}, {finish} stranded copper, the most the standard permits at {reference}."),
    )


def loop_steps(found: Test) -> tuple[Step[SimpleNamespace], ...]:
    """Return the steps from the stated resistance to that of the whole run, where `found` holds."""
    return (
        Step(of="per_length", formula="stated * (temperature - zero) / (reference - zero)", source="copper-temperature", when=found,
             says="Warm copper resists more."),
        Step(of="resistance", formula="2 * length * per_length", source="ohm", when=lambda v: found(v) and v.parallel == 1,
             says="The current goes out and comes back, so the length counts twice."),
        Step(of="resistance", formula="2 * length * per_length / parallel", source="ohm", when=lambda v: found(v) and v.parallel > 1,
             says="Out and back, so the length counts twice; {parallel} alike side by side resist {parallel} times less."),
    )


def warmth_steps(found: Test, each: str) -> tuple[Step[SimpleNamespace], ...]:
    """Return the steps to the copper's warmth at the current named `each`, where `found` holds."""
    return (
        Step(of="rise", formula=f"(rating - air) * ({each} / ampacity) ** 2", source="practice", when=found,
             says="Our estimate: heat goes with the square of the current, and at its ampacity the copper is as hot as its insulation bears."),
        Step(of="warm", source="practice", when=found, says="That rise above the air of {air}."),
    )


def sae_notes(read: Test) -> tuple[Remark, ...]:
    """Return the notes on AWG and SAE, where the copper is `read` from a table."""
    return (
        Remark(level=NOTE, source="sae-area", when=lambda v: read(v) and not v.as_sae and v.sae_share is not None,
               says="{conductor} means the AWG size, as in the wiring codes. Vehicle cable made to the SAE size of the same number has {sae_share} less copper, loses more and bears less: set “gauge sizes” to SAE if the reel says so."),
        Remark(level=NOTE, source="sae-area", when=lambda v: read(v) and v.as_sae,
               says="Read as an SAE size, {conductor} holds {sae_area} of copper, {sae_share} less than AWG. What it bears is read from the thickest AWG row with no more copper than that."),
        Remark(level=NOTE, source="iec-60228", when=lambda v: v.metric and v.gauge_reading == "SAE",
               says="A metric size is named by its own copper, so AWG or SAE makes no difference to it."),
    )


STRANDS_NOTE = Remark(
    level=NOTE, source="nec-8", when=lambda v: not v.metric and v.strands == STRANDED,
    says="The class of strands is for metric sizes; the gauge table has one stranding.",
)
PARALLEL_CAUTIONS = (
    Remark(when=lambda v: v.parallel > 1, source="nec-parallel",
           says="Conductors in parallel share evenly only if they are alike: same length, size, lugs and crimps. One loose joint puts the whole current on the rest. Fuse each by itself, or all by a fuse that one alone bears."),
    Remark(when=lambda v: v.too_thin_to_join, source="nec-parallel",
           says="NEC joins 1/0 AWG (53 mm²) and thicker in parallel, and thinner ones only where each alone bears the whole load and is fused for it. One thicker conductor is the better run."),
)


def nec_notes(found: Test) -> tuple[Remark, ...]:
    """Return what must be said where NEC 310.16 is the rule set."""
    return (
        Remark(source="nec-terminals", when=lambda v: _hot_wire(v) and v.fuse is not None and v.cool_terminals is not None,
               says="Terminals have ratings too, whatever the insulation: up to 100 A, and where they are made for 14 to 1 AWG, NEC takes them as 60 °C unless both ends are marked 75 °C. By the 60 °C column they bear {cool_terminals} on this wire. Larger ones it takes as 75 °C."),
        Remark(source="nec-310-16", when=lambda v: v.rule_set == NEC,
               says="NEC 310.16 is for mains wiring in buildings. Mains work belongs to a licensed person and to local rules."),
        Remark(level=NOTE, source="nec-310-16", when=lambda v: v.rule_set == NEC and v.rating == COOL_TERMINAL,
               says="Editions differ at 60 °C: older ones print 20 A for 14 AWG and 25 A for 12 AWG, that of 2023 has 15 A and 20 A. The lower ones are taken."),
        Remark(level=NOTE, source="33cfr-table", when=lambda v: v.rule_set != NEC,
               says="33 CFR and ABYC are for boats: insulated stranded copper, 30 °C outside and 50 °C inside an engine space. There is no van rule that we may show; the maker of the vehicle and local rules govern."),
    )


THICKEST_NOTE = Remark(
    level=NOTE, source="wire-mm2", when=lambda v: v.thickest,
    says="No rule set here goes beyond 4/0 AWG (107 mm²), so {conductor} is read as that. It bears more; how much, the maker of the cable says.",
)


def too_thin_alone(v: SimpleNamespace) -> bool:
    """Return whether the rule set wants a thicker wire where it runs on its own."""
    return bool(v.thin and v.rule_set != NEC)


def _hot_wire(v: SimpleNamespace) -> bool:
    return bool(v.rule_set == NEC and v.rating > COOL_TERMINAL)


def rests_on_terminals(v: SimpleNamespace) -> bool:
    """Return whether terminals that NEC takes as 60 °C would bear less than the fuse."""
    cool = _hot_wire(v) and v.fuse is not None and nec.in_cool_terminals(v.table_row)
    return cool and (v.cool_terminals is None or not at_most(v.fuse, v.cool_terminals))


def only_as_printed(v: SimpleNamespace) -> bool:
    """Return whether 60 °C insulation, for want of a marking, would bear less than the fuse."""
    hot = v.rule_set != NEC and v.fuse is not None and v.rating > UNMARKED
    return hot and (v.at_60 is None or not at_most(v.fuse, v.at_60))


def beyond_print(v: SimpleNamespace) -> bool:
    """Return whether the factor for the air is none that the boats' rules print."""
    ours = v.rule_set != NEC and v.air is not None and not v.printed_factor
    return ours and not at_most(v.air, v.base_air)


def _hotter_than(v: SimpleNamespace, air: float) -> bool:
    return v.fuse is not None and not at_most(v.air, air)


def hot_copper(v: SimpleNamespace) -> bool:
    """Return whether the copper may be hotter than what it is joined to."""
    return v.fuse is not None and not at_most(v.warm, HOT_COPPER)


def heat_rules(it: str) -> tuple[Verdict, ...]:
    """Return the cautions on heat; `it` begins the sentence with what was chosen."""
    return (
        Verdict(verdict=CAUTION, when=lambda v: hot_copper(v) or rests_on_terminals(v),
             says=f"{it}, but only if terminals, lugs and fuse holder are marked for wire as hot as this."),
        Verdict(verdict=CAUTION, when=lambda v: _hotter_than(v, HOT_AIR) and beyond_print(v),
             says=f"{it}, but {{rule_set}} prints no factor for air of {{air}}: ours is worked by another code's law."),
        Verdict(verdict=CAUTION, when=lambda v: _hotter_than(v, HOT_AIR),
             says=f"{it}, but in air of {{air}} a fuse bears less than its rating: the maker's derating decides."),
        Verdict(verdict=CAUTION, when=only_as_printed,
             says=f"{it}, but only with {{insulation}} printed on the cable: with 60 °C insulation it is too thin."),
        Verdict(verdict=CAUTION, when=too_thin_alone,
             says=f"{it}, but only with other conductors in a sheath: the wire holds {{sae_area}} of copper, and one on its own is 16 AWG (1.3 mm²) or thicker."),
    )


HEAT_CAUTIONS = (
    Remark(when=lambda v: only_as_printed(v) and v.at_60 is not None, source="33cfr-table",
           says="Only with {insulation} printed on the cable: with 60 °C insulation it would bear {at_60}, less than the fuse."),
    Remark(when=lambda v: only_as_printed(v) and v.at_60 is None, source="33cfr-table",
           says="Only with {insulation} printed on the cable: with 60 °C insulation it would bear nothing in air of {air}."),
    Remark(when=beyond_print, source="nec-ambient",
           says="{rule_set} as we have it prints no factor for air of {air} with {insulation} insulation. The law behind NEC's factors stands in for it, which is our step: what the maker of the cable says of hot air comes first."),
    Remark(when=hot_copper, source="practice",
           says="At this current the copper may reach {warm}, by our estimate. Lugs, fuse holders and switches are commonly made for 75 to 90 °C: take thicker wire, or see that each is marked for more."),
    Remark(when=lambda v: _hotter_than(v, WARM_AIR), source="practice",
           says="Fuses are rated at room temperature, about 25 °C. In air above some 40 °C a fuse opens below its rating: use the maker's derating, or fit it in a cooler place."),
    Remark(when=too_thin_alone, source="33cfr-size",
           says="{sae_area} of copper is allowed only with other conductors in a sheath; a conductor on its own is 16 AWG (1.3 mm²) or thicker."),
)
