"""shore-charge: what will a night on a lead put back?"""

from types import SimpleNamespace

from calc.energy import battery
from calc.energy.limits import COOL, FROST_MARGIN, WARM
from calc.sheets.charging.shore_charge.calculate import (
    CHARGER_ONLY,
    COMBINED,
    JOINED,
    SWITCHED,
    run,
)
from calc.sheets.parts.bank import (
    CAPACITY,
    CHEMISTRY,
    TEMPERED,
    USUAL_CHARGE_EFFICIENCY,
    from_state,
    to_state,
)
from calc.units.compare import at_least, at_most
from calc.units.kinds import (
    CHARGE,
    CURRENT,
    ENERGY,
    NUMBER,
    POWER,
    RATIO,
    TEMPERATURE,
    TIME,
    VOLTAGE,
)
from calc.units.kinds.faults import CURRENT_PER_CAPACITY
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet

UNTESTED, CORRECT, REVERSED = "not tested", "correct", "reversed"
TRIPS, NO_RCD = "trips when tested", "not fitted"


def _usual(column: str, unit: str) -> dict[str, str]:
    return {name: f"{text} {unit}" for name, text in battery.by_chemistry("charge_acceptance", column).items()}


def _fills(v: SimpleNamespace) -> bool:
    return v.charging is not None


def _tapers(v: SimpleNamespace) -> bool:
    return _fills(v) and v.falling_time > 0


def _sustained(v: SimpleNamespace) -> bool:
    return at_most(v.on_lead, v.sustained)


def _may_be_uncorrected(v: SimpleNamespace) -> bool:
    return at_least(v.power_factor, 1.0) and not at_most(v.uncorrected, v.sustained)


def _tested(v: SimpleNamespace) -> bool:
    return bool(v.polarity == CORRECT and v.residual == TRIPS)


def _strong(v: SimpleNamespace) -> bool:
    return not at_most(v.charger - v.house_load, v.bank_most)


def _frosty(v: SimpleNamespace) -> bool:
    return bool(v.lead_acid) and not at_least(v.temperature, 0.0)


def _frozen(v: SimpleNamespace) -> bool:
    return v.freezes is not None and at_most(v.temperature, v.freezes + FROST_MARGIN)


def _off_room(v: SimpleNamespace) -> bool:
    return bool(v.lead_acid) and not (at_least(v.temperature, COOL) and at_most(v.temperature, WARM))


def _short(v: SimpleNamespace) -> bool:
    return _fills(v) and not at_most(v.hours, v.night)


WORKSHEET = Worksheet(
    id="shore-charge",
    title="Shore charge",
    question="What will a night on a lead put back?",
    entry_question="Will one night on shore power fill the bank?",
    about="Hours by stage, and what the charger asks of the supply.",
    calculate=run,
    fields=(
        Quantity(id="supply_voltage", label="Supply voltage", symbol="U_s", kinds=(VOLTAGE,), default="120 V", low="100 V", high="250 V", hint="Of the mains at the post: 120 V or 230 V. A weak supply sags."),
        Quantity(id="supply_limit", label="Supply bears", symbol="I_s", kinds=(CURRENT,), default="15 A", low="2 A", high="63 A", hint="Of the post's breaker, the lead or the inlet, whichever is least."),
        Quantity(id="other_load", label="Other loads on the lead", symbol="I_o", kinds=(CURRENT,), default="0 A", low="0 A", high="63 A", hint="At the mains: water heater, kettle, heating. All that may run at one time."),
        Quantity(id="charger", label="Charger output", symbol="I_c", kinds=(CURRENT,), default="40 A", low="0.1 A", high="500 A", hint="What it gives the bank, as set."),
        Quantity(id="charger_efficiency", label="Charger efficiency", symbol="η_c", kinds=(RATIO,), default="85 %", low="40 %", high="99 %", hint="85 to 95 % (no source); old transformers 70 %."),
        Quantity(id="voltage", label="Charging voltage", symbol="U", kinds=(VOLTAGE,), default="13.8 V", low="6 V", high="65 V", hint="At the bank while it charges: about 13.8 V on average at 12 V."),
        CAPACITY,
        CHEMISTRY,
        from_state("30 %"),
        to_state("100 %"),
        Quantity(id="night", label="Hours on the lead", symbol="t_n", kinds=(TIME,), default="12 h", low="0.1 h", high="336 h", hint="From plugging in to driving off."),
        Quantity(id="temperature", label="Battery temperature", symbol="T", kinds=(TEMPERATURE,), default="20 °C", low="-30 °C", high="60 °C", hint="Of the battery, not of the air."),
        Choice(id="polarity", label="Polarity at the inlet", default=UNTESTED, options=(Option(UNTESTED), Option(CORRECT), Option(REVERSED)), hint="A socket tester shows it, before anything is switched on."),
        Choice(id="residual", label="Residual-current device", default=UNTESTED, options=(Option(UNTESTED), Option(TRIPS, aliases=("trips",)), Option(NO_RCD, aliases=("none",))), hint="The van's own, 30 mA, both poles. Press its test button."),
        Choice(id="feeds", label="Shore power reaches", default=CHARGER_ONLY, options=(Option(CHARGER_ONLY, "only the charger"), Option(COMBINED, "an inverter-charger"), Option(SWITCHED, "sockets, by a transfer switch"), Option(JOINED, "sockets, an inverter on them as well")), hint="How mains sockets aboard are kept from two sources at once."),
        Quantity(id="house_load", advanced=True, label="Loads on the bank meanwhile", symbol="I_h", kinds=(CURRENT,), default="0 A", low="0 A", high="500 A", hint="Fridge, fans, lights: the charger feeds these first."),
        Quantity(id="power_factor", advanced=True, label="Charger's power factor", symbol="λ", kinds=(NUMBER,), default="1", low="0.3", high="1", hint="From its label. Without correction 0.5 to 0.7 (no source)."),
        Quantity(id="inverter", advanced=True, label="Largest inverter aboard", symbol="P_i", kinds=(POWER,), default="1500 W", low="0 W", high="20 kW", hint="What a transfer switch must bear from that side."),
        Quantity(id="charge_efficiency", advanced=True, label="Charge kept of charge put in", symbol="η", kinds=(RATIO,), low="50 %", high="100 %", default_by=("chemistry", USUAL_CHARGE_EFFICIENCY), hint="In charge, not in energy. Less near full."),
        Quantity(id="bank_rate", advanced=True, label="Most the bank may be given", symbol="r", kinds=(CURRENT_PER_CAPACITY,), low="0.02 A/(A·h)", high="2 A/(A·h)", default_by=("chemistry", _usual("most_per_h", "A/(A·h)")), hint="Per A·h, from the data sheet: 0.25 means 25 A into 100 A·h."),
        Quantity(id="acceptance", advanced=True, label="Acceptance time", symbol="τ", kinds=(TIME,), low="0.02 h", high="12 h", default_by=("chemistry", _usual("acceptance_h", "h")), hint="Charge missing divided by the current taken at full charging voltage. A worn bank: longer."),
        Quantity(id="tail", advanced=True, label="Tail current called full", symbol="r_t", kinds=(CURRENT_PER_CAPACITY,), low="0.001 A/(A·h)", high="0.05 A/(A·h)", default_by=("chemistry", _usual("tail_per_h", "A/(A·h)")), hint="Per A·h: 0.02 means 2 A into 100 A·h."),
    ),
    results=(
        Output(id="hours", label="Time it takes", symbol="t", kind=TIME, rounding=UP),
        Output(id="after_night", label="State after the hours on the lead", symbol="s_n", kind=RATIO, rounding=DOWN),
        Output(id="put_back", label="Charge put back in them", symbol="Q", kind=CHARGE, rounding=DOWN),
        Output(id="supply_current", label="Charger takes from the supply", symbol="I_1", kind=CURRENT, rounding=UP),
        Output(id="supply_load", label="Of what the supply bears, with the rest", symbol="x", kind=RATIO, rounding=UP),
        Output(id="governs", label="What sets the charging current", hide_if_none=True),
        Output(id="left_over", label="Left for other loads for hours", symbol="I_r", kind=CURRENT, rounding=DOWN, hide_if_none=True),
        Output(id="left_power", label="That is", symbol="P_r", kind=POWER, rounding=DOWN, hide_if_none=True),
        Output(id="setting", label="Set the charger to no more than", symbol="I_set", kind=CURRENT, rounding=DOWN, hide_if_none=True),
        Output(id="shortest", label="Shortest by the spread of acceptance", kind=TIME, rounding=DOWN, hide_if_none=True),
        Output(id="longest", label="Longest by it", kind=TIME, rounding=UP, hide_if_none=True),
        Output(id="energy", label="Energy from the lead in those hours", symbol="E", kind=ENERGY, rounding=UP, hide_if_none=True),
        Output(id="transfer_rating", label="Transfer switch bears at least", symbol="I_t", kind=CURRENT, rounding=UP, hide_if_none=True),
        Output(id="stages", label="Stage by stage", hide_if_none=True),
        Output(id="moves", label="Go on with", hide_if_none=True, needs_step=False),
    ),
    intermediates=(
        Output(id="margin", label="Margin for hours", symbol="m", kind=NUMBER),
        Output(id="on_lead", label="All on the lead", symbol="I_a", kind=CURRENT, rounding=UP),
        Output(id="sustained", label="Supply bears for hours", symbol="I_m", kind=CURRENT, rounding=DOWN),
        Output(id="correction", label="Power factor without correction", symbol="λ_0", kind=NUMBER),
        Output(id="uncorrected", label="All on the lead without correction", symbol="I_u", kind=CURRENT, rounding=UP),
        Output(id="supply_fits", label="Charger output the supply has room for", symbol="I_f", kind=CURRENT, rounding=DOWN),
        Output(id="bank_most", label="Most the bank may be given", symbol="I_b", kind=CURRENT, rounding=DOWN),
        Output(id="charging", label="Into the bank at full current", symbol="I", kind=CURRENT, rounding=DOWN),
        Output(id="full_at", label="State that counts as full", symbol="s_f", kind=RATIO, rounding=DOWN),
        Output(id="meets", label="State from which the current falls", symbol="s_m", kind=RATIO),
        Output(id="turn", label="Where it begins to fall here", symbol="s_t", kind=RATIO),
        Output(id="reached", label="State at the end", symbol="s_e", kind=RATIO, rounding=DOWN),
        Output(id="constant_time", label="At full current", symbol="t_1", kind=TIME, rounding=UP),
        Output(id="falling_time", label="With the current falling", symbol="t_2", kind=TIME, rounding=UP),
        Output(id="acceptance_low", label="Shortest acceptance time", symbol="τ_low", kind=TIME),
        Output(id="acceptance_high", label="Longest acceptance time", symbol="τ_high", kind=TIME),
        Output(id="freezes", label="Acid freezes at this state near", kind=TEMPERATURE, rounding=UP),
        Output(id="bears_voltage", label="Most such a bank is given", kind=VOLTAGE),
        Output(id="charge_low", label="Coldest it may be charged", kind=TEMPERATURE),
        Output(id="charge_high", label="Warmest it may be charged", kind=TEMPERATURE),
    ),
    steps=(
        Step(of="supply_current", formula="charger * voltage / (charger_efficiency * supply_voltage * power_factor)", source="ohm", says="The charger's output in watts, with its loss, at the supply's voltage."),
        Step(of="on_lead", formula="supply_current + other_load", says="All that the lead carries at one time."),
        Step(of="supply_load", formula="on_lead / supply_limit", says="Of the least of breaker, lead and inlet."),
        Step(of="sustained", formula="supply_limit / margin", source="nec-125", says="A device is rated 125 % of a load that stays on for hours, so four fifths of it is what hours may take."),
        Step(of="uncorrected", formula="supply_current * power_factor / correction + other_load", source="practice", says="Should the charger have no power-factor correction."),
        Step(of="left_over", formula="sustained - on_lead", when=lambda v: v.left_over is not None, says="While the charger works at full output."),
        Step(of="left_power", formula="left_over * supply_voltage", when=lambda v: v.left_over is not None, source="ohm", says="As heat makers take it."),
        Step(of="supply_fits", formula="(sustained - other_load) * charger_efficiency * supply_voltage * power_factor / voltage", when=lambda v: v.supply_fits is not None, source="ohm", says="The same sum the other way round."),
        Step(of="bank_most", formula="bank_rate * capacity", source="bulk-most", says="Of lead-acid a quarter of its A·h is usual; of LFP half (no source). The data sheet governs."),
        Step(of="setting", formula="min(charger, min(bank_most + house_load, supply_fits))", when=lambda v: v.setting is not None, says="The least of what the charger gives, the bank takes and the supply carries for hours."),
        Step(of="charging", formula="min(charger - house_load, bank_most)", when=lambda v: _fills(v) and not v.over, says="What the loads leave, up to what the bank may be given."),
        Step(of="charging", formula="min(setting - house_load, bank_most)", when=lambda v: _fills(v) and v.over, says="At that setting, since the supply cannot carry more."),
        Step(of="governs", when=_fills, says="Whichever is least."),
        Step(of="full_at", formula="1 - tail * acceptance", source="practice", says="Where the current has fallen to the tail; an exponential never ends."),
        Step(of="meets", formula="max(0, 1 - charging * acceptance / capacity)", when=_fills, source="ampere-hour-law", says="At the charging voltage the bank takes a current in proportion to what it lacks; from here on that is less than the charger has."),
        Step(of="reached", formula="max(from_state, min(to_state, full_at))", when=_fills, says="What you ask for, or full."),
        Step(of="turn", formula="min(max(from_state, meets), reached)", when=_fills, says="Within this charge."),
        Step(of="constant_time", formula="capacity * (turn - from_state) / (charge_efficiency * charging)", when=_fills, source="charge-efficiency", says="What is stored, and what is lost on the way, at the full current."),
        Step(of="falling_time", formula="acceptance / charge_efficiency * ln((1 - turn) / (1 - reached))", when=_fills, source="ampere-hour-law", says="What is missing falls exponentially."),
        Step(of="hours", formula="constant_time + falling_time", when=_fills, says="Both stages."),
        Step(of="stages", when=lambda v: bool(v.stages), says="The same in a table."),
        Step(of="shortest", source="bulk-end", when=_fills, says="Again with {acceptance_low} and {acceptance_high}: lead-acid is three quarters full when a charger of a quarter or a tenth of its A·h begins to taper. LFP: no source."),
        Step(of="longest", source="bulk-end", when=_fills, says="The same. A worn or sulphated bank takes longer still."),
        Step(of="after_night", formula="reached", when=lambda v: _fills(v) and at_most(v.hours, v.night), says="It is done before that."),
        Step(of="after_night", formula="from_state + charge_efficiency * charging * night / capacity", when=lambda v: _short(v) and at_most(v.night, v.constant_time), says="All of it at full current."),
        Step(of="after_night", source="ampere-hour-law", when=lambda v: _short(v) and not at_most(v.night, v.constant_time), says="What is missing has fallen for the rest of the time as above."),
        Step(of="put_back", formula="capacity * (after_night - from_state)", when=_fills, says="What the bank then holds more."),
        Step(of="energy", formula="put_back * voltage / (charge_efficiency * charger_efficiency)", when=_fills, says="For the bank alone, with both losses."),
        Step(of="freezes", source="acid-freezing", when=_frosty, says="By the gravity of a flooded battery; sealed ones mostly freeze later."),
        Step(of="transfer_rating", formula="max(supply_limit, inverter / supply_voltage)", source="practice", when=lambda v: v.transfer_rating is not None, says="Each source passes through it."),
    ),
    rules=(
        Verdict(verdict=STOP, when=lambda v: v.chemistry == "LFP" and not at_least(v.temperature, v.charge_low), says="Do not charge: an LFP bank below {charge_low} is ruined by it. Warm it first."),
        Verdict(verdict=STOP, when=lambda v: not v.may_charge, says="Do not charge at {temperature}: this chemistry is charged between {charge_low} and {charge_high}."),
        Verdict(verdict=STOP, when=_frozen, says="At {from_state} its acid may freeze at {temperature}. Do not charge a frozen battery: let it thaw and look for cracks first."),
        Verdict(verdict=STOP, when=lambda v: v.too_high, says="{voltage} is more than such a bank is given, {bears_voltage} at most: it gasses and heats, or LFP switches itself off."),
        Verdict(verdict=STOP, when=lambda v: v.feeds == JOINED, says="Do not plug in: an inverter and the shore on the same sockets with nothing between destroy the one and endanger whoever works on the other."),
        Verdict(verdict=STOP, when=lambda v: v.polarity == REVERSED, says="Do not switch on: live and neutral are exchanged, and a switch or fuse in one pole leaves things live. Unplug."),
        Verdict(verdict=STOP, when=lambda v: v.residual == NO_RCD, says="Have a residual-current device fitted first: without one a fault to the van's metal can kill."),
        Verdict(verdict=STOP, when=lambda v: v.setting is None, says="The supply has no room for a charger: {other_load} is taken already, and for hours it bears {sustained}."),
        Verdict(verdict=STOP, when=lambda v: v.over, says="{on_lead} on a supply of {supply_limit}: it trips, or a lead overheats. Set the charger to {setting}."),
        Verdict(verdict=STOP, when=lambda v: not _fills(v), says="The bank does not fill: its loads take {house_load}, all that the charger gives."),
        Verdict(verdict=CAUTION, when=lambda v: not _sustained(v), says="{on_lead} of {supply_limit}, and for hours it bears {sustained}: set the charger to {setting}, or switch something off."),
        Verdict(verdict=CAUTION, when=_strong, says="The charger gives more than this bank should get: set it to {setting}. Then about {hours}."),
        Verdict(verdict=CAUTION, when=_may_be_uncorrected, says="About {hours}, if the charger has power-factor correction; without, the lead may carry {uncorrected}, more than it bears for hours."),
        Verdict(verdict=CAUTION, when=_short, says="In {night} it gets to {after_night}; it would take {hours}."),
        Verdict(verdict=CAUTION, when=lambda v: v.chemistry == "LFP" and not at_least(v.temperature, COOL), says="About {hours} at best: at {temperature} an LFP bank is charged slowly."),
        Verdict(verdict=CAUTION, when=_off_room, says="About {hours} near room temperature, and the bank is at {temperature}: read the cautions."),
        Verdict(verdict=CAUTION, when=lambda v: not _tested(v), says="About {hours}, and {put_back} back. First test polarity and the residual-current device."),
        Verdict(verdict=FINE, when=lambda v: v.reached <= v.from_state, says="It counts as full already: only a trickle is left to give."),
        Verdict(verdict=FINE, says="About {hours}: {put_back} back, and the supply is loaded to {supply_load}."),
    ),
    remarks=(
        Remark(when=lambda v: v.chemistry == "LFP", source="lfp-frost", says="Never charge an LFP battery below 0 °C: the damage is permanent, and no one sees it happen. A charger left on in a frosty night needs a sensor that stops it."),
        Remark(when=lambda v: v.chemistry == "LFP" and v.may_charge and not at_least(v.temperature, COOL), source="practice", says="Below 10 °C most makers of LFP allow a fraction of the usual current, 0.05 to 0.2 A for each A·h. Put that in as the most the bank may be given."),
        Remark(when=lambda v: v.lead_acid, source="en-50272", says="A lead-acid bank gives off hydrogen while the current falls, a vented one the most: it needs air, and no spark near. A sealed one may too, when overcharged."),
        Remark(when=_frosty, source="acid-freezing", says="At {from_state} the acid freezes near {freezes}. Keep 3 K clear of it; never charge a frozen battery, it can burst."),
        Remark(when=_off_room, source="practice", says=TEMPERED),
        Remark(when=lambda v: v.lead_acid and _fills(v) and v.after_night < v.full_at - 1e-9, source="incomplete-charge", says="Lead-acid that is not taken to full again and again loses capacity early. Give it a night to the end of the taper every week or two."),
        Remark(when=lambda v: v.too_low, source="practice", says="At {voltage} a 12 V bank, or a string of them, does not fill. Put in what the charger holds, some 13.8 V for each 12 V: at that the lead carries more than is reckoned here."),
        Remark(when=_strong, source="bulk-most", says="Beyond {bank_most} a bank heats. Many data sheets allow more or less: then change the most it may be given."),
        Remark(when=lambda v: _fills(v) and at_most(v.charging, v.tail * v.capacity), source="practice", says="This current is no more than the tail: the charger cannot tell from it when the bank is full, so let it run by the clock."),
        Remark(when=_may_be_uncorrected, source="practice", says="The power factor was taken as one. Read the charger's label: its input in amps is the figure to trust."),
        Remark(source="caravan-supply", says="Uncoil the lead to its end: on a drum it overheats at a current that it bears laid out. Check polarity, then press the test button of the residual-current device, each time."),
        Remark(source="practice", says="Mains can kill. Inlet, breaker, residual-current device, earth and sockets are for a licensed person, to local rules and the makers' instructions."),
        Remark(when=lambda v: v.polarity == UNTESTED, source="practice", says="A tester shows reversed polarity and a missing earth before you touch anything. With either, unplug and tell the site: do not mend it at the post."),
        Remark(when=lambda v: v.transfer_rating is not None, source="practice", says="A transfer switch breaks every live pole of one source before it makes the other, and bears {transfer_rating} or more. Two sources must never meet."),
        Remark(when=lambda v: v.transfer_rating is not None, source="neutral-apart", says="On shore power neutral and earth are joined at the supply, never in the vehicle. An inverter that feeds the sockets joins them at itself, and its relay must open that before the shore comes on (no source). Have both states tested."),
        Remark(when=lambda v: v.feeds == COMBINED, source="practice", says="An inverter-charger has its transfer relay inside. Set its input limit to {sustained} or less, so that it charges less while other loads run."),
        Remark(when=lambda v: v.feeds == SWITCHED, source="practice", says="With a transfer switch added later, keep the charger on the shore's side of it: else the inverter feeds the charger that charges its own bank."),
        Remark(level=NOTE, source="caravan-lead", says="A lead for 16 A has 2.5 mm² and is 25 m long. A thinner or a joined one bears less."),
        Remark(level=NOTE, source="practice", when=_tapers, says="While the current falls, the supply is asked for less, and other things may be switched on. At the end of the charge the voltage is higher than the average you gave, by some 5 %."),
        Remark(level=NOTE, source="sealed-hours", when=lambda v: v.lead_acid, says="Check figure: from flat, a charger of a tenth of the A·h takes 12 to 16 h for a sealed lead-acid bank. A charger that ends absorption by a timer of 2 to 4 h may stop early."),
        Remark(level=NOTE, source="practice", when=lambda v: _fills(v) and v.to_state > v.full_at, says="Full means that the current has fallen to the tail. In this model that is {full_at}; the rest comes as a trickle over hours."),
    ),
    valid="A healthy bank near room temperature, a steady supply, a charger that holds its voltage. Below half full the taper hardly matters.",
    summary="{hours}, supply at {supply_load}",
    summary_none="the bank does not fill",
    keep_distinct=(("on_lead", "sustained"),),
    tables=(
        Table(of="stages", columns=(
            Output(id="name", label="Stage"), Output(id="time", label="Time", kind=TIME, rounding=UP),
            Output(id="begins", label="From", kind=RATIO), Output(id="ends", label="To", kind=RATIO),
            Output(id="first", label="Current", kind=CURRENT), Output(id="last", label="At its end", kind=CURRENT),
        )),
    ),
)
