"""wire-size explained to a client."""

# fmt: off
from collections.abc import Callable

from calc.electrical.sizing import Decides
from calc.sheets.wire.wire_size.calculate import WireSize
from calc.worksheet.explain import Bar, Explanation, Point


def _by(decides: Decides | None) -> Callable[[WireSize], bool]:
    return lambda found: found.sized.decides is decides


EXPLANATION = Explanation(
    advice=(
        Point("No single cable does this job as planned: shorten the run, or reduce the load.", "circuit.no-size"),
        Point("Do not build this circuit as planned: put one thing right first.", "stop"),
        Point("Use {conductor} cable, once one point is settled.", "caution"),
        Point("Settle one point before you buy this cable.", "caution"),
        Point("Use {conductor} cable, with a {fuse} fuse close to the battery.", "fine"),
        Point("Use {conductor} cable.", "fine"),
    ),
    reasons=(
        Point("Over {length} at {current} it loses {drop_percent} of the voltage, and you allow {limit}."),
        Point("{load_voltage} of {voltage} reaches the appliance."),
        Point("To stay cool {for_heat} is enough, but to keep the voltage it takes {for_drop}.", when=_by(Decides.DROP)),
        Point("The appliance takes {current} over {length} of cable.", when=_by(None)),
        Point("A thick cable is paid for once. A thin one wastes energy every day.", when=_by(None)),
        Point("To keep the voltage {for_drop} is enough, but to stay cool it takes {for_heat}.", when=_by(Decides.HEAT)),
        Point("To keep the voltage and to stay cool it takes {for_drop}.", when=_by(Decides.BOTH)),
        Point("On the size below {conductor} no standard fuse both carries the load and protects the cable.", when=_by(Decides.FUSE)),
    ),
    neglect=(
        Point("The cable gets hot, or the appliance at its end does not work.", "stop"),
        Point("On a thinner cable the appliance works badly, or stops before the battery is empty.", when=_by(Decides.DROP)),
        Point("A thinner cable gets too hot, and its insulation can burn.", when=_by(Decides.HEAT)),
        Point("A thinner cable gets too hot, and the appliance works badly.", when=_by(Decides.BOTH)),
        Point("With a thinner cable the fuse blows in normal use, or the cable overheats before it blows."),
    ),
    cautions=(
        Point("Fire: every cable needs a fuse close to the battery, chosen for that cable."),
    ),
    bars=(Bar("Lost in the cable", "drop"), Bar("You allow", "allowed")),
)
