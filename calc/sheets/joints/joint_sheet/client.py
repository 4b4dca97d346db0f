"""joint-sheet explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not tighten by this list yet: one value on it would do damage.", "stop"),
        Point("Settle one entry before this list is used.", "caution"),
        Point("Tighten all {joint_count} connections by this list, and sign for each.", "fine"),
    ),
    reasons=(
        Point("{joint_count} connections carry the current of this van."),
        Point("The maker of the part gives no value for {without_maker} of them.", when=lambda found: found.without_maker > 0),
        Point("The values run from {torque_least} to {torque_most}: one setting of the wrench does not do.", when=lambda found: found.torque_most > found.torque_least),
        Point("A dated list shows who tightened what, and what to check after the first trip."),
        Point("It takes an hour with the wrench, and no parts."),
    ),
    neglect=(
        Point("One loose connection gets hot, stops the van, or starts a fire."),
    ),
    cautions=(
        Point("Short circuit: disconnect the battery before you put a wrench on its connections."),
    ),
    bars=(Bar("Smallest value", "torque_least"), Bar("Largest value", "torque_most")),
)
