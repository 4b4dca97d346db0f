"""A loaded conductor where it lies: what its rule set lets it carry there, step by step.

In scope: insulated stranded copper, continuous current, alone or bundled. Out of scope: what a
rule set has no row for, and the resistance of the copper (`calc.electrical.run`).
"""

from dataclasses import dataclass
from math import inf
from typing import Annotated

from calc.electrical import nec
from calc.electrical.ampacity import (
    BASE_AMBIENT,
    ENGINE_AMBIENT,
    PRINTED_ENGINE_FACTOR,
    PRINTED_FOR,
    RuleSet,
    Surroundings,
    air_around,
    ambient_factor,
    bundle_factor,
    counts_bundles,
    ratings,
    row_ampacity,
    row_and_share,
)
from calc.electrical.conductors import Copper, GaugeReading, conductor, copper_of
from calc.units.compare import at_most
from calc.units.si import Amperes, Celsius, Count, Share, Tag, Volts

THINNEST_ROW = "18 AWG"  # of the boats' rules, 33 CFR 183.425(e): only with others in a sheath
THICKEST_ROW = "4/0 AWG"  # of the boats' rules
# Plus and minus, for which the boats' tables are made: 33 CFR 183.425 table 5 note 2
ONE_CIRCUIT: Annotated[Count, Tag("loaded conductors of one circuit")] = 2.0
# What a cable is taken for that bears no marking: common practice, no source
UNMARKED_INSULATION: Annotated[Celsius, Tag("insulation without a marking")] = 60.0
# The hottest that is on sale as cable for vehicles and boats: common practice, no source
USUAL_INSULATION: Annotated[Celsius, Tag("hottest usual insulation")] = 105.0
# What lugs and fuse holders are made for: common practice, no source
HOT_COPPER: Annotated[Celsius, Tag("hottest copper that lugs and holders are made for")] = 90.0


@dataclass(frozen=True, kw_only=True)
class Cable:
    """One loaded conductor as laid, and its ampacity under `rule_set` with what leads to it.

    `ambient` is the hottest air on its way and `air` what is taken for it; `bundled` counts the
    loaded conductors that lie together, `max_voltage` is the highest on the circuit.
    `table_ampacity` stands in the row of the gauge `table_row`, of which a wire below the table has
    the share `thin_share`; `printed_factor` tells that the factor for the air is the rule's own.
    `small_ceiling` is the largest fuse that NEC 240.4(D) allows on a small conductor, whatever its
    ampacity, `terminal_ceiling` that of its 75 °C column, where hotter insulation could carry more.
    """

    copper: Copper
    insulation: Celsius
    surroundings: Surroundings
    bundled: Count
    ambient: Celsius
    max_voltage: Volts
    rule_set: RuleSet
    table_row: str
    table_ampacity: Amperes
    thin_share: Share
    air: Celsius
    printed_factor: bool
    ambient_factor: Share
    bundle_factor: Share
    ampacity: Amperes
    small_ceiling: Amperes | None
    terminal_ceiling: Amperes | None

    @property
    def largest_fuse(self) -> Amperes:
        """The most that a fuse on this conductor may be rated."""
        return min(self.ampacity, self.small_ceiling or inf, self.terminal_ceiling or inf)

    @property
    def base_air(self) -> Celsius:
        """The air that the table is for."""
        return BASE_AMBIENT

    @property
    def conductor(self) -> str:
        """The size by its name."""
        return self.copper.conductor

    @property
    def bundle_by_prudence(self) -> bool:
        """Whether it lies in a bundle that the rule set itself does not count at this voltage."""
        return self.bundle_factor < 1 and not counts_bundles(self.rule_set, self.max_voltage)

    @property
    def below_table(self) -> bool:
        """Whether the rule set has no row for so thin a wire, and the first one stands in."""
        return self.thin_share < 1

    @property
    def column_not_printed(self) -> bool:
        """Whether the rule set prints no column for its insulation."""
        return self.insulation not in ratings(self.rule_set)

    @property
    def beyond_engine_print(self) -> bool:
        """Whether an engine space is hotter than the printed factor is for."""
        inside = self.surroundings is Surroundings.INSIDE and self.insulation == PRINTED_FOR
        return inside and not self.by_nec and not self.printed_factor

    @property
    def engine_air(self) -> Celsius:
        """The air of an engine space that the printed factor is for."""
        return ENGINE_AMBIENT

    @property
    def engine_factor(self) -> Share:
        """The printed factor of an engine space."""
        return PRINTED_ENGINE_FACTOR

    @property
    def cited(self) -> str:
        """How its rule set is cited."""
        return self.rule_set.cited

    @property
    def by_cfr33(self) -> bool:
        """Whether 33 CFR is the rule set."""
        return self.rule_set is RuleSet.CFR33

    @property
    def by_nec(self) -> bool:
        """Whether NEC is the rule set."""
        return self.rule_set is RuleSet.NEC

    @property
    def ampacity_at_60c_insulation(self) -> Amperes | None:
        """Its ampacity if its insulation were good for 60 °C only.

        By 33 CFR, whose table has that column. None under NEC,
        which has its own say on it, and where the air leaves nothing to carry.
        """
        if self.by_nec or self.air >= UNMARKED_INSULATION:
            return None
        row, share = row_and_share(
            self.conductor, self.copper.gauge_reading, RuleSet.CFR33, UNMARKED_INSULATION
        )
        factor, _ = ambient_factor(
            UNMARKED_INSULATION, self.ambient, self.surroundings, RuleSet.CFR33
        )
        base = row_ampacity(row, UNMARKED_INSULATION, RuleSet.CFR33)
        return base * share * factor * bundle_factor(RuleSet.CFR33, self.bundled)

    @property
    def cool_terminals(self) -> Amperes | None:
        """What NEC lets terminals of 60 °C carry on it, None where its 60 °C column is empty."""
        return nec.cool_terminals(self.table_row.removesuffix(" AWG"))

    @property
    def only_in_sheath(self) -> bool:
        """Whether the boats' rules allow so thin a wire only with others in a sheath."""
        return self.table_row == THINNEST_ROW and not self.by_nec and not self.below_table

    @property
    def beyond_rows(self) -> bool:
        """Whether it is thicker than the last row of the boats' rules, which then stands in."""
        return not self.by_nec and not at_most(self.copper.area, conductor(THICKEST_ROW).area)


def cable(
    *,
    conductor: str,
    insulation: float,
    surroundings: Surroundings,
    bundled: float,
    ambient: float,
    max_voltage: float,
    rule_set: RuleSet,
    gauge_reading: GaugeReading,
) -> Cable:
    """Return what the `conductor` can carry as it is laid, under `rule_set`.

    `insulation` and `ambient` [°C], `max_voltage` [V]; `gauge_reading` says whether a gauge number
    is an AWG or an SAE size. Copper, continuous current.
    Raises NotCovered where the rule set has no figure, or for a name that is in no enumeration.
    """
    rules = RuleSet(rule_set)
    row, share = row_and_share(conductor, gauge_reading, rules, insulation)
    gauge = row.removesuffix(" AWG")
    base = row_ampacity(row, insulation, rules)
    surrounding, printed = ambient_factor(insulation, ambient, surroundings, rules)
    bundle = bundle_factor(rules, bundled)
    return Cable(
        copper=copper_of(conductor, gauge_reading),
        insulation=insulation,
        surroundings=Surroundings(surroundings),
        bundled=bundled,
        ambient=ambient,
        max_voltage=max_voltage,
        rule_set=rules,
        table_row=row,
        table_ampacity=base,
        thin_share=share,
        air=air_around(ambient, surroundings),
        printed_factor=printed,
        ambient_factor=surrounding,
        bundle_factor=bundle,
        ampacity=base * share * surrounding * bundle,
        small_ceiling=nec.small_ceiling(gauge) if rules is RuleSet.NEC else None,
        terminal_ceiling=nec.terminal_ceiling(gauge, insulation) if rules is RuleSet.NEC else None,
    )
