"""The working of shore-charge in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.energy.limits import FREEZING
from calc.energy.shore import Governor, ShoreCharge, StageName
from calc.judge import Level, Rule
from calc.units.compare import at_least, at_most
from calc.worksheet.declare import Step

GOVERNORS: dict[str, str] = {
    Governor.TAPER: "the falling current near full",
    Governor.BANK: "the bank",
    Governor.CHARGER: "the charger",
    Governor.SUPPLY: "the supply",
}
STAGES: dict[str, str] = {StageName.CONSTANT: "at full current", StageName.FALLING: "current falling"}


def _fills(found: ShoreCharge) -> bool:
    return found.night is not None


def _short(found: ShoreCharge) -> bool:
    return found.night is not None and found.night.short


def _ends_at_full_current(found: ShoreCharge) -> bool:
    night = found.night
    return night is not None and night.short and at_most(night.duration, night.charge.constant)


def _frosty(found: ShoreCharge) -> bool:
    return found.bank.lead_acid and not at_least(found.bank.temperature, FREEZING)


STEPS: tuple[Step[ShoreCharge], ...] = (
    Step(of="supply_current", formula="charger * voltage / (charger_efficiency * supply_voltage * power_factor)", source="ohm", text="The charger's output in watts, with its loss, at the supply's voltage."),
    Step(of="on_lead", formula="supply_current + other_load", text="The total current on shore power."),
    Step(of="supply_load", formula="on_lead / supply_limit", text="Of breaker, cable or inlet, whichever is lowest."),
    Step(of="sustained", formula="supply_limit / margin", source="nec-125", when=lambda s: s.load.supply.margin > 1, text="North American practice: a device is rated 125 % of a continuous load, so 80 % of it may be continuous."),
    Step(of="sustained", formula="supply_limit / margin", source="practice", when=lambda s: s.load.supply.margin == 1, text="European breakers carry their rating continuously, in air of about 30 °C."),
    Step(of="uncorrected", formula="supply_current * power_factor / correction + other_load", source="practice", text="If the charger has no power-factor correction."),
    Step(of="left_over", formula="sustained - on_lead", when=lambda s: s.load.left is not None, text="While the charger works at full output."),
    Step(of="left_power", formula="left_over * supply_voltage", when=lambda s: s.load.left is not None, source="ohm", text="The value for a heater."),
    Step(of="supply_fits", formula="(sustained - other_load) * charger_efficiency * supply_voltage * power_factor / voltage", when=lambda s: s.load.room_for is not None, source="ohm", text="The same calculation in reverse."),
    Step(of="bank_most", formula="bank_rate * capacity", source="bulk-most", text="Usual: a quarter of its Ah for lead-acid, half for LFP (no source). The data sheet comes first."),
    Step(of="setting", formula="min(charger, min(bank_most + house_load, supply_fits))", when=lambda s: s.setting is not None, text="The smallest of three: the charger's output, the bank's limit and the supply's continuous limit."),
    Step(of="charging", formula="min(charger - house_load, bank_most)", when=lambda s: _fills(s) and not s.load.over, text="What the loads leave, up to the bank's limit."),
    Step(of="charging", formula="min(setting - house_load, bank_most)", when=lambda s: _fills(s) and s.load.over, text="At that setting, because the supply cannot carry more."),
    Step(of="governs", when=_fills, text="Whichever is lowest."),
    Step(of="full_at", formula="1 - tail * acceptance", source="practice", text="Where the current has fallen to the tail current; an exponential never ends."),
    Step(of="meets", formula="max(0, 1 - charging * acceptance / capacity)", when=_fills, source="ampere-hour-law", text="At the charging voltage the bank accepts a current in proportion to its missing charge; from here it is less than the charger can give."),
    Step(of="reached", formula="max(from_state, min(to_state, full_at))", when=_fills, text="Your target, or full."),
    Step(of="turn", formula="min(max(from_state, meets), reached)", when=_fills, text="Within this charge."),
    Step(of="constant_time", formula="capacity * (turn - from_state) / (charge_efficiency * charging)", when=_fills, source="charge-efficiency", text="The stored charge and the charging loss, at full current."),
    Step(of="falling_time", formula="acceptance / charge_efficiency * ln((1 - turn) / (1 - reached))", when=_fills, source="ampere-hour-law", text="The missing charge falls exponentially."),
    Step(of="hours", formula="constant_time + falling_time", when=_fills, text="Both stages."),
    Step(of="stages", when=lambda s: s.night is not None and bool(s.night.stages), text="The same in a table."),
    Step(of="shortest", source="bulk-end", when=_fills, text="Again with {acceptance_low} and {acceptance_high}: with a charger of a quarter or a tenth of its Ah, the current of lead-acid begins to fall at 75 % full. LFP: no source."),
    Step(of="longest", source="bulk-end", when=_fills, text="The same. A worn or sulphated bank takes longer still."),
    Step(of="after_night", formula="reached", when=lambda s: _fills(s) and not _short(s), text="It is full before that."),
    Step(of="after_night", formula="from_state + charge_efficiency * charging * night / capacity", when=_ends_at_full_current, text="All of it at full current."),
    Step(of="after_night", source="ampere-hour-law", when=lambda s: _short(s) and not _ends_at_full_current(s), text="The missing charge falls as above for the rest of the time."),
    Step(of="put_back", formula="capacity * (after_night - from_state)", when=_fills, text="The charge the bank has gained."),
    Step(of="energy", formula="put_back * voltage / (charge_efficiency * charger_efficiency)", when=_fills, text="For the bank alone, with both losses."),
    Step(of="freezes", source="acid-freezing", when=_frosty, text="By the acid density of a flooded battery; sealed ones usually freeze later."),
    Step(of="transfer_rating", formula="max(supply_limit, inverter / supply_voltage)", source="practice", when=lambda s: s.inlet.transfer_rating is not None, text="Each source passes through it."),
)

FULL_ALREADY = Rule[ShoreCharge](
    id="shore-charge.full-already", level=Level.FINE,
    when=lambda s: s.night is not None and s.night.charge.reached <= s.night.charge.from_state,
    headline="It already counts as full: only a small current flows.",
)
FINE = Rule[ShoreCharge](
    id="shore-charge.fine", level=Level.FINE,
    headline="About {night.charge.total} at {voltage}: {night.put_back} put back, with the supply at {load.share} of its rating.",
)
