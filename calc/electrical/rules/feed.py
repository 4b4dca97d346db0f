"""Judgements on the feed of a fuse behind a main fuse."""

# fmt: off
from calc.electrical.fuse_site import FeedLoad
from calc.judge import Level, Rule

BELOW_LOAD = Rule[FeedLoad](
    id="feed.below-load", level=Level.STOP, when=lambda f: f.below_load, source="practice",
    headline="Say what feeds this fuse: the feed of {conductor} carries {ampacity}, and the load takes {current}.",
    text="Enter the feed as it is, or say that the fuse is at the battery: a short there is far stronger.",
)
