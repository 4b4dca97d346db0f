"""Fields and cautions that the worksheets of comfort share."""

from collections.abc import Callable

from calc.comfort.heaters import carbon_monoxide
from calc.declare import Remark, Test
from calc.fields import Choice, Option, Quantity
from calc.kinds import CHARGE, RATIO

UNCHECKED, BOTH_OUTSIDE, INSIDE = "not checked", "both outside", "into the living space"
FITTED, NO_ALARM = "fitted and tested", "not fitted"

EXHAUST = Choice(
    id="exhaust", label="Combustion air and exhaust", default=UNCHECKED,
    options=(
        Option(UNCHECKED),
        Option(BOTH_OUTSIDE, aliases=("room sealed", "flued")),
        Option(INSIDE, aliases=("unflued", "inside")),
    ),
    hint="Both must lead through the shell, by pipes that are whole and tight.",
)
ALARM = Choice(
    id="alarm", label="Carbon monoxide alarm", default=UNCHECKED,
    options=(Option(UNCHECKED), Option(FITTED, aliases=("fitted", "yes")), Option(NO_ALARM, aliases=("none", "no"))),
    hint="To EN 50291 or UL 2034, within its date, pressed to test before you sleep.",
)
BANK = Quantity(
    id="capacity", label="Bank capacity", symbol="C", kinds=(CHARGE,), default="200 A·h", low="1 A·h", high="20000 A·h",
    hint="As rated by the maker; parallel batteries add.",
)
USABLE = Quantity(
    id="usable", label="Share you use", symbol="u", kinds=(RATIO,), default="50 %", low="1 %", high="100 %",
    hint="Of the capacity: about 50 % of lead-acid, 80 % of LFP, less in the cold.",
)


def co_list() -> tuple[str, ...]:
    """Return the alarm points and limits of carbon monoxide as lines to read."""
    return tuple(map(str, carbon_monoxide()))


def flame_remarks(flame: Test) -> tuple[Remark, ...]:
    """Return the cautions that stand wherever something burns."""

    def beside(test: Test) -> Callable[..., bool]:
        return lambda v: flame(v) and test(v)

    return (
        Remark(when=beside(lambda v: v.exhaust == INSIDE), source="co-limits",
               says="Danger of death: a flame that breathes the air you sleep in fills it with carbon monoxide and water and uses up its oxygen. An open window does not make it safe. Do not light it."),
        Remark(when=flame, source="co-alarm",
               says="Carbon monoxide has no smell. Sleep with a tested alarm where its maker says, near the bed; when it sounds, or with headache and nausea, get everyone out, then turn the heat off and call for help."),
        Remark(when=flame, source="practice",
               says="Fuel heaters are fitted to the maker's instructions and local rules, gas by a licensed fitter. Exhaust ends clear of windows, of the floor and of the heater's own air; keep snow away from both pipes."),
    )
