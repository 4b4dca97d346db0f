"""People asleep in a closed space: their warmth, and the fresh air for each.

In scope: air changes as they are given. Out of scope: how much air a vent passes, and moisture.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.comfort.heat_loss import HeatLoss
from calc.units.compare import at_least
from calc.units.constants import HOUR
from calc.units.si import (
    AirChangesPerSecond,
    CubicMetresPerSecond,
    HeatWatts,
    Number,
    RoomCubicMetres,
    Tag,
)

# Below which a closed van is stuffy: building practice, draught-proofed rooms
FEW_AIR_CHANGES: Annotated[AirChangesPerSecond, Tag("fewest air changes")] = 0.5 / HOUR
# Outside air for each sleeper: common practice, no source
FRESH_AIR: Annotated[CubicMetresPerSecond, Tag("fresh air for a sleeper")] = 15 / HOUR


@dataclass(frozen=True, kw_only=True)
class Sleepers:
    """People asleep in a space: their warmth, the fresh air for each, and the loss beside them.

    `fresh` is None while nobody sleeps there.
    """

    people: Number
    person: HeatWatts
    air_changes: AirChangesPerSecond
    volume: RoomCubicMetres
    people_heat: HeatWatts
    night_loss: HeatWatts
    fresh: CubicMetresPerSecond | None

    @property
    def stuffy(self) -> bool:
        """Whether there is little fresh air for the space, or for each of them."""
        return not at_least(self.air_changes, FEW_AIR_CHANGES) or (
            self.fresh is not None and not at_least(self.fresh, FRESH_AIR)
        )


def sleepers(heat: HeatLoss, *, people: float, person: float) -> Sleepers:
    """Return `people` asleep who give `person` [W] each, in the space that loses `heat`."""
    volume = heat.box.volume
    return Sleepers(
        people=people,
        person=person,
        air_changes=heat.air_changes,
        volume=volume,
        people_heat=people * person,
        night_loss=max(heat.loss - people * person, 0.0),
        fresh=volume * heat.air_changes / people if people else None,
    )
