"""The working of light-dimming in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.energy.dimming import Dimming, Lamp
from calc.judge import Level, Rule
from calc.worksheet.declare import Step

STEPS: tuple[Step[Dimming], ...] = (
    Step(of="full_charge", formula="power / voltage * hours", source="ohm", text="Current times time."),
    Step(of="exponent", source="pulse", when=lambda d: d.lights.lamp is Lamp.STRIP, text="An LED is fully on or off: its average is the share of the time."),
    Step(of="exponent", source="rerating", when=lambda d: d.lights.lamp is Lamp.FILAMENT, text="For a filament the effective voltage is the square root of that share, and power rises with voltage to the power 1.6."),
    Step(of="power_share", formula="level ** exponent", when=lambda d: d.follows, text="Of the full power."),
    Step(of="dimmed_charge", formula="full_charge * power_share", source="ohm", when=lambda d: d.follows, text="What the bank still gives."),
    Step(of="saved_charge", formula="full_charge - dimmed_charge", when=lambda d: d.follows, text="The rest stays in the bank."),
    Step(of="lasts", formula="hours / power_share", when=lambda d: d.follows, text="The same charge, dimmed."),
    Step(of="light_exponent", source="pulse", when=lambda d: d.lights.lamp is Lamp.STRIP, text="The light is proportional to the time too."),
    Step(of="light_exponent", source="rerating", when=lambda d: d.lights.lamp is Lamp.FILAMENT, text="A filament's light rises with voltage to the power 3.4: it dims far faster than its power."),
    Step(of="light", formula="level ** light_exponent", when=lambda d: d.follows, text="As a meter measures it."),
    Step(of="seen", formula="(116 * light ** (1 / 3) - 16) / 100", source="lightness", when=lambda d: d.follows and not d.dark, text="As the eye perceives it, which hardly notices the first half."),
    Step(of="seen", formula="9.033 * light", source="lightness", when=lambda d: d.dark, text="Near zero the curve is a straight line."),
    Step(of="zone", source="practice", text="The load on one dimmer: all lamps, unless a largest zone is given."),
    Step(of="dimmer_current", formula="zone / voltage", source="ohm", text="Each pulse is at full current, at any dimming."),
    Step(of="charging_voltage", formula="voltage * rise", text="The highest voltage at lamps and dimmer."),
    Step(of="growth", formula="(rise - held) / (1 - held)", source="strip", when=lambda d: d.lights.lamp is Lamp.STRIP, text="The LEDs keep their share; the whole rise is across the resistors."),
    Step(of="growth", source="rerating", when=lambda d: d.lights.lamp is Lamp.FILAMENT, text="A filament's current rises with voltage to the power 0.55."),
    Step(of="growth", source="practice", when=lambda d: not d.follows, text="A regulator draws no more current at a higher voltage."),
    Step(of="charging_current", formula="dimmer_current * growth", source="ohm", text="A strip that runs cool on the bank can run hot while charging."),
    Step(of="margin", source="practice", text="So that the dimmer stays cool."),
    Step(of="dimmer_rating", formula="margin * charging_current", text="For each zone's own dimmer."),
    Step(of="day", source="practice", text="The dimmer's idle draw continues all day."),
    Step(of="own_charge", formula="own * day", source="ohm", text="Unless its supply is switched off with it."),
    )

FINE = Rule[Dimming](
    id="light-dimming.fine", level=Level.FINE,
    headline="{saved_charge} of {full_charge} saved in an evening; it still looks {seen} as bright.",
)
