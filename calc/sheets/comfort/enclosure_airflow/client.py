"""enclosure-airflow explained to a client."""

# fmt: off
from calc.comfort.enclosure import Enclosure, Ventilation
from calc.worksheet.explain import Bar, Explanation, Point


def _blown(enclosure: Enclosure) -> bool:
    return enclosure.bay.ventilation is Ventilation.FAN


EXPLANATION = Explanation(
    advice=(
        Point("Give this cupboard air before you use it: it gets far too hot.", "stop"),
        Point("Improve the air in this cupboard before summer.", "caution"),
        Point("Keep these vents open: it gets to {reached}, and you allow {inside_limit}.", "fine"),
        Point("Give the cupboard two openings of {vent_area} each.", "fine"),
    ),
    reasons=(
        Point("What is inside gives off {heat} of heat."),
        Point("With {outside} outside, it gets to {reached} inside."),
        Point("It needs {airflow} of air, by two openings of {vent_area} each."),
        Point("Warm air leaves at the top only if cool air can come in at the bottom."),
        Point("Electronics that are always hot charge slowly and die early."),
    ),
    neglect=(
        Point("Chargers slow down in the heat, just when the sun is strong, and fail years early."),
    ),
    bars=(
        Bar("Opening needed", "vent_area", when=lambda e: not _blown(e)), Bar("Opening there", "vents", when=lambda e: not _blown(e)),
        Bar("Air needed", "airflow", when=_blown), Bar("Air from the fan", "fan", when=_blown),
    ),
)
