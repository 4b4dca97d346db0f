"""fuse-choice explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not use the {fitted} fuse here.", "stop"),
        Point("No fuse suits both this cable and this load: change the cable first.", "fuse.window-closed"),
        Point("Ask the appliance’s maker first: its label allows a smaller fuse than it needs.", "fuse.label-too-small"),
        Point("Do not fit a fuse here yet: put one thing right first.", "stop"),
        Point("Fit a {fuse} fuse, once one point is settled.", "caution"),
        Point("Settle one point of this fuse before you use it.", "caution"),
        Point("Fit a {fuse} fuse at the start of this cable.", "fine"),
        Point("Fit a fuse between {lowest} and {highest} at the start of this cable.", "fine"),
    ),
    reasons=(
        Point("The fuse must be {lowest} or more, or it blows in normal use."),
        Point("The cable takes a fuse of {highest} at most. A larger one lets it overheat."),
        Point("In a short circuit {fault_here} flows here, and the fuse must be made to stop that."),
        Point("A fuse protects the cable: its size follows the cable, not the appliance."),
        Point("The appliance needs {current}."),
    ),
    neglect=(
        Point("In a short circuit the cable glows before the fuse opens, and the van can burn.", "stop"),
        Point("With a wrong fuse the cable can catch fire, or the fuse blows again and again."),
    ),
    cautions=(
        Point("Fire: never replace a blown fuse by a larger one."),
    ),
    bars=(Bar("The load needs", "lowest"), Bar("The fuse there", "fitted", "stop"), Bar("Fuse", "fuse", "fine caution"), Bar("The cable allows", "highest")),
)
