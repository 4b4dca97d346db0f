"""alternator-charge: relay or regulated charger?"""

# fmt: off
from dataclasses import replace
from math import e

from calc.electrical.rules import cable, copper
from calc.electrical.rules import protection as fuse_rules
from calc.electrical.rules.two_ends import FUSED_AT_ONE_END
from calc.energy.rules import alternator as judged
from calc.energy.rules import bank as bank_rules
from calc.energy.rules import charging as charge_rules
from calc.energy.rules import rested as rested_rules
from calc.energy.ways import side_by_side
from calc.sheets.charging.alternator_charge.calculate import calculate
from calc.sheets.charging.alternator_charge.fields import FIELDS
from calc.sheets.charging.alternator_charge.words import FINE, METHODS, STATE_NAMES, STEPS
from calc.sheets.parts.wire import AMPACITY, LAID, SAE, WARMTH, laying_advice
from calc.units.kinds import (
    CHARGE,
    COUNT,
    CURRENT,
    NUMBER,
    POWER,
    RATIO,
    RESISTANCE,
    TEMPERATURE,
    TIME,
    VOLTAGE,
)
from calc.units.shown import UP
from calc.worksheet.declare import Output, Placed, placed, placed_outputs
from calc.worksheet.next_steps import Lead, alike
from calc.worksheet.pictures import Bars, Limit, RowsOf
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet

_STATED = (("state", "from_state"),)
_NEVER_IN_FROST = "Never charge an LFP battery below 0 °C: lithium plates out and the loss is permanent. A relay cannot sense frost; a charger only with a sensor on the bank."
_VOLTAGE_TEXT = "Too high a voltage makes lead-acid gas and LFP switch itself off. Check what the bank's maker allows, and measure the engine's voltage."


def _fused(*uses: Placed, relay: str = "") -> tuple[Placed, ...]:
    """Return rules on the fuse, with the remedies that this sheet has inputs for.

    A thicker conductor is none where a relay then passes more. `relay` is the headline beside one.
    """
    return tuple(
        replace(use, at=use.at.replace("protection", by, 1), fields=fields, headline=own or use.headline)
        for by, fields, own in (
            ("relay_protection", (("current", ""), ("conductor", "")), relay),
            ("charger_protection", (("current", ""),), ""),
        )
        for use in uses
    )


WORKSHEET = Worksheet(
    id="alternator-charge",
    title="Alternator charge",
    question="How much does a drive charge, by relay or charger?",
    about="Current through a relay or a charger, what cable and alternator must carry, and the charge of a drive.",
    calculate=calculate,
    picture=Bars(
        rows=RowsOf("compared", "method", "first"), limits=(Limit("Alternator spares, hot", "hot_left"),),
        caption="Current into the bank at first, by relay and by charger",
    ),
    fields=FIELDS,
    results=(
        Output(id="initial_current", label="Into the bank, at first", symbol="I_1", kind=CURRENT),
        Output(id="compared", label="Relay and charger side by side", find=side_by_side),
        Output(id="charge", at="drive.charge", label="Charge from the drive", symbol="Q", kind=CHARGE),
        Output(id="kept", at="drive.kept", label="Of that, stored in the bank", symbol="Q_k", kind=CHARGE, hide_if_none=True),
        Output(id="end_state", at="drive.end_state", label="State of charge afterwards", symbol="s_2", kind=RATIO, hide_if_none=True),
        Output(id="charge_most", at="drive.most", label="Upper limit", symbol="Q_m", kind=CHARGE, hide_if_none=True),
        Output(id="drive_time", at="drive.drive_time", label="Driving time for the charge you want", symbol="t_w", kind=TIME, hide_if_none=True),
        Output(id="inside", at="relay.bank_resistance", label="Resistance inside the bank", symbol="R_b", kind=RESISTANCE, hide_if_none=True),
        Output(id="drain", at="relay.drain", label="Current back into the vehicle, up to", symbol="I_d", kind=CURRENT, hide_if_none=True),
        Output(id="input_current", at="charger.input_current", label="Charger input current, at first", symbol="I_i", kind=CURRENT, hide_if_none=True),
        Output(id="input_voltage", at="charger.last.voltage", label="Lowest voltage at its input", symbol="V_i", kind=VOLTAGE, hide_if_none=True),
        Output(id="cable_current", at="protection.current", label="Largest current in the run", symbol="I_c", kind=CURRENT, hide_if_none=True),
        Output(id="cable_load", label="Share of the cable's limit", symbol="x_c", kind=RATIO, hide_if_none=True),
        Output(id="cable_heat", label="Heat in the run", symbol="P_c", kind=POWER, hide_if_none=True),
        Output(id="fuse", at="protection.fuse", label="Fuse at both ends", symbol="I_n", kind=CURRENT),
        Output(id="alternator_load", at="load.share", label="Share of the alternator's rating", symbol="x_a", kind=RATIO, hide_if_none=True),
        Output(id="hot_left", at="load.hot_left", label="Left for the bank, hot, continuous", symbol="I_h", kind=CURRENT),
        Output(id="idle_left", at="load.idle_left", label="Left for the bank, hot, at idle", symbol="I_0", kind=CURRENT),
        Output(id="states", at="load.states", label="The alternator, cold and hot"),
    ),
    intermediates=(
        *placed_outputs("run.laid", *(one for one in LAID if one.id != "wires")),
        *placed_outputs("run.laid.copper", *SAE),
        *placed_outputs("cable", *AMPACITY),
        *placed_outputs("protection.warmth", *WARMTH),
        Output(id="cable", at="run.laid.resistance", label="Conductors, out and back", symbol="R_c", kind=RESISTANCE),
        Output(id="joints_total", at="run.joints_total", label="Joints together", symbol="R_j", kind=RESISTANCE),
        Output(id="run_total", at="run.total", label="The run", symbol="R_r", kind=RESISTANCE),
        Output(id="loop", at="relay.loop", label="The whole loop", symbol="R", kind=RESISTANCE),
        Output(id="give", at="charger.gives", label="The charger gives", symbol="I_g", kind=CURRENT),
        Output(id="blocks", at="shown.blocks", label="12 V blocks in series", kind=COUNT),
        Output(id="ends_at", at="voltage.voltage", label="Charging ends at", symbol="V_t", kind=VOLTAGE),
        Output(id="top_voltage", at="cable.max_voltage", label="Highest voltage on the run", kind=VOLTAGE),
        Output(id="bears_voltage", at="voltage.most", label="Usual charging limit of such a bank", kind=VOLTAGE),
        Output(id="vehicle_bears", at="engine.most", label="Highest voltage for a vehicle's battery", kind=VOLTAGE),
        Output(id="power_first", at="charger.power_first", label="Input power at first", symbol="P_1", kind=POWER),
        Output(id="power_most", at="charger.power_last", label="Input power at the end", symbol="P_m", kind=POWER),
        Output(id="input_most", at="charger.last.current", label="Input current at the end", symbol="I_m", kind=CURRENT),
        Output(id="asked", at="load.asked", label="Alternator current for it", symbol="I_q", kind=CURRENT),
        Output(id="fed", at="load.fed", label="Share of it available", symbol="f", kind=RATIO),
        Output(id="most_taken", at="room.most", label="Usual charging limit of the bank", symbol="I_b", kind=CURRENT),
        Output(id="takes", at="room.takes", label="Current the bank accepts at this state", symbol="I_s", kind=CURRENT),
        Output(id="settled", at="protection.settled", label="Falls within minutes to", symbol="I_2", kind=CURRENT),
        Output(id="coulombic", at="room.coulombic", label="Charge efficiency", symbol="η_q", kind=RATIO),
        Output(id="going_in", at="drive.filling.current", label="Current into the bank at first, used here", symbol="I_k", kind=CURRENT),
        Output(id="room", at="room.charge", label="Charge needed to fill the bank", symbol="Q_r", kind=CHARGE),
        Output(id="rises_to", at="rising.full", label="The bank's own voltage when full", symbol="V_f", kind=VOLTAGE),
        Output(id="begins", at="rising.begins", label="The bank's own voltage, used here", symbol="V_0", kind=VOLTAGE),
        Output(id="counted", at="rising.current", label="Current from there", symbol="I_e", kind=CURRENT),
        Output(id="reach", at="rising.reach", label="State the engine's voltage can reach", symbol="z", kind=RATIO),
        Output(id="later_room", at="drive.filling.later_room", label="Of that, at falling current", symbol="Q_l", kind=CHARGE),
        Output(id="steady_time", at="drive.steady_time", label="Time before the current falls", symbol="t_s", kind=TIME),
        Output(id="falls_in", at="drive.falls_in", label="Time constant of the fall", symbol="τ", kind=TIME),
        Output(id="euler", label="Euler's number", symbol="e", kind=NUMBER, digits=6, find=lambda _: e),
        Output(id="still_open", at="drive.still_open", label="Share still missing", symbol="y", kind=RATIO),
        Output(id="freezes", at="bank.freezes", label="Acid freezes at this state near", kind=TEMPERATURE),
        Output(id="coldest", at="bank.charge_low", label="Charged from", kind=TEMPERATURE),
        Output(id="warmest", at="bank.charge_high", label="Charged up to", kind=TEMPERATURE),
        Output(id="margin", at="protection.margin", label="Margin for a continuous load", symbol="m", kind=RATIO),
        Output(id="lowest", at="protection.lowest", label="The fuse must carry", symbol="I_min", kind=CURRENT, rounding=UP),
        Output(id="highest", at="cable.largest_fuse", label="The cable can carry", symbol="I_max", kind=CURRENT),
        Output(id="ampacity", at="cable.ampacity", label="Ampacity, corrected", symbol="I_z", kind=CURRENT),
    ),
    steps=STEPS,
    rules=(
        judged.CURRENT_NOT_LIMITED, judged.SMART_ALTERNATOR, judged.RELAY_THAT_STICKS,
        *placed("bank", bank_rules.CHARGE_IN_FROST, bank_rules.CHARGE_OUTSIDE_TEMPERATURE, bank_rules.ACID_MAY_FREEZE),
        *placed("rested", rested_rules.PAST_EMPTY), *placed("shown", rested_rules.PAST_EMPTY),
        judged.OVER_VOLTAGE, judged.DRAINS_BANK, judged.NO_VOLTAGE_BETWEEN, FUSED_AT_ONE_END, judged.UNFED, judged.STARVED, judged.STAYS_OFF,
        Placed(rule=charge_rules.VOLTAGE_TOO_HIGH, at="relay_voltage", text=_VOLTAGE_TEXT, fields=(("voltage", ""),)),
        Placed(rule=charge_rules.VOLTAGE_TOO_HIGH, at="charger_voltage", text=_VOLTAGE_TEXT, fields=(("voltage", "charge_voltage"),)),
        judged.OVER_RATING, judged.CHARGER_OVER_RATING, judged.LFP_OVER_HOT,
        *_fused(
            *placed("protection", fuse_rules.NO_FAMILY, *fuse_rules.FITS),
            relay="The relay passes {cable_current}, and no fuse on {conductor} both carries that and protects it. Use a charger.",
        ),
        judged.NOTHING_LEFT,
        *placed("bank", bank_rules.CHARGE_HELD_BACK),
        *(Placed(rule=rule, at="rested", fields=_STATED) for rule in (rested_rules.STATED_TOO_HIGH, rested_rules.STATED_TOO_LOW)),
        judged.HOT_TOO_SMALL, judged.RELAY_OVER_HOT, judged.RUN_TOO_THIN,
        *placed("bank", judged.BANK_FULL),
        Placed(rule=charge_rules.CURRENT_TOO_MUCH, at="offer", headline="Use a smaller charger: {initial_current} is more than the usual limit for such a bank, {most_taken}.", fields=(("charger", "charger_limit"),)),
        judged.NO_RISE, judged.ENDS_UNKNOWN, judged.STOPS_UNCHECKED, judged.RELAY_BOUNDS_NOTHING, judged.CHECK_RELAY_RATING,
        *_fused(*(Placed(rule=rule, at="protection") for rule in fuse_rules.HEAT)),
        Placed(rule=charge_rules.LEAD_ACID_ENDS_LOW, at="charger_voltage", fields=(("voltage", "charge_voltage"),),
               headline="Set the charger as the bank's maker says: one that ends at {ends_at} does not fill lead-acid."),
        Placed(rule=bank_rules.CHARGE_NEAR_FROST, at="bank", headline="Charge with less current: makers limit it near freezing, and the charger needs a sensor on the bank."),
        Placed(rule=bank_rules.CHARGE_OFF_ROOM, at="bank", headline="Charge with less current: the bank is at {temperature}, and {charge} in {hours} is for room temperature."),
        judged.HEAT_TAKES_OUTPUT, judged.NEVER_ENOUGH, judged.TOO_SHORT,
        FINE,
        Placed(rule=bank_rules.NEVER_CHARGE_IN_FROST, at="bank", text=_NEVER_IN_FROST),
        *placed("charged", charge_rules.LEAD_ACID_GASSES),
        *placed("bank", bank_rules.FREEZING_POINT),
        judged.LFP_CUTS_OFF, judged.RESISTANCE_ESTIMATED, judged.KNOWS_ENGINE_RUNS, judged.FUSE_AT_BOTH_ENDS,
        judged.RUN_LOSES_TOO_MUCH, judged.CHARGE_BY_WHAT_IS_LEFT, judged.LOADS_MEANWHILE,
        *_fused(*laying_advice("protection")),
        *placed("protection", fuse_rules.WARM_AIR_DERATES),
        judged.TWO_BATTERIES, judged.ENGINE_EXHAUST_KILLS,
        *placed("protection", fuse_rules.TERMINALS_HAVE_RATINGS, fuse_rules.TERMINALS_COOL_COLUMN),
        *placed("cable", cable.MAINS_SIDE, cable.EDITIONS_DIFFER, cable.RULES_FOR_BOATS),
        judged.IDLE_TOO_SMALL, judged.RATED_COLD, judged.HALF_OF_SHAFT, judged.LEAD_ACID_SELDOM_FULL, judged.FALL_IS_MODEL,
        *placed("run.read.copper", copper.MAY_BE_SAE, copper.READ_AS_SAE),
        *placed("run.laid.copper", copper.GAUGE_READING_IDLE),
        *placed("run.laid.run", copper.STRANDS_IDLE),
    ),
    leads=(
        Lead(label="A week with this charger", sheet="week-ahead", needs=("charger_limit",),
             carry=(("charger", "charger_limit"), *alike("chemistry", "capacity", "temperature", "cold_cut_off"))),
        Lead(label="The fuse at either end", sheet="fuse-choice",
             carry=(("current", "cable_current"), ("voltage", "engine_voltage"), ("fuse_place", "=at-the-battery"), *alike("conductor", "insulation", "fault_current", "surroundings", "bundled", "ambient", "rule_set", "gauge_reading"))),
    ),
    valid="A warm engine above idle, its regulator at a constant voltage, a healthy bank. The starter battery's own charge is not included.",
    summary="{initial_current} at first, {charge} in {hours}",
    summary_none="nothing is charged",
    keep_distinct=(("lowest", "highest"),),
    older_defaults=({"bank_resistance": "10 mΩ", "conductor": "8 AWG"},),
    tables=(
        Table(of="compared", columns=(
            Output(id="method", label="Joined by", words=METHODS), Output(id="first", label="Into the bank, at first", kind=CURRENT), Output(id="limit", label="Limited to", kind=CURRENT),
            Output(id="ends_at", label="Charging voltage", kind=VOLTAGE), Output(id="load", label="Share of the alternator's rating", kind=RATIO), Output(id="charge", label="Charge from the drive", kind=CHARGE))),
        Table(of="states", columns=(
            Output(id="name", label="State", words=STATE_NAMES), Output(id="share", label="Of the rating", kind=RATIO), Output(id="output", label="It gives", kind=CURRENT),
            Output(id="left", label="Left for the bank", kind=CURRENT), Output(id="load", label="Load", kind=RATIO))),
    ),
)
