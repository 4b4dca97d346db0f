"""alternator-charge explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

OVERLOADED = "alternator.over-rating alternator.charger-over-rating alternator.lfp-over-hot alternator.nothing-left alternator.hot-too-small alternator.relay-over-hot"

EXPLANATION = Explanation(
    advice=(
        Point("Do not drive like this: something overheats, or the battery is harmed.", "stop"),
        Point("Settle one point before you rely on charging while driving.", "caution"),
        Point("Count on {charge} from a drive of {hours}.", "fine"),
    ),
    reasons=(
        Point("Hot, the engine’s generator can spare {hot_left}; charging needs {asked}.", OVERLOADED),
        Point("A regulated charger of the right size takes only what the generator can spare.", OVERLOADED),
        Point("A drive of {hours} puts {charge} into the battery."),
        Point("After the drive the battery is at {end_state}."),
        Point("It works the engine’s generator to {alternator_load} of its rating."),
        Point("Charging begins with {initial_current}."),
        Point("Either battery can feed a short circuit, so the cable needs a fuse at both ends."),
        Point("The cable must carry all of the charging current, for hours."),
    ),
    neglect=(
        Point("Cable or generator can overheat on the first long drive, far from help.", "stop"),
        Point("With thin cable or a plain relay the battery is never full, and wears out early."),
    ),
    cautions=(
        Point("Fire: the cable between two batteries needs a fuse close to each of them."),
    ),
    bars=(
        Bar("Charging needs", "asked", OVERLOADED), Bar("The hot generator can spare", "hot_left", OVERLOADED),
        Bar("A drive gives", "charge", "fine caution"), Bar("The battery holds", "capacity", "fine caution"),
    ),
)
