"""remote-switch explained to a client."""

# fmt: off
from calc.electrical.switching import Route
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not switch it like this: the contact can burn, or the relay does not close.", "stop"),
        Point("Settle one point before this switch is fitted.", "caution"),
        Point("Fit a relay beside the appliance, and a thin {control_conductor} wire to the switch.", "fine", when=lambda found: found.route is Route.RELAY),
        Point("Fit a switch for {switch_rating} or more in the line itself.", "fine"),
    ),
    reasons=(
        Point("The appliance takes {line_current}: what breaks that must be made for {switch_rating}."),
        Point("With the switch in the line itself, {line_conductor} cable would go to it and back."),
        Point("A relay that is held on takes {held_charge} a day.", when=lambda found: found.route is Route.RELAY),
        Point("A contact that is too small burns, or welds shut."),
        Point("The way to the switch is {distance} long."),
    ),
    neglect=(
        Point("A switch that is too small welds shut, and the appliance can no longer be switched off."),
    ),
    cautions=(
        Point("Fire: a switch marked for mains only can burn when it breaks battery current."),
    ),
    bars=(Bar("The appliance takes", "line_current"), Bar("The contact needs", "switch_rating")),
)
