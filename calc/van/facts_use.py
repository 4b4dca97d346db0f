"""Facts of how a van is used: its circuits, and how warm or cool its nights and days are."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated

import calc
from calc.units.si import Celsius, HeatWatts, Number, Tag
from calc.van.bind import filled
from calc.van.facts import bar
from calc.van.judged import ways_to_type
from calc.van.judging import Fact, absent, known, there, told
from calc.van.record import Part, Van
from calc.van.worked import Outcome, attempted

# So that a mend does not stand right on the limit: our choice
MORE_AIR: Annotated[Number, Tag("vents of a mend against the least that does")] = 1.1

APPLIANCES = frozenset(
    {"household-appliance", "water-heater", "resistive-heat", "cooler", "hob", "pump", "other"}
)


@dataclass(frozen=True, kw_only=True)
class Circuit(Fact):
    """A circuit of a van. `minus` is the bar that a return belongs to, `block` a free way of the
    fuse block, `tank` whether the record
    has a water heater, which is judged by itself.
    """

    load: str | None
    route: str | None
    switch: str | None
    dimmer: str | None
    inverter_on: str | None
    fused: bool | None
    returns_by: str | None
    bond_point: bool | None
    chassis_bond: bool | None
    minus: str
    block: str
    power: str
    tank: bool

    @property
    def kept_on_inverter(self) -> bool:
        """Whether it is a household appliance for which the inverter stays on."""
        return (
            self.load == "household-appliance"
            and self.route == "inverter"
            and self.inverter_on == "day-and-night"
        )

    @property
    def heats_from_bank(self) -> bool:
        """Whether it makes heat of the bank."""
        return self.load == "resistive-heat"

    @property
    def undimmed(self) -> bool:
        """Whether it is a light that cannot be dimmed."""
        return self.load == "light" and self.dimmer in ("no", "none")

    @property
    def hidden(self) -> bool:
        """Whether it is an appliance that nobody can switch off where they sit."""
        asked = self.load in APPLIANCES and not (self.load == "water-heater" and self.tank)
        return asked and self.switch in ("hidden", "none")


def circuits(van: Van) -> Iterator[Circuit]:
    """Yield each circuit."""
    inverter, minus, free = van.one("inverter"), bar(van, "minus"), _free_way(van)
    for part in van.all("circuits"):
        yield Circuit(
            at=part.place,
            part=part.name,
            load=known(part, "load"),
            route=known(part, "route"),
            switch=known(part, "switch"),
            dimmer=known(part, "dimmer"),
            inverter_on=known(inverter, "inverter_on"),
            fused=there(part, "fuse"),
            returns_by=known(part, "return_by"),
            bond_point=there(part, "bond_point"),
            chassis_bond=there(van.one("van"), "chassis_bond"),
            minus=minus,
            block=free,
            power=told(part, "power") or told(part, "current"),
            tank=van.one("water_heater") is not None,
        )


def _free_way(van: Van) -> str:
    """Return a terminal of the first fuse block that no circuit starts at, nothing without one."""
    block = next((one.id for one in van.all("bars") if known(one, "kind") == "fuse-block"), "")
    taken = {known(one, "from") for one in van.all("circuits")}
    ways = (f"{block}.{number}" for number in range(1, len(taken) + 2))
    return next(one for one in ways if one not in taken) if block else ""


@dataclass(frozen=True, kw_only=True)
class WaterTank(Fact):
    """A water heater: by what, its switch, and the places of the circuits that feed it."""

    way: str | None
    switch: str | None
    circuits: tuple[str, ...]


def water_tanks(van: Van) -> Iterator[WaterTank]:
    """Yield the water heater, if there is one."""
    for part in van.all("water_heater"):
        own = [one.place for one in van.all("circuits") if known(one, "load") == "water-heater"]
        yield WaterTank(
            at=part.place,
            part=part.name,
            way=known(part, "way"),
            switch=known(part, "switch"),
            circuits=tuple(own),
        )


@dataclass(frozen=True, kw_only=True)
class Warmth(Fact):
    """A heater that makes heat of the bank, or burns."""

    fuel: str | None


def warmths(van: Van) -> Iterator[Warmth]:
    """Yield the heater, if there is one."""
    for part in van.all("heater"):
        yield Warmth(at=part.place, part=part.name, fuel=known(part, "fuel"))


@dataclass(frozen=True, kw_only=True)
class Pattern(Fact):
    """A pattern of use against what the van has for its nights and days."""

    heats: str | None
    cools: str | None
    heater: bool | None
    cooler: bool | None
    outside: Celsius | None
    hottest: Celsius | None


def patterns(van: Van) -> Iterator[Pattern]:
    """Yield each pattern of use."""
    heater, cooler = _has(van, "heater"), _has(van, "cooler")
    for part in van.all("patterns"):
        yield Pattern(
            at=part.place,
            part=part.name,
            heats=known(part, "heats"),
            cools=known(part, "cools"),
            heater=heater,
            cooler=cooler,
            outside=part.si("outside"),
            hottest=part.si("hottest"),
        )


def _has(van: Van, kind: str) -> bool | None:
    return True if van.one(kind) else False if absent(van, kind) else None


@dataclass(frozen=True, kw_only=True)
class Bay(Fact):
    """The electrical bay: whether any air gets in, and how much it would need."""

    vents: bool | None
    fan: bool | None
    vent_text: str
    fan_text: str


def bays(van: Van) -> Iterator[Bay]:
    """Yield the bay, if the record has one in which anything gets warm."""
    for part in van.all("bay"):
        answer = _answer(van, "enclosure-airflow", None)
        if answer is None or not answer.values["heat"]:
            continue
        if (cooler := _for_full_output(van, part)) is not None:
            answer = cooler
        sheet = calc.find("enclosure-airflow")
        vents, fan = (
            next(ways_to_type(sheet, key, MORE_AIR * value), "") if value else ""
            for key, value in (
                ("vents", answer.values["vent_area"]),
                ("fan", answer.values["airflow"]),
            )
        )
        yield Bay(
            at=part.place,
            part=part.name,
            vents=there(part, "vents") and bool(part.si("vents") or not part["vents"].known),
            fan=there(part, "fan"),
            vent_text=vents,
            fan_text=fan,
        )


def _for_full_output(van: Van, bay: Part) -> Outcome | None:
    """Return the bay as cool as its devices need to give all that they are rated for."""
    rated, limit = bay.si("rated_to"), bay.si("inside_limit")
    if rated is None or limit is None or limit <= rated:
        return None
    texts = filled(van, "enclosure-airflow", None).texts
    return attempted("enclosure-airflow", {**texts, "inside_limit": bay.text("rated_to")})


@dataclass(frozen=True, kw_only=True)
class Night(Fact):
    """A cold night of a pattern: what the van loses, and what its heater gives."""

    loss: HeatWatts
    output: HeatWatts | None
    wanted: HeatWatts
    inside: str
    outside: str
    charge: str


def nights(van: Van) -> Iterator[Night]:
    """Yield the night of each pattern in which the heater is used."""
    for part in van.all("patterns"):
        if known(part, "heats") != "yes" or van.one("heater") is None:
            continue
        answer = _answer(van, "heat-loss", part)
        if answer is not None:
            yield Night(
                at=part.place,
                part=part.name,
                loss=answer.values["loss"],
                output=answer.values["heater_output"],
                wanted=max(answer.values["to_buy"], answer.values["high"]),
                inside=answer.inputs["inside"].text,
                outside=answer.inputs["outside"].text,
                charge=answer.writer.shown["charge"],
            )


@dataclass(frozen=True, kw_only=True)
class HotDay(Fact):
    """A hot day of a pattern: what heat comes in, and what the cooler takes out."""

    load: HeatWatts | None
    cooling: HeatWatts
    inside: str
    outside: str
    charge: str


def hot_days(van: Van) -> Iterator[HotDay]:
    """Yield the day of each pattern in which the cooler is used."""
    for part in van.all("patterns"):
        if known(part, "cools") != "yes" or van.one("cooler") is None:
            continue
        answer = _answer(van, "cooling-day", part)
        if answer is not None:
            yield HotDay(
                at=part.place,
                part=part.name,
                load=answer.values["heat_load"],
                cooling=answer.values["cooling"],
                inside=answer.inputs["inside"].text,
                outside=answer.inputs["outside"].text,
                charge=answer.writer.shown["charge"],
            )


def _answer(van: Van, sheet: str, part: Part | None) -> Outcome | None:
    found = filled(van, sheet, part)
    return None if found.lacking else attempted(sheet, found.texts)
