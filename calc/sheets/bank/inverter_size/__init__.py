"""inverter-size: what inverter, and what does it ask of the cables?"""

from dataclasses import replace
from types import SimpleNamespace

from calc.sheets.bank.inverter_size.calculate import run
from calc.sheets.parts.bank import CAPACITY, chemistry_field
from calc.sheets.parts.fields import EFFICIENCY, bank_voltage
from calc.units.compare import at_most
from calc.units.kinds import CHARGE, CURRENT, ENERGY, NUMBER, POWER, RATIO, TIME, VOLTAGE
from calc.units.kinds.energy import APPARENT, C_RATE
from calc.units.kinds.heat import HEAT
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Quantity
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet


def _motor(v: SimpleNamespace) -> bool:
    return v.motor_start is not None


def _waits(v: SimpleNamespace) -> bool:
    return v.staggered is not None


WORKSHEET = Worksheet(
    id="inverter-size",
    title="Inverter size",
    question="What inverter, and what does it ask of the cables?",
    entry_question="Which inverter do I need?",
    about="Steady and surge rating, current at the bank, and what idling takes.",
    calculate=run,
    fields=(
        Quantity(id="running", label="Running power", symbol="P", kinds=(POWER,), default="1500 W", low="1 W", high="20000 W", hint="The largest sum that runs at one time."),
        Quantity(id="surge", label="Surge", symbol="P_s", kinds=(POWER,), default="2500 W", low="1 W", high="60000 W", hint="The most for a moment, as the largest motor starts while the others run."),
        Quantity(id="power_factor", label="Power factor", symbol="λ", kinds=(NUMBER,), default="0.95", low="0.3", high="1", hint="Heaters 1; small motors 0.5 to 0.8, simple chargers 0.5 to 0.7 (no source)."),
        replace(EFFICIENCY, only_if=None, hint="At this load, from the maker's curve: 85 to 95 % is usual at best (no source)."),
        Quantity(id="idle", label="Inverter's own draw", symbol="P_0", kinds=(POWER,), default="15 W", low="0 W", high="500 W", hint="On, with nothing plugged in. Often 0.5 to 2 % of its rating (no source)."),
        Quantity(id="lowest_voltage", label="Lowest bank voltage", symbol="V_l", kinds=(VOLTAGE,), default="11.5 V", low="0.8 V", high="1000 V", hint="Under this load, when nearly empty: just above where the inverter switches off."),
        Quantity(id="hours_on", label="Hours a day it is on", symbol="t", kinds=(TIME,), default="24 h", low="0 h", high="24 h", hint="Not only the hours with a load."),
        bank_voltage("12.8 V"),
        Quantity(id="motor", advanced=True, optional=True, label="Largest motor that starts", symbol="P_m", kinds=(POWER,), low="1 W", high="20000 W", example="300 W", hint="Its running power, part of that above: compressor, pump, power tool."),
        Quantity(id="start_factor", advanced=True, label="Its start, in times its running", symbol="k", kinds=(NUMBER,), default="6", low="1", high="12", hint="5 to 7 in general. Its plate or a clamp meter that holds the peak tells."),
        Quantity(id="can_wait", advanced=True, optional=True, label="A load that can wait", symbol="P_w", kinds=(POWER,), low="1 W", high="20000 W", example="600 W", hint="Part of the running power that need not run with the rest."),
        Quantity(id="taken", advanced=True, label="Energy taken through it a day", symbol="E", kinds=(ENERGY,), default="500 W·h", low="1 W·h", high="200 kW·h", hint="By the appliances, at the plug."),
        replace(CAPACITY, advanced=True, optional=True, default="", example="200 A·h"),
        chemistry_field("LFP", more=True),
        Quantity(id="max_current", advanced=True, optional=True, label="The most the bank may give", symbol="I_b", kinds=(CURRENT,), low="1 A", high="5000 A", example="150 A", hint="Steady, by its data sheet or its management system. Batteries in parallel add, if they share."),
    ),
    results=(
        Output(id="continuous", label="Steady rating needed", symbol="S", kind=APPARENT, rounding=UP),
        Output(id="surge_rating", label="Surge rating needed", symbol="S_s", kind=APPARENT, rounding=UP),
        Output(id="dc_current", label="Current from the bank", symbol="I", kind=CURRENT, rounding=UP),
        Output(id="surge_current", label="The same in the surge", symbol="I_s", kind=CURRENT, rounding=UP),
        Output(id="idle_charge", label="Own draw, a day", symbol="Q_0", kind=CHARGE, rounding=UP),
        Output(id="idle_share", label="Own draw in the day's energy", symbol="s_0", kind=RATIO, rounding=UP),
        Output(id="day_efficiency", label="Efficiency over the day", symbol="η_d", kind=RATIO, rounding=DOWN),
        Output(id="heat", label="Heat while it runs", symbol="P_h", kind=HEAT, rounding=UP, both=True),
        Output(id="staggered", label="Steady rating if one waits", symbol="S_w", kind=APPARENT, rounding=UP, hide_if_none=True),
        Output(id="staggered_current", label="Current from the bank if one waits", symbol="I_w", kind=CURRENT, rounding=UP, hide_if_none=True),
        Output(id="c_rate", label="Current against the bank's capacity", symbol="r", kind=C_RATE, rounding=UP, hide_if_none=True),
        Output(id="onward", label="Go on with", hide_if_none=True, needs_step=False),
        Output(id="code_letters", label="Start of a motor by its code letter, for each horsepower"),
        Output(id="weights", label="How efficiency at part load is averaged"),
    ),
    intermediates=(
        Output(id="motor_start", label="Power as the motor starts", symbol="P_k", kind=POWER, rounding=UP),
        Output(id="surge_power", label="Surge reckoned with", symbol="P_x", kind=POWER, rounding=UP),
        Output(id="idle_energy", label="Own draw, energy a day", symbol="E_0", kind=ENERGY, rounding=UP),
        Output(id="day_energy", label="Energy from the bank a day", symbol="E_b", kind=ENERGY, rounding=UP),
        Output(id="staggered_power", label="Running power if one waits", symbol="P_y", kind=POWER, rounding=UP),
        Output(id="usual_rate", label="What such a bank usually bears for long", kind=C_RATE),
        Output(id="heavy_cable", label="What 2/0 AWG bears", kind=CURRENT),
        Output(id="thickest_cable", label="What 4/0 AWG bears", kind=CURRENT),
    ),
    steps=(
        Step(of="continuous", formula="running / power_factor", source="power-factor", says="Watts over the power factor."),
        Step(of="motor_start", formula="running - motor + start_factor * motor", source="motor-start", when=_motor, says="The motor starts while the others run."),
        Step(of="surge_power", formula="max(running, surge, motor_start)", when=_motor, says="The larger governs."),
        Step(of="surge_power", formula="max(running, surge)", when=lambda v: not _motor(v), says="The larger governs."),
        Step(of="surge_rating", formula="surge_power / power_factor", source="power-factor", says="In a start the power factor is lower than this: take the next larger one if in doubt."),
        Step(of="dc_current", formula="running / (lowest_voltage * efficiency)", source="inverter-input", says="An inverter holds its power: the emptier the bank, the more it takes."),
        Step(of="surge_current", formula="surge_power / (lowest_voltage * efficiency)", source="inverter-input", says="For a moment; the cable's own drop comes on top."),
        Step(of="idle_energy", formula="idle * hours_on", source="ohm", says="With or without a load."),
        Step(of="idle_charge", formula="idle_energy / voltage", source="ohm", says="As the bank counts it."),
        Step(of="day_energy", formula="taken / efficiency + idle_energy", source="ohm", says="The loads, the loss on them, and idling."),
        Step(of="idle_share", formula="idle_energy / day_energy", says="For this share nothing is done."),
        Step(of="day_efficiency", formula="taken / day_energy", says="What the day's work gets of what the bank gives."),
        Step(of="heat", formula="running / efficiency - running", source="device-loss", says="It must leave the locker."),
        Step(of="staggered_power", formula="max(running - can_wait, can_wait)", when=_waits, says="The one without the other, whichever is larger."),
        Step(of="staggered", formula="staggered_power / power_factor", source="power-factor", when=_waits, says="If the two are never on together."),
        Step(of="staggered_current", formula="staggered_power / (lowest_voltage * efficiency)", source="inverter-input", when=_waits, says="In the same way."),
        Step(of="c_rate", formula="dc_current / capacity", source="practice", when=lambda v: v.capacity is not None, says="1 C would empty the bank in an hour."),
        Step(of="code_letters", source="code-letters", says="Locked-rotor kV·A for each horsepower (746 W) on the plate. Many plates give the locked-rotor current itself."),
        Step(of="weights", source="weights", says="What each load, as a share of the rating, counts. Made for feeding a grid: an inverter in a van idles far more."),
    ),
    rules=(
        Verdict(verdict=STOP, when=lambda v: v.beyond_bank, says="The bank may give {max_current}, and this asks {dc_current}: less at one time, or a bank that may give more."),
        Verdict(verdict=STOP, when=lambda v: v.no_cable, says="{dc_current} is too much for one cable: no standard fuse of a quarter more suits the thickest in the table ({thickest_cable}). Use a higher bank voltage, or less at one time."),
        Verdict(verdict=CAUTION, when=lambda v: v.hard_on_bank, says="{continuous}, and {surge_rating} for a moment. {dc_current} is {c_rate} on this bank, which usually bears {usual_rate} for long."),
        Verdict(verdict=CAUTION, when=lambda v: v.surge_beyond_bank, says="{continuous}, and {surge_rating} for a moment: the surge asks {surge_current}, more than the {max_current} that the bank may give."),
        Verdict(verdict=CAUTION, when=lambda v: v.beyond_one, says="{continuous}, and {surge_rating} for a moment. {dc_current} is more than one usual battery is made to give: find out what the bank may."),
        Verdict(verdict=CAUTION, when=lambda v: v.surge_asks, says="{continuous}, and {surge_rating} for a moment. The surge asks {surge_current}, more than such a bank or one usual battery gives even then: find out what yours may."),
        Verdict(verdict=CAUTION, when=lambda v: v.low, says="{continuous}, and {surge_rating} for a moment; but {lowest_voltage} is far below a bank of {voltage}. Look at both again."),
        Verdict(verdict=CAUTION, when=lambda v: v.no_sag, says="{continuous}, and {surge_rating} for a moment; but {lowest_voltage} is hardly below {voltage}: nearly empty and under load the bank sags further, and the current grows."),
        Verdict(verdict=CAUTION, when=lambda v: v.idles, says="{continuous}, and {surge_rating} for a moment; {idle_share} of the day's energy only keeps the inverter on."),
        Verdict(verdict=FINE, says="{continuous} steady and {surge_rating} for a moment, with {dc_current} from the bank."),
    ),
    remarks=(
        Remark(source="practice", says="The output is mains voltage and can kill. Sockets, residual-current device, earth and the bond of neutral to it are work for a licensed person, to local rules, whether it feeds one socket or a van."),
        Remark(source="practice", says="Never feed the van's mains inlet from it, nor let it meet shore power: that takes a transfer switch that parts both poles of one before it joins the other."),
        Remark(source="practice", says="Before hands go in: off, unplugged, parted from the bank by its switch, and time for its capacitors to empty. They also make the spark at the last lug: never near a vented battery or gas."),
        Remark(when=lambda v: v.dc_current > 30, source="practice", says="Take {dc_current} to wire size and fuse choice: short and thick, fused at the bank by a fuse that can break the bank's short circuit, every lug at its torque. If the inverter is larger than the load, take its own input current: sockets fill up."),
        Remark(when=lambda v: not at_most(v.dc_current, v.heavy_cable) and not v.no_cable, source="33cfr-table", says="This current is beyond 2/0 AWG with 105 °C insulation ({heavy_cable}). Twice the bank voltage halves it; that is cheaper than copper."),
        Remark(when=lambda v: v.hard_on_bank and v.lead_acid, source="peukert", says="A lead-acid bank gives far less than its label at such a current, and its voltage sags below the inverter's cut-out long before it is empty: ask run time."),
        Remark(when=lambda v: v.surge_beyond_bank, source="practice", says="A management system that sees more than it allows opens in the surge, and everything aboard goes dark at once."),
        Remark(when=lambda v: v.steep, source="practice", says="Few inverters give more than twice their steady rating, and that for an instant. Choose by the surge, or by a soft start at the motor."),
        Remark(when=lambda v: v.power_factor < 0.8, source="practice", says="At a power factor as low as this the current in the inverter is far above the watts: heed the V·A. Motors also want a sine wave; a stepped one heats them."),
        Remark(when=lambda v: _motor(v) and v.power_factor > 0.8, source="practice", says="A motor's own power factor is mostly 0.5 to 0.8 (no source), so its start asks more V·A than {surge_rating}. Set the power factor to the motor's to be safe."),
        Remark(when=lambda v: v.idle_energy > 0, source="practice", says="On for {hours_on} a day it takes {idle_charge} for itself. A switch within reach, and a small inverter for small things, save more than a better label."),
        Remark(when=_waits, source="practice", says="If {can_wait} waits for the rest, {staggered} and {staggered_current} will do. Make it certain: one socket for both, or a changeover switch, not a promise."),
        Remark(when=lambda v: not v.lead_acid and v.max_current is None, source="practice", says="The bank's own limit is not known here: an LFP battery's management system often ends at 100 A. Fill in what it may give."),
        Remark(level=NOTE, source="practice", says="Ratings hold at about 25 °C. {heat} of heat in a shut locker takes it beyond that within minutes, and it gives less: see enclosure airflow."),
        Remark(level=NOTE, source="practice", says="Current into an inverter comes in pulses at twice the mains frequency. At worst the cable heats as by a current nearly a quarter above the average that many clamp meters show: leave it room."),
        Remark(level=NOTE, source="code-letters", says="A code letter gives the start by horsepower. The row for H is from memory."),
    ),
    valid="Steady loads at a fixed efficiency, the start taken as a moment. An inverter has no size between those that are made: round up.",
    summary="{continuous} steady, {surge_rating} surge",
    keep_distinct=(("dc_current", "thickest_cable"), ("c_rate", "usual_rate")),
    tables=(
        Table(of="code_letters", folded=True, columns=(Output(id="letter", label="Letter"), Output(id="power", label="With the rotor locked"), Output(id="known", label="How known"))),
        Table(of="weights", folded=True, columns=(Output(id="load", label="Load"), Output(id="cec", label="CEC"), Output(id="european", label="European"))),
    ),
)
