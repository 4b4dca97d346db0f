"""converter explained to a client."""

# fmt: off
from calc.worksheet.explain import Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not use this converter as planned: put one thing right first.", "stop"),
        Point("Use this converter once one point is settled.", "caution"),
        Point("Use this converter: it gives {available}, and your appliances need {load}.", "fine"),
    ),
    reasons=(
        Point("Your appliances need {load}. For hours the converter gives {available}."),
        Point("It costs {lost} a day, part of it while nothing is on."),
        Point("It gets warm: {loss} becomes heat, and that needs air."),
        Point("It needs a {input_fuse} fuse before it and a {output_fuse} fuse behind it."),
    ),
    neglect=(
        Point("It switches off when you need it, overheats in its cupboard, or nothing protects its cables.", "stop"),
        Point("An overloaded converter switches off when you need it, or overheats in its cupboard."),
    ),
)
