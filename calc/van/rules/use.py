"""Judgements on use and comfort: what makes a van dear to live in, cold, hot, or a nuisance."""

from __future__ import annotations

# fmt: off
import math
from collections.abc import Iterator

from calc.comfort.rules.heat_loss import STRAINING_ROOM
from calc.judge import Level
from calc.units.compare import at_least, at_most
from calc.van.facts import Converter, converters
from calc.van.facts_use import (
    Bay,
    Circuit,
    HotDay,
    Night,
    Pattern,
    Warmth,
    WaterTank,
    bays,
    circuits,
    hot_days,
    nights,
    patterns,
    warmths,
    water_tanks,
)
from calc.van.judging import Asked, Fact, Mend, VanRule


def _set(fact: Fact, text: str, **values: str) -> list[Mend]:
    return [Mend(text=text, changes={f"{fact.at}.{key}": value for key, value in values.items()})]


def _at_bank_voltage(c: Circuit) -> Iterator[Mend]:
    """Yield the same appliance made for the bank's voltage, on a circuit and a fuse of its own."""
    texts = {
        "load": "fridge", "route": "direct", "current": "", "power": "45 W", "switch": "thermostat",
        "conductor": "10 AWG", "fuse": "15 A", "fuse_family": "blade, regular (type C)", "fuse_voltage": "",
        **({"from": c.block} if c.block else {}), **({"return_to": c.minus} if c.minus else {}),
    }
    changes = {f"{c.at}.{key}": text for key, text in texts.items()}
    yield Mend(text="Replace it with one made for the bank's voltage on its own fuse, and switch the inverter off when idle.",
               changes={**changes, "inverter.inverter_on": "while used"})


def _other_heat(w: WaterTank) -> Iterator[Mend]:
    """Yield ways to heat the water without the bank; its circuit goes with the element."""
    yield Mend(text="Heat the water by the engine, and remove the element's circuit.", changes={f"{w.at}.way": "engine"}, removes=w.circuits)
    yield Mend(text="Heat the water on shore power, and remove the element's circuit.", changes={f"{w.at}.way": "shore"}, removes=w.circuits)
    yield Mend(text="Heat the water by fuel, with combustion air and exhaust outside.",
               changes={f"{w.at}.way": "fuel", f"{w.at}.fuel": "diesel", f"{w.at}.exhaust": "both outside"}, removes=w.circuits)


def _burns(c: Circuit) -> Iterator[Mend]:
    yield Mend(text="Remove it: use a fuel heater vented outside, or shore power.", removes=(c.at,))


def _no_heat(p: Pattern) -> bool:
    cold = p.outside is not None and p.outside < STRAINING_ROOM
    return p.heater is False and (cold or p.heats == "yes")


KEPT_ON = VanRule[Circuit](
    id="van.appliance-keeps-inverter-on", level=Level.CAUTION, when=lambda c: c.kept_on_inverter, source="practice", key="route",
    headline="Replace {part} with one for the bank's voltage: the inverter idles day and night for it.",
    text="The inverter's idle draw day and night is often more than the appliance uses.",
    mends=_at_bank_voltage,
    covers=frozenset({"inverter.much-for-idling"}),
)
UNDIMMED = VanRule[Circuit](
    id="van.light-without-dimmer", level=Level.NOTE, when=lambda c: c.undimmed, source="practice", key="dimmer",
    headline="Consider a dimmer for {part}: half the light is enough to read by, and uses half the charge.",
    mends=lambda c: _set(c, "Fit a dimmer rated for the charging voltage.", dimmer="yes"),
)
HEAT_FROM_BANK = VanRule[Circuit](
    id="van.heat-from-bank", level=Level.CAUTION, when=lambda c: c.heats_from_bank, source="practice", key="load",
    headline="Make this heat another way: {part} turns {power} of the bank into heat.",
    text="Heat uses more charge than anything else. Use a fuel heater vented outside, or shore power.",
    mends=_burns,
)
WATER_FROM_BANK = VanRule[WaterTank](
    id="van.water-heated-from-bank", level=Level.CAUTION, when=lambda w: w.way == "bank", source="practice", key="way",
    headline="Heat water by fuel, engine or shore power: no load uses more of the bank.",
    mends=_other_heat,
    covers=frozenset({"load.all-becomes-heat"}),
)
HEATED_FROM_BANK = VanRule[Warmth](
    id="van.space-heated-from-bank", level=Level.CAUTION, when=lambda w: w.fuel in ("electric", "electric-inverter"), source="practice", key="fuel",
    headline="Heat with fuel, vented outside: a night of electric heat needs several banks.",
    mends=lambda w: _set(w, "Fit a diesel heater with combustion air and exhaust outside.", fuel="diesel", exhaust="both outside"),
    covers=frozenset({"load.all-becomes-heat"}),
)
HIDDEN = VanRule[Circuit](
    id="van.hidden-appliance", level=Level.CAUTION, when=lambda c: c.hidden, source="practice", key="switch",
    headline="Fit a lit switch within reach for {part}: hidden, it stays on unnoticed and empties the bank.",
    mends=lambda c: _set(c, "Fit a relay at the appliance and a lit switch where people sit.", switch="in reach"),
)
HIDDEN_TANK = VanRule[WaterTank](
    id="van.hidden-water-heater", level=Level.CAUTION, when=lambda w: w.switch in ("hidden", "none"), source="practice", key="switch",
    headline="Fit a lit switch within reach for the water heater: hidden, it stays on unnoticed.",
    mends=lambda w: _set(w, "Fit a relay at the water heater and a lit switch where people sit.", switch="in reach"),
)
NO_HEATER = VanRule[Pattern](
    id="van.no-heater", level=Level.CAUTION, when=_no_heat, source="who-rooms", key="outside",
    headline="Plan a heater for {part}: nobody sleeps in the cold, and moisture runs down the walls.",
)
NO_COOLER = VanRule[Pattern](
    id="van.no-cooler", level=Level.CAUTION, when=lambda p: p.cooler is False and p.cools == "yes", source="practice", key="cools",
    headline="Plan for {part} without cooling, or fit a cooler: the record has none.",
    mends=lambda p: _set(p, "Plan this pattern without cooling: shade and vents.", cools="no"),
)
ONE_TOO_MUCH = VanRule[Converter](
    id="van.converter-too-small", level=Level.STOP, source="practice", key="rated_current",
    when=lambda c: c.rated_current is not None and not at_most(c.largest, c.rated_current),
    headline="Use a larger converter: {part} gives {rated_current}, and one load takes {largest}.",
    mends=lambda c: _set(c, "Fit a converter for its loads together.", rated_current=f"{c.together:.3g} A"),
)
TOGETHER_TOO_MUCH = VanRule[Converter](
    id="van.converter-loads-together", level=Level.CAUTION, source="practice", key="rated_current",
    when=lambda c: c.rated_current is not None and at_least(c.rated_current, c.largest) and not at_most(c.together, c.rated_current),
    headline="Use a larger converter, or fewer loads at once: {part} gives {rated_current}, together they take {together}.",
    mends=lambda c: _set(c, "Fit a converter for its loads together.", rated_current=f"{c.together:.3g} A"),
)
NO_BOND_POINT = VanRule[Circuit](
    id="van.return-without-bond", level=Level.STOP, source="practice", key="bond_point",
    when=lambda c: c.returns_by == "chassis" and (c.bond_point is False or c.chassis_bond is False),
    headline="Give {part} a return cable: it returns by the chassis, which is not connected to the bank.",
    mends=lambda c: [Mend(text="Run a return cable beside the plus, to the minus bar.",
                          changes={f"{c.at}.return_by": "cable", **({f"{c.at}.return_to": c.minus} if c.minus else {})})],
)

def _warmer(n: Night) -> Iterator[Mend]:
    watts = math.ceil(n.wanted / 100) * 100
    yield Mend(text=f"Fit a heater of {watts} W, or insulate to lose less.", changes={"heater.output": f"{watts} W"})


def _air(b: Bay) -> Iterator[Mend]:
    if b.vent_text:
        yield Mend(text=f"Cut a vent low and one high, each of {b.vent_text}.", changes={f"{b.at}.vents": b.vent_text})
    if b.fan_text:
        yield Mend(text=f"Fit a fan of {b.fan_text} on a thermostat, with vents.", changes={f"{b.at}.fan": b.fan_text, f"{b.at}.vents": b.vent_text or "200 cm²"})


HEAT_NOT_HELD = VanRule[Night](
    id="van.heat-not-held", level=Level.STOP, when=lambda n: n.output is not None and not at_least(n.output, n.loss), source="who-rooms",
    headline="Fit a larger heater or insulate: {output} cannot hold {inside} at {outside}, with {loss} lost.",
    text="Cold: nobody sleeps long in a cold van, and moisture runs down its walls. Below 16 °C the lungs are at risk. The night also uses {charge} of the bank.",
    mends=_warmer,
    covers=frozenset({"heater.too-weak", "heater.no-spare", "heater.nothing-for-wind", "heater.slow-to-warm"}),
)
COOLING_NOT_HELD = VanRule[HotDay](
    id="van.cooling-not-held", level=Level.STOP, when=lambda d: d.load is not None and not at_least(d.cooling, d.load), source="practice",
    headline="Use more shade or a larger unit: {load} comes in, and {cooling} does not hold {inside}.",
    text="Heat: nobody sleeps at 30 °C, and a closed van in the sun kills. The day also uses {charge} of the bank.",
    covers=frozenset({"cooler.too-small", "cooler.little-in-hand"}),
)
NO_AIR = VanRule[Bay](
    id="van.bay-without-air", level=Level.STOP, when=lambda b: b.vents is False and b.fan is False, source="energy-balance", key="vents",
    headline="Cut a vent low and one high: no air gets into the electrical bay, and its devices overheat.",
    text="Fire and failure: chargers and inverters turn part of the power into heat. In a closed bay they reduce output, then fail.",
    mends=_air,
    covers=frozenset({"bay.shut", "bay.over-limit", "bay.far-over-limit", "bay.ruined", "bay.beyond-vents", "bay.no-cooler-air"}),
)

OF_CIRCUITS = (KEPT_ON, UNDIMMED, HEAT_FROM_BANK, HIDDEN, NO_BOND_POINT)
ASKED = (
    Asked(circuits, OF_CIRCUITS), Asked(water_tanks, (WATER_FROM_BANK, HIDDEN_TANK)), Asked(warmths, (HEATED_FROM_BANK,)),
    Asked(patterns, (NO_HEATER, NO_COOLER)), Asked(nights, (HEAT_NOT_HELD,)), Asked(hot_days, (COOLING_NOT_HELD,)), Asked(bays, (NO_AIR,)), Asked(converters, (ONE_TOO_MUCH, TOGETHER_TOO_MUCH)),
)
