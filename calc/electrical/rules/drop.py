"""Judgements on a run that carries a current: its drop, and whether its size can carry it at all."""

# fmt: off
from calc.electrical.ampacity import ampacity_of_run
from calc.electrical.cable import USUAL_INSULATION
from calc.electrical.conductors import series_of
from calc.electrical.drop_limits import Duty, drop_limit, limit_text
from calc.electrical.easier_circuit import SHORTEST
from calc.electrical.run import LoadedRun
from calc.electrical.wire_drop import WireDrop, thinnest_within
from calc.judge import Change, Level, Rule
from calc.judge.remedies import smallest_change
from calc.units.compare import at_most

_STRICT, _WIDEST = limit_text(Duty.CRITICAL), limit_text(Duty.OTHER)


def _over_limit(run: LoadedRun) -> bool:
    return run.flows and not run.within(run.limit)


def _beyond(run: LoadedRun, duty: Duty) -> bool:
    return run.flows and not run.within(drop_limit(duty))


def _over_ampacity(d: WireDrop) -> bool:
    return not at_most(d.loaded.current, d.ampacity.at_105)


def _over_cool_ampacity(d: WireDrop) -> bool:
    return not at_most(d.loaded.current, d.ampacity.at_60)


def _hot_only(d: WireDrop) -> bool:
    return _over_cool_ampacity(d) and not _over_ampacity(d)


def _too_hot(d: WireDrop) -> bool:
    return d.loaded.flows and not at_most(d.loaded.laid.run.temperature, USUAL_INSULATION)


def _smallest_is_too_thin(d: WireDrop) -> bool:
    most = d.smallest_ampacity
    return most is not None and not at_most(d.loaded.current, most)


def conductor_within(run: LoadedRun, share: float) -> Change | None:
    """Return the thinnest conductor that loses at most `share`, or the run so short that it does.

    The latter where no size does, or where the resistance is the maker's of this very size.
    """
    name = None if run.laid.run.from_maker else thinnest_within(run, share)
    if name:
        return Change({"conductor": name})
    length = run.laid.run.length * share * run.voltage / (run.current * run.laid.resistance)
    return Change({"length": length}) if length >= SHORTEST else None


def conductor_that_carries(d: WireDrop) -> Change | None:
    """Return the thinnest conductor that carries the current with any insulation, if one does."""
    run, laid = d.loaded, d.loaded.laid.run
    there = series_of(laid.conductor)
    thicker = (one.name for one in there if one.area > d.loaded.laid.copper.named_area)

    def carries(name: str) -> bool | None:
        found = ampacity_of_run(name, parallel=laid.parallel, gauge_reading=laid.gauge_reading)
        return (at_most(run.current, found.at_60) and not found.below_table) or None

    found = smallest_change(thicker, carries)
    return Change({"conductor": found.change}) if found else None


CANNOT_FLOW = Rule[LoadedRun](
    id="run.current-cannot-flow", level=Level.STOP, when=lambda r: not r.flows, source="ohm",
    headline="This run cannot carry {current}: even a dead short at the far end would pass only {short_circuit}.",
    mend=lambda r: conductor_within(r, r.limit),
)
OVER_AMPACITY = Rule[WireDrop](
    id="run.over-ampacity", level=Level.STOP, when=lambda d: _over_ampacity(d) and not d.ampacity.below_table, source="33cfr-table",
    headline="{loaded.drop} lost ({loaded.drop_share}), and {loaded.laid.run.designation} is too thin for {loaded.current} whatever the drop.",
    text="Risk of fire: {loaded.laid.run.designation} bears at most {ampacity.at_105} even with 105 °C insulation, at 30 °C. Take a thicker size; the drop is not what decides here.",
    mend=conductor_that_carries,
)
OVER_AMPACITY_BELOW_TABLE = Rule[WireDrop](
    id="run.over-ampacity-below-table", level=Level.STOP, when=lambda d: _over_ampacity(d) and d.ampacity.below_table, source="33cfr-table",
    headline="{loaded.drop} lost ({loaded.drop_share}), and {loaded.laid.run.designation} is too thin for {loaded.current} whatever the drop.",
    text="Risk of fire: the published limits of current begin at 18 AWG (0.82 mm²). By its share of that copper (our step, common practice) {loaded.laid.run.designation} bears at most {ampacity.at_105} even with 105 °C insulation, at 30 °C. Take a thicker size.",
    mend=conductor_that_carries,
)
BEYOND_ANY_LIMIT = Rule[LoadedRun](
    id="run.drop-beyond-any-limit", level=Level.STOP, when=lambda r: _over_limit(r) and _beyond(r, Duty.OTHER), source="abyc-drop",
    headline="{drop} lost, {drop_share} of the supply: beyond your {limit} and beyond any usual limit.",
    mend=lambda r: conductor_within(r, r.limit),
)
OVER_LIMIT = Rule[LoadedRun](
    id="run.drop-over-limit", level=Level.CAUTION, when=_over_limit, source="ohm",
    headline="{drop} lost, {drop_share} of the supply: more than the {limit} you allow.",
    mend=lambda r: conductor_within(r, r.limit),
)
BEYOND_USUAL_LIMIT = Rule[LoadedRun](
    id="run.drop-beyond-usual-limit", level=Level.CAUTION, when=lambda r: _beyond(r, Duty.OTHER) and not _over_limit(r), source="abyc-drop",
    headline="{drop} lost, {drop_share} of the supply: within the {limit} you allow, but beyond any usual limit.",
    mend=lambda r: conductor_within(r, drop_limit(Duty.OTHER)),
)
NEEDS_HOT_INSULATION = Rule[WireDrop](
    id="run.needs-hot-insulation", level=Level.CAUTION, when=lambda d: _hot_only(d) and not d.ampacity.below_table, source="33cfr-table",
    headline="{loaded.drop} lost, {loaded.drop_share} of the supply: within the {loaded.limit} you allow, but too much current for this wire unless its insulation is rated for heat.",
    text="Only if 105 °C is printed on the cable: {loaded.laid.run.designation} bears {ampacity.at_105} with it, and {ampacity.at_60} with 60 °C insulation. See fuse choice for what lies between.",
    mend=conductor_that_carries,
)
NEEDS_HOT_INSULATION_BELOW_TABLE = Rule[WireDrop](
    id="run.needs-hot-insulation-below-table", level=Level.CAUTION, when=lambda d: _hot_only(d) and d.ampacity.below_table, source="33cfr-table",
    headline="{loaded.drop} lost, {loaded.drop_share} of the supply: within the {loaded.limit} you allow, but too much current for this wire unless its insulation is rated for heat.",
    mend=conductor_that_carries,
)
COPPER_TOO_HOT = Rule[WireDrop](
    id="run.copper-too-hot", level=Level.CAUTION, when=_too_hot, source="33cfr-table",
    headline="{loaded.drop} lost, {loaded.drop_share} of the supply: within the {loaded.limit} you allow, but copper at {loaded.laid.run.temperature} is too hot for nearly all cable.",
    text="{loaded.laid.run.temperature} is hotter than 105 °C, the most that cable on sale for vehicles and boats is usually rated for. Check the insulation, the lugs and why the copper is so hot; its current was not held to a limit at that heat.",
    mend=lambda d: Change({"temperature": USUAL_INSULATION}),
)
NO_PUBLISHED_AMPACITY = Rule[WireDrop](
    id="run.no-published-ampacity", level=Level.CAUTION, when=lambda d: d.ampacity.below_table and not _over_ampacity(d), source="33cfr-table",
    headline="{loaded.drop} lost, {loaded.drop_share} of the supply: within the {loaded.limit} you allow, but no published limit of current covers so thin a wire.",
    text="The published limits of current begin at 18 AWG (0.82 mm²). By its share of that copper (our step, common practice) {loaded.laid.run.designation} bears {ampacity.at_105} with 105 °C insulation and {ampacity.at_60} with 60 °C. The maker's figure comes first.",
    mend=conductor_that_carries,
)
ONE_ALONE_TOO_THIN = Rule[WireDrop](
    id="run.one-alone-too-thin", level=Level.CAUTION, source="nec-parallel",
    when=lambda d: d.ampacity.parallel > 1 and not at_most(d.loaded.current, d.ampacity.one_at_60),
    headline="{loaded.drop} lost, {loaded.drop_share} of the supply: within the {loaded.limit} you allow, but one conductor alone does not bear {loaded.current}, so all rests on an even share.",
)

CURRENT_DECIDES = Rule[WireDrop](
    id="run.current-decides", level=Level.ADVICE, when=_smallest_is_too_thin, source="33cfr-table",
    text="For the drop alone {smallest_conductor} would do, but it bears at most {smallest_ampacity}: the current decides. See fuse choice.",
)
THICKER_OR_SHORTER = Rule[WireDrop](
    id="run.thicker-or-shorter", level=Level.ADVICE, source="ohm",
    when=lambda d: _over_limit(d.loaded) and d.smallest_conductor is not None and not _smallest_is_too_thin(d),
    text="{smallest_conductor} keeps within {loaded.limit}; or shorten the run to {longest_run} one way, or raise the system voltage.",
    mend=lambda d: conductor_within(d.loaded, d.loaded.limit),
)
NO_SIZE_WITHIN_LIMIT = Rule[WireDrop](
    id="run.no-size-within-limit", level=Level.ADVICE, when=lambda d: d.smallest_conductor is None, source="ohm",
    text="No size of this series keeps within {loaded.limit} here. Shorten the run, raise the system voltage, move the source nearer, or ask a specialist about parallel conductors.",
)
ONLY_PLAIN_LIGHTING = Rule[LoadedRun](
    id="run.only-plain-lighting", level=Level.ADVICE, source="abyc-drop",
    when=lambda r: _beyond(r, Duty.CRITICAL) and not _beyond(r, Duty.OTHER) and not _over_limit(r),
    text=f"Fit for plain lighting and the like only: feeders, chargers, pumps and electronics are held to {_STRICT}.",
    mend=lambda r: conductor_within(r, drop_limit(Duty.CRITICAL)),
)

TWO_LIMITS = Rule[object](
    id="run.two-usual-limits", level=Level.NOTE, source="abyc-drop",
    text=f"{_STRICT}: panel feeders, electronics and whatever safety hangs on. {_WIDEST}: other lighting and circuits that are not critical. Boat practice, used for want of a van rule.",
)
LIMITS_OF_LEISURE_VEHICLES = Rule[LoadedRun](
    id="run.limits-of-leisure-vehicles", level=Level.NOTE, source="en-1648",
    text="For 12 V leisure vehicles EN 1648-2 is quoted with 0.8 V for circuits in general and 0.2 V for the line to the second battery.",
)
CHARGERS_AND_INVERTERS = Rule[LoadedRun](
    id="run.what-chargers-and-inverters-see", level=Level.NOTE, source="practice",
    text="A charger sees the drop as a full battery: its sense wire or a short thick cable cures that. An inverter's low-voltage cut-out comes sooner by as much as is lost.",
)
JOINTS_LOSE_TOO = Rule[LoadedRun](
    id="run.joints-lose-too", level=Level.NOTE, source="practice",
    text="Joints, fuse holders and switches lose voltage too. Measure across each one under load; a hot one is loose or corroded.",
)
HELD_TO_TABLE = Rule[WireDrop](
    id="run.held-to-table-ampacity", level=Level.NOTE, when=lambda d: not _over_cool_ampacity(d), source="33cfr-table",
    text="The current was held to what {loaded.laid.run.designation} bears with 60 °C insulation, in air of 30 °C and with no more than two conductors together: {ampacity.at_60}. Hotter air and bundles leave less: fuse choice counts them.",
)
