"""panel-string: can these panels go in series on this regulator?"""

# fmt: off
from dataclasses import replace

from calc.electrical import fuses
from calc.energy.panel_string import BRIGHT_LIGHT, Alike
from calc.energy.panels import FULL_SUN, RATED_CELL
from calc.energy.rules import panel_string as judged
from calc.energy.rules import panels
from calc.sheets.charging.panel_string.calculate import calculate, onward
from calc.sheets.charging.panel_string.words import FINE, FINE_BY_TABLE, STEPS
from calc.sheets.parts.fields import HIGHEST_BANK
from calc.sheets.parts.sun import HEAT_COEFFICIENT, MOUNT, REGULATOR
from calc.units.kinds import COUNT, CURRENT, NUMBER, POWER, RATIO, RISE, TEMPERATURE, VOLTAGE, heat
from calc.units.kinds.energy import VOLTAGE_FALL
from calc.units.shown import UP
from calc.worksheet.declare import Output, Placed, placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Bars, Limit, Row
from calc.worksheet.work import Worksheet

# A row of panels here changes the count in series, which has its own remedy
IN_SERIES = (("panel_voltage", ""), ("regulator", ""))

WORKSHEET = Worksheet(
    id="panel-string",
    title="Panel string",
    question="Series or parallel: will the regulator take these panels?",
    about="Cold and hot string voltage, current, string fuses and regulator limits.",
    calculate=calculate,
    picture=Bars(
        rows=(Row("String, hot to cold", "hot_vmp", "cold_voc"),),
        limits=(Limit("Regulator needs", "wanted", least=True), Limit("Regulator allows", "volts_limit")),
        caption="The string’s voltage, from best power when hot to open circuit when cold",
    ),
    fields=(
        Quantity(id="voc", label="Open-circuit voltage of a panel", symbol="U_oc", kinds=(VOLTAGE,), default="24.3 V", low="1 V", high="200 V", hint="On its label as Voc. Its other values: More options."),
        Quantity(id="vmp", advanced=True, label="Voltage at maximum power", symbol="U_mp", kinds=(VOLTAGE,), default="20.4 V", low="1 V", high="200 V", hint="On its label as Vmp."),
        Quantity(id="isc", advanced=True, label="Short-circuit current of a panel", symbol="I_sc", kinds=(CURRENT,), default="10.4 A", low="0.1 A", high="30 A", hint="On its label as Isc."),
        Quantity(id="rated", advanced=True, label="Power of a panel, or current at maximum power", kinds=(POWER, CURRENT), default="200 W", low="1 W | 0.1 A", high="1000 W | 30 A", hint="On its label as Pmax or Imp."),
        Quantity(id="coefficient", advanced=True, label="Temperature coefficient of Voc", kinds=(heat.DERATING, VOLTAGE_FALL), optional=True, default="-0.28 %/K", low="-1 %/K | -1 V/K", high="1 %/K | 1 V/K", hint="In % or volts per degree, from the label. Empty: NEC's table."),
        Quantity(id="series", label="Panels in series in a string", symbol="n_s", kinds=(COUNT,), default="2", low="1", high="20", hint="Plus of one to minus of the next: volts add."),
        Quantity(id="parallel", label="Strings in parallel", symbol="n_p", kinds=(COUNT,), default="1", low="1", high="20", hint="All plus together, all minus together: amps add."),
        Quantity(id="cold", label="Coldest morning", symbol="T_c", kinds=(TEMPERATURE,), default="-20 °C", low="-60 °C", high="25 °C", hint="The coldest sunrise the van will see, not tonight's."),
        Quantity(id="hot_air", advanced=True, label="Hottest air", symbol="T_a", kinds=(TEMPERATURE,), default="35 °C", low="0 °C", high="60 °C", hint="By day in the shade. Roof and sun come on top."),
        REGULATOR,
        Quantity(id="volts_limit", label="Regulator's maximum input voltage", symbol="U_r", kinds=(VOLTAGE,), default="100 V", low="10 V", high="1000 V", hint="Its input limit, as printed on it."),
        Quantity(id="regulator_limit", advanced=True, label="Regulator's rated current", symbol="I_r", kinds=(CURRENT,), optional=True, default="30 A", low="1 A", high="1000 A", hint="On its label, into the battery. Empty: not compared."),
        Quantity(id="voltage", advanced=True, label="Charging voltage", symbol="U", kinds=(VOLTAGE,), default="14.4 V", low="1 V", high=HIGHEST_BANK, hint="The highest charging voltage of the battery."),
        Quantity(id="series_fuse", advanced=True, label="Panel's maximum series fuse", symbol="I_m", kinds=(CURRENT,), optional=True, default="20 A", low="1 A", high="100 A", hint="On its label. Empty: not known."),
        Quantity(id="string_fuse", advanced=True, label="Fuse in each string", symbol="I_f", kinds=(CURRENT,), optional=True, low="0.5 A", high="100 A", example="15 A", hint="As fitted. Empty: none."),
        Choice(id="alike", advanced=True, label="Panels", of=Alike, default=Alike.ALIKE, options=(Option(Alike.ALIKE, "all alike", aliases=("same",)), Option(Alike.MIXED, "mixed", aliases=("different",))), hint="Mixed: other current, voltage or age. Then type the weakest."),
        Quantity(id="input_limit", advanced=True, label="Regulator's maximum panel current", kinds=(CURRENT,), optional=True, low="1 A", high="1000 A", example="35 A", hint="Short-circuit current, from its manual. Empty: not compared."),
        Quantity(id="headroom", advanced=True, label="Volts the regulator needs above the battery", symbol="U_h", kinds=(VOLTAGE,), default="1 V", low="0 V", high="20 V", hint="By its manual, plus cable drop: 1 to 5 V (no source)."),
        MOUNT,
        replace(HEAT_COEFFICIENT, default="-0.35 %/K", low="-1 %/K", hint="Of Pmax, from the panel's sheet: 0.30 to 0.53 %/K."),
    ),
    results=(
        Output(id="cold_voc", label="String's open-circuit voltage, coldest", symbol="U_c", kind=VOLTAGE),
        Output(id="hot_vmp", label="String's voltage at maximum power, hottest", symbol="U_h1", kind=VOLTAGE),
        Output(id="most_series", label="Panels in series, most", symbol="n_max", kind=COUNT),
        Output(id="least_series", label="Panels in series, least", symbol="n_min", kind=COUNT, hide_if_none=True),
        Output(id="max_current", label="Current in the cable from the panels", symbol="I_max", kind=CURRENT),
        Output(id="nec_current", label="The same by NEC", symbol="I_nec", kind=CURRENT),
        Output(id="reverse_current", label="Reverse current through a faulty string", symbol="I_b", kind=CURRENT, hide_if_none=True),
        Output(id="fuse", label="Fuse in each string", symbol="I_n", kind=CURRENT, hide_if_none=True),
        Output(id="peak_current", at="array.peak_current", label="Into the battery in full sun", symbol="I", kind=CURRENT),
        Output(id="array_power", at="array.power", label="All labels together", symbol="P", kind=POWER),
        Output(id="moves", label="Go on with", needs_step=False, find=onward),
    ),
    intermediates=(
        Output(id="panel_power", at="label.power", label="Power of a panel", symbol="P_1", kind=POWER),
        Output(id="fall", at="label.voc_fall", label="Open-circuit voltage lost per degree", symbol="β", kind=heat.DERATING, digits=4),
        Output(id="standard", label="Cells on the label", symbol="T_0", kind=TEMPERATURE, unit="degree_Celsius", find=lambda _: RATED_CELL),
        Output(id="colder", label="Colder than that by", symbol="ΔT_c", kind=RISE, unit="delta_degree_Celsius"),
        Output(id="cold_factor", label="Factor for cold", symbol="f_c", kind=NUMBER, digits=4),
        Output(id="full_sun", label="Full sun", symbol="G_1", kind=heat.IRRADIANCE, find=lambda _: FULL_SUN),
        Output(id="warming", at="heat.warming", label="Temperature rise per light", symbol="w", kind=heat.INSULANCE),
        Output(id="rise", at="heat.rise", label="Cell temperature rise above the air", symbol="ΔT", kind=RISE, unit="delta_degree_Celsius"),
        Output(id="cell", at="heat.cell", label="Hottest cells", symbol="T_h", kind=TEMPERATURE, unit="degree_Celsius"),
        Output(id="over", at="heat.over", label="Hotter than on the label by", symbol="ΔT_h", kind=RISE, unit="delta_degree_Celsius"),
        Output(id="power_fall", at="label.power_fall", label="Power lost per degree", symbol="γ", kind=heat.DERATING, digits=4),
        Output(id="keeps", at="heat.keeps", label="Share left in the heat", symbol="η_T", kind=RATIO),
        Output(id="string_vmp", at="array.panel_voltage", label="String's voltage at maximum power by the label", symbol="U_s", kind=VOLTAGE),
        Output(id="hot_fall", at="label.hot_fall", label="Open-circuit voltage lost per degree of heat", symbol="β_h", kind=heat.DERATING, digits=4),
        Output(id="hot_voc", label="String's open-circuit voltage, hottest", symbol="U_h0", kind=VOLTAGE),
        Output(id="wanted", label="The regulator needs", symbol="U_w", kind=VOLTAGE),
        Output(id="bright", label="Brightest light against standard", symbol="K_I", kind=NUMBER, find=lambda _: BRIGHT_LIGHT),
        Output(id="continuous", label="Margin for a continuous load", symbol="m", kind=RATIO, find=lambda _: fuses.CONTINUOUS),
        Output(id="array_isc", label="Short-circuit current of all strings", symbol="I_a", kind=CURRENT),
        Output(id="least_fuse", label="A string's fuse, at least", symbol="I_min", kind=CURRENT, rounding=UP),
        Output(id="most_fuse", label="A string's fuse, at most", symbol="I_most", kind=CURRENT),
    ),
    steps=STEPS,
    rules=(
        *(Placed(rule=rule, fields=IN_SERIES) if rule in (panels.PANEL_BELOW_BANK, panels.PANEL_NEAR_BANK) else Placed(rule=rule) for rule in judged.JUDGING),
        FINE_BY_TABLE, FINE,
        judged.ABOVE_EXTRA_LOW, judged.ABOVE_TOUCH, judged.RATED_FOR_VOLTS, judged.NEAR_INPUT_LIMIT,
        judged.BATTERY_FIRST, *placed("", panels.PANELS_ARE_LIVE),
        Placed(rule=panels.ONE_CELL_IN_SHADE, text="One shaded cell holds back its whole string: if shade falls on one panel only, strings in parallel lose less."),
        judged.TWO_NEED_NONE, judged.FUSES_NOT_NEEDED, judged.NEC_ASKS_MORE, judged.COLD_BY_TABLE, judged.PLAIN_SWITCH, panels.REGULATOR_HOLDS_BACK,
    ),
    valid="Panels of one kind, of crystalline silicon, with the values on their label. The regulator's manual and local rules come first.",
    summary="{cold_voc} at {cold}, {hot_vmp} when hot",
    keep_distinct=(("least_fuse", "most_fuse"),),
)
