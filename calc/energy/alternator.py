"""An alternator: what it has left for a second bank, cold and hot, at idle and on the road.

In scope: one machine whose regulator holds its voltage. Out of scope: the starter battery's share,
what a slipping belt costs, voltage that the engine's computer changes from minute to minute.
"""

from dataclasses import dataclass
from functools import cache
from typing import Annotated

from calc.tables import table
from calc.units.compare import at_most
from calc.units.covered import Enumeration
from calc.units.si import Amperes, Share, Tag, Volts

HOT, COLD = "hot", "cold"  # states of the published machine
IDLE, DRIVING, FAST = 1300, 2500, 5000  # rpm of the alternator, in the published table
# For a nominal 12 V: common practice, no source
VEHICLE: Annotated[Volts, Tag("voltage that an engine holds in a vehicle")] = 14.4
# More is a regulator that has failed: common practice, no source
MAX_VEHICLE_VOLTAGE: Annotated[Volts, Tag("most that a vehicle's battery is given")] = 15.5


class StateName(Enumeration):
    """A state of an alternator: of the published machine, or by the reader's own share."""

    COLD_IDLE = "cold-idle"
    COLD_DRIVING = "cold-driving"
    HOT_IDLE = "hot-idle"
    HOT_DRIVING = "hot-driving"
    HOT_FAST = "hot-fast"
    OWN_IDLE = "own-idle"
    OWN_FOR_HOURS = "own-for-hours"


_PUBLISHED = {
    StateName.COLD_IDLE: (COLD, IDLE),
    StateName.COLD_DRIVING: (COLD, DRIVING),
    StateName.HOT_IDLE: (HOT, IDLE),
    StateName.HOT_DRIVING: (HOT, DRIVING),
    StateName.HOT_FAST: (HOT, FAST),
}


@dataclass(frozen=True, kw_only=True)
class Alternator:
    """An alternator of a rating, and the load of the vehicle itself.

    Hot it gives a share of its rating, `idle_share` at idle and `hot_share` for hours on end.
    """

    rating: Amperes
    vehicle_load: Amperes
    idle_share: Share
    hot_share: Share


@dataclass(frozen=True, kw_only=True)
class State:
    """What an alternator gives in one state, what is left for the bank, and its load there."""

    name: StateName
    share: Share
    output: Amperes
    left: Amperes
    load: Share | None

    def __str__(self) -> str:
        return f"{self.name}: {self.output:.4g} A"


@dataclass(frozen=True, kw_only=True)
class AlternatorLoad:
    """What is `asked` of an alternator for a bank, None where nothing can be.

    `total` is that with the vehicle's own, `share` its share of the rating. `hot_left` is left for
    the bank by a hot machine for hours on end, `idle_left` at idle; `fed` is the share of what is
    asked that a hot one has.
    """

    alternator: Alternator
    asked: Amperes | None
    total: Amperes | None
    share: Share | None
    hot_left: Amperes
    idle_left: Amperes
    fed: Share | None

    def within(self, share: float) -> bool:
        """Return whether no more than a `share` of the rating is asked."""
        return self.total is None or at_most(self.total, self.alternator.rating * share)

    @property
    def states(self) -> tuple[State, ...]:
        """What there is in each state: one published machine's shares, then the reader's own."""
        shares = {name: published_shares()[key] for name, key in _PUBLISHED.items()}
        shares[StateName.OWN_IDLE] = self.alternator.idle_share
        shares[StateName.OWN_FOR_HOURS] = self.alternator.hot_share
        rated, total = self.alternator.rating, self.total
        return tuple(
            State(
                name=name,
                share=share,
                output=rated * share,
                left=left_for_bank(
                    rated=rated, share=share, vehicle_load=self.alternator.vehicle_load
                ),
                load=None if total is None else total / (rated * share),
            )
            for name, share in shares.items()
        )


@cache
def published_shares() -> dict[tuple[str, int], float]:
    """Return one published machine's output as a share of its rating, by state and rpm.

    Technical manual of a marine diesel, page 83: a 50 A class alternator at 13.5 V.
    """
    return {
        (row["state"], int(row["alternator_rpm"])): float(row["amps"]) / float(row["rated_a"])
        for row in table("alternator_output").rows
    }


def left_for_bank(*, rated: float, share: float, vehicle_load: float) -> float:
    """Return what an alternator of `rated` [A] has left [A] beside `vehicle_load` [A].

    `share` [0..1] of its rating is what it gives in this state. It is never below zero.
    """
    return max(0.0, rated * share - vehicle_load)


def alternator_load(alternator: Alternator, asked: float | None) -> AlternatorLoad:
    """Return how an `alternator` bears what is `asked` [A] of it for a bank, if anything can be."""
    hot, idle = (
        left_for_bank(rated=alternator.rating, share=share, vehicle_load=alternator.vehicle_load)
        for share in (alternator.hot_share, alternator.idle_share)
    )
    total = None if asked is None else alternator.vehicle_load + asked
    return AlternatorLoad(
        alternator=alternator,
        asked=asked,
        total=total,
        share=None if total is None else total / alternator.rating,
        hot_left=hot,
        idle_left=idle,
        fed=min(1.0, hot / asked) if asked else None,
    )


def vehicle_blocks(engine_voltage: float) -> int:
    """Return how many times 12 V a vehicle has, by the voltage [V] that its engine holds."""
    return max(1, round(engine_voltage / VEHICLE))


def max_vehicle_voltage(engine_voltage: float) -> float:
    """Return the most [V] that the battery of a vehicle is given; 12, 24 V … by `engine_voltage`.

    Common practice, no source. More is a regulator that has failed.
    """
    return MAX_VEHICLE_VOLTAGE * vehicle_blocks(engine_voltage)
