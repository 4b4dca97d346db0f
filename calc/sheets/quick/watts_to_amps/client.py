"""watts-to-amps explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("This is more than the battery can give: choose a smaller appliance or a larger battery.", "stop"),
        Point("This appliance works the battery hard: settle one point before you rely on it.", "caution"),
        Point("Plan for it: {hours} of this takes {bank_share} of what you use of the battery.", "fine"),
        Point("Plan for it: {hours} of this takes {charge} from the battery.", "fine"),
    ),
    reasons=(
        Point("The appliance needs {power}, so the battery must give {current} all the time it runs."),
        Point("In {hours} it uses {energy}."),
        Point("That is {bank_share} of what you use of the battery before it is charged again."),
        Point("Half the time takes half as much."),
    ),
    neglect=(
        Point("The battery is empty before the job is done, or its cables get too hot.", "stop"),
        Point("It works at first, and fails on a cold night or with an older battery.", "caution"),
        Point("One evening the battery is empty, and nothing in the van works until it is charged."),
    ),
    cautions=(
        Point("Fire: a high current needs thick cable, and a fuse close to the battery."),
    ),
    bars=(Bar("This takes", "charge"), Bar("The battery gives", "gives")),
)
