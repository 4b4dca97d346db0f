"""A relay and a regulated charger side by side, each by the calculation of its own."""

from dataclasses import dataclass
from typing import Annotated

from calc.energy.drive import AlternatorCharge, changed
from calc.energy.feeds import Method
from calc.judge import Change
from calc.units.si import Amperes, Celsius, Coulombs, Share, Tag, Volts

# Cold copper lets a relay pass the most: our choice
COLD_COPPER: Annotated[Celsius, Tag("copper of a relay's run")] = 20.0
# Warm copper costs a charger the most: our choice
WARM_COPPER: Annotated[Celsius, Tag("copper of a charger's run")] = 60.0
USUAL_COPPER = {Method.RELAY: COLD_COPPER, Method.CHARGER: WARM_COPPER}


@dataclass(frozen=True, kw_only=True)
class Way:
    """What one `method` does on a van: the current at `first`, its `limit`, and the drive.

    `limit` is None where nothing limits it, `ends_at` is the voltage that the bank is taken to,
    `load` the share of the alternator's rating. The others are None where nothing flows.
    """

    method: Method
    first: Amperes | None
    limit: Amperes | None
    ends_at: Volts
    load: Share | None
    charge: Coulombs | None

    def __str__(self) -> str:
        return f"{self.method}: {self.first or 0:.3g} A"


def side_by_side(found: AlternatorCharge) -> tuple[Way, ...]:
    """Return what a relay and a charger do on the van of an answer. Raises NotCovered."""
    return tuple(_way(method, _by(method, found)) for method in Method)


def _by(method: Method, found: AlternatorCharge) -> AlternatorCharge:
    """Return the same by another `method`, with copper as warm as is usual for it."""
    here = Method(found.inputs["method"])
    if here is method:
        return found
    copper = found.inputs["copper"]
    usual = copper == USUAL_COPPER[here]
    values = {"method": method, "copper": USUAL_COPPER[method] if usual else copper}
    return changed(found, Change(values))


def _way(method: Method, found: AlternatorCharge) -> Way:
    return Way(
        method=method,
        first=found.initial_current,
        limit=found.charger.gives if found.charger else None,
        ends_at=found.voltage.voltage,
        load=found.load.share,
        charge=found.drive.charge if found.drive else None,
    )
