"""What the worksheets about wire have in common: outputs, steps and rules of a run and a cable.

They are declared for the part that they are about; a worksheet places them where that part stands
in its result.
"""

# fmt: off
from typing import Any

from calc.electrical.ampacity import RuleSet
from calc.electrical.cable import Cable
from calc.electrical.protection import Warmth
from calc.electrical.rules import cable as cable_rules
from calc.electrical.rules import protection as protection_rules
from calc.electrical.run import RunResult
from calc.units.kinds import AREA, CURRENT, LINEAR_RESISTANCE, RATIO, RISE, TEMPERATURE
from calc.worksheet.declare import (
    Output,
    Placed,
    Step,
    placed_steps,
)

AMPACITY = (  # of a Cable
    Output(id="table_row", label="Row of the table"),
    Output(id="table_ampacity", label="Ampacity in the table", symbol="I_t", kind=CURRENT),
    Output(id="rating", at="insulation", label="Insulation's rating", symbol="T_c", kind=TEMPERATURE, unit="degree_Celsius"),
    Output(id="air", label="Air temperature used", symbol="T_a", kind=TEMPERATURE, unit="degree_Celsius"),
    Output(id="base_air", label="Air temperature of the table", symbol="T_b", kind=TEMPERATURE, unit="degree_Celsius"),
    Output(id="thin_share", label="Share of that row's copper", symbol="f_s", kind=RATIO),
    Output(id="engine_air", label="Air of the printed engine factor", symbol="T_e", kind=TEMPERATURE, unit="degree_Celsius"),
    Output(id="engine_factor", label="Printed engine factor", symbol="f_e", kind=RATIO),
    Output(id="ambient_factor", label="Factor for the air around it", symbol="f_a", kind=RATIO),
    Output(id="bundle_factor", label="Factor for bundling", symbol="f_b", kind=RATIO),
    Output(id="small_ceiling", label="NEC's limit for a small conductor", symbol="I_s", kind=CURRENT),
    Output(id="terminal_ceiling", label="Ampacity by NEC's terminal column", symbol="I_75", kind=CURRENT),
    Output(id="cool_terminals", label="Limit of unmarked terminals", kind=CURRENT),
    Output(id="at_60", at="ampacity_at_60c_insulation", label="Ampacity with 60 °C insulation", kind=CURRENT),
)
SAE = (  # of a Copper
    Output(id="sae_area", at="area", label="Copper of the SAE size", symbol="A_s", kind=AREA, digits=4),
    Output(id="sae_share", label="Copper missing in the SAE size", kind=RATIO),
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
    Output(id="rise", label="Copper temperature rise above the air, estimated", symbol="ΔT", kind=RISE, unit="delta_degree_Celsius"),
    Output(id="warm", label="Copper temperature at this current, estimated", symbol="T_w", kind=TEMPERATURE, unit="degree_Celsius"),
)


def ampacity_steps(
    at: str, *, together: str, volts: str, law_only: bool = False, thin: bool = True
) -> tuple[Step[Any], ...]:
    """Return the steps from the rule set's row to the largest fuse on the Cable that stands `at`.

    `together` is the name of the value that counts the loaded conductors, `volts` that of the
    highest voltage. `law_only` leaves out what is of other rule sets than 33 CFR; without `thin`
    there is no wire below the table.
    """
    count = f"{{{together}}} together"

    def by(rule_set: RuleSet) -> Any:
        return lambda c: c.rule_set is rule_set

    def by_law(hotter: bool) -> Any:
        return lambda c: not (c.printed_factor or c.beyond_engine_print) and (c.air > c.base_air) is hotter

    others = not law_only
    steps: tuple[Step[Cable] | None, ...] = (
        Step(of="table_row", source="wire-mm2", when=lambda c: c.table_row != c.conductor,
             text="The table is by AWG: {conductor} is read as {table_row}, the largest row with no more copper."),
        Step(of="table_ampacity", source="33cfr-table", when=lambda c: c.by_cfr33 and not c.column_not_printed, text="{table_row}, {insulation} insulation, at 30 °C, two loaded conductors."),
        Step(of="table_ampacity", source="nec-ambient", when=lambda c: c.column_not_printed,
             text="{table_row} at 30 °C, two loaded conductors. 33 CFR has no column for {insulation}: the 75 °C column times √(40/45), NEC's law, and no less than the 60 °C column."),
        Step(of="table_ampacity", source="abyc-105", when=by(RuleSet.ABYC), text="{table_row}, 105 °C boat cable, at 30 °C, two loaded conductors.") if others else None,
        Step(of="table_ampacity", source="nec-310-16", when=by(RuleSet.NEC),
             text="{table_row}, {insulation} insulation, at 30 °C, not more than three loaded conductors in a raceway, cable or earth.") if others else None,
        Step(of="thin_share", source="practice", when=lambda c: c.below_table,
             text="The table begins at {table_row}. {conductor} is smaller, and is rated by its share of that copper: our estimate.") if thin else None,
        Step(of="ambient_factor", source="33cfr-notes", when=lambda c: c.printed_factor and not c.by_nec,
             text="For an engine space {air} is used; the factor for 105 °C insulation is printed."),
        Step(of="ambient_factor", source="nec-ambient", when=by(RuleSet.NEC),
             text="Printed for the range that includes {air}. An engine space counts as at least 50 °C; no bonus is taken for air cooler than {base_air}.") if others else None,
        Step(of="ambient_factor", source="nec-ambient", when=by_law(False), formula="min(1, sqrt((rating - air) / (rating - base_air)))",
             text="The table is for {base_air}; no bonus is taken for cooler air."),
        Step(of="ambient_factor", source="nec-ambient", when=lambda c: c.beyond_engine_print,
             text="The printed {engine_factor} is for {engine_air}. For hotter air it falls by NEC's law, √((T_c − T_a)/(T_c − T_e)): our step."),
        Step(of="ambient_factor", source="nec-ambient", when=by_law(True), formula="min(1, sqrt((rating - air) / (rating - base_air)))",
             text="No factor is printed for {air}. The law behind NEC's printed factors is used instead: our estimate. An engine space counts as at least 50 °C."),
        Step(of="bundle_factor", source="33cfr-notes", when=lambda c: c.by_cfr33 and not c.bundle_by_prudence, text=f"{count} at {{{volts}}}. The law counts bundles from a nominal 50 V on; the highest voltage is used here, the safer reading."),
        Step(of="bundle_factor", source="33cfr-notes", when=lambda c: c.bundle_by_prudence,
             text=f"{count} at {{{volts}}}. The law requires this factor from 50 V on, ABYC E-11 at any voltage. Below 50 V it is used here as a precaution."),
        Step(of="bundle_factor", source="abyc-105", when=by(RuleSet.ABYC), text=f"{count}, at any voltage.") if others else None,
        Step(of="bundle_factor", source="nec-bundle", when=by(RuleSet.NEC), text=f"{count}; more than three are counted, at any voltage.") if others else None,
        Step(of="ampacity", formula="table_ampacity * ambient_factor * bundle_factor", when=lambda c: not c.below_table, text="Both corrections together."),
        Step(of="ampacity", formula="table_ampacity * thin_share * ambient_factor * bundle_factor", when=lambda c: c.below_table, text="All corrections together.") if thin else None,
        Step(of="small_ceiling", source="nec-small", when=lambda c: c.small_ceiling is not None,
             text="On {table_row} NEC allows no larger fuse, whatever the ampacity.") if others else None,
        Step(of="terminal_ceiling", source="nec-terminals", when=lambda c: c.terminal_ceiling is not None,
             text="The value in the 75 °C column for {table_row}: NEC assumes no hotter terminal, and the 90 °C column is for corrections only.") if others else None,
        Step(of="highest", source="nec-small", when=lambda c: c.small_ceiling is not None,
             text="The smaller of {ampacity} and {small_ceiling}: the fuse may exceed neither.") if others else None,
        Step(of="highest", source="nec-terminals", when=lambda c: c.terminal_ceiling is not None,
             text="The smaller of {ampacity} and {terminal_ceiling}: the fuse may exceed neither.") if others else None,
        Step(of="highest", formula="ampacity", when=lambda c: c.small_ceiling is None and c.terminal_ceiling is None,
             text="The fuse rating may not be above the wire's ampacity."),
    )
    return placed_steps(at, *(step for step in steps if step))


def stated_steps(at: str) -> tuple[Step[Any], ...]:
    """Return the steps to the stated resistance per length of the RunResult that stands `at`."""

    def sae(r: RunResult) -> bool:
        return not r.run.from_maker and r.copper.as_sae

    def awg(r: RunResult) -> bool:
        return not (r.run.from_maker or r.copper.as_sae or r.run.metric or r.computed)

    steps: tuple[Step[RunResult], ...] = (
        Step(of="gauge_resistance", source="nec-8", when=sae, text="{conductor} read as AWG, {finish} copper, from the table at {reference}."),
        Step(of="gauge_area", source="awg-area", when=sae, text="By the definition of the gauge."),
        Step(of="sae_area", source="sae-area", when=sae, text="The least that a wire made to the SAE size of this number holds: {sae_share} less."),
        Step(of="stated", formula="gauge_resistance * gauge_area / sae_area", when=sae, text="Less copper has more resistance, in proportion."),
        Step(of="stated", source="nec-8", when=awg, text="{conductor}, {finish} copper, from the table at {reference}."),
        Step(of="stated", source="iec-60228", when=lambda r: not r.run.from_maker and r.run.metric and not r.run.class_2,
             text="{conductor}, {finish} flexible copper, the most the standard permits at {reference}."),
        Step(of="stated", source="iec-60228-2", when=lambda r: not r.run.from_maker and r.run.class_2,
             text="{conductor}, {finish} stranded copper, the most the standard permits at {reference}."),
    )
    return placed_steps(at, *steps)


def resistance_steps(at: str) -> tuple[Step[Any], ...]:
    """Return the steps from the stated resistance to that of the whole run that stands `at`."""
    steps: tuple[Step[RunResult], ...] = (
        Step(of="per_length", formula="stated * (temperature - zero) / (reference - zero)", source="copper-temperature",
             text="Warm copper has more resistance."),
        Step(of="resistance", formula="2 * length * per_length", source="ohm", when=lambda r: r.run.parallel == 1,
             text="The current goes out and comes back, so the length counts twice."),
        Step(of="resistance", formula="2 * length * per_length / parallel", source="ohm", when=lambda r: r.run.parallel > 1,
             text="Out and back, so the length counts twice; {parallel} equal ones in parallel have 1/{parallel} of the resistance."),
    )
    return placed_steps(at, *steps)


def steps_to_warmth(at: str, each: str) -> tuple[Step[Any], ...]:
    """Return the steps to the Warmth that stands `at`, at the current named `each`."""
    steps: tuple[Step[Warmth], ...] = (
        Step(of="rise", formula=f"(rating - air) * ({each} / ampacity) ** 2", source="practice",
             text="Our estimate: heat rises with the square of the current, and at its ampacity the copper reaches the rating of its insulation."),
        Step(of="warm", source="practice", text="The rise added to the air at {air}."),
    )
    return placed_steps(at, *steps)


def heat(
    at: str, fields: tuple[tuple[str, str], ...] = (), *, law_only: bool = False
) -> tuple[Placed, ...]:
    """Return the rules on heat for the Protection that stands `at`; `fields` as in `Placed`.

    `law_only` leaves out what is of other rule sets than 33 CFR.
    """
    others = (protection_rules.WEAK_TERMINALS,) if law_only else ()
    rules = (rule for rule in protection_rules.HEAT if rule not in others)
    return tuple(Placed(rule=rule, at=at, fields=fields) for rule in rules)


def laying_advice(
    at: str, fields: tuple[tuple[str, str], ...] = (), *, thin: bool = True
) -> tuple[Placed, ...]:
    """Return the advice on the wire of the Protection that stands `at`; `fields` as in `Placed`.

    Without `thin` there is no wire below the table.
    """
    printed = protection_rules.ONLY_AS_PRINTED, protection_rules.NOTHING_UNLESS_PRINTED
    laid = (
        cable_rules.BUNDLE_BY_PRUDENCE, *((cable_rules.BELOW_TABLE,) if thin else ()),
        cable_rules.ONLY_IN_SHEATH, cable_rules.FACTOR_NOT_PRINTED, cable_rules.COLUMN_NOT_PRINTED,
    )
    return (
        *(Placed(rule=rule, at=at, fields=fields) for rule in printed),
        *(Placed(rule=rule, at=f"{at}.cable", fields=fields) for rule in laid),
    )
