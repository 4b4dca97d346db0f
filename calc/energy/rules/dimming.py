"""Judgements on dimmed lamps and their dimmer."""

from typing import Annotated

# fmt: off
from calc.energy.dimming import DIMMER_MARGIN, Dimming, Lamp, Return, Switched
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least
from calc.units.si import Number, Tag, Volts

# Times its current on the bank, from which a strip on the charger is spoken of: our choice
HOT_STRIP: Annotated[Number, Tag("growth of a strip's current worth a word")] = 1.2

# Printed on strips for 12 V: common practice, no source
LABEL_OF_STRIP: Annotated[Volts, Tag("voltage on a strip's label")] = 12.0
# A 12 V bank at its highest: our bound
HIGHEST_12_V: Annotated[Volts, Tag("highest voltage of a 12 V bank that lights are fed from")] = 15.0


def larger_dimmer(found: Dimming) -> Change:
    """Return the rating that leaves the usual margin."""
    return Change({"rated": found.dimmer_rating})


def _may_be_rated_lower(found: Dimming) -> bool:
    """Whether the bank is one of 12 V, and the watts are not said to be for just that."""
    return LABEL_OF_STRIP < found.lights.voltage <= HIGHEST_12_V


NOT_DIMMABLE = Rule[Dimming](
    id="lamp.not-dimmable", level=Level.STOP, when=lambda d: not d.follows, source="practice",
    headline="Do not dim this lamp: its own regulator does not follow a pulse dimmer. It may flicker or fail.",
    text="Use a lamp made to be dimmed, or a plain strip. In any other the capacitors take hard pulses of current, and it can overheat.",
    mend=lambda d: Change({"lamp": Lamp.STRIP}),
)
DIMMER_BRIDGED = Rule[Dimming](
    id="dimmer.bridged", level=Level.STOP, when=lambda d: d.bridged,
    headline="Fit the dimmer in the plus: the lamps' minus is the body, which bypasses one in the minus.",
    mend=lambda d: Change({"switches": Switched.PLUS}),
)
DIMMER_TOO_SMALL = Rule[Dimming](
    id="dimmer.too-small", level=Level.STOP,
    when=lambda d: d.dimmer.rated is not None and not at_least(d.dimmer.rated, d.charging_current),
    headline="Use a larger dimmer: it carries {charging_current} while the bank is charged, and is rated {dimmer.rated}.",
    mend=larger_dimmer,
)
DIMMER_MAY_BE_BRIDGED = Rule[Dimming](
    id="dimmer.may-be-bridged", level=Level.CAUTION, when=lambda d: d.perhaps_bridged,
    headline="Check where the lamps' minus goes: through the body, a dimmer in the minus does not work. {saved_charge} saved.",
    mend=lambda d: Change({"switches": Switched.PLUS, "returns": Return.OWN_WIRE}),
)
DIMMER_TIGHT = Rule[Dimming](
    id="dimmer.tight", level=Level.CAUTION,
    when=lambda d: d.dimmer.rated is not None and not at_least(d.dimmer.rated, DIMMER_MARGIN * d.charging_current),
    headline="{saved_charge} saved, but the dimmer has little reserve: look for one of {dimmer_rating}.",
    mend=larger_dimmer,
)
DIMMER_TAKES_MORE = Rule[Dimming](
    id="dimmer.takes-more-than-it-saves", level=Level.CAUTION,
    when=lambda d: d.saved_charge is not None and not at_least(d.saved_charge, d.own_charge),
    headline="Not worth it: the dimmer itself uses {own_charge} a day, more than the {saved_charge} it saves.",
)
UNDIMMED = Rule[Dimming](
    id="lights.undimmed", level=Level.CAUTION, when=lambda d: d.lights.level == 1,
    headline="At full brightness nothing is saved: {full_charge} in an evening.",
)
SLOW_PULSES = Rule[Dimming](
    id="dimmer.slow-pulses", level=Level.CAUTION, when=lambda d: d.slow, source="memory",
    headline="{saved_charge} saved, but pulses of {dimmer.frequency} may tire eyes and cause headaches.",
    text="Slow pulses can cause headaches or worse in sensitive people, and make turning blades look still. Low risk begins at 1250 Hz, by IEEE 1789 (from memory).",
)

SEEN_BRIGHTER = Rule[Dimming](
    id="lights.seem-brighter", level=Level.ADVICE, when=lambda d: d.follows and d.lights.level < 1, source="lightness",
    text="It looks {seen} as bright, for {power_share} of the charge. A second, smaller lamp where you read saves more than light everywhere.",
)
RETURN_WIRING = Rule[Dimming](
    id="dimmer.return-wiring", level=Level.ADVICE, when=lambda d: d.bridged or d.perhaps_bridged, source="practice",
    text="Use a dimmer that switches the plus, or give every lamp's minus its own wire back to the dimmer, touching no metal: one nicked wire gives full brightness.",
)
STRIP_HOT_ON_CHARGER = Rule[Dimming](
    id="strip.hot-on-charger", level=Level.ADVICE, when=lambda d: d.lights.lamp is Lamp.STRIP and d.growth > HOT_STRIP, source="strip",
    text="While the bank is charged this strip may draw {growth} times its current and run hotter: fuse and dimmer must carry {charging_current}. A 12 V regulator protects the strip.",
)
STRIP_RATED_AT_12_V = Rule[Dimming](
    id="strip.rated-at-12-v", level=Level.ADVICE, when=lambda d: d.lights.lamp is Lamp.STRIP and d.growth > HOT_STRIP and _may_be_rated_lower(d), source="strip",
    text="Watts from a 12 V label? On the bank the strip draws more: enter 12 V as bank voltage, 122 % as charging voltage, 83 % as share across the LEDs.",
)
FILAMENT_DIMS_FAST = Rule[Dimming](
    id="filament.dims-fast", level=Level.ADVICE, when=lambda d: d.lights.lamp is Lamp.FILAMENT, source="rerating",
    text="Use a dimmer made for filament lamps: cold, they briefly draw many times their current. At {power_share} of the power they give {light} of the light; LEDs save more.",
)
OWN_DRAW = Rule[Dimming](
    id="dimmer.own-draw", level=Level.ADVICE, when=lambda d: d.dimmer.own > 0, source="practice",
    text="The dimmer itself uses {own_charge} a day, also on days without lamps. Supply it through the lights' own switch.",
)
NO_SWITCH = Rule[Dimming](
    id="dimmer.is-no-switch", level=Level.ADVICE, source="practice",
    text="A dimmer is no switch or fuse: fit a fuse for the wire before it and a switch you can find in the dark. Give it air: it gets hot.",
)
LOOK_WHAT_IT_SWITCHES = Rule[Dimming](
    id="dimmer.look-what-it-switches", level=Level.NOTE, source="practice",
    when=lambda d: d.dimmer.switches is Switched.UNKNOWN and d.dimmer.returns is Return.UNKNOWN,
    text="Check which pole the dimmer switches: one in the minus cannot dim a lamp whose minus is the body.",
)
ZONES = Rule[Dimming](
    id="lights.zones", level=Level.NOTE, source="practice",
    text="Give each zone its own dimmer and run: bed, table and kitchen are rarely used together. Two dimmers in series disturb each other.",
)
ASK_FREQUENCY = Rule[Dimming](
    id="dimmer.ask-frequency", level=Level.NOTE, when=lambda d: d.dimmer.frequency is None and d.lights.level < 1, source="practice",
    text="If the pulses show as bands in a phone's camera, they are slow. Check the frequency, and use a high one where you read.",
)
AERIALS = Rule[Dimming](
    id="dimmer.wires-radiate", level=Level.NOTE, source="practice",
    text="Pulsed wires act as aerials: keep plus and minus together, short, and away from the aerial cable.",
)
