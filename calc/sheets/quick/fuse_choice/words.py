"""The working of fuse-choice in words, its families and remedies, and what it says when all is well."""

# fmt: off
from collections.abc import Callable

from calc.electrical.ampacity import RuleSet
from calc.electrical.fuse_order import Candidate
from calc.electrical.fuse_site import FuseSite
from calc.electrical.protection import Protection
from calc.judge import Change, Level, Rule
from calc.judge.remedies import Remedy
from calc.sheets.parts.wire import ampacity_steps, steps_to_warmth
from calc.sheets.quick.fuse_choice.calculate import FuseChoice
from calc.units.kinds import CURRENT
from calc.units.shown import quantity_text
from calc.worksheet.declare import Step, placed_steps

MOST_WEIGHED = 6  # lines of what was weighed


def _behind(site: FuseSite) -> bool:
    return site.behind_main


_SITE: tuple[Step[FuseSite], ...] = (
    Step(of="bank_source", formula="voltage / fault_current", source="ohm", when=_behind, text="The bank's internal resistance in a short."),
    Step(of="feed_stated", source="copper-iacs", when=_behind, text="{feed_conductor} of solid annealed copper at 20 °C: no cable of that size has less resistance."),
    Step(of="feed_least", formula="2 * feed_length * feed_stated", source="ohm", when=_behind, text="Out and back."),
    Step(of="feed_parts", source="practice", when=_behind, text="The main fuse, its holder and some ten joints, new and clean."),
    Step(of="fault_here", formula="voltage / (bank_source + feed_least + feed_parts)", source="ohm", when=_behind, text="A dead short behind the fuse, calculated as on fault current."),
    Step(of="fault_here", formula="fault_current", when=lambda s: s.at_battery, text="At the battery only the bank itself limits the current."),
    Step(of="fault_here", formula="fault_current", when=lambda s: not (s.at_battery or s.behind_main), text="As you typed it for this place."),
)
def _fed_by(rules: RuleSet) -> Callable[[FuseChoice], bool]:
    return lambda c: c.feed_load is not None and c.feed_load.ampacity is not None and c.protection.cable.rule_set is rules


_FEED: tuple[Step[FuseChoice], ...] = tuple(
    Step(of="feed_ampacity", source=source, when=_fed_by(rules), text="{feed_conductor}, laid as the wire behind the fuse is.")
    for rules, source in ((RuleSet.CFR33, "33cfr-table"), (RuleSet.ABYC, "abyc-105"), (RuleSet.NEC, "nec-310-16"))
)
_ENDS: tuple[Step[Protection], ...] = (
    Step(of="fuse", source="fuse-ratings", when=lambda p: p.chosen is not None,
         text="Of all standard ratings from {lowest} to {largest}, in families rated for {voltage} and {fault_here}: published ratings first, then what is easy to buy and not much too large, then the smallest."),
    Step(of="fuse", source="fuse-ratings", when=lambda p: p.chosen is None and p.window_open,
         text="There is no standard rating from {lowest} to {largest} in families rated for {voltage} and {fault_here}."),
    Step(of="fuse", source="fuse-ratings", when=lambda p: p.chosen is None and not p.window_open,
         text="The load needs {lowest} and at most {largest} is allowed: no fuse is possible."),
)
_FAMILIES: tuple[Step[Protection], ...] = (
    Step(of="families", source="fuse-ratings", when=lambda p: p.chosen is not None,
         text="Rated for {voltage} d.c. or more, able to break {fault_here}, and made in this rating, the best first."),
    Step(of="weighed", source="small-fuse", when=lambda p: p.chosen is not None,
         text="The best of each family. A small blade fuse should carry no more than 75 % of its rating for hours, where a larger one does."),
)
_MOST: tuple[Step[Protection], ...] = (
    Step(of="largest", formula="min(highest, allowed)", when=lambda p: p.allowed is not None, text="The smaller of what the wire and the appliance's own label allow."),
    Step(of="largest", formula="highest", when=lambda p: p.allowed is None, text="No appliance label sets a lower limit."),
)
STEPS = (
    Step(of="lowest", formula="margin * current", source="nec-125", text="A fuse that carries its full rating for hours ages and opens without a fault."),
    *ampacity_steps("protection.cable", together="bundled", volts="voltage"),
    *placed_steps("protection", *_MOST),
    *placed_steps("site", *_SITE),
    *_FEED,
    *placed_steps("protection", *_ENDS),
    *steps_to_warmth("protection.warmth", "current"),
    *placed_steps("protection", *_FAMILIES),
    Step[FuseChoice](of="remedies", when=lambda c: c.protection.chosen is None, text="Each is checked by the same rules."),
)

FINE_FITTED = Rule[Protection](
    id="fuse-choice.fine-as-fitted", level=Level.FINE, when=lambda p: p.fitted is not None,
    headline="The {fuse} fuse carries the load, protects the wire and breaks a short of {fault_current}.",
)
FINE = Rule[Protection](
    id="fuse-choice.fine", level=Level.FINE,
    headline="Use {fuse}, {choice.family.name}: it carries the load, protects the wire, breaks a short of {fault_current}.",
)
ALSO = Rule[Protection](
    id="fuse-choice.also", level=Level.NOTE, when=lambda p: bool(p.next_larger), source="fuse-ratings",
    text="Also suitable: {next_larger}.",
)
BEHIND_MAIN = Rule[FuseSite](
    id="fuse-choice.behind-main", level=Level.NOTE, when=lambda s: s.behind_main, source="33cfr-place",
    text="Choose the main fuse separately: it must break the bank's full short-circuit current and suit the feed. Enter the feed as the wire.",
)
LONGER_FEED = Rule[FuseChoice](
    id="fuse-choice.longer-feed-for-a-blade", level=Level.ADVICE, when=lambda c: c.more_feed is not None, source="practice",
    text="A blade fuse or a panel breaker is usual here. Blades break {blade_breaks}: {more_feed} more of this feed, or a smaller one, lets a blade fit.",
)

ONE_FUSE_ONE_WIRE = Rule[FuseChoice](
    id="fuse-choice.one-fuse-one-wire", level=Level.NOTE, source="nec-parallel",
    text="This is one fuse on one wire. With wires in parallel, enter one with its share of the load, count all as bundled, and fuse each.",
)


def families(found: FuseChoice) -> tuple[str, ...]:
    """Return the families that make the fuse, best first, as they are asked for in a shop."""
    p = found.protection
    return tuple(family.named_for(p.max_voltage, p.fault_current) for family in p.families)


def weighed(found: FuseChoice) -> tuple[str, ...]:
    """Return the best of each family that would do, with what speaks for and against it."""
    best: dict[str, Candidate] = {}
    for one in found.protection.weighed:
        if one.family is not None:
            best.setdefault(one.family.name, one)
    return tuple(_reasons(one, found.protection) for one in list(best.values())[:MOST_WEIGHED])


def _reasons(one: Candidate, p: Protection) -> str:
    assert one.family is not None and p.fault_current is not None
    breaks = one.family.relied_on(p.max_voltage, p.fault_current) or 0.0
    says = [f"breaks {quantity_text(breaks, CURRENT)}, {'from memory' if one.memory else 'published'}"]
    says += ["close to the fault"] if one.tight else []
    says += ["much larger than the load needs"] if one.oversized else []
    says += ["rarely sold"] if one.rare else []
    says += [f"loaded to {one.loaded * 100:.0f} %"]
    return f"{one.rating:g} A {one.family.name}: {', '.join(says)}"


def also(found: FuseChoice) -> tuple[str, ...]:
    """Return the next larger ratings that fit, each with the families that make it."""
    p = found.protection
    makers = {
        rating: " or ".join(
            one.named_for(p.max_voltage, p.fault_current) for one in p.suitable if rating in one.ratings
        )
        for rating in p.next_larger
    }
    return tuple(f"{rating:g} A ({names})" for rating, names in makers.items())


def remedies(found: FuseChoice) -> tuple[str, ...]:
    """Return what would let a fuse fit, in words; nothing where one does."""
    if found.protection.chosen is not None:
        return ()
    if not found.protection.suitable:
        return ("a source with less fault current, or a fuse whose data sheet gives the d.c. voltage and interrupting rating needed",)
    return tuple(_remedy(one, found.protection.current) for one in found.remedies) or (
        "no single change: combine larger wire, a cooler route and several circuits",
    )


def _remedy(one: Remedy[Change, Protection], current: float) -> str:
    match dict(one.change.values):
        case {"conductor": str(name)}:
            says = f"larger wire: {name}, with"
        case {"insulation": str(name)}:
            says = f"insulation rated {name.replace(' C', ' °C')}, with"
        case {"bundled": float(most)}:
            says = f"no more than {most:g} loaded conductors together, with"
        case {"current": float(part)}:
            says = f"split the load into {current / part:.0f} circuits of {part:.3g} A, each on this wire with"
        case other:
            raise ValueError(f"no words for {other}")
    return f"{says} a fuse of {one.comes.chosen:g} A"
