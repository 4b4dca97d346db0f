"""wire-size explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

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
        Point("To stay cool {for_heat} is enough, but to keep the voltage it takes {for_drop}."),
        Point("The appliance takes {current} over {length} of cable."),
        Point("A thick cable is paid for once. A thin one wastes energy every day."),
    ),
    neglect=(
        Point("The cable gets hot, or the appliance at its end does not work.", "stop"),
        Point("A thinner cable gets hot, dims the lights and stops the fridge before the battery is empty."),
    ),
    cautions=(
        Point("Fire: every cable needs a fuse close to the battery, chosen for that cable."),
    ),
    bars=(Bar("Lost in the cable", "drop"), Bar("You allow", "allowed")),
)
