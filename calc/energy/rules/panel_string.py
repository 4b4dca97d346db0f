"""Judgements on panels in strings: the regulator's limits, heat, fuses of strings, touch."""

# fmt: off
from typing import Annotated

from calc.electrical.fuses import COMMON
from calc.energy.panel_string import UNFUSED, Alike, PanelString
from calc.energy.panels import Regulator
from calc.energy.rules import panels
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most
from calc.units.si import Share, SharePerKelvin, Tag, Volts

# Less than any silicon of the published list loses, 0.23 to 0.40 %/K: our choice
LEAST_FALL: Annotated[SharePerKelvin, Tag("least open voltage that silicon loses by the degree")] = 0.002
# More than any of it loses: our choice
MOST_FALL: Annotated[SharePerKelvin, Tag("most open voltage that silicon loses by the degree")] = 0.005
# What panels have of their open-circuit voltage at best power, thin films too, at least: from memory
LEAST_VMP: Annotated[Share, Tag("least share of its open voltage that a panel has at best power")] = 0.70
# And at most: from memory
MOST_VMP: Annotated[Share, Tag("most share of its open voltage that a panel has at best power")] = 0.92
# A colder night than typed takes that; in frost pvlib's model of listed panels lies up to 3 % above the
# label's line. Common practice, no source
NEAR_LIMIT: Annotated[Share, Tag("share of a regulator's volts that leaves little room")] = 0.95
# In dry air bare parts up to here need no guard on direct current: IEC 60364-4-41, 414.4.5
TOUCH: Annotated[Volts, Tag("direct voltage that needs no guard against touch")] = 60.0
# Where extra-low voltage ends on direct current: IEC 61140
EXTRA_LOW: Annotated[Volts, Tag("highest extra-low direct voltage")] = 120.0


def _no_count_fits(s: PanelString) -> bool:
    """Return whether as many as may be in frost are too few to charge when hot."""
    needed = s.needed_series
    return needed is not None and needed > s.most_series >= 1


def _low(s: PanelString) -> bool:
    return s.low_when_hot and s.series < s.most_series


def _low_at_the_most(s: PanelString) -> bool:
    """Return whether it charges less when hot, and no more in series are allowed."""
    return s.low_when_hot and s.series == s.most_series


def _over(s: PanelString) -> bool:
    return s.over_input and s.most_series > 1


def _fewer(s: PanelString) -> Change | None:
    """Return the most panels in series that the regulator takes, if they still charge when hot."""
    needed = s.needed_series
    enough = needed is not None and s.most_series >= needed
    return Change({"series": s.most_series}) if enough else None


def _beside(s: PanelString) -> Change | None:
    """Return all panels beside each other, if one still charges when hot."""
    alone = _fewer(s)
    return Change({**alone.values, "parallel": s.series * s.parallel}) if alone else None


def _more(s: PanelString) -> Change | None:
    """Return the least panels in series that charge when hot, if the regulator takes them."""
    least = s.least_series
    fits = least is not None and least <= s.most_series
    return Change({"series": least}) if fits and least is not None else None


def _parallel(s: PanelString) -> bool:
    return s.parallel > UNFUSED


def _fuse_missing(s: PanelString) -> bool:
    return s.needs_fuses and s.string_fuse is None and s.fitting_fuse is not None


def _no_fuse_fits(s: PanelString) -> bool:
    return s.needs_fuses and s.string_fuse is None and s.fitting_fuse is None


def _above_label(s: PanelString) -> bool:
    most = s.label.series_fuse
    return s.string_fuse is not None and most is not None and not at_most(s.string_fuse, most)


def _below_string(s: PanelString) -> bool:
    return s.string_fuse is not None and not at_least(s.string_fuse, s.label.isc)


def _loaded_hard(s: PanelString) -> bool:
    return s.string_fuse is not None and not _below_string(s) and not at_least(s.string_fuse, s.least_fuse)


def _fitting(s: PanelString) -> Change | None:
    return None if s.fitting_fuse is None else Change({"string_fuse": s.fitting_fuse})


def _input_beyond(s: PanelString) -> bool:
    return s.limits.amps is not None and not at_most(s.array_isc, s.limits.amps)


def _unlikely(s: PanelString) -> bool:
    fall = s.label.voc_fall
    return fall is not None and not (at_least(fall, LEAST_FALL) and at_most(fall, MOST_FALL))


def _above(s: PanelString, volts: float) -> bool:
    return not at_most(s.cold_voc, volts)


_BREAKS = "Above its input limit a regulator fails, and may put the panels' voltage on the battery. It happens on the first clear frosty morning."
OVER_INPUT_LIMIT = Rule[PanelString](
    id="string.over-input-limit", level=Level.STOP, source="nec-690-7", when=_over,
    headline="Put no more than {most_series} in series: at {cold} the string reaches {cold_voc}, the regulator's limit is {limits.volts}.",
    text=_BREAKS,
    mend=_fewer,
)
NONE_IN_SERIES = Rule[PanelString](
    id="string.none-in-series", level=Level.STOP, source="nec-690-7", when=lambda s: s.over_input and s.most_series == 1,
    headline="Wire these panels in parallel only: {series} in series reach {cold_voc} at {cold}, over the regulator's {limits.volts}.",
    text=_BREAKS,
    mend=_beside,
)
ONE_OVER_INPUT_LIMIT = Rule[PanelString](
    id="string.one-panel-over-input-limit", level=Level.STOP, source="nec-690-7", when=lambda s: s.over_input and s.most_series < 1,
    headline="This panel does not suit this regulator: at {cold} one alone reaches {cold_panel}, and the limit is {limits.volts}.",
    text=_BREAKS,
)
BLOCKED_WHEN_HOT = Rule[PanelString](
    id="string.below-charge-when-hot", level=Level.STOP, source="panel-heat", when=lambda s: s.blocked_when_hot,
    headline="Put more panels in series: hot, the open string has only {hot_voc}, and charging needs {array.voltage}.",
    mend=_more,
    covers=frozenset({"string.low-when-hot", "string.low-at-the-most"}),
)
NO_COUNT_FITS = Rule[PanelString](
    id="string.no-count-fits", level=Level.STOP, source="panel-heat", when=_no_count_fits,
    headline="Use other panels or another regulator: charging needs {needed_series} in series, and its limit allows {most_series}.",
    text="Hot panels lose voltage, cold ones gain it: with fewer in series they do not charge, with more the regulator fails on a frosty morning.",
    covers=frozenset({
        "string.over-input-limit", "string.none-in-series", "string.below-charge-when-hot",
        "string.low-when-hot", "string.low-at-the-most", "panel.below-bank",
    }),
)
FUSES_MISSING = Rule[PanelString](
    id="strings.fuses-missing", level=Level.STOP, source="iec-62548", when=_fuse_missing,
    headline="Fuse each string with {fuse}: a faulty one gets {reverse_current} in reverse, its label allows {label.series_fuse}.",
    text="Fire risk: a fault in one string gets the current of all others. Fit a gPV string fuse in each.",
    mend=_fitting,
)
NO_FUSE_FITS = Rule[PanelString](
    id="strings.no-fuse-fits", level=Level.STOP, source="iec-62548", when=_no_fuse_fits,
    headline="Use two strings at most: a faulty one gets {reverse_current} in reverse, and no fuse up to {most_fuse} fits.",
    text="Fire risk: a fault in one string gets the current of all others. Ask the maker for the panel's largest allowed fuse.",
    mend=lambda s: Change({"parallel": UNFUSED}),
)
FUSE_ABOVE_LABEL = Rule[PanelString](
    id="strings.fuse-above-label", level=Level.STOP, source="iec-62548", when=_above_label,
    headline="Do not use {string_fuse} in a string: the panel's label allows {label.series_fuse} at most.",
    text="Fire risk: above the label's fuse a faulty panel can burn before the fuse opens.",
    mend=_fitting,
)
FUSE_BELOW_STRING = Rule[PanelString](
    id="strings.fuse-below-current", level=Level.STOP, source="iec-62548", when=_below_string,
    headline="Use a string fuse rated for at least {least_fuse}: {string_fuse} opens without a fault, because a string gives {label.isc}.",
    mend=_fitting,
)
LOW_WHEN_HOT = Rule[PanelString](
    id="string.low-when-hot", level=Level.CAUTION, source="panel-heat", when=_low,
    headline="Put more panels in series: at {heat.cell} the string gives {hot_vmp}, and the regulator needs {wanted}.",
    text="On the hottest days the voltage is too low, and the panels charge less or not at all.",
    mend=_more,
)
LOW_AT_THE_MOST = Rule[PanelString](
    id="string.low-at-the-most", level=Level.CAUTION, source="panel-heat", when=_low_at_the_most,
    headline="Expect less when hot: {hot_vmp} of the {wanted} needed, and no more fit in series.",
    text="The regulator's limit allows {most_series} in series. Panels with more cells, or a regulator with a higher voltage limit, charge on such days as well.",
)
LIMIT_NOT_KNOWN = Rule[PanelString](
    id="strings.limit-not-known", level=Level.CAUTION, source="iec-62548", when=lambda s: _parallel(s) and s.label.series_fuse is None,
    headline="Check the panel's maximum series fuse: a faulty string gets {reverse_current} in reverse from the others.",
)
FUSE_LOADED_HARD = Rule[PanelString](
    id="strings.fuse-loaded-hard", level=Level.CAUTION, source="iec-62548", when=_loaded_hard,
    headline="Use a string fuse rated for at least {least_fuse}: {string_fuse} ages in bright light and opens.",
    mend=_fitting,
)
INPUT_CURRENT = Rule[PanelString](
    id="string.input-current-over-limit", level=Level.CAUTION, source="practice", when=_input_beyond,
    headline="Ask the regulator's maker: the panels' short-circuit current is {array_isc}, its input is rated {limits.amps}.",
    text="Some regulators only limit, others are damaged by panels above their rated short-circuit current, above all with reversed polarity.",
)
UNLIKE_PANELS = Rule[PanelString](
    id="string.unlike-panels", level=Level.CAUTION, source="practice", when=lambda s: s.alike is Alike.MIXED and s.series * s.parallel > 1,
    headline="Put like panels together: in series the lowest current limits all, in parallel the lowest voltage.",
    text="In series only panels of one current, in parallel only strings of one voltage. Give the odd panel a regulator of its own.",
    mend=lambda s: Change({"alike": Alike.ALIKE}),
)
LABEL_DISAGREES = Rule[PanelString](
    id="string.label-disagrees", level=Level.CAUTION, source="panel-rating", when=lambda s: not s.label.agrees,
    headline="Check the label: at maximum power, voltage and current are below open-circuit voltage and short-circuit current.",
)
LABEL_UNLIKELY = Rule[PanelString](
    id="string.label-unlikely", level=Level.CAUTION, source="memory",
    when=lambda s: s.label.agrees and not (at_least(s.label.vmp_share, LEAST_VMP) and at_most(s.label.vmp_share, MOST_VMP)),
    headline="Type all values of the panel's label: {label.vmp} at maximum power is {label.vmp_share} of {label.voc}. 70 to 92 % is usual.",
)
COEFFICIENT_UNLIKELY = Rule[PanelString](
    id="string.coefficient-unlikely", level=Level.CAUTION, source="panel-coefficients", when=_unlikely,
    headline="Check the coefficient: silicon loses 0.23 to 0.40 % of its open-circuit voltage per degree.",
)

ABOVE_TOUCH = Rule[PanelString](
    id="string.above-touch-limit", level=Level.ADVICE, source="elv-dc", when=lambda s: _above(s, TOUCH) and not _above(s, EXTRA_LOW),
    text="Shock risk: the string reaches {cold_voc}. Up to 60 V d.c. counts as safe on dry skin, by some rules 50 V. Insulate every end and cover the panels.",
)
ABOVE_EXTRA_LOW = Rule[PanelString](
    id="string.above-extra-low", level=Level.ADVICE, source="elv-dc", when=lambda s: _above(s, EXTRA_LOW),
    text="Shock risk: {cold_voc} is above extra-low voltage, which ends at 120 V d.c. It can kill and is work for a licensed person.",
)
RATED_FOR_VOLTS = Rule[PanelString](
    id="string.parts-rated-for-its-volts", level=Level.ADVICE, source="iec-62548", when=lambda s: _above(s, COMMON),
    text="Plugs, switch and fuses on the panels' side need a d.c. rating above {cold_voc}. A vehicle's fuse of 32 V can hold an arc there.",
)
NEAR_INPUT_LIMIT = Rule[PanelString](
    id="string.near-input-limit", level=Level.ADVICE, source="practice",
    when=lambda s: not s.over_input and not at_most(s.cold_voc, NEAR_LIMIT * s.limits.volts),
    text="Little room is left below the regulator's {limits.volts}: a colder night, or a panel a few percent above its label, exceeds it.",
)
BATTERY_FIRST = Rule[PanelString](
    id="regulator.battery-first", level=Level.ADVICE, source="practice",
    text="Connect the battery to the regulator before the panels, and disconnect the panels first. Without a battery many regulators choose a wrong voltage or fail.",
)
COLD_BY_TABLE = Rule[PanelString](
    id="string.cold-by-table", level=Level.NOTE, source="nec-690-7", when=lambda s: s.by_table,
    text="No coefficient is typed, so NEC's table 690.7(A) gives the factor. It is for crystalline silicon and a little higher than most labels.",
)
NEC_ASKS_MORE = Rule[PanelString](
    id="string.nec-asks-a-quarter-more", level=Level.NOTE, source="nec-690-8",
    text="The panels' cable carries {max_current} in bright light: IEC 62548 and NEC 690.8(A). NEC 690.8(B) multiplies by 1.25 for continuous current: {nec_current}.",
)
TWO_NEED_NONE = Rule[PanelString](
    id="strings.two-need-no-fuses", level=Level.NOTE, source="iec-62548", when=lambda s: s.parallel == UNFUSED,
    text="Two strings need no fuses: one with a fault gets {reverse_current} from the other, and panels are tested for that.",
)
FUSES_NOT_NEEDED = Rule[PanelString](
    id="strings.fuses-not-needed", level=Level.NOTE, source="iec-62548",
    when=lambda s: _parallel(s) and s.label.series_fuse is not None and not s.needs_fuses,
    text="No string fuses are needed: one with a fault gets {reverse_current} in reverse, and its label allows {label.series_fuse}.",
)
PLAIN_SWITCH = Rule[PanelString](
    id="regulator.plain-switch", level=Level.NOTE, source="practice", when=lambda s: s.array.regulator is Regulator.PWM,
    text="PWM joins panels and battery directly: the panels' amps go in, volts above the battery's are lost. MPPT converts them into amps.",
)

JUDGING = (
    OVER_INPUT_LIMIT, NONE_IN_SERIES, ONE_OVER_INPUT_LIMIT, NO_COUNT_FITS, panels.PANEL_BELOW_BANK, BLOCKED_WHEN_HOT,
    FUSE_ABOVE_LABEL, FUSES_MISSING, NO_FUSE_FITS, FUSE_BELOW_STRING,
    LABEL_DISAGREES, LABEL_UNLIKELY, COEFFICIENT_UNLIKELY, LOW_WHEN_HOT, LOW_AT_THE_MOST, panels.PANEL_NEAR_BANK, panels.SWITCH_WASTES,
    LIMIT_NOT_KNOWN, FUSE_LOADED_HARD, UNLIKE_PANELS, INPUT_CURRENT, panels.REGULATOR_TOO_SMALL,
)
