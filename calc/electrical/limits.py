"""Old names of what stands in `cable` and `protection` now."""

from calc.electrical.ampacity import RuleSet, Surroundings
from calc.electrical.cable import THICKEST_ROW, UNMARKED_INSULATION, Cable, cable
from calc.electrical.cable import USUAL_INSULATION as USUAL_INSULATION
from calc.electrical.conductors import AWG, GaugeReading, conductor, copper_area
from calc.units.covered import NotCovered

THICKEST, UNMARKED = THICKEST_ROW, UNMARKED_INSULATION
HOT_COPPER = 90.0  # °C, what lugs and fuse holders are made for: common practice, no source
HOT_AIR = 50.0  # °C, the hottest air that the boats' rules have figures for
WARM_AIR = 40.0  # °C, from which makers of fuses give a lower rating: common practice, no source


def beyond_rows(name: str, gauge_reading: GaugeReading = AWG) -> bool:
    return copper_area(name, gauge_reading) > conductor(THICKEST).area * 1.01


def uncounted_bundle(rule_set: str, bears: Cable, together: float) -> bool:
    return bears.bundle_left_out


def unmarked(
    *,
    name: str,
    surroundings: Surroundings,
    bundled: float,
    ambient: float,
    rule_set: RuleSet,
    gauge_reading: GaugeReading,
) -> float | None:
    try:
        return cable(
            conductor=name,
            insulation=105.0,
            surroundings=surroundings,
            bundled=bundled,
            ambient=ambient,
            max_voltage=1.0,
            rule_set=rule_set,
            gauge_reading=gauge_reading,
        ).ampacity_at_60c_insulation
    except NotCovered:
        return None


def copper_rise(*, insulation: float, air: float, current: float, bears: float) -> float:
    return (insulation - air) * (current / bears) ** 2
