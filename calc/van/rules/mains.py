"""Judgements on the mains of a van: the inlet, its protection, and an inverter beside it."""

from __future__ import annotations

# fmt: off
from collections.abc import Callable, Iterator
from typing import Annotated

from calc.judge import Level
from calc.units.compare import at_least, at_most
from calc.units.si import Ohms, Tag
from calc.van.facts import Bond, Mains, bonds, mains
from calc.van.judging import Asked, Mend, VanRule

# Between inlet and chassis, with its leads: common practice, no source
MOST_EARTH: Annotated[Ohms, Tag("resistance of a van's earth that is too much")] = 0.5
# Each live conductor to earth, at 500 V d.c.: from memory, after IEC 60364-6
LEAST_INSULATION: Annotated[Ohms, Tag("insulation resistance below which nothing is energised")] = 1e6


# Outputs of chargers that are tried, the smallest first: common practice
CHARGERS = ("20 A", "30 A", "40 A", "60 A", "80 A")


def _set(text: str, **values: str) -> Callable[[Mains], Iterator[Mend]]:
    """Return the mend that sets `values` of the mains."""

    def mends(m: Mains) -> Iterator[Mend]:
        yield Mend(text=text, changes={f"{m.at}.{key}": value for key, value in values.items()})

    return mends


def _inlet(m: Mains) -> Iterator[Mend]:
    """Yield an inlet with all that belongs to it; what is there already stays."""
    says = "Fit an inlet with double-pole breaker, residual-current device, earth and tests by someone licensed, and a charger."
    texts = {**m.supply, "inlet": "yes", "switching": "both poles", "residual": "trips when tested",
             "residual_type": "A", "earth": "yes", "polarity": "correct",
             "changeover": "separate-sockets" if m.inverter else "none"}
    for charger in CHARGERS if m.charger_texts else ("",):
        adds = (("shore", {**m.charger_texts, "charger": charger}),) if charger else ()
        if m.stated:
            yield Mend(text=says, changes={f"{m.at}.{key}": text for key, text in texts.items()}, adds=adds)
        else:
            yield Mend(text=says, adds=(("mains", texts), *adds))
    if m.vents and m.stated:
        changes = {**{f"{m.at}.{key}": text for key, text in texts.items()}, "bay.vents": m.vents}
        for charger in CHARGERS if m.charger_texts else ():
            yield Mend(text=f"{says[:-1]}; open the bay's vents to {m.vents} for its heat.",
                       changes=changes, adds=(("shore", {**m.charger_texts, "charger": charger}),))


NO_INLET = VanRule[Mains](
    id="van.no-inlet", level=Level.NOTE, when=lambda m: m.inlet == "no", source="practice", key="inlet",
    headline="Consider a shore power inlet: shade, storage and the day before departure leave the bank uncharged.",
    text="In shade and in winter panels give little, in storage lead-acid sulphates, and before departure only shore power fills the bank overnight.",
    mends=_inlet,
)
INLET_WITHOUT_BREAKER = VanRule[Mains](
    id="van.inlet-without-breaker", level=Level.STOP, when=lambda m: m.plugged and m.breaker == "none", source="practice", key="breaker",
    headline="Do not plug in: fit a double-pole breaker behind the inlet first.",
    text="Fire and shock: without a breaker behind the inlet only the post's breaker protects the van's cables, and nothing aboard switches them off.",
    mends=lambda m: iter((Mend(
        text="Have a double-pole breaker fitted behind the inlet, and the mains tested.",
        changes={f"{m.at}.breaker": m.supply["breaker"], f"{m.at}.switching": "both poles"}),)),
)
BREAKER_ABOVE_SUPPLY = VanRule[Mains](
    id="van.inlet-breaker-above-supply", level=Level.CAUTION, source="practice", key="breaker",
    when=lambda m: m.plugged and m.breaker_current is not None and m.supply_limit is not None and not at_most(m.breaker_current, m.supply_limit),
    headline="Fit a breaker of {supply_limit} or less: {breaker_current} does not protect the inlet and its cable.",
    mends=lambda m: iter((Mend(text="Fit a breaker of the supply's rating.", changes={f"{m.at}.breaker": m.supply_text}),)),
)
ONE_POLE = VanRule[Mains](
    id="van.inlet-breaker-one-pole", level=Level.CAUTION, when=lambda m: m.plugged and m.breaker != "none" and m.switching == "live-only", source="practice", key="switching",
    headline="Have the inlet's breaker changed for a double-pole one: with reversed polarity a single pole isolates nothing.",
    text="Shock: posts are wired both ways. With reversed polarity a single-pole breaker opens the neutral, and the circuit stays live when off.",
    mends=_set("Have a double-pole breaker fitted and tested.", switching="both poles"),
)
NO_RESIDUAL = VanRule[Mains](
    id="van.no-residual-device", level=Level.STOP, when=lambda m: m.plugged and m.residual == "not-fitted", source="practice", key="residual",
    headline="Do not plug in: have a residual-current device of 30 mA fitted and tested first.",
    text="Shock: without one a fault to the van's metal can kill; the only protection is the post's device, of unknown age.",
    mends=_set("Have a residual-current device of 30 mA, type A, fitted and tested.", residual="trips when tested", residual_type="A"),
    covers=frozenset({"shore.no-residual-device"}),
)
RESIDUAL_TYPE = VanRule[Mains](
    id="van.residual-type-ac", level=Level.CAUTION, when=lambda m: m.plugged and m.residual_type == "AC" and m.residual != "not-fitted", source="practice", key="residual_type",
    headline="Have the residual-current device changed for type A: chargers' currents can keep type AC from tripping.",
    text="Shock: electronic loads leak pulsed direct current, which a type AC device may not see. Type A trips on it.",
    mends=_set("Have a residual-current device of type A fitted and tested.", residual_type="A"),
)
POLARITY = VanRule[Mains](  # where there is a charger, its worksheet judges the same inlet
    id="van.polarity-reversed", level=Level.STOP, source="practice", key="polarity",
    when=lambda m: m.plugged and not m.charger and m.polarity == "reversed" and m.switching != "both-poles",
    headline="Do not switch on: polarity is reversed, and a single-pole breaker leaves the circuit live. Unplug.",
    mends=_set("Have the inlet wired right and a double-pole breaker fitted, and both tested.", polarity="correct", switching="both poles"),
)
NO_EARTH = VanRule[Mains](
    id="van.no-protective-earth", level=Level.STOP, when=lambda m: m.plugged and m.earth == "no", source="practice", key="earth",
    headline="Do not plug in: bond the inlet's protective earth to the chassis first.",
    text="Shock: if the body is not earthed, a fault makes the whole van live for anyone on the ground who opens the door.",
    mends=_set("Have protective earth joined to the chassis, and its resistance measured.", earth="yes"),
)
EARTH_RESISTANCE = VanRule[Mains](
    id="van.earth-resistance-high", level=Level.CAUTION, source="practice", key="earth_resistance",
    when=lambda m: m.plugged and m.earth_resistance is not None and not at_most(m.earth_resistance, MOST_EARTH),
    headline="Find the bad joint in the earth: {earth_resistance} from inlet to chassis is too much.",
)
INSULATION = VanRule[Mains](
    id="van.insulation-too-low", level=Level.STOP, source="practice", key="insulation_resistance",
    when=lambda m: m.insulation_resistance is not None and not at_least(m.insulation_resistance, LEAST_INSULATION),
    headline="Do not plug in: the mains' insulation is {insulation_resistance}. Have the fault found first.",
)
JOINED = VanRule[Mains](
    id="van.sources-joined", level=Level.STOP, when=lambda m: m.plugged and m.inverter and m.changeover in ("nothing", "none"), source="practice", key="changeover",
    headline="Do not plug in: nothing keeps shore power and the inverter apart, and together they destroy it.",
    text="Shock and fire: an inverter connected to shore power is destroyed, and it makes the plug's pins live when the cable is unplugged.",
    mends=_set("Have shore power and inverter kept apart by separate sockets.", changeover="separate-sockets"),
    covers=frozenset({"shore.sources-joined"}),
)
def _bond(text: str, **values: str) -> Callable[[Bond], Iterator[Mend]]:
    """Return the mend that sets `values` of the inverter."""

    def mends(b: Bond) -> Iterator[Mend]:
        yield Mend(text=text, changes={f"{b.at}.{key}": value for key, value in values.items()})

    return mends


BONDED_TWICE = VanRule[Bond](
    id="van.neutral-bond-on-shore", level=Level.STOP, source="neutral-apart", key="neutral_bond",
    when=lambda b: b.inlet == "yes" and b.neutral_bond == "always" and b.changeover == "inverter",
    headline="Do not plug in: the inverter's neutral stays joined to earth on shore power. Have that bond open there.",
    text="Shock: with a second neutral-earth bond, load current flows in the van's metal and residual-current devices fail or trip.",
    mends=_bond("Have the bond made when inverting only, and opened on shore power.", neutral_bond="opened-on-shore"),
)
NEVER_BONDED = VanRule[Bond](
    id="van.residual-device-cannot-trip", level=Level.CAUTION, source="practice", key="neutral_bond",
    when=lambda b: b.neutral_bond == "never" and b.outlets_residual == "yes",
    headline="Have neutral joined to earth when inverting: without that the outlets' residual-current device cannot trip.",
    text="Shock: a residual-current device needs a path back to the source. An inverter with a floating neutral has none.",
    mends=_bond("Have neutral joined to earth when inverting, and opened on shore power.", neutral_bond="opened-on-shore"),
)
OUTLETS_BARE = VanRule[Bond](
    id="van.inverter-without-residual-device", level=Level.STOP, source="practice", key="residual",
    when=lambda b: b.neutral_bond in ("always", "opened-on-shore") and b.outlets_residual in ("no", "none"),
    headline="Use none of the inverter's outlets: have a residual-current device of 30 mA fitted on them first.",
    text="Shock: a fault to metal can kill, and an inverter gives too little current to trip a breaker in time. A residual-current device does it.",
    mends=_bond("Have a residual-current device of 30 mA fitted on the inverter's outlets.", residual="yes"),
)

RULES = (
    NO_INLET, INLET_WITHOUT_BREAKER, BREAKER_ABOVE_SUPPLY, ONE_POLE, NO_RESIDUAL, RESIDUAL_TYPE, POLARITY, NO_EARTH,
    EARTH_RESISTANCE, INSULATION, JOINED,
)
OF_THE_INVERTER = (BONDED_TWICE, NEVER_BONDED, OUTLETS_BARE)
ASKED = (Asked(mains, RULES), Asked(bonds, OF_THE_INVERTER))
