"""Judgements on the bank of a van as a whole: its batteries, its sources together, its cut-offs."""

from __future__ import annotations

# fmt: off
from collections.abc import Iterator
from math import ceil

from calc.judge import Level
from calc.units.compare import at_least, at_most
from calc.van.facts import Counting, Regulator, counting, regulators
from calc.van.facts_bank import Charging, House, Isolator, charging, houses, isolators
from calc.van.judging import Asked, Mend, VanRule

MAIN_FUSES = ("250 A", "200 A", "150 A", "100 A", "60 A")  # standard ratings of class T


def _one(text: str, **values: str) -> list[Mend]:
    return [Mend(text=text, changes=dict(values))]


def _alike(h: House) -> Iterator[Mend]:
    if h.other_batteries:
        yield Mend(text="Keep one kind of battery in the bank.", removes=h.other_batteries)


def _over_alone(h: House) -> bool:
    return h.charge_limit is not None and not at_most(h.strongest, h.charge_limit)


def _over_together(h: House) -> bool:
    return h.charge_limit is not None and not _over_alone(h) and not at_most(h.together, h.charge_limit)


def _turned_down(h: House) -> Iterator[Mend]:
    return _lowered(h, h.charge_limit or 0.0)


def _turned_down_to_usual(h: House) -> Iterator[Mend]:
    return _lowered(h, h.usual_most or 0.0)


def _lowered(h: House, limit: float) -> Iterator[Mend]:
    """Yield each source set to its share of a limit [A], in whole amps."""
    most = max(h.together, h.strongest)
    share = limit / most if most else 0.0
    changes = {place: f"{int(share * current)} A" for place, current in h.outputs if int(share * current)}
    if changes:
        yield Mend(text="Set each charger lower, so that all together stay within the bank's limit.", changes=changes)


def _main_fuse(h: House) -> Iterator[Mend]:
    """Yield main fuses, the largest first: the first that suits the cables behind it is enough."""
    for rating in MAIN_FUSES:
        changes = {f"{h.first_battery}.fuse": rating, f"{h.first_battery}.fuse_family": "cartridge, class T"}
        yield Mend(text=f"Fit a main fuse of {rating}, class T, at the bank's plus.", changes=changes)


def _isolator(h: House) -> Iterator[Mend]:
    texts = {"name": "main isolator", "kind": "isolator", "rating": "300 A", "rated_voltage": "60 V", "reach": "yes", "stays_live": "panels and alternator"}
    line = {"in_line": h.main_line} if h.main_line else {}
    yield Mend(text="Fit a main isolator in reach, in the line of the main cable.", adds=(("isolators", {**texts, **line}),))


MIXED = VanRule[House](
    id="van.mixed-chemistries", level=Level.STOP, when=lambda h: len(h.chemistries) > 1, source="practice",
    headline="Separate the batteries: different chemistries in parallel over- and undercharge one another.",
    text="Fire: in parallel one voltage charges all. What fills one kind overcharges another, and the currents between them are not limited.",
    mends=_alike,
)
UNLIKE = VanRule[House](
    id="van.unlike-batteries", level=Level.CAUTION, when=lambda h: len(h.chemistries) == 1 and len(h.capacities) > 1, source="practice",
    headline="Use batteries of one size and age: unequal ones in parallel share the current badly.",
    mends=_alike,
)
NOT_MATCHED = VanRule[House](
    id="van.batteries-not-matched", level=Level.CAUTION, when=lambda h: h.batteries > 1 and h.matched == "no", source="practice", key="matched",
    headline="Charge each battery full separately before you join them: a voltage difference drives hundreds of amps.",
    mends=lambda h: _one("Charge each battery full separately, then join them.", **{f"{h.at}.matched": "yes"}),
)
ONE_END = VanRule[House](
    id="van.bank-taken-off-at-one-end", level=Level.CAUTION, when=lambda h: h.batteries > 1 and h.take_off == "one-end", source="practice", key="take_off",
    headline="Take plus and minus off diagonally: at one end the first battery does most of the work.",
    mends=lambda h: _one("Take plus off the first battery and minus off the last.", **{f"{h.at}.take_off": "diagonally"}),
)
NO_MAIN_FUSE = VanRule[House](
    id="van.no-main-fuse", level=Level.STOP, when=lambda h: h.main_fuse is False, source="practice",
    headline="Fit a main fuse at the bank's plus: without one a short on any cable burns.",
    text="Fire: a bank gives thousands of amps into a short. The main fuse belongs at the bank, before anything can chafe.",
    mends=_main_fuse,
)
NO_ISOLATOR = VanRule[House](
    id="van.no-main-isolator", level=Level.CAUTION, when=lambda h: h.isolator is False, source="practice",
    headline="Fit a main isolator within reach: nobody can cut the bank off in a fire or for work.",
    mends=_isolator,
)
OVER_LIMIT = VanRule[House](
    id="van.charger-over-bank-limit", level=Level.STOP, when=_over_alone, source="practice",
    headline="Set the chargers lower: {strongest} from one alone is over the bank's limit of {charge_limit}.",
    mends=_turned_down,
)
TOGETHER_OVER_LIMIT = VanRule[House](
    id="van.sources-over-bank-limit", level=Level.STOP, when=lambda h: _over_together(h) and h.stop_signal in ("no", "none"), source="practice",
    headline="Set the chargers lower: together {together}, over the {charge_limit} at which the bank cuts off.",
    text="When the battery cuts off while charging, alternator and regulators lose their battery and their voltage jumps.",
    mends=_turned_down,
)
TOGETHER_STOPPED_BY_SIGNAL = VanRule[House](
    id="van.sources-stopped-by-signal", level=Level.CAUTION, when=lambda h: _over_together(h) and h.stop_signal not in ("no", "none"), source="practice",
    headline="Set the chargers lower: together {together}, and the bank allows {charge_limit}.",
    mends=_turned_down,
)
TOGETHER_TOO_STRONG = VanRule[House](
    id="van.sources-too-strong-together", level=Level.CAUTION, source="bulk-most",
    when=lambda h: h.usual_most is not None and not _over_alone(h) and not _over_together(h) and not at_most(h.together, h.usual_most),
    headline="Set the chargers by the data sheet: together {together}, and {usual_most} is usual for such a bank.",
    mends=_turned_down_to_usual,
    covers=frozenset({"charge.too-much-current", "week.charger-too-strong"}),
)
FROST = VanRule[House](
    id="van.charged-in-frost", level=Level.STOP, source="lfp-frost", key="coldest",
    when=lambda h: h.lithium and h.charged and h.freezes and h.cold_cut_off == "not-proven",
    headline="Do not charge in frost: the bank gets as cold as {coldest}, and its cold cut-off is not proven.",
    text="Charging LFP below 0 °C ruins it permanently. Keep it warm, or fit a cold cut-off that is proven by test.",
    mends=lambda h: _one("Move the bank where it stays above 5 °C, or heat it.", **{f"{h.at}.coldest": "6 °C"}),
    covers=frozenset({"charge.in-frost"}),
)
OPENS_LAST = VanRule[Isolator](
    id="van.isolator-opens-running-alternator", level=Level.STOP, when=lambda i: i.opens_last and i.kind == "breaker", source="practice",
    headline="Move {part}: if it trips with the engine running, the alternator has no battery and its voltage jumps.",
    text="An alternator that loses its last battery at speed gives tens of volts for a moment, which destroys electronics.",
)
OPENED_LAST = VanRule[Isolator](
    id="van.isolator-of-starter-battery", level=Level.CAUTION, when=lambda i: i.opens_last and i.kind == "isolator", source="practice",
    headline="Mark {part}: never open it with the engine running, because the alternator loses its battery.",
)
MAY_OPEN_LAST = VanRule[Isolator](
    id="van.isolator-may-open-last-battery", level=Level.CAUTION, when=lambda i: i.may_open_last, source="practice",
    headline="Check whether the running alternator still has a battery with {part} open: no starter battery is recorded.",
    text="An alternator that loses its last battery at speed gives tens of volts for a moment, which destroys electronics.",
)
TOO_SMALL = VanRule[Isolator](
    id="van.isolator-too-small", level=Level.STOP, source="practice", key="rating",
    when=lambda i: i.rating is not None and i.line is not None and not at_least(i.rating, i.line),
    headline="Use a larger isolator: {part} is rated {rating}, and its line carries {line}.",
    mends=lambda i: _one("Fit an isolator rated for its fuse.", **{f"{i.at}.rating": f"{max(i.line or 0, i.line_fuse or 0):.0f} A"}),
)
BELOW_FUSE = VanRule[Isolator](
    id="van.isolator-below-its-fuse", level=Level.CAUTION, source="practice", key="rating",
    when=lambda i: i.kind == "isolator" and i.rating is not None and i.line_fuse is not None and at_least(i.rating, i.line or 0) and not at_least(i.rating, i.line_fuse),
    headline="Use a larger isolator or a smaller fuse: {part} is rated {rating}, its fuse {line_fuse}.",
    mends=lambda i: _one("Fit an isolator rated for its fuse.", **{f"{i.at}.rating": f"{i.line_fuse or 0:.0f} A"}),
)
VOLTAGE = VanRule[Isolator](
    id="van.isolator-voltage-too-low", level=Level.STOP, source="practice", key="rated_voltage",
    when=lambda i: i.rated_voltage is not None and i.highest is not None and not at_least(i.rated_voltage, i.highest),
    headline="Use an isolator for {needed} d.c.: {part} is rated {rated_voltage}.",
    text="Fire: above its d.c. rating an isolator draws an arc that may not go out.",
    mends=lambda i: _one("Fit an isolator for the direct voltage of its line.", **{f"{i.at}.rated_voltage": f"{ceil(i.needed)} V"}),
)
VOLTAGE_WHEN_CHARGING = VanRule[Isolator](
    id="van.isolator-below-charging-voltage", level=Level.CAUTION, source="practice", key="rated_voltage",
    when=lambda i: i.rated_voltage is not None and i.charging is not None and i.highest is not None
    and at_least(i.rated_voltage, i.highest) and not at_least(i.rated_voltage, i.charging),
    headline="Use an isolator for {charging} d.c.: while charging, the bank is above the {rated_voltage} of {part}.",
    text="Fire: above its d.c. rating an isolator draws an arc that may not go out.",
    mends=lambda i: _one("Fit an isolator for the charging voltage.", **{f"{i.at}.rated_voltage": f"{ceil(i.needed)} V"}),
)
OUT_OF_REACH = VanRule[Isolator](
    id="van.isolator-out-of-reach", level=Level.CAUTION, when=lambda i: i.reach == "no", source="practice", key="reach",
    headline="Move {part} within reach: in a fire nobody removes a panel first.",
    mends=lambda i: _one("Move it where a hand reaches it without tools.", **{f"{i.at}.reach": "yes"}),
)
UNREGULATED = VanRule[Charging](
    id="van.unregulated-alternator", level=Level.CAUTION, when=lambda c: c.method == "relay", source="practice", key="method",
    headline="Fit a battery-to-battery charger: a relay limits neither the current nor the voltage of the alternator.",
    text="Fire and wear: with a relay the current is the voltage difference divided by a few milliohms. A charger limits it, and fills the bank.",
    mends=lambda c: [Mend(text="Fit a battery-to-battery charger in place of the relay, with a fuse at both ends of its run.",
                          changes={f"{c.at}.{key}": text for key, text in c.charger_texts})],
    covers=frozenset({"relay.bounds-nothing", "relay.check-its-rating", "alternator.relay-over-hot", "alternator.hot-too-small", "relay.no-rise"}),
)
PANELS_FIRST = VanRule[Regulator](
    id="van.panels-before-battery", level=Level.CAUTION, when=lambda r: r.panels_first == "no" and r.isolated == "no", source="practice", key="panels_first",
    headline="Fit an isolator between panels and {part}: connected before the battery the panels can destroy it.",
    mends=lambda r: _one("Fit an isolator between panels and regulator, and open it before the battery is taken off.", **{f"{r.panels_at}.isolator": "yes"}),
)


def _monitor(c: Counting) -> Iterator[Mend]:
    """Yield a counting monitor with its shunt, where there is none."""
    shunt = (("shunt", dict(c.shunt_texts)),) if not c.shunt_at else ()
    says = "Fit a battery monitor that counts, with its shunt in the main minus and all negatives behind it."
    if c.monitor_at:
        yield Mend(text=says, changes={f"{c.monitor_at}.monitor": "counts", f"{c.monitor_at}.in_view": "yes"}, adds=shunt)
    else:
        yield Mend(text=says, adds=(("monitor", {"monitor": "counts", "in_view": "yes"}), *shunt))


NO_MONITOR = VanRule[Counting](
    id="van.no-counting-monitor", level=Level.NOTE, when=lambda c: c.monitor == "no-monitor", source="practice", key="monitor",
    headline="Consider a battery monitor that counts: voltage alone does not show how much is left.",
    mends=_monitor,
)
BYPASSED = VanRule[Counting](
    id="van.shunt-bypassed", level=Level.CAUTION, when=lambda c: bool(c.bypassed_by), source="practice",
    headline="Move these negatives behind the shunt: {bypassed_by}. The monitor does not count them.",
    mends=lambda c: _one("Move the negatives to the load side of the shunt.", **{f"{c.shunt_at}.bypassed_by": "none"}),
)

OF_HOUSE = (MIXED, UNLIKE, NOT_MATCHED, ONE_END, NO_MAIN_FUSE, NO_ISOLATOR, OVER_LIMIT, TOGETHER_OVER_LIMIT, TOGETHER_STOPPED_BY_SIGNAL, TOGETHER_TOO_STRONG, FROST)
OF_ISOLATORS = (OPENS_LAST, OPENED_LAST, MAY_OPEN_LAST, TOO_SMALL, BELOW_FUSE, VOLTAGE, VOLTAGE_WHEN_CHARGING, OUT_OF_REACH)
ASKED = (
    Asked(houses, OF_HOUSE), Asked(isolators, OF_ISOLATORS), Asked(charging, (UNREGULATED,)),
    Asked(regulators, (PANELS_FIRST,)), Asked(counting, (NO_MONITOR, BYPASSED)),
)
