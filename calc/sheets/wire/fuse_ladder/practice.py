"""Practice for fuse-ladder."""

from calc.electrical.selectivity import Order
from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="order",
            text="A {downstream} fuse ({downstream_family}) is fed through one of {upstream} ({upstream_family}). A fault of {fault_current} flows through both. By the published time limits, does the downstream fuse open first?",
            draw={
                "downstream": ("5 A", "10 A", "15 A", "20 A", "30 A"),
                "downstream_family": ("blade, miniature (type F)", "blade, regular (type C)"),
                "upstream": ("40 A", "60 A", "80 A"),
                "upstream_family": ("blade, large (type E)",),
                "fault_current": ("60 A", "120 A", "250 A", "400 A"),
            },
            choices=(Order.CERTAIN, Order.NOT_CERTAIN, Order.WILL_NOT),
            slips=(
                Slip(
                    reply=Order.CERTAIN,
                    text="The limits overlap: the latest opening of the downstream fuse is not before the earliest of the upstream one.",
                ),
                Slip(
                    reply=Order.NOT_CERTAIN,
                    text="The limits settle it: compare the latest opening of the one with the earliest of the other.",
                ),
                Slip(
                    reply=Order.WILL_NOT,
                    text="Nothing says that the upstream fuse opens first. Compare the latest opening of the one with the earliest of the other.",
                ),
            ),
        ),
        Task(
            asks="upstream_percent",
            text="A {downstream} circuit is shorted with {fault_current} while the other circuits draw {other_load} from the same {upstream} main fuse. At what share of its rating is the main fuse loaded?",
            draw={
                "downstream": ("10 A", "15 A"),
                "upstream": ("60 A", "80 A", "100 A"),
                "fault_current": ("120 A", "200 A", "300 A"),
                "other_load": ("20 A", "30 A", "45 A"),
            },
            slips=(
                Slip(
                    inputs={"other_load": "0 A"},
                    text="The main fuse carries the other circuits as well: add their current.",
                ),
                Slip(
                    formula="upstream_current / downstream",
                    text="That is against the downstream fuse. Divide by the rating of the main fuse.",
                ),
            ),
        ),
    )
)
