"""One run of a van worked through the worksheets: what is found, and why the rest is not."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Annotated, Any

import calc
from calc.electrical.rules import interrupting
from calc.judge import Level
from calc.units.compare import at_least
from calc.units.shown import rounded
from calc.units.si import Number, Tag, Volts
from calc.van.came import Came, milliohms
from calc.van.chosen import conductor_of
from calc.van.currents import load_current
from calc.van.from_fuses import highest_fault, lowest_fault, upstream
from calc.van.from_runs import converter_before
from calc.van.fusing import Fused, fused, with_conductor
from calc.van.net import MINUS
from calc.van.record import Part, Van
from calc.van.row import ALL_LEVELS, Judged, Row
from calc.van.supply import Supply, own_share, runs_before, supply, weight
from calc.van.why import why_not
from calc.van.worked import Outcome, attempted, refusal

DROP, CHOICE, FAULT, LADDER = "wire-drop", "fuse-choice", "fault-current", "fuse-ladder"
OF_KIND = {"alternator": "alternator-charge", "panels": "panel-string"}
# What a converter gives into a short, over what it gives for hours: common practice, no source
LIMIT: Annotated[Number, Tag("current limit of a converter over its rated current")] = 1.5
# What is judged at the highest short, whatever the lowest is.
AT_THE_HIGHEST = frozenset(rule.id for rule in interrupting.RULES)
_MAINS = "Mains voltage, fed by the inverter: no run of the bank's own."
_NO_FUSE = "none fitted"
_KEYS = {"fuse": "fuse", "family": "fuse_family"}


def worked_row(van: Van, part: Part) -> Row:
    """Return a run as it is worked, without its marks."""
    empty = Row(mark="", wire="", part=part)
    if "route" in part.values and part.choice("route") == "inverter":
        return replace(empty, why={"current": _MAINS})
    working = _Working(van, part)
    working.work()
    return replace(
        empty,
        **working.values,
        chosen=frozenset(working.chosen),
        suits=working.suits,
        why=working.why,
        missing=working.missing,
        judged=tuple(working.judged),
    )


class _Working:
    """One run as it is worked: what is found, and why the rest is not."""

    def __init__(self, van: Van, part: Part) -> None:
        self.van, self.part = van, part
        self.values: dict[str, Any] = {}
        self.why: dict[str, str] = {}
        self.missing: dict[str, str] = {}
        self.chosen: set[str] = set()
        self.judged: list[Judged] = []
        self.suits: Mapping[str, str] = {}

    def work(self) -> None:
        minus = self.part.kind.id == "cables" and self.part.choice("pole") == MINUS
        self.lay()
        self.lose(with_load=not minus)
        if not minus and self.part.kind.id != "panels":
            self.guard()
        sheet = OF_KIND.get(self.part.kind.id)
        if sheet in calc.worksheets():
            texts, lacking = with_conductor(self.van, sheet, self.part)
            self.judge(sheet, texts, lacking)

    def lacks(self, name: str, place: str) -> None:
        """Note that a value cannot be worked for want of what stands at a place."""
        if name not in self.why and name not in self.values:
            self.missing[name] = place
            self.why[name] = why_not(self.van, place)

    def take(self, name: str, found: float | Came | None) -> None:
        """Note a value, or the place of what is not known."""
        if isinstance(found, Came):
            self.lacks(name, found.place)
        elif found is not None:
            self.values[name] = found

    def judge(
        self,
        sheet: str,
        texts: Mapping[str, str],
        lacking: tuple[str, ...] = (),
        levels: frozenset[Level] = ALL_LEVELS,
        names: tuple[str, ...] = (),
        beside: frozenset[str] = frozenset(),
    ) -> Outcome | None:
        """Return a worksheet's answer, which counts for the run; None where it cannot be worked.

        `names` are the values that it would give, `beside` rules that do not count.
        """
        if lacking:
            for name in names:
                self.lacks(name, lacking[0])
            return None
        answer = attempted(sheet, texts)
        if answer is None:
            says = refusal(sheet, texts)
            self.why.update({name: says for name in names or (sheet,) if name not in self.values})
            return None
        self.judged.append(Judged(sheet, texts, answer, levels, beside))
        return answer

    def lay(self) -> None:
        """Note the current and the conductor."""
        current = load_current(self.van, self.part)
        if current is not None:
            self.take("current", current if current.si is None else current.si)
        laid = conductor_of(self.van, self.part)
        if isinstance(laid, Came):
            self.lacks("conductor", laid.place)
            return
        self.values["conductor"] = laid.name
        self.chosen |= {"conductor"} if laid.chosen else set()
        parallel = self.part.si("parallel")
        if parallel is None:
            self.lacks("parallel", f"{self.part.place}.parallel")
        else:
            self.values["parallel"] = parallel

    def lose(self, *, with_load: bool) -> None:
        """Note what the run drops, what it can carry and, `with_load`, what is left there."""
        texts, lacking = with_conductor(self.van, DROP, self.part)
        names = ("drop", "drop_share", "ampacity", *(("load_voltage",) if with_load else ()))
        answer = self.judge(DROP, texts, lacking, names=names)
        if answer is None:
            return
        parallel = answer.inputs["parallel"].value
        ampacity = answer.values["ampacity"]
        found = {
            "drop": answer.values["drop"],
            "drop_share": answer.values["drop_percent"],
            "ampacity": None if ampacity is None else ampacity * parallel,
            "load_voltage": answer.values["load_voltage"],
        }
        for name in names:
            if found[name] is None:  # more than there is to lose
                self.why[name] = answer.sentence
            elif name != "load_voltage":
                self.values[name] = found[name]
        if not with_load or found["load_voltage"] is None:
            return
        before = runs_before(self.van, self.part)
        if isinstance(before, Came):
            self.lacks("load_voltage", before.place)
            return
        left: Volts = found["load_voltage"]
        if found["drop"] is not None:  # the other pole, which the drop of one leaves out
            left -= (1 / own_share(self.part) - 1) * found["drop"]
        device = converter_before(self.van, self.part)
        kept = _up_to(self.van, device)  # it holds its own voltage, whatever is lost before it
        for run in before:
            if run.id in kept:
                continue
            drop = drop_of(self.van, run)
            if isinstance(drop, Came):
                self.lacks("load_voltage", drop.place)
                return
            left -= weight(self.van, self.part, run) / own_share(run) * drop
        self.values["load_voltage"] = left

    def guard(self) -> None:
        """Note the fuse, the shorts that it must break and clear, and its order with the next."""
        device = converter_before(self.van, self.part)
        if device is None:
            self.take("fault_high", highest_fault(self.van, self.part))
            self.take("fault_low", lowest_fault(self.van, self.part))
        else:
            rated, carries = device.si("rated_current"), self.values.get("ampacity")
            if rated is not None and carries is not None:
                self.values["limited"] = at_least(carries, LIMIT * rated)
            says = f"{device.name[0].upper()}{device.name[1:]} limits it: see its data sheet"
            self.why["fault_high"] = self.why["fault_low"] = says
        own = fused(self.van, self.part)
        self.suits = own.suits
        self.chosen |= own.chosen
        if own.none:
            self.why["fuse"] = self.why["family"] = _NO_FUSE
            return
        for name, value in (("fuse", own.rating), ("family", own.family)):
            if value is not None:
                self.values[name] = value
            else:
                self.lacks(name, f"{self.part.place}.{_KEYS[name]}")
        if own.rating is None:
            return
        if own.answer is not None:
            self.judged.append(Judged(CHOICE, own.texts, own.answer))
        self.clear(own)
        self.order(own)

    def clear(self, own: Fused) -> None:
        """Judge the fuse against the shorts: at the highest, and at the lowest at the far end."""
        texts, lacking = with_conductor(self.van, FAULT, self.part)
        texts["fuse"] = self.part.text("fuse") or f"{own.rating:g} A"
        if own.family:
            texts["fuse_family"] = own.family
        source = supply(self.van, self.part)
        if self.judge(FAULT, texts, lacking) is None or not isinstance(source, Supply):
            return
        if source.battery is None and not source.alone:
            worn = milliohms(source.worn / (1 + source.bank.ageing), "").text
            self.judge(FAULT, {**texts, "source_resistance": worn}, beside=AT_THE_HIGHEST)

    def order(self, own: Fused) -> None:
        """Judge whether the fuse opens before the next one towards the bank."""
        ahead = upstream(self.van, self.part)
        other = fused(self.van, ahead) if ahead is not None else None
        if other is None or not (own.family and other.family and other.rating):
            return
        texts, _ = with_conductor(self.van, LADDER, self.part)
        texts |= {
            "downstream": f"{own.rating:g} A",
            "downstream_family": own.family,
            "upstream": f"{other.rating:g} A",
            "upstream_family": other.family,
        }
        high, low = self.values.get("fault_high"), self.values.get("fault_low")
        if isinstance(high, float) and isinstance(low, float):
            most, least = rounded(high, 4), rounded(low, 4)
            texts |= {"fault_current": f"{most} A", "fault_low": f"{least} A"}
            stop = frozenset({Level.STOP})
            answer = attempted(LADDER, texts)
            if answer is not None:
                self.judged.append(Judged(LADDER, texts, answer, stop))


def _up_to(van: Van, device: Part | None) -> frozenset[str]:
    """Return the ids of a device and of the runs between it and the bank."""
    before = () if device is None else runs_before(van, device)
    own = () if isinstance(before, Came) else tuple(one.id for one in before)
    return frozenset(() if device is None else (device.id, *own))


def drop_of(van: Van, run: Part) -> Volts | Came:
    """Return what a run drops [V] at its own largest current, or what of it is not known."""
    texts, lacking = with_conductor(van, DROP, run)
    if lacking:
        return Came("", lacking[0])
    answer = attempted(DROP, texts)
    drop = answer.values["drop"] if answer else None
    return Came("", f"{run.place}.length") if drop is None else float(drop)
