"""find-fault explained to a client."""

# fmt: off
from calc.worksheet.explain import Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Switch off and make the van safe before anything else is done.", "stop"),
        Point("The cause is found: have it repaired as described in the working.", "search.found"),
        Point("Change this circuit: it is not made for its load.", "search.load-over-its-fuse search.cable-too-small search.below-cut-out"),
        Point("Nothing was found: use the van, and note when the trouble comes back.", "search.no-fault-found"),
        Point("Go on with the search: the cause is not found yet.", "caution"),
        Point("Go on with the search: the cause is not found yet.", "fine"),
    ),
    reasons=(
        Point("A fault is found by measuring from the battery outward, one step at a time."),
        Point("Each reading is compared with what a healthy circuit of this size shows."),
        Point("So no part is bought on a guess."),
    ),
    neglect=(
        Point("What is hot or smells can catch fire while you drive or sleep.", "stop"),
        Point("An electrical fault seldom mends itself. It comes back, usually far from home."),
    ),
    cautions=(
        Point("Fire: if anything is hot, smokes or smells, switch off, get out and keep away."),
    ),
)
