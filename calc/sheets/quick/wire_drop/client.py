"""wire-drop explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not use this cable like this: it can overheat, or the appliance gets too little voltage.", "stop"),
        Point("Change the cable to {smallest_conductor}, or move the appliance closer.", "run.drop-over-limit run.drop-beyond-usual"),
        Point("Settle one point of this cable before you use it.", "caution"),
        Point("Keep the {conductor} cable: {load_voltage} of {voltage} reaches the appliance.", "fine"),
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
        Point("Lights dim, pump and fridge work badly, and the battery seems empty before it is.", "caution"),
        Point("With a thinner or longer cable, lights dim and the fridge stops before the battery is empty."),
    ),
    cautions=(
        Point("Fire: every cable needs a fuse close to the battery, chosen for that cable."),
    ),
    bars=(Bar("Lost in the cable", "drop"), Bar("You allow", "allowed")),
)
