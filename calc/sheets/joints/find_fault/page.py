"""find-fault as a page: the list one begins with, and what stands where on a step."""

# fmt: off
from calc.faults.graph import Symptom
from calc.worksheet.walked import Walked

STARTS = (
    (Symptom.FLICKERS, "Lights flicker or dim", "when the pump starts, on the road, or all goes off"),
    (Symptom.HOT, "Something is hot or smells", "a lug, a cable, a fuse holder"),
    (Symptom.DEAD, "A device does nothing", "no power, a dead socket"),
    (Symptom.FUSE, "A fuse keeps blowing", "or a breaker trips"),
    (Symptom.FLAT, "The battery is flat by morning", "it does not last the night"),
    (Symptom.CHARGE, "It charges too slowly", "from sun, engine or shore power"),
    (Symptom.INVERTER, "The inverter trips or beeps", "it shuts down under load"),
    (Symptom.GAUGE, "The battery gauge is wrong", "it says full, the lights go out"),
    (Symptom.CHECK, "Nothing is wrong", "a check under load, once a year"),
)

# What else tells the same, where the meter or the place is missing: common practice, no source
CANNOT = (
    ("volts", "Lead too short: lengthen it with any wire and a clip. No millivolts on the meter: a poor joint under load shows in the second decimal of a volt. Out of reach: measure from the nearest bare metal on each side; all between is in the reading."),
    ("amps", "No clamp meter for direct current: read the current on the battery gauge or the charger’s own display. Never put a plain ammeter into a cable that feeds a large load."),
    ("ohms", "No ohmmeter: with the fuse out and the device unplugged, look along the whole cable for chafed or pinched insulation. Do not try another fuse to find out."),
    ("ampere_hours", "No gauge: run one steady load of known amps from full until the low-voltage cut-off, and multiply amps by hours."),
)

PAGE = Walked(
    start="symptom",
    path="path",
    trail="trail",
    danger="Smoke, fire or a burning smell: switch off, open the bank’s isolator, get out if it goes on.",
    begin="Tap what is wrong",
    starts=STARTS,
    why="why",
    meter=("probes", "setting"),
    expected=("volts", "amps", "ohms", "ampere_hours"),
    cannot=CANNOT,
    repair=("cause", "remedy"),
    ways=("moves", "prevents"),
    back="back",
    folded=("trail", "limits"),
    circuit_label="Circuit",
    circuit=("system", "load", "conductor"),
)
# fmt: on
