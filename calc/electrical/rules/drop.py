"""Judgements on a run that carries a current: its drop, and whether its size can carry it at all."""

# fmt: off
from typing import Annotated

from calc.electrical.drop_limits import Duty, drop_limit, limit_text
from calc.electrical.easier_circuit import SHORTEST
from calc.electrical.protection import changed
from calc.electrical.rules.protection import FITS
from calc.electrical.run import LoadedRun, again
from calc.electrical.sizing import ALONE
from calc.electrical.wire_drop import WireDrop, thinnest_within
from calc.judge import Change, Level, Rule
from calc.units.compare import at_most
from calc.units.si import Celsius, Tag

# The constant of its drop formula, 10.75 ohm cmil/ft, is stranded copper at this: worked from NEC
# chapter 9 table 8, 12.9 at 75 °C
ABYC_COPPER: Annotated[Celsius, Tag("copper of ABYC's drop tables")] = 23.5

_HEAT_EACH_OTHER = "Cables in parallel that touch heat each other. With a gap of one cable width, each can carry as much as one alone."
_STRICT, _WIDEST = limit_text(Duty.CRITICAL), limit_text(Duty.OTHER)


def _over_limit(run: LoadedRun) -> bool:
    return run.flows and not run.within(run.limit)


def _beyond(run: LoadedRun, duty: Duty) -> bool:
    return run.flows and not run.within(drop_limit(duty))


def _beyond_any_limit(run: LoadedRun) -> bool:
    return not run.within(run.limit) and not run.within(drop_limit(Duty.OTHER))


def _too_hot(d: WireDrop) -> bool:
    return d.loaded.flows and not at_most(d.loaded.laid.run.temperature, d.protection.cable.insulation)


def _only_apart(d: WireDrop) -> bool:
    """Whether no fuse fits parallel conductors that touch, and one does where each lies apart."""
    on = d.protection
    if d.loaded.laid.run.parallel == 1 or on.chosen is not None or on.cable.bundled <= ALONE:
        return False
    return changed(on, Change({"bundled": ALONE})).chosen is not None


def _one_alone_too_thin_apart(d: WireDrop) -> bool:
    """Whether they are too thin to join, and one alone does not carry the load even apart."""
    apart = changed(d.protection, Change({"bundled": ALONE}))
    return d.loaded.laid.too_thin_to_join and not at_most(d.loaded.current, apart.highest)


def _smallest_is_too_thin(d: WireDrop) -> bool:
    return d.smallest is not None and not d.smallest.window_open


def _over_only_warm(r: LoadedRun) -> bool:
    """Over the limit, but not with the copper as cool as ABYC's drop tables take it."""
    if r.laid.run.from_maker or not _over_limit(r) or at_most(r.laid.run.temperature, ABYC_COPPER):
        return False
    return again(r, temperature=ABYC_COPPER).within(r.limit)


def conductor_within(run: LoadedRun, share: float) -> Change | None:
    """Return the thinnest conductor that loses at most `share`, or the run so short that it does.

    The latter where no size does, or where the resistance is the maker's of this very size.
    """
    name = None if run.laid.run.from_maker else thinnest_within(run, share)
    if name:
        return Change({"conductor": name})
    length = run.laid.run.length * share * run.voltage / (run.current * run.laid.resistance)
    return Change({"length": length}) if length >= SHORTEST else None


CANNOT_FLOW = Rule[LoadedRun](
    id="run.current-cannot-flow", level=Level.STOP, when=lambda r: not r.flows, source="ohm",
    headline="This run cannot carry {current}: even a dead short at the far end would pass only {short_circuit}.",
    mend=lambda r: conductor_within(r, r.limit),
)
BEYOND_ANY_LIMIT = Rule[LoadedRun](
    id="run.drop-beyond-any-limit", level=Level.STOP, when=_beyond_any_limit, source="abyc-drop",
    headline="Voltage drop {drop} ({drop_share}): over your {limit} limit and over every limit we list.",
    mend=lambda r: conductor_within(r, r.limit),
)
OVER_LIMIT = Rule[LoadedRun](
    id="run.drop-over-limit", level=Level.CAUTION, when=_over_limit, source="ohm",
    headline="Voltage drop {drop} ({drop_share}), over your {limit} limit: use a larger size or a shorter run.",
    mend=lambda r: conductor_within(r, r.limit),
)
BEYOND_USUAL_LIMIT = Rule[LoadedRun](
    id="run.drop-beyond-usual-limit", level=Level.CAUTION, when=lambda r: _beyond(r, Duty.OTHER) and not _over_limit(r), source="abyc-drop",
    headline="Check the load: voltage drop {drop} ({drop_share}) is within your {limit}, but over every limit we list.",
    mend=lambda r: conductor_within(r, drop_limit(Duty.OTHER)),
)
LAY_APART = Rule[WireDrop](
    id="run.lay-parallel-apart", level=Level.STOP, when=lambda d: _only_apart(d) and d.protection.overloaded, source="33cfr-notes",
    headline="Space the parallel cables apart: bundled, each can carry {protection.highest}, and its load is {protection.current}.",
    text=_HEAT_EACH_OTHER,
    mend=lambda _: Change({"bundled": ALONE}),
    covers=frozenset({rule.id for rule in FITS}),
)
BETTER_APART = Rule[WireDrop](
    id="run.parallel-better-apart", level=Level.CAUTION, when=lambda d: _only_apart(d) and not d.protection.overloaded, source="33cfr-notes",
    headline="Space the parallel cables apart: bundled, each can carry {protection.highest}, and its fuse is {protection.lowest} or more.",
    text=_HEAT_EACH_OTHER,
    mend=lambda d: None if _one_alone_too_thin_apart(d) else Change({"bundled": ALONE}),
    covers=frozenset({rule.id for rule in FITS}),
)
COPPER_TOO_HOT = Rule[WireDrop](
    id="run.copper-too-hot", level=Level.CAUTION, when=_too_hot, source="33cfr-table",
    headline="Copper at {loaded.laid.run.temperature} is hotter than its {protection.cable.insulation} insulation: find out why.",
    text="Insulation ages fast: copper at {loaded.laid.run.temperature} is hotter than its rating of {protection.cable.insulation}. Check the insulation, the lugs and the load.",
    mend=lambda d: Change({"temperature": d.protection.cable.insulation}),
)

CURRENT_DECIDES = Rule[WireDrop](
    id="run.current-decides", level=Level.ADVICE, when=_smallest_is_too_thin, source="33cfr-table",
    text="{smallest_conductor} is enough for the voltage drop, but can carry only {smallest_ampacity} here: see wire size.",
)
THICKER_OR_SHORTER = Rule[WireDrop](
    id="run.thicker-or-shorter", level=Level.ADVICE, source="ohm",
    when=lambda d: _over_limit(d.loaded) and d.smallest_conductor is not None and not _smallest_is_too_thin(d),
    text="{smallest_conductor} is the smallest size within {loaded.limit}. A higher system voltage helps too: at twice the voltage the same power loses a quarter of the share.",
    mend=lambda d: conductor_within(d.loaded, d.loaded.limit),
)
NO_SIZE_WITHIN_LIMIT = Rule[WireDrop](
    id="run.no-size-within-limit", level=Level.ADVICE, when=lambda d: d.smallest_conductor is None, source="ohm",
    text="No single size of this series keeps within {loaded.limit} here. Shorten the run, raise the system voltage, move the source nearer, or ask a specialist about parallel conductors.",
)
ONLY_PLAIN_LIGHTING = Rule[LoadedRun](
    id="run.only-plain-lighting", level=Level.ADVICE, source="abyc-drop",
    when=lambda r: _beyond(r, Duty.CRITICAL) and not _beyond(r, Duty.OTHER) and not _over_limit(r),
    text=f"For plain lighting and the like only: for feeders, chargers, pumps and electronics the limit is {_STRICT}.",
    mend=lambda r: None if r.laid.run.from_maker else conductor_within(r, drop_limit(Duty.CRITICAL)),
)

TWO_LIMITS = Rule[object](
    id="run.two-usual-limits", level=Level.NOTE, source="abyc-drop",
    text=f"{_STRICT}: panel feeders, electronics and anything safety depends on. {_WIDEST}: other lighting and circuits that are not critical. Practice for boats: there is no rule for vans.",
)
LIMITS_OF_LEISURE_VEHICLES = Rule[LoadedRun](
    id="run.limits-of-leisure-vehicles", level=Level.NOTE, source="en-1648",
    text="For 12 V leisure vehicles EN 1648-2 is quoted with 0.8 V for circuits in general and 0.2 V for the line to the second battery.",
)
CHARGERS_AND_INVERTERS = Rule[LoadedRun](
    id="run.what-chargers-and-inverters-see", level=Level.NOTE, source="practice",
    text="A charger reads the drop as a full battery: use its sense wire or a short, large cable. An inverter's low-voltage cut-off comes earlier by the same drop.",
)
WITHIN_WHEN_COOL = Rule[LoadedRun](
    id="run.within-when-cool", level=Level.ADVICE, when=_over_only_warm, source="abyc-drop",
    text=f"The copper is assumed at {{laid.run.temperature}}. ABYC E-11's drop tables assume about {ABYC_COPPER:g} °C, and there this run is within {{limit}}.",
)
JOINTS_LOSE_TOO = Rule[LoadedRun](
    id="run.joints-lose-too", level=Level.NOTE, source="practice",
    text="Joints, fuse holders and switches lose voltage too. Measure across each one under load; a hot one is loose or corroded.",
)
