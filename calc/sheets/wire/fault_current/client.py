"""fault-current explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not use the {fuse} fuse here: put one thing right first.", "stop"),
        Point("Do not use this cable yet: nothing would stop a short circuit in it.", "stop"),
        Point("Settle one point before you rely on the fuse of this cable.", "caution"),
        Point("Fit a fuse that can stop {interrupt_near}, close to the battery.", "fine"),
        Point("Fit a fuse that can stop {near_fault}, close to the battery.", "fine"),
    ),
    reasons=(
        Point("A short circuit at the battery passes up to {near_fault}."),
        Point("At the far end of the cable it is still up to {fault_current}."),
        Point("The cable takes that for {withstand} before its insulation is ruined."),
        Point("The weakest short, {fault_low}, must open the fuse as well."),
        Point("A fuse that is too weak can burst, or keep an arc burning."),
    ),
    neglect=(
        Point("One chafed cable or dropped spanner can set the van on fire within seconds."),
    ),
    cautions=(
        Point("Fire: the main fuse belongs on the plus post of the battery, as close as possible."),
    ),
    bars=(Bar("Short at the battery", "near_fault"), Bar("At the far end, most", "fault_current"), Bar("At the far end, least", "fault_low")),
)
