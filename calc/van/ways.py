"""Ways to mend what a worksheet finds on a van: candidates only, which `calc.van.mends` tries."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated

import calc
from calc.electrical.conductors import conductors
from calc.electrical.fuses import named
from calc.electrical.sound_parts import GOOD_JOINT
from calc.energy.remedies import Kind
from calc.units.constants import HOUR
from calc.units.shown import UP, rounded
from calc.units.si import Celsius, Tag
from calc.van.bind import changed_places, filled
from calc.van.facts_use import MORE_AIR
from calc.van.judged import judged, ways_to_type
from calc.van.judging import Mend, known
from calc.van.mend_words import change_text
from calc.van.paths import way
from calc.van.record import Part, Van
from calc.van.review import Finding
from calc.van.worked import Outcome, attempted, worked

# A bank kept inside a heated van: common practice, no source
WARM: Annotated[Celsius, Tag("temperature of a bank that is kept warm")] = 12.0
REGULATORS = ("100 V", "150 V", "250 V")  # highest panel voltages that are made: common practice
AIR = (
    ("vent_area", "vents", "Cut a vent low and one high, each of {text}."),
    ("airflow", "fan", "Fit a fan of {text} on a thermostat, with a vent low and one high."),
)
_THICKER = 4  # sizes that are tried
_FAMILIES = 3
_MORE_BATTERIES = 3
_OF_WIRES = (
    "run.",
    "copper.",
    "cable.",
    "circuit.",
    "terminals.",
    "insulation.",
    "short.",
    "charger.run",
)
_OF_FUSES = ("fuse.", "selectivity.")
_OF_JOINTS = "contact."
CLASS_T = "cartridge, class T"


def ways(van: Van, finding: Finding) -> Iterator[Mend]:
    """Yield what may mend a finding of a worksheet, the best first."""
    part, own = van.by_id(finding.opened_for or finding.part_id), van.by_id(finding.part_id)
    if not finding.sheet:
        return
    if own is not None and finding.rule == "fuse.cannot-interrupt" and _at_the_bank(van, own):
        yield from _class_t(own)
    yield from _by_rule(van, finding, part)
    if own is not None and "conductor" in own.values:
        part = own  # of two fuses, the one that is at fault
    if part is None:
        return
    if finding.rule.startswith(_OF_JOINTS):
        yield from _remade(part)
    if "conductor" in part.values:
        if finding.rule.startswith(_OF_FUSES):
            yield from _other_fuse(van, part)
        if finding.rule.startswith((*_OF_WIRES, *_OF_FUSES)):
            yield from _thicker(van, part)
    if finding.rule.startswith(("bay.", "device.")):
        yield from _more_air(van, finding)
    if finding.rule.startswith(("bank.beyond", "bank.heavy")):
        yield from _more_batteries(van)
    if finding.rule.startswith("charge."):
        yield from _warmer_bank(van)
    if part.kind.id == "panels":
        yield from _other_string(van, part)
    if part.kind.id == "patterns" and finding.rule.startswith("week."):
        yield from _other_week(van, part, finding)


def _by_rule(van: Van, finding: Finding, part: Part | None) -> Iterator[Mend]:
    """Yield the remedy that the rule itself names, each of its values rounded either way."""
    found = judged(finding.sheet, finding.texts) or ()
    one = next((one for one in found if one.rule == finding.rule), None)
    if one is None or one.change is None:
        return
    sheet = calc.find(finding.sheet)
    typed = {
        name: list(ways_to_type(sheet, name, value)) for name, value in one.change.values.items()
    }
    for turn in range(max(map(len, typed.values()), default=0)):
        texts = {name: own[min(turn, len(own) - 1)] for name, own in typed.items()}
        changes = changed_places(van, finding.sheet, part, {**finding.texts, **texts})
        if changes and not _resets(changes):
            yield Mend(text=change_text(van, changes, finding.part_id), changes=changes)


def _resets(changes: Mapping[str, str]) -> bool:
    """Return whether a change fits a breaker: which of them resets itself only its box tells."""
    families = (named(text) for place, text in changes.items() if place.endswith("fuse_family"))
    return any(one is not None and one.resets for one in families)


def _suited(van: Van, part: Part, conductor: str = "") -> Outcome | None:
    """Return the choice of a fuse for a run, as if none were there."""
    own = filled(van, "fuse-choice", part)
    fitted = ("fitted", "fitted_family", "fitted_voltage")
    texts = {name: text for name, text in own.texts.items() if name not in fitted}
    if conductor:
        texts["conductor"] = conductor
    if [one for one in own.lacking if one not in (*fitted, "conductor")]:
        return None
    return attempted("fuse-choice", texts)


def _fuse_texts(part: Part, answer: Outcome | None) -> Iterator[Mapping[str, str]]:
    if answer is None or answer.values["fuse"] is None:
        return
    rating = f"{answer.values['fuse']:.4g} A"
    for family in (answer.values["families"] or ())[:_FAMILIES]:
        yield {
            f"{part.place}.fuse": rating,
            f"{part.place}.fuse_family": family,
            f"{part.place}.fuse_voltage": "",
        }


def _at_the_bank(van: Van, part: Part) -> bool:
    there = way(van, part)
    return there is not None and not there.runs


def _class_t(part: Part) -> Iterator[Mend]:
    """Yield the family that breaks what a lithium bank gives, at the fuse that stands at it."""
    yield Mend(
        text=f"Fit a fuse of the same rating at {part.name}: {CLASS_T}.",
        changes={f"{part.place}.fuse_family": CLASS_T},
    )


def _remade(joint: Part) -> Iterator[Mend]:
    """Yield a joint that is made anew, and loses as little as a sound one."""
    current = joint.si("current")
    if current:
        text = f"{GOOD_JOINT * current * 1e3:.2g} mV"
        yield Mend(
            text="Clean and remake it, set its torque, and measure again.",
            changes={f"{joint.place}.drop": text},
        )


def _other_fuse(van: Van, part: Part) -> Iterator[Mend]:
    for texts in _fuse_texts(part, _suited(van, part)):
        rating, family = list(texts.values())[:2]
        yield Mend(text=f"Fit a fuse of {rating}: {family}.", changes=texts)


def _thicker(van: Van, part: Part) -> Iterator[Mend]:
    """Yield the next larger conductors, each with its fuse as it is and with one that suits it."""
    names = [
        one
        for one in conductors()
        if one.series
        == next((c.series for c in conductors() if c.name == part.choice("conductor")), None)
    ]
    sizes = sorted(names, key=lambda one: one.area)
    now = next((i for i, one in enumerate(sizes) if one.name == part.choice("conductor")), None)
    if now is None:
        return
    for one in sizes[now + 1 : now + 1 + _THICKER]:
        lay = {f"{part.place}.conductor": one.name}
        yield Mend(text=f"Use {one.name}.", changes=lay)
        for texts in list(_fuse_texts(part, _suited(van, part, one.name)))[:1]:
            rating, family = list(texts.values())[:2]
            yield Mend(
                text=f"Use {one.name}, with a fuse of {rating}: {family}.", changes={**lay, **texts}
            )


def _more_air(van: Van, finding: Finding) -> Iterator[Mend]:
    """Yield vents, or a fan, of the size that the worksheet of the bay finds."""
    sheet, bay = calc.find(finding.sheet), van.one("bay")
    rated = bay.text("rated_to") if bay else ""
    cooler = {**finding.texts, "inside_limit": rated} if rated else finding.texts
    for texts in (cooler, finding.texts):
        answer = attempted(finding.sheet, texts)
        for value, key, says in AIR if answer else ():
            assert answer is not None
            if answer.values[value] is not None:
                text = next(ways_to_type(sheet, key, MORE_AIR * answer.values[value]))
                yield Mend(text=says.format(text=text), changes={f"bay.{key}": text})


def _other_week(van: Van, part: Part, finding: Finding) -> Iterator[Mend]:
    """Yield the changes that carry a pattern, as far as the record has a place for them."""
    for one in worked(finding.sheet, finding.texts).result.tried or ():
        if one.works:
            changes = _change_of(van, part, one.kind, one.for_good or one.amount)
            if one.besides:
                more = _change_of(van, part, one.besides, one.besides_amount)
                changes = {**changes, **more} if changes and more else {}
            if changes:
                yield Mend(text=change_text(van, changes, part.id), changes=changes)


def _more_batteries(van: Van) -> Iterator[Mend]:
    """Yield more batteries in parallel, with a management system for their current."""
    own = [one for one in van.all("batteries") if known(one, "role") != "starter"]
    units = own[0].si("units") if len(own) == 1 else None
    management = van.one("management")
    limit = management.si("discharge_limit") if management else None
    for more in range(1, _MORE_BATTERIES + 1) if units else ():
        assert units is not None
        changes = {f"{own[0].place}.units": f"{units + more:.0f}"}
        if limit is not None:
            changes["management.discharge_limit"] = f"{limit * (units + more) / units:.0f} A"
        yield Mend(text=f"Use {units + more:.0f} batteries in parallel.", changes=changes)


def _warmer_bank(van: Van) -> Iterator[Mend]:
    """Yield a bank that is kept warm, in every pattern that has it colder."""
    cold = (one for one in van.all("patterns") if (one.si("temperature") or WARM) < WARM)
    text = f"{WARM:.0f} °C"
    changes = {"bank.coldest": text, **{f"{one.place}.temperature": text for one in cold}}
    yield Mend(
        text=f"Move the bank inside or heat it, so that it stays at {text}.", changes=changes
    )


def _other_string(van: Van, part: Part) -> Iterator[Mend]:
    """Yield the panels side by side, and a regulator for more volts."""
    series, strings = part.si("series"), part.si("strings")
    if series and strings and series > 1:
        changes = {f"{part.place}.series": "1", f"{part.place}.strings": f"{series * strings:.0f}"}
        yield Mend(text="Wire the panels in parallel.", changes=changes)
    own = van.by_id(part.text("regulator"))
    for volts in REGULATORS if own else ():
        assert own is not None
        changes = {f"{own.place}.max_voltage": volts}
        yield Mend(text=f"Fit a regulator for {volts} of panels.", changes=changes)


def _change_of(van: Van, part: Part, kind: Kind, amount: float | None) -> dict[str, str]:
    """Return the texts by place that a remedy of a week means; none where it has no place."""
    number = amount or 0.0
    match kind:
        case Kind.DRIVE:
            return {f"{part.place}.drive_hours": f"{rounded(number / HOUR, 2, UP)} h"}
        case Kind.SHORE:
            return {f"{part.place}.shore_every": f"{number:.0f}"}
        case Kind.CHARGER if known(van.one("alternator"), "method") == "charger":
            return {"alternator.charger_limit": f"{rounded(number, 2, UP)} A"}
        case Kind.SHORE_CHARGER if van.one("shore"):
            return {"shore.charger": f"{rounded(number, 2, UP)} A"}
        case Kind.OFF if van.one("inverter"):
            return {"inverter.inverter_on": "while used"}
        case Kind.BANK:
            own = [one for one in van.all("batteries") if known(one, "role") != "starter"]
            if len(own) == 1 and (capacity := own[0].si("capacity")):
                return {f"{own[0].place}.units": f"{-(-number // capacity):.0f}"}
        case Kind.ARRAY:
            panels = van.all("panels")
            power = panels[0].si("power") if len(panels) == 1 else None
            if power and (series := panels[0].si("series")):
                return {f"{panels[0].place}.strings": f"{-(-number // (power * series)):.0f}"}
    return {}
