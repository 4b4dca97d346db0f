"""battery-air explained to a client."""

# fmt: off
from calc.comfort.battery_air import BatteryAir, CellKind
from calc.worksheet.explain import Bar, Explanation, Point


def _lithium(found: BatteryAir) -> bool:
    return found.gassing.kind is CellKind.LITHIUM


def _gasses(found: BatteryAir) -> bool:
    return not _lithium(found)


EXPLANATION = Explanation(
    advice=(
        Point("Do not use this lithium battery until its management system is proven.", "battery.lithium"),
        Point("Do not charge this battery where it is: its gas can collect and explode.", "stop"),
        Point("Settle one point before you charge this battery.", "caution"),
        Point("Keep two openings of at least {opening} each, from the battery box to the outside.", "fine"),
        Point("Fit this battery without a vent: in normal charging it makes no gas.", "fine"),
    ),
    reasons=(
        Point("While it charges, this kind of battery makes gas: it needs {airflow} of air."),
        Point("Two openings, one low and one high, move the air by themselves.", when=_gasses),
        Point("The gas burns at the least spark.", when=_gasses),
        Point("A lithium battery with a management system makes no gas in normal charging.", when=_lithium),
        Point("The management system stops overcharge, deep discharge and charging in frost.", when=_lithium),
        Point("It still has to be fixed and kept dry, with a fuse close to it."),
    ),
    neglect=(
        Point("Overcharged without a management system, a lithium battery can burn.", "battery.lithium"),
        Point("Gas collects, and one spark of a switch can blow the box apart.", when=_gasses),
        Point("A battery without its management system can be overcharged, and then it can burn."),
    ),
    bars=(Bar("Opening needed", "opening"), Bar("Opening there", "vents")),
)
