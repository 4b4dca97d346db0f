"""shore-charge: what will a night on shore power put back?"""

# fmt: off
from dataclasses import replace

from calc.energy import battery
from calc.energy.rules import bank as bank_rules
from calc.energy.rules import charging as charge_rules
from calc.energy.rules import rested as rested_rules
from calc.energy.rules import shore as judged
from calc.energy.shore import Feeds, HoursPractice, Polarity, ResidualDevice, Switching
from calc.sheets.charging.shore_charge.calculate import calculate, onward
from calc.sheets.charging.shore_charge.words import FINE, FULL_ALREADY, GOVERNORS, STAGES, STEPS
from calc.sheets.parts.bank import (
    CAPACITY,
    CHEMISTRY,
    COLD_CUT_OFF,
    USUAL_CHARGE_EFFICIENCY,
    from_state,
    rested_voltage,
    to_state,
)
from calc.sheets.parts.fields import HIGHEST_BANK
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
from calc.units.shown import DOWN
from calc.worksheet.declare import Output, Placed, placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Bars, Either, Limit, Parts, Row
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet

_STATED = (("state", "from_state"),)
_NEVER_IN_FROST = "Never charge an LFP battery below 0 °C: the damage is permanent and not visible. A charger left on in a frosty night needs a temperature sensor that stops it."


def _by_chemistry(column: str, unit: str) -> dict[str, str]:
    return {name: f"{text} {unit}" for name, text in battery.by_chemistry("charge_acceptance", column).items()}


WORKSHEET = Worksheet(
    id="shore-charge",
    title="Shore charge",
    question="Will one night on shore power fill the bank?",
    about="Hours by stage, and the charger's current from the supply.",
    calculate=calculate,
    picture=Either((
        Parts(
            needs="hours", parts=(("constant_time", "At full current"), ("falling_time", "Current falling")), whole=("night", "On shore power"), rest="Full",
            caption="The hours on shore power",
        ),
        Bars(
            rows=(Row("All on the supply", "on_lead"),), limits=(Limit("It carries for hours", "sustained"),),
            caption="What is drawn from the supply",
        ),
    )),
    fields=(
        Quantity(id="supply_voltage", label="Supply voltage", symbol="U_s", kinds=(VOLTAGE,), default="120 V", low="100 V", high="250 V", hint="Of the mains at the post: 120 V or 230 V."),
        Quantity(id="supply_limit", label="Supply rated for", symbol="I_s", kinds=(CURRENT,), default="15 A", low="2 A", high="63 A", hint="Of breaker, cable or inlet, whichever is lowest."),
        Choice(id="practice", advanced=True, since=2, before=HoursPractice.EIGHTY_PERCENT, label="Of that, continuous", of=HoursPractice, default=HoursPractice.BY_VOLTAGE, options=(Option(HoursPractice.BY_VOLTAGE, "80 % up to 160 V, else all", aliases=("by voltage: 80 % to 160 V, else all",)), Option(HoursPractice.EIGHTY_PERCENT, "80 % (North America)"), Option(HoursPractice.FULL, "all of it (Europe)")), hint="North American codes allow 80 % continuous; European breakers the full rating."),
        Quantity(id="other_load", advanced=True, label="Other loads on shore power", symbol="I_o", kinds=(CURRENT,), default="0 A", low="0 A", high="63 A", hint="Water heater, kettle, heating: all that may run together."),
        Quantity(id="charger", label="Charger output", symbol="I_c", kinds=(CURRENT,), default="40 A", low="0.1 A", high="500 A", hint="Current into the bank, as set."),
        Quantity(id="charger_efficiency", advanced=True, label="Charger efficiency", symbol="η_c", kinds=(RATIO,), default="85 %", low="40 %", high="99 %", hint="85 to 95 % (no source); old transformers 70 %."),
        Quantity(id="voltage", advanced=True, label="Charging voltage", symbol="U", kinds=(VOLTAGE,), default="13.8 V", low="6 V", high=HIGHEST_BANK, hint="At the bank: about 13.8 V on average at 12 V."),
        CAPACITY,
        CHEMISTRY,
        *(replace(one, advanced=True) for one in (from_state("30 %"), to_state("100 %"))),
        Quantity(id="night", advanced=True, label="Hours on shore power", symbol="t_n", kinds=(TIME,), default="12 h", low="0.1 h", high="336 h", hint="From plugging in to driving off."),
        Quantity(id="temperature", advanced=True, label="Battery temperature", symbol="T", kinds=(TEMPERATURE,), default="20 °C", low="-30 °C", high="60 °C", hint="Of the battery, not of the air."),
        COLD_CUT_OFF,
        rested_voltage(),
        Choice(id="polarity", advanced=True, label="Polarity at the inlet", of=Polarity, default=Polarity.CORRECT, options=(Option(Polarity.UNTESTED, "not tested"), Option(Polarity.CORRECT), Option(Polarity.REVERSED)), hint="A socket tester shows it, before anything is switched on."),
        Choice(id="switching", advanced=True, since=2, before=Switching.UNKNOWN, label="Inlet breaker opens", of=Switching, default=Switching.BY_VOLTAGE, options=(Option(Switching.BY_VOLTAGE, "as usual at this voltage", aliases=("by voltage",)), Option(Switching.DOUBLE, "both poles"), Option(Switching.SINGLE, "live only"), Option(Switching.UNKNOWN, "not known")), hint="Both poles is usual at 230 V; at 120 V mostly live only."),
        Choice(id="residual", advanced=True, label="Residual-current device", of=ResidualDevice, default=ResidualDevice.TRIPS, options=(Option(ResidualDevice.UNTESTED, "not tested"), Option(ResidualDevice.TRIPS, "trips when tested", aliases=("trips",)), Option(ResidualDevice.NOT_FITTED, "not fitted", aliases=("none",))), hint="The van's own, 30 mA, both poles. Press its test button."),
        Choice(id="feeds", advanced=True, label="Shore power reaches", of=Feeds, default=Feeds.CHARGER_ONLY, options=(Option(Feeds.CHARGER_ONLY, "only the charger", aliases=("charger only",)), Option(Feeds.COMBINED, "an inverter-charger"), Option(Feeds.SWITCHED, "sockets, by a transfer switch", aliases=("transfer switch",)), Option(Feeds.JOINED, "sockets, and an inverter on them", aliases=("sockets, an inverter on them as well",))), hint="How sockets are kept from two sources at once."),
        Quantity(id="house_load", advanced=True, label="Loads on the bank meanwhile", symbol="I_h", kinds=(CURRENT,), default="0 A", low="0 A", high="500 A", hint="Fridge, fans, lights: the charger supplies these first."),
        Quantity(id="power_factor", advanced=True, label="Charger's power factor", symbol="λ", kinds=(NUMBER,), default="1", low="0.3", high="1", hint="From its label. Without correction 0.5 to 0.7 (no source)."),
        Quantity(id="inverter", advanced=True, label="Largest inverter aboard", symbol="P_i", kinds=(POWER,), default="1500 W", low="0 W", high="20 kW", hint="Sets the transfer switch rating on that side."),
        Quantity(id="charge_efficiency", advanced=True, label="Charge efficiency", symbol="η", kinds=(RATIO,), low="50 %", high="100 %", default_by=("chemistry", USUAL_CHARGE_EFFICIENCY), hint="In charge, not in energy. Less near full."),
        Quantity(id="bank_rate", advanced=True, label="Charging limit of the bank", symbol="r", kinds=(CURRENT_PER_CAPACITY,), low="0.02 A/Ah", high="2 A/Ah", default_by=("chemistry", _by_chemistry("most_per_h", "A/Ah")), hint="Per Ah, from the data sheet: 0.25 means 25 A into 100 Ah."),
        Quantity(id="acceptance", advanced=True, label="Acceptance time", symbol="τ", kinds=(TIME,), low="0.02 h", high="12 h", default_by=("chemistry", _by_chemistry("acceptance_h", "h")), hint="Missing charge divided by current at full voltage."),
        Quantity(id="tail", advanced=True, label="Tail current called full", symbol="r_t", kinds=(CURRENT_PER_CAPACITY,), low="0.001 A/Ah", high="0.05 A/Ah", default_by=("chemistry", _by_chemistry("tail_per_h", "A/Ah")), hint="Per Ah: 0.02 means 2 A into 100 Ah."),
    ),
    results=(
        Output(id="hours", at="night.charge.total", label="Time it takes", symbol="t", kind=TIME),
        Output(id="after_night", at="night.after", label="State of charge after those hours", symbol="s_n", kind=RATIO),
        Output(id="put_back", at="night.put_back", label="Charge put back in that time", symbol="Q", kind=CHARGE),
        Output(id="supply_current", at="load.current", label="Charger's current from the supply", symbol="I_1", kind=CURRENT),
        Output(id="supply_load", at="load.share", label="Share of the supply's rating, all loads", symbol="x", kind=RATIO),
        Output(id="sustained", at="load.supply.sustained", label="Continuous limit of the supply", symbol="I_m", kind=CURRENT),
        Output(id="governs", at="night.governs", label="What sets the charging current", hide_if_none=True, words=GOVERNORS),
        Output(id="left_over", at="load.left", label="Left for other loads, continuous", symbol="I_r", kind=CURRENT, hide_if_none=True),
        Output(id="left_power", at="load.left_power", label="That is", symbol="P_r", kind=POWER, hide_if_none=True),
        Output(id="setting", label="Set the charger to no more than", symbol="I_set", kind=CURRENT, rounding=DOWN, hide_if_none=True),
        Output(id="shortest", at="night.shortest", label="Shortest, by published acceptance times", kind=TIME, hide_if_none=True),
        Output(id="longest", at="night.longest", label="Longest, by published acceptance times", kind=TIME, hide_if_none=True),
        Output(id="energy", at="night.energy", label="Energy from shore power in those hours", symbol="E", kind=ENERGY, hide_if_none=True),
        Output(id="transfer_rating", at="inlet.transfer_rating", label="Transfer switch rated at least", symbol="I_t", kind=CURRENT, hide_if_none=True),
        Output(id="stages", at="night.stages", label="Stage by stage", hide_if_none=True),
        Output(id="moves", label="Go on with", hide_if_none=True, needs_step=False, find=onward),
    ),
    intermediates=(
        Output(id="margin", at="load.supply.margin", label="Margin for a continuous load", symbol="m", kind=NUMBER),
        Output(id="on_lead", at="load.total", label="Total on the supply", symbol="I_a", kind=CURRENT),
        Output(id="correction", at="load.correction", label="Power factor without correction", symbol="λ_0", kind=NUMBER),
        Output(id="uncorrected", at="load.uncorrected", label="Total on the supply without power-factor correction", symbol="I_u", kind=CURRENT),
        Output(id="supply_fits", at="load.room_for", label="Charger output the supply allows", symbol="I_f", kind=CURRENT),
        Output(id="bank_most", at="offer.most", label="Charging limit of the bank", symbol="I_b", kind=CURRENT),
        Output(id="charging", at="night.charge.current", label="Into the bank at full current", symbol="I", kind=CURRENT),
        Output(id="full_at", at="acceptance.full", label="State that counts as full", symbol="s_f", kind=RATIO),
        Output(id="meets", at="night.charge.meets", label="State from which the current falls", symbol="s_m", kind=RATIO),
        Output(id="turn", at="night.charge.turn", label="Where it begins to fall here", symbol="s_t", kind=RATIO),
        Output(id="reached", at="night.charge.reached", label="State at the end", symbol="s_e", kind=RATIO),
        Output(id="constant_time", at="night.charge.constant", label="At full current", symbol="t_1", kind=TIME),
        Output(id="falling_time", at="night.charge.falling", label="With the current falling", symbol="t_2", kind=TIME),
        Output(id="acceptance_low", at="acceptance.low", label="Shortest acceptance time", symbol="τ_low", kind=TIME),
        Output(id="acceptance_high", at="acceptance.high", label="Longest acceptance time", symbol="τ_high", kind=TIME),
        Output(id="freezes", at="bank.freezes", label="Acid freezes at this state near", kind=TEMPERATURE),
        Output(id="bears_voltage", at="voltage.most", label="Usual charging limit of such a bank", kind=VOLTAGE),
        Output(id="charge_low", at="bank.charge_low", label="Coldest it may be charged", kind=TEMPERATURE),
        Output(id="charge_high", at="bank.charge_high", label="Warmest it may be charged", kind=TEMPERATURE),
    ),
    steps=STEPS,
    rules=(
        *placed("bank", bank_rules.CHARGE_IN_FROST, bank_rules.CHARGE_OUTSIDE_TEMPERATURE, bank_rules.ACID_MAY_FREEZE),
        *placed("rested", rested_rules.PAST_EMPTY),
        *placed("voltage", charge_rules.VOLTAGE_TOO_HIGH),
        *placed("inlet", judged.SOURCES_JOINED, judged.POLARITY_REVERSED, judged.NO_RESIDUAL_DEVICE),
        judged.NO_ROOM, judged.OVERLOAD, judged.BANK_NOT_FILLED,
        *placed("bank", bank_rules.CHARGE_HELD_BACK),
        *(Placed(rule=rule, at="rested", fields=_STATED) for rule in (rested_rules.STATED_TOO_HIGH, rested_rules.STATED_TOO_LOW)),
        judged.OVERLOAD_FOR_HOURS,
        Placed(rule=charge_rules.CURRENT_TOO_MUCH, at="offer", headline="Set the charger to {setting}: its output is too high for this bank. Then about {hours}."),
        judged.MAY_BE_UNCORRECTED, judged.NIGHT_TOO_SHORT,
        Placed(rule=bank_rules.CHARGE_NEAR_FROST, at="bank", headline="Charge slowly: at {temperature} makers of LFP allow less current. About {hours} at best.", text="Below 10 °C most makers of LFP allow 0.05 to 0.2 A for each Ah. Type that as the bank's charging limit."),
        Placed(rule=bank_rules.CHARGE_OFF_ROOM, at="bank", headline="Charge with less: the bank is at {temperature}, and about {hours} is for room temperature."),
        *placed("inlet", judged.UNTESTED, judged.REVERSED_BUT_ISOLATED, judged.REVERSED_CHECK_BREAKER),
        FULL_ALREADY, FINE,
        Placed(rule=bank_rules.NEVER_CHARGE_IN_FROST, at="bank", text=_NEVER_IN_FROST),
        *placed("bank", charge_rules.LEAD_ACID_GASSES, bank_rules.FREEZING_POINT),
        judged.LEAD_ACID_NOT_FILLED,
        *placed("voltage", charge_rules.VOLTAGE_FILLS_NOTHING),
        judged.NO_MORE_THAN_TAIL,
        *placed("inlet", judged.UNCOIL_LEAD, judged.MAINS_CAN_KILL, judged.ONE_SOURCE_ONLY, judged.TEST_POLARITY, judged.TRANSFER_SWITCH, judged.NEUTRAL_AND_EARTH),
        judged.INPUT_LIMIT,
        *placed("inlet", judged.CHARGER_ON_SHORE_SIDE, judged.LEAD_OF_16_A),
        judged.EASES_OFF, judged.SEALED_TAKES_HOURS, judged.FULL_BY_TAIL,
    ),
    valid="A healthy bank near room temperature, a steady supply, a charger that holds its voltage. Below half full the falling stage hardly matters.",
    summary="{hours}, supply at {supply_load}",
    summary_none="the bank does not fill",
    keep_distinct=(("on_lead", "sustained"),),
    older_defaults=({"polarity": Polarity.UNTESTED, "residual": ResidualDevice.UNTESTED}, {"switching": Switching.DOUBLE}, {"switching": Switching.SINGLE}),
    tables=(
        Table(of="stages", columns=(
            Output(id="name", label="Stage", words=STAGES), Output(id="time", label="Time", kind=TIME),
            Output(id="begins", label="From", kind=RATIO), Output(id="ends", label="To", kind=RATIO),
            Output(id="first", label="Current", kind=CURRENT), Output(id="last", label="At its end", kind=CURRENT),
        )),
    ),
)
