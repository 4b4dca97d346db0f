"""joint-heat explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

BY_TEMPERATURE = "contact.thermal-class contact.worst-thermal-class"

EXPLANATION = Explanation(
    advice=(
        Point("Measure again: these readings cannot belong together.", "contact.current-not-reached"),
        Point("Switch this circuit off and remake the connection: it gets too hot.", "stop"),
        Point("Look into this connection soon: something speaks against it.", "caution"),
        Point("Leave this connection, and measure it again next year.", "fine"),
    ),
    reasons=(
        Point("Its resistance is {resistance}. A healthy one has {sound_high} at most."),
        Point("At full load it makes {full_heat} of heat, in a spot as small as a fingernail."),
        Point("Heat loosens and corrodes it, and that makes more heat: it gets worse by itself."),
        Point("It costs {drop_share} of the voltage, and more as it ages."),
    ),
    neglect=(
        Point("It gets hotter until the insulation melts. It can start a fire, often on the first long charge.", "stop caution"),
        Point("Connections loosen with heat and shaking. One that nobody measures shows itself by smoke."),
    ),
    cautions=(
        Point("Burns: let it cool, and disconnect the battery before you open a connection."),
    ),
    bars=(
        Bar("This connection", "resistance"), Bar("A healthy one, at most", "sound_high"),
        Bar("Warmer, as measured", "rise", of=BY_TEMPERATURE), Bar("Warmer, at full load", "worst_rise", of=BY_TEMPERATURE),
    ),
)
