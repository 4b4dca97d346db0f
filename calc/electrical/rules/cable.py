"""Judgements on a conductor where it lies: hot air, bundles, thin wire, and what each rule set is."""

# fmt: off
from typing import Protocol

from calc.electrical.cable import ONE_CIRCUIT, Cable
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
    id="cable.only-in-sheath", level=Level.CAUTION, when=lambda c: c.only_in_sheath, source="33cfr-size",
    headline="Only with other conductors in a sheath: the wire holds {copper.area} of copper, and one on its own is 16 AWG (1.3 mm²) or thicker.",
    text="{copper.area} of copper is allowed only with other conductors in a sheath; a conductor on its own is 16 AWG (1.3 mm²) or thicker.",
    mend=thick_enough_alone,
)
BUNDLE_LEFT_OUT = Rule[Cable](
    id="cable.bundle-left-out", level=Level.ADVICE, when=lambda c: c.bundle_left_out, source="33cfr-notes",
    text="{bundled} loaded conductors together heat each other. This rule set counts that from 50 V on only, ABYC E-11 at any voltage: with its factor the wire bears {grouped_ampacity}.",
    mend=lambda c: Change({"bundled": ONE_CIRCUIT}),
)
FACTOR_NOT_PRINTED = Rule[Cable](
    id="cable.factor-not-printed", level=Level.ADVICE, when=beyond_print, source="nec-ambient",
    text="{rule_set} as we have it prints no factor for air of {air} with {insulation} insulation. The law behind NEC's factors stands in for it, which is our step: what the maker of the cable says of hot air comes first.",
)
MAINS_SIDE = Rule[HasRuleSet](
    id="cable.mains-side", level=Level.ADVICE, when=lambda c: c.by_nec, source="nec-310-16",
    text="NEC 310.16 is for mains wiring in buildings. Mains work belongs to a licensed person and to local rules.",
)
EDITIONS_DIFFER = Rule[HasRuleSet](
    id="cable.editions-differ", level=Level.NOTE, when=lambda c: c.by_nec and c.insulation == COOL_TERMINAL, source="nec-310-16",
    text="Editions differ at 60 °C: older ones print 20 A for 14 AWG and 25 A for 12 AWG, that of 2023 has 15 A and 20 A. The lower ones are taken.",
)
RULES_FOR_BOATS = Rule[HasRuleSet](
    id="cable.rules-for-boats", level=Level.NOTE, when=lambda c: not c.by_nec, source="33cfr-table",
    text="33 CFR and ABYC are for boats: insulated stranded copper, 30 °C outside and 50 °C inside an engine space. There is no van rule that we may show; the maker of the vehicle and local rules govern.",
)
BEYOND_ROWS = Rule[Cable](
    id="cable.beyond-rows", level=Level.NOTE, when=lambda c: c.beyond_rows, source="wire-mm2",
    text="No rule set here goes beyond 4/0 AWG (107 mm²), so {conductor} is read as that. It bears more; how much, the maker of the cable says.",
)

ADVICE = (BUNDLE_LEFT_OUT, FACTOR_NOT_PRINTED, MAINS_SIDE)
