"""Which worksheets judge which parts of a van in its review, and which show a rule's figures."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Annotated

from calc.units.compare import at_least, at_most
from calc.units.si import Celsius, Number, Tag
from calc.van.facts_bank import charging_rate
from calc.van.from_runs import converter_before, fed_load
from calc.van.judging import known, there
from calc.van.record import Part, Van
from calc.van.worked import attempted

WHOLE = ""
FED = ("circuits", "cables", "regulators", "shore", "inverter", "converters")

# By worksheet the kinds of parts that it judges. What only sizes, or asks of a moment, is left out.
REVIEWED: Mapping[str, tuple[str, ...]] = {
    "wire-drop": (*FED, "panels"),
    "fuse-choice": FED,
    "fault-current": FED,
    "fuse-ladder": FED,
    "joint-torque": ("joints",),
    "joint-heat": ("joints",),
    "inverter-size": ("inverter",),
    "panel-string": ("panels",),
    "converter": ("converters",),
    "alternator-charge": ("alternator",),
    "shore-charge": ("shore",),
    "week-ahead": ("patterns",),
    "heat-loss": ("patterns",),
    "heater-night": ("patterns",),
    "cooling-day": ("patterns",),
    "enclosure-airflow": (WHOLE,),
    "battery-air": (WHOLE,),
    "water-heater": ("water_heater",),
}

# Worksheets of a schedule that do not judge a kind: what its own worksheet does better.
LEFT_OUT: Mapping[str, frozenset[str]] = {"alternator": frozenset({"wire-drop", "fuse-choice"})}

# What only a maker's data sheet settles. A worksheet about that one fuse cautions; of a whole van,
# where each fuse meets it, it is a note: the choice does not depend on it.
BY_DATA_SHEET = frozenset({
    "fuse.ratings-from-memory", "fuse.in-time-from-memory", "fuse.no-curve", "fuse.arc-from-memory",
    "selectivity.no-curve", "selectivity.from-memory", "selectivity.not-certain",
})  # fmt: skip

# Makers of LFP ask for 0.05 to 0.2 of the capacity in an hour from 0 to 10 °C, and a maker of
# chargers prefers 5 to 45 °C: the first is common practice, no source; the second a support article
GENTLE: Annotated[Number, Tag("share of its capacity that cold LFP takes in an hour")] = 0.2
# The latter
GENTLE_FROM: Annotated[Celsius, Tag("temperature from which LFP is preferably charged")] = 5.0

# The worksheet that shows the figures behind a rule of the whole.
EVIDENCE: Mapping[str, str] = {
    "van.no-inlet": "shore-charge",
    "van.no-counting-monitor": "bank-gauge",
    "van.shunt-bypassed": "bank-gauge",
    "van.light-without-dimmer": "light-dimming",
    "van.appliance-keeps-inverter-on": "appliance-route",
    "van.heat-from-bank": "watts-to-amps",
    "van.water-heated-from-bank": "water-heater",
    "van.space-heated-from-bank": "heater-night",
    "van.hidden-appliance": "remote-switch",
    "van.hidden-water-heater": "remote-switch",
    "van.unregulated-alternator": "alternator-charge",
    "van.joint-not-locked": "joint-torque",
    "van.joint-moved": "joint-torque",
    "van.no-heater": "heat-loss",
    "van.heat-not-held": "heat-loss",
    "van.cooling-not-held": "cooling-day",
    "van.bay-without-air": "enclosure-airflow",
    "van.no-main-fuse": "fault-current",
    "van.run-without-fuse": "fuse-choice",
    "van.run-behind-too-large-fuse": "fuse-choice",
    "van.run-behind-larger-fuse": "fuse-choice",
    "van.fuses-ahead-below-current": "fuse-choice",
    "van.battery-fuse-below-share": "fuse-choice",
    "van.charged-in-frost": "alternator-charge",
    "van.converter-too-small": "converter",
    "van.converter-loads-together": "converter",
}


def _plus(van: Van, part: Part | None) -> bool:
    return part is None or "pole" not in part.values or known(part, "pole") != "minus"


def _fused(van: Van, part: Part | None) -> bool:
    return part is not None and _plus(van, part) and there(part, "fuse") is True


def _shorted(van: Van, part: Part | None) -> bool:
    """A converter limits the short behind it: no bank feeds that."""
    return _fused(van, part) and converter_before(van, part) is None


def _measured(van: Van, part: Part | None) -> bool:
    return part is not None and part["drop"].known


def _heated(van: Van, part: Part | None) -> bool:
    return part is not None and van.one("heater") is not None and known(part, "heats") == "yes"


def _cooled(van: Van, part: Part | None) -> bool:
    return part is not None and van.one("cooler") is not None and known(part, "cools") == "yes"


def _bay(van: Van, part: Part | None) -> bool:
    return van.one("bay") is not None


def _inlet(van: Van, part: Part | None) -> bool:
    return known(van.one("mains"), "inlet") not in ("no", "none")


def _feeds(van: Van, part: Part | None) -> bool:
    """A converter that feeds no circuit has no load to be judged by."""
    return fed_load(van, part) is not None


_WHEN: Mapping[str, Callable[[Van, Part | None], bool]] = {
    "fuse-choice": _plus,
    "fault-current": _shorted,
    "fuse-ladder": _shorted,
    "joint-heat": _measured,
    "heat-loss": _heated,
    "heater-night": _heated,
    "cooling-day": _cooled,
    "enclosure-airflow": _bay,
    "shore-charge": _inlet,
    "converter": _feeds,
}


def about(van: Van, sheet: str, part: Part | None) -> bool:
    """Return whether a worksheet has something to judge on a part of this van."""
    when = _WHEN.get(sheet)
    return when is None or when(van, part)


def milder(van: Van, rule: str, sheet: str, texts: Mapping[str, str]) -> bool:
    """Return whether what a worksheet cautions about is but a note on this van.

    What only a data sheet settles is; and a cold charge that is as gentle as makers ask for, into a
    bank whose cold cut-off is proven.
    """
    if rule in BY_DATA_SHEET:
        return True
    management = van.one("management")
    proven = known(management, "cold_cut_off") == "proven"
    if rule != "charge.near-frost" or not proven:
        return False
    answer, rate = attempted(sheet, texts), charging_rate(van)
    celsius = answer.inputs["temperature"].value if answer else None
    if not isinstance(celsius, float) or rate is None:
        return False
    return at_least(celsius, GENTLE_FROM) and at_most(rate, GENTLE)


def settled(van: Van, rule: str, sheet: str, texts: Mapping[str, str]) -> bool:
    """Return whether the van answers a finding by what its worksheet has no field for.

    A management system gives its peak for seconds, which is as long as a surge takes.
    """
    management = van.one("management")
    peak = management.si("peak") if management and rule == "inverter.surge-beyond-bank" else None
    answer = attempted(sheet, texts) if peak is not None else None
    return answer is not None and peak is not None and at_most(answer.values["surge_current"], peak)
