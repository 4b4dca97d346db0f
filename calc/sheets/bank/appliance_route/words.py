"""The working of appliance-route in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.energy.appliances import Routes
from calc.judge import Level, Rule
from calc.worksheet.declare import Step

STEPS: tuple[Step[Routes], ...] = (
    Step(of="day", source="practice", text="All values are for one day."),
    Step(of="direct_banked", formula="(day - carried) / day", when=lambda r: r.keeps_cold, text="The rest comes from shore power or the engine."),
    Step(of="direct_banked", formula="(hours_on - carried) / hours_on", when=lambda r: not r.keeps_cold, text="By hand it is used in the same hours as the other."),
    Step(of="dc_run", formula="min(day * dc_duty, day)", text="It has power day and night."),
    Step(of="dc_energy", formula="dc_power * dc_run * direct_banked", source="ohm", text="Power times the time it runs."),
    Step(of="dc_charge", formula="dc_energy / voltage", source="ohm", text="The same as charge from the bank."),
    Step(of="from_bank", formula="hours_on - carried", text="The time for which the inverter is on."),
    Step(of="banked", formula="from_bank / hours_on", text="Its running time is spread evenly over the hours it has power."),
    Step(of="ac_need", formula="day * ac_duty", text="What it needs in a day, whatever its hours."),
    Step(of="ac_run", formula="min(ac_need, hours_on)", source="practice", text="Heat that leaks in while it is off must be pumped out later; it cannot run longer than it has power."),
    Step(of="off", formula="day - hours_on", when=lambda r: r.off > 0, text="Then nothing runs."),
    Step(of="idle_energy", formula="idle * from_bank", source="ohm", text="The inverter draws this with or without a load."),
    Step(of="idle_charge", formula="idle_energy / voltage", source="ohm", text="The same as charge from the bank."),
    Step(of="ac_energy", formula="idle_energy + ac_power * ac_run * banked / efficiency", source="ohm", text="The appliance's share, the inverter's loss on it, and the idle draw."),
    Step(of="ac_charge", formula="ac_energy / voltage", source="ohm", text="The same as charge from the bank."),
    Step(of="idle_share", formula="idle_energy / ac_energy", when=lambda r: r.idle_share is not None, text="This part does no cooling."),
    Step(of="extra_charge", formula="ac_charge - dc_charge", when=lambda r: r.dearer, text="Extra charge the household one needs."),
    Step(of="spared_charge", formula="dc_charge - ac_charge", when=lambda r: not r.dearer, text="Charge the household one saves."),
    Step(of="extra_bank", formula="extra_charge * days / usable", when=lambda r: r.dearer, text="For the days without charging, at the share you use. Cold and age need more: see bank size."),
    Step(of="extra_array", formula="extra_charge * voltage / (bank_efficiency * (1 - losses) * sun_hours)", source="practice", when=lambda r: r.dearer, text="To supply the difference every day, as if all of it went through the bank."),
    Step(of="extra_drive", formula="extra_charge / (bank_efficiency * charger)", source="practice", when=lambda r: r.dearer, text="If the bank accepts the charger's full current, which near full it does not."),
    Step(of="hot_factor", formula="max(1, (hot - cold) / (room - cold))", source="warm-room", when=lambda r: r.keeps_cold, text="Heat leaks in with the temperature difference; a compressor is also less efficient in heat, which comes on top."),
    Step(of="dc_hot_run", formula="min(dc_run * hot_factor, day)", when=lambda r: r.keeps_cold, text="No longer than all day."),
    Step(of="dc_hot", formula="dc_power * dc_hot_run * direct_banked / voltage", source="ohm", when=lambda r: r.keeps_cold, text="In the same way."),
    Step(of="ac_hot_run", formula="min(ac_need * hot_factor, hours_on)", when=lambda r: r.keeps_cold, text="No longer than it has power."),
    Step(of="ac_hot", formula="(idle_energy + ac_power * ac_hot_run * banked / efficiency) / voltage", source="ohm", when=lambda r: r.keeps_cold, text="The idle draw stays the same."),
    Step(of="year", source="practice", text="To compare with an energy label."),
    Step(of="ac_year", formula="ac_power * ac_need * year", source="ohm", text="Without the inverter, like labels."),
    )

FINE = Rule[Routes](
    id="appliance-route.fine", level=Level.FINE,
    headline="The household one takes {household.charge} a day, the battery-voltage one {direct.charge}.",
)
