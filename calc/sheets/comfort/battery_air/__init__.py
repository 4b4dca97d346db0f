"""battery-air: how much air does the battery need?"""

# fmt: off
from typing import Any

from calc.comfort.battery_air import (
    AIR_PER_CHARGE,
    VENT_SPEED,
    CellKind,
    Charging,
    Management,
    Place,
)
from calc.comfort.rules import battery_air as of_batteries
from calc.energy.battery import Chemistry
from calc.sheets.comfort.battery_air.calculate import calculate
from calc.sheets.comfort.battery_air.words import FINE, FINE_LITHIUM, STEPS
from calc.sheets.parts.bank import chemistry_field
from calc.sheets.parts.comfort import constant
from calc.units.kinds import CHARGE, COUNT, LENGTH, TEMPERATURE, heat
from calc.units.shown import UP
from calc.worksheet.declare import Placed, placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.outputs import Output
from calc.worksheet.pictures import Bars, Limit, Row
from calc.worksheet.work import Worksheet

KINDS: dict[str, str] = {CellKind.VENTED: "vented lead-acid", CellKind.SEALED: "valve-regulated lead-acid", CellKind.LITHIUM: "lithium"}
_LEAD_ACID: dict[str, Any] = {"only_if": ("chemistry", Chemistry.AGM), "or_if": (Chemistry.GEL, Chemistry.FLOODED)}
_IF_NO_MORE = "Check that no charger boosts: two openings of {opening} each suit this charging only; boost needs several times that."

WORKSHEET = Worksheet(
    id="battery-air",
    title="Battery air",
    question="How much air does the battery need?",
    about="Hydrogen from charging, and the vents that dilute it.",
    calculate=calculate,
    picture=Bars(
        rows=(Row("Fitted, each", "vents"),), limits=(Limit("Needed, each", "opening", least=True),),
        caption="The openings for air, low and high",
    ),
    fields=(
        chemistry_field("AGM"),
        Choice(id="management", since=2, before=Management.UNKNOWN, only_if=("chemistry", Chemistry.LFP), label="Management system (BMS)", of=Management, default=Management.FITTED, options=(Option(Management.FITTED), Option(Management.MISSING, "not fitted"), Option(Management.UNKNOWN, "not known")), hint="It cuts off overcharge, deep discharge and cold charging."),
        Quantity(id="capacity", **_LEAD_ACID, label="Bank capacity", symbol="C", kinds=(CHARGE,), default="200 Ah", low="1 Ah", high="20000 Ah", hint="Batteries in parallel add up; in series they do not."),
        Quantity(id="cells", **_LEAD_ACID, label="Cells in series", symbol="n", kinds=(COUNT,), default="6", low="1", high="400", hint="Lead-acid: 6 at 12 V, 12 at 24 V, 24 at 48 V."),
        Choice(id="charging", advanced=True, **_LEAD_ACID, label="Charging", of=Charging, default=Charging.BOOST, options=(Option(Charging.BOOST, "boost (absorption)", aliases=("absorption",)), Option(Charging.FLOAT, "float only"), Option(Charging.EQUALISING, aliases=("equalizing",))), hint="Boost, if any charger goes above float: most do."),
        Choice(id="stands", label="Where it is fitted", of=Place, default=Place.BOXED, options=(Option(Place.UNKNOWN, "not said"), Option(Place.BOXED, "box or bay vented outside", aliases=("box",)), Option(Place.LIVING_SPACE, "open in the living space", aliases=("living space",))), hint="Where the gas goes."),
        Quantity(id="vents", **_LEAD_ACID, label="Free area of each opening", symbol="A_v", kinds=(heat.OPENING,), optional=True, default="20 cm²", low="0 cm²", high="20000 cm²", example="20 cm²", hint="Of the two, low and high. None: 0. Empty: not known."),
        Quantity(id="temperature", **_LEAD_ACID, advanced=True, label="Warmest battery", symbol="T", kinds=(TEMPERATURE,), default="30 °C", low="0 °C", high="70 °C", hint="Of a lead-acid battery: the table is valid to 40 °C."),
        Quantity(id="gas_current", **_LEAD_ACID, advanced=True, label="Gas current", symbol="I_g", kinds=(heat.GAS_CURRENT,), optional=True, low="0.01 mA/Ah", high="1000 mA/Ah", example="8 mA/Ah", hint="Per Ah, from the maker. Empty: the standard's table."),
    ),
    results=(
        Output(id="airflow", label="Air needed", symbol="Q", kind=heat.AIRFLOW, both=True, at="gassing.airflow"),
        Output(id="opening", label="Two openings, each", symbol="A", kind=heat.OPENING, rounding=UP, both=True, hide_if_none=True),
        Output(id="hole", label="As a round hole", symbol="d", kind=LENGTH, rounding=UP, both=True, hide_if_none=True),
    ),
    intermediates=(
        Output(id="table_current", label="Gas current of the table", symbol="I_t", kind=heat.GAS_CURRENT, at="gassing.table_current"),
        Output(id="gas", label="Gas current used", symbol="I_gas", kind=heat.GAS_CURRENT, at="gassing.current"),
        Output(id="air_per_charge", label="Air for each amp-hour of gas current", symbol="v", kind=heat.GAS_PER_CHARGE, find=constant(AIR_PER_CHARGE)),
        Output(id="vent_speed", label="Speed in the opening", symbol="w", kind=heat.SPEED, find=constant(VENT_SPEED)),
        Output(id="kind", label="Kind of cell", at="gassing.kind", words=KINDS),
    ),
    steps=STEPS,
    rules=(
        of_batteries.VENTED_IN_LIVING_SPACE, of_batteries.VENTS_TOO_SMALL, of_batteries.UNMANAGED,
        *placed("gassing", of_batteries.EQUALISING_NOT_COVERED),
        of_batteries.MANAGEMENT_UNKNOWN, of_batteries.EQUALISING_BY_MAKER,
        Placed(rule=of_batteries.HOT_BATTERY, at="gassing", headline="Cool the battery: openings of {opening} each are for 40 °C, and at {temperature} it gasses more."),
        Placed(rule=of_batteries.FLOAT_ONLY, at="gassing", headline=_IF_NO_MORE),
        Placed(rule=of_batteries.BELOW_TABLE, at="gassing", headline=_IF_NO_MORE),
        of_batteries.OPENINGS_UNKNOWN,
        FINE_LITHIUM, FINE,
        *placed(
            "gassing", of_batteries.HYDROGEN, of_batteries.SEALED_GASSES_TOO, of_batteries.ACID_MIST, of_batteries.LITHIUM_KEPT_SAFE,
            of_batteries.HYDROGEN_RISES, of_batteries.EQUALISING_BOILS, of_batteries.TRACTION, of_batteries.LITHIUM,
        ),
    ),
    valid="Lead-acid cells in order, charged as their maker says, up to about 40 °C and 2.40 V a cell (from memory). The formula is not for lithium cells.",
    summary="{airflow}; two openings of {opening} each",
    summary_none="no opening follows",
    older_defaults=({"stands": Place.UNKNOWN, "vents": ""},),
)
