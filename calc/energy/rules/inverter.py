"""Judgements on an inverter: its ratings, what it takes from bank and cable, and its day."""

# fmt: off
from typing import Annotated, Protocol

from calc.energy.inverter import BRIEF, MUCH_IDLING, NO_SAG, TOO_LOW, InverterNeed
from calc.energy.limits import ONE_BATTERY
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most
from calc.units.si import Amperes, Number, Tag

# Below it the current in an inverter is far above the watts: common practice, no source
LOW_POWER_FACTOR: Annotated[Number, Tag("power factor that is low")] = 0.8
# From here on an inverter's cable is worth a page of its own: our choice
WORTH_A_PAGE: Annotated[Amperes, Tag("current of an inverter worth a page on its cable")] = 30.0


class FedByInverter(Protocol):
    """What an inverter may feed."""

    @property
    def through_inverter(self) -> bool: ...


SURGE_BEYOND_BANK = Rule[InverterNeed](
    id="inverter.surge-beyond-bank", level=Level.CAUTION, when=lambda n: n.surge_beyond_bank, source="practice",
    headline="Start less at once or use a larger bank: the surge needs {surge_current}, and it may give {load.max_current}.",
    text="Above its limit the management system disconnects in the surge, and everything goes off at once.",
    mend=lambda n: Change({"max_current": n.surge_current}),
)
BEYOND_ONE_BATTERY = Rule[InverterNeed](
    id="inverter.beyond-one-battery", level=Level.CAUTION, when=lambda n: n.load.max_current is None and n.draw is None and not at_most(n.current, ONE_BATTERY),
    headline="Find the bank's current limit: {current} is more than one usual battery can give.",
    mend=lambda n: Change({"max_current": n.surge_current}),
)
SURGE_BEYOND_BRIEF = Rule[InverterNeed](
    id="inverter.surge-beyond-brief", level=Level.CAUTION, when=lambda n: n.load.max_current is None and not at_most(n.surge_current, n.brief_current),
    headline="Find the bank's short-time limit: the surge needs {surge_current}, more than usual.",
    mend=lambda n: Change({"max_current": n.surge_current}),
)
VOLTAGE_OF_ANOTHER_BANK = Rule[InverterNeed](
    id="inverter.voltage-of-another-bank", level=Level.CAUTION, when=lambda n: not at_least(n.load.lowest_voltage, TOO_LOW * n.load.voltage),
    headline="Check both voltages: {load.lowest_voltage} is far below a bank of {load.voltage}.",
    mend=lambda n: Change({"lowest_voltage": TOO_LOW * n.load.voltage}),
)
NO_SAG_ALLOWED = Rule[InverterNeed](
    id="inverter.no-sag-allowed", level=Level.CAUTION, when=lambda n: at_least(n.load.lowest_voltage, NO_SAG * n.load.voltage),
    headline="Allow for voltage sag: {load.lowest_voltage} is hardly below {load.voltage}, and a loaded bank falls further.",
)
MUCH_FOR_IDLING = Rule[InverterNeed](
    id="inverter.much-for-idling", level=Level.CAUTION, when=lambda n: not at_most(n.idle_energy, MUCH_IDLING * n.day_energy),
    headline="Switch it off when idle: {idle_share} of the day's energy only keeps it on.",
)

OUTPUT_CAN_KILL = Rule[FedByInverter](
    id="inverter.output-can-kill", level=Level.ADVICE, when=lambda f: f.through_inverter, source="practice",
    text="Mains voltage can kill, and an inverter's output is mains voltage. Sockets, residual-current device, earth and neutral bond are work for a licensed person, to local rules.",
)
TRANSFER_SWITCH = Rule[InverterNeed](
    id="inverter.transfer-switch", level=Level.ADVICE, source="practice",
    text="Shock: never feed the van's mains inlet from it or connect it with shore power. Use a transfer switch that opens both poles of one source before closing the other.",
)
PART_FROM_BANK_FIRST = Rule[InverterNeed](
    id="inverter.part-from-bank-first", level=Level.ADVICE, source="practice",
    text="Shock: before you open it, switch off, unplug, disconnect the bank and let its capacitors discharge. They also spark at the last lug: never near a vented battery or gas.",
)
CABLE_AND_FUSE = Rule[InverterNeed](
    id="inverter.cable-and-fuse", level=Level.ADVICE, source="practice", when=lambda n: n.current > WORTH_A_PAGE and n.single_cable.fits,
    text="Use short cable for {current}. Fuse it at the bank: {fuse_need} or more, within the cable's ampacity, able to break the bank's short. Larger inverter: use its input current.",
)
BEYOND_HEAVY_CABLE = Rule[InverterNeed](
    id="inverter.beyond-heavy-cable", level=Level.ADVICE, source="33cfr-table", when=lambda n: n.beyond_heavy_cable and n.single_cable.fits,
    text="With a margin of 125 % this is more than 2/0 AWG can carry with 105 °C insulation ({heavy_cable}). Twice the bank voltage halves it, which is cheaper than copper.",
)
SAGS_BEFORE_EMPTY = Rule[InverterNeed](
    id="inverter.sags-before-empty", level=Level.ADVICE, source="peukert", when=lambda n: n.hard_on_bank and n.lead_acid,
    text="A lead-acid bank gives far less than its label at such a current, and its voltage falls below the inverter's cut-off long before it is empty: see run time.",
)
STEEP_SURGE = Rule[InverterNeed](
    id="inverter.steep-surge", level=Level.ADVICE, source="practice", when=lambda n: not at_most(n.surge_rating, BRIEF * n.continuous),
    text="Few inverters give more than twice their continuous rating, and only briefly. Choose by the surge, or fit a soft start at the motor.",
)
POOR_POWER_FACTOR = Rule[InverterNeed](
    id="inverter.poor-power-factor", level=Level.ADVICE, source="practice", when=lambda n: n.load.power_factor < LOW_POWER_FACTOR,
    text="Check the V·A: at this low power factor the inverter's current is far above the watts. Motors also need a sine wave; a modified one heats them.",
)
MOTOR_POWER_FACTOR = Rule[InverterNeed](
    id="inverter.motor-power-factor", level=Level.ADVICE, source="practice", when=lambda n: n.motor_start is not None and n.load.power_factor > LOW_POWER_FACTOR,
    text="A motor's own power factor is mostly 0.5 to 0.8 (no source), so its start needs more V·A than {surge_rating}. Set the power factor to the motor's to be safe.",
)
IDLE_DRAW = Rule[InverterNeed](
    id="inverter.idle-draw", level=Level.ADVICE, source="practice", when=lambda n: n.idle_energy > 0,
    text="On for {load.hours_on} a day its idle draw is {idle_charge}. A switch within reach, and a small inverter for small loads, save more than a better label.",
)
IF_ONE_WAITS = Rule[InverterNeed](
    id="inverter.if-one-waits", level=Level.ADVICE, source="practice", when=lambda n: n.waiting is not None,
    text="If {load.can_wait} waits for the rest, {waiting.apparent} and {waiting.current} will do. Make sure: use one socket for both, or a changeover switch.",
)
BANK_LIMIT_UNKNOWN = Rule[InverterNeed](
    id="inverter.bank-limit-unknown", level=Level.ADVICE, source="practice", when=lambda n: not n.lead_acid and n.load.max_current is None,
    text="The bank's own limit is not known here: an LFP battery's management system often stops at 100 A. Enter its limit.",
)
HEAT_IN_A_LOCKER = Rule[InverterNeed](
    id="inverter.heat-in-a-locker", level=Level.NOTE, source="practice",
    text="Ratings hold at about 25 °C. {heat} of heat in a closed locker exceeds that within minutes, and its output drops: see enclosure airflow.",
)
CURRENT_IN_PULSES = Rule[InverterNeed](
    id="inverter.current-in-pulses", level=Level.NOTE, source="practice",
    text="Current into an inverter comes in pulses at twice the mains frequency. At worst the cable heats as if the current were nearly 25 % above the average that many clamp meters show: allow for that.",
)
CODE_LETTERS = Rule[InverterNeed](
    id="inverter.code-letters", level=Level.NOTE, source="code-letters",
    text="A code letter gives the starting power per horsepower. The row for H is from memory.",
)
