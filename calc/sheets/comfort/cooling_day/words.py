"""The working of cooling-day in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.comfort.cooling import CoolingDay
from calc.judge import Level, Rule
from calc.worksheet.declare import Step


def _reckoned(day: CoolingDay) -> bool:
    return day.savings is not None


STEPS: tuple[Step[CoolingDay], ...] = (
    Step(of="power", formula="cooling / efficiency_ratio", source="eer", text="Cooling power divided by the ratio; an EER is converted to a COP first."),
    Step(of="factor", source="practice", when=lambda d: d.cooler.load.through_inverter, text="Through an inverter its loss comes on top."),
    Step(of="current", formula="power / (voltage * factor)", source="ohm", text="At the bank, while the compressor works."),
    Step(of="glass_heat", formula="sun * glazing * passed", source="g-value", when=_reckoned, text="Heat that comes in through the glass."),
    Step(of="outer", source="cibse-surface", when=_reckoned, text="For a roof in still air, which the sun heats most; wind would reduce it."),
    Step(of="roof_heat", formula="roof_u * roof * absorbed * sun * outer", source="sol-air", when=_reckoned, text="Sun on the sheet acts like warmer air outside; cooling to the sky is left out."),
    Step(of="warmer", formula="outside - inside", when=_reckoned, text="Below zero the shell helps."),
    Step(of="shell_heat", formula="shell * warmer", source="iso-6946", when=_reckoned, text="Walls, glass and air changes together."),
    Step(of="people_heat", formula="people * each", source="jones-people", when=_reckoned, text="Seated at rest; their moisture must be removed too."),
    Step(of="heat_load", formula="max(glass_heat + roof_heat + shell_heat + people_heat + devices, 0)", when=_reckoned, text="All the heat that comes in or is made inside."),
    Step(of="duty_used", formula="min(heat_load / cooling, 1)", when=_reckoned, text="A unit just large enough runs all the time."),
    Step(of="duty_used", formula="duty", when=lambda d: not _reckoned(d), text="Your estimate."),
    Step(of="charge", formula="current * duty_used * hours", source="ohm", text="Current times the time it runs."),
    Step(of="energy", formula="charge * voltage", source="ohm", text="The same as energy."),
    Step(of="gives", formula="capacity * usable", text="Before you call the bank empty."),
    Step(of="bank_share", formula="charge / gives", text="All other loads come on top."),
    Step(of="carries", formula="gives / (current * duty_used)", source="ohm", when=lambda d: d.duty_used > 0, text="With nothing else on and no solar charge."),
    Step(of="carries", formula="hours", when=lambda d: d.duty_used == 0, text="It need not run at all."),
    Step(of="needed", formula="charge / usable", text="Just enough for this."),
    Step(of="covers_save", formula="glass_heat * (1 - cover_passes)", source="practice", when=_reckoned, text="Removed from the heat load while they are on."),
    Step(of="covers_charge", formula="max(charge - current * min(max(heat_load - covers_save, 0) / cooling, 1) * hours, 0)", when=_reckoned, text="From the shorter running time; nothing if it still runs all the time."),
    Step(of="shade_saves", formula="(glass_heat + roof_heat) * (1 - diffuse)", source="practice", when=_reckoned, text="The sun's part, less what the bright sky still adds."),
    Step(of="shade_charge", formula="max(charge - current * min(max(heat_load - shade_saves, 0) / cooling, 1) * hours, 0)", when=_reckoned, text="In the same way."),
    Step(of="vent_flow", formula="(glass_heat + roof_heat + people_heat + devices) / (density * air_heat * stuffy)", source="energy-balance", when=_reckoned, text="Moving air keeps the van {stuffy} above outside, for the few watts of a fan."),
)

FINE = Rule[CoolingDay](
    id="cooling-day.fine", level=Level.FINE,
    headline="{charge} in {hours}, {bank_share} of the usable bank.",
)
