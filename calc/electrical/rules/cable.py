"""Judgements on a conductor where it lies: hot air, bundles, thin wire, and what each rule set is."""

# fmt: off
from typing import Protocol

from calc.electrical.cable import Cable
from calc.electrical.conductors import conductor, copper_area, series_of
from calc.electrical.nec import COOL_TERMINAL
from calc.judge import Change, Level, Rule
from calc.judge.remedies import smallest_change
from calc.units.compare import at_most


class HasRuleSet(Protocol):
    """What is held to a rule set, with the rating of its insulation [°C]."""

    @property
    def by_nec(self) -> bool: ...
    @property
    def insulation(self) -> float: ...


class MayBeThin(Protocol):
    """What may be thinner than the first row of the table."""

    @property
    def below_table(self) -> bool: ...


def beyond_print(cable: Cable) -> bool:
    """Return whether the factor for the air is none that the boats' rules print."""
    ours = not cable.by_nec and not cable.printed_factor
    return ours and not at_most(cable.air, cable.base_air)


def thick_enough_alone(cable: Cable) -> Change | None:
    """Return the thinnest size that may run on its own."""
    row_after = conductor("16 AWG").area

    def alone(name: str) -> bool | None:
        return copper_area(name, cable.copper.gauge_reading) >= row_after or None

    found = smallest_change((one.name for one in series_of(cable.conductor)), alone)
    return Change({"conductor": found.change}) if found else None


ONLY_IN_SHEATH = Rule[Cable](
    id="cable.only-in-sheath", level=Level.ADVICE, when=lambda c: c.only_in_sheath, source="33cfr-size",
    text="Run a wire this small ({copper.area} of copper) in a sheath with others: by the rule for boats, a single one is 16 AWG (1.3 mm²) or larger.",
    mend=thick_enough_alone,
)
BUNDLE_BY_PRUDENCE = Rule[Cable](
    id="cable.bundle-by-prudence", level=Level.ADVICE, when=lambda c: c.bundle_by_prudence, source="33cfr-notes",
    text="{bundled} loaded conductors together leave {bundle_factor} of the ampacity. 33 CFR requires this from 50 V, ABYC E-11 at any voltage; below 50 V we use it as a precaution.",
)
BELOW_TABLE = Rule[MayBeThin](
    id="cable.below-table", level=Level.ADVICE, when=lambda c: c.below_table, source="33cfr-table",
    text="Our ampacity tables begin at 18 AWG (0.82 mm²). This wire is rated by its share of that copper: our estimate. The maker's value comes first.",
)
COLUMN_NOT_PRINTED = Rule[Cable](
    id="cable.column-not-printed", level=Level.NOTE, when=lambda c: c.column_not_printed, source="nec-ambient",
    text="33 CFR has no column for {insulation} insulation. Its 75 °C column is scaled by NEC's temperature law, never below the 60 °C column: our estimate.",
)
FACTOR_NOT_PRINTED = Rule[Cable](
    id="cable.factor-not-printed", level=Level.ADVICE, when=beyond_print, source="nec-ambient",
    text="{cited} prints no factor for air of {air} with {insulation} insulation. NEC's temperature law is used instead: our estimate. The cable maker's value comes first.",
)
MAINS_SIDE = Rule[HasRuleSet](
    id="cable.mains-side", level=Level.ADVICE, when=lambda c: c.by_nec, source="nec-310-16",
    text="NEC 310.16 is for mains wiring in buildings. Mains work belongs to a licensed person and to local rules.",
)
EDITIONS_DIFFER = Rule[HasRuleSet](
    id="cable.editions-differ", level=Level.NOTE, when=lambda c: c.by_nec and c.insulation == COOL_TERMINAL, source="nec-310-16",
    text="Editions differ at 60 °C: older ones print 20 A for 14 AWG and 25 A for 12 AWG, that of 2023 has 15 A and 20 A. The lower ones are used.",
)
RULES_FOR_BOATS = Rule[HasRuleSet](
    id="cable.rules-for-boats", level=Level.NOTE, when=lambda c: not c.by_nec, source="33cfr-table",
    text="33 CFR and ABYC are for boats: insulated stranded copper, 30 °C outside and 50 °C inside an engine space. There is no rule for vans that we may show; follow the vehicle's maker and local rules.",
)
BEYOND_ROWS = Rule[Cable](
    id="cable.beyond-rows", level=Level.NOTE, when=lambda c: c.beyond_rows, source="wire-mm2",
    text="The rules for boats end at 4/0 AWG (107 mm²), so {conductor} is rated as that. It can carry more: ask the cable's maker.",
)

ADVICE = (BUNDLE_BY_PRUDENCE, BELOW_TABLE, ONLY_IN_SHEATH, FACTOR_NOT_PRINTED, MAINS_SIDE)
