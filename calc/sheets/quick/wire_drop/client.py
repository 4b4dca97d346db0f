"""wire-drop explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not use this cable like this: it can overheat, or the appliance gets too little voltage.", "stop"),
        Point("Change the cable to {smallest_conductor}, or move the appliance closer.", "run.drop-over-limit"),
        Point("Use a thicker cable: no fuse suits both this cable and its load.", "fuse.window-narrow fuse.no-rating-between"),
        Point("Keep the {conductor} cable: {load_voltage} of {voltage} reaches the appliance.", "fine"),
        Point("Use a thicker cable: this one can get too hot where it is connected.", "copper.hot-at-lugs"),
        Point("Find out why this cable is so hot before you use it again.", "run.copper-too-hot"),
        Point("Use the next thicker cable: warm, this one loses more than you allow.", "circuit.warm-drop-over-limit"),
        Point("Space the parallel cables apart: side by side they heat each other.", "run.parallel-better-apart"),
        Point("Give each of the parallel cables its own fuses, or use one thicker cable.", "circuit.one-alone-too-thin run.three-in-parallel"),
        Point("Move cable and fuse out of the hot air, or have their makers’ ratings checked.", "fuse.hot-air-"),
        Point("Ask whether the appliance works with {load_voltage}: so much loss is unusual.", "run.drop-beyond-usual-limit"),
        Point("Reduce the load, or move the appliance closer: no single cable keeps the voltage here.", "run.drop-over-limit"),
        Point("Put right what is named below before you use this cable.", "caution"),
    ),
    reasons=(
        Point("On its way through the cable {drop_percent} of the voltage is lost, and you allow {limit}."),
        Point("At {current}, {load_voltage} is left for the appliance."),
        Point("The lost part becomes {loss} of heat in the cable."),
        Point("The smallest cable for your limit is {smallest_conductor}."),
        Point("A cable gets hot where more current flows than it can carry."),
        Point("Its length counts twice: there and back."),
    ),
    neglect=(
        Point("The cable can get hot enough to burn, or the appliance stops when you need it.", "stop"),
        Point("The appliance works badly or the cable gets hot, and the battery seems empty before it is.", "caution"),
        Point("With a thinner or longer cable the appliance works badly, or stops before the battery is empty."),
    ),
    cautions=(
        Point("Fire: every cable needs a fuse close to the battery, chosen for that cable."),
    ),
    bars=(Bar("Lost in the cable", "drop"), Bar("You allow", "allowed")),
)
