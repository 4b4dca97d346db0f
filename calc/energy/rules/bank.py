"""Judgements on a bank: its temperature, the share that is used, the current that is drawn.

`CHARGED` are those on the temperature of a bank on charge, `KEPT` those on one that is not.
"""

from math import floor
from typing import Protocol

# fmt: off
from calc.energy.bank_load import Allowed, Draw
from calc.energy.battery import (
    BASE_TEMPERATURE,
    Bank,
    BankWarmth,
    Chemistry,
    ColdCutOff,
    Usable,
    coldest,
    seen_from,
)
from calc.energy.limits import (
    COOL,
    FREEZING,
    FROST_MARGIN,
    HARMFUL_OF_LEAD_ACID,
    MOST_OF_LEAD_ACID,
    MOST_OF_LFP,
    ONE_BATTERY,
    WARM,
)
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most

_NEVER_IN_FROST = "Never charge an LFP battery below 0 °C: lithium plates out and the loss is permanent."
_SLOW_NEAR_FROST = "Near freezing an LFP battery charges slowly; most makers require a reduced current below 5 to 10 °C, and none below 0 °C."


def _in_frost(bank: BankWarmth) -> bool:
    return not bank.lead_acid and not at_least(bank.temperature, bank.charge_low)


def _held_back(bank: BankWarmth) -> bool:
    return _in_frost(bank) and bank.cut_off is ColdCutOff.PROVEN


def _near_frost(bank: BankWarmth) -> bool:
    return not bank.lead_acid and not _in_frost(bank) and not at_least(bank.temperature, COOL)


def _too_hot(bank: BankWarmth) -> bool:
    return not at_most(bank.temperature, bank.charge_high)


def _may_freeze(bank: Bank) -> bool:
    return bank.freezes is not None and at_most(bank.temperature, bank.freezes + FROST_MARGIN)


def _into_range(bank: BankWarmth) -> Change:
    return Change({"temperature": min(max(bank.temperature, bank.charge_low), bank.charge_high)})


def _thawed(bank: Bank) -> Change | None:
    return None if bank.freezes is None else Change({"temperature": floor(bank.freezes + FROST_MARGIN) + 1.0})


def _to_cool(_: BankWarmth) -> Change:
    return Change({"temperature": COOL})


# A bank on charge
CHARGE_IN_FROST = Rule[BankWarmth](
    id="charge.in-frost", level=Level.STOP, when=lambda b: _in_frost(b) and not _held_back(b), source="lfp-frost",
    headline="Warm the bank first: charging LFP at {temperature} ruins it.",
    text=f"{_NEVER_IN_FROST} Warm the battery, or test that its cold cut-off stops the charge.", mend=_into_range,
)
CHARGE_HELD_BACK = Rule[BankWarmth](
    id="charge.held-by-cold-cut-off", level=Level.CAUTION, when=_held_back, source="lfp-frost",
    headline="Warm the bank: at {temperature} its cold cut-off stops all charging.",
    text="Warm the bank. Below {charge_low} the cold cut-off blocks every charger until the cells are warmer.", mend=_into_range,
)
CHARGE_OUTSIDE_TEMPERATURE = Rule[BankWarmth](
    id="charge.outside-temperature", level=Level.STOP, when=lambda b: not b.may_charge and not _in_frost(b),
    headline="Do not charge at {temperature}: this chemistry is charged between {charge_low} and {charge_high}.",
    mend=_into_range,
)
ACID_MAY_FREEZE = Rule[Bank](
    id="bank.acid-may-freeze", level=Level.STOP, when=_may_freeze,
    headline="Do not charge it frozen: at {state} its acid may freeze at {temperature}. Let it thaw, look for cracks.",
    mend=_thawed,
)
CHARGE_NEAR_FROST = Rule[BankWarmth](
    id="charge.near-frost", level=Level.CAUTION, when=_near_frost, source="practice",
    headline="Charge slowly: near freezing, here {temperature}, makers of LFP allow less current.",
    text=_SLOW_NEAR_FROST, mend=_to_cool,
)
CHARGE_OFF_ROOM = Rule[BankWarmth](
    id="charge.off-room", level=Level.CAUTION, source="practice",
    when=lambda b: b.lead_acid and not (at_least(b.temperature, COOL) and at_most(b.temperature, WARM)),
    headline="The bank is at {temperature}: use a charger whose voltage follows the battery's temperature.",
    text="Use a charger with a temperature sensor on the bank. Cold lead-acid charges slowly; hot lead-acid gasses and can run away.",
    mend=lambda b: Change({"temperature": min(max(b.temperature, COOL), WARM)}),
)
CHARGED = (CHARGE_IN_FROST, CHARGE_HELD_BACK, CHARGE_OUTSIDE_TEMPERATURE, ACID_MAY_FREEZE, CHARGE_NEAR_FROST, CHARGE_OFF_ROOM)

# A bank that is not on charge
IN_FROST = Rule[BankWarmth](
    id="bank.in-frost", level=Level.CAUTION, when=_in_frost, source="lfp-frost",
    headline="At {temperature} an LFP bank must not be charged until it is warmer.",
    text=f"{_NEVER_IN_FROST} Discharging is allowed at lower temperatures; see the data sheet.", mend=_into_range,
)
TOO_HOT = Rule[BankWarmth](
    id="bank.too-hot", level=Level.CAUTION, when=_too_hot,
    headline="{temperature} is too hot for a battery: most may not be charged there.", mend=_into_range,
)
NEAR_FROST = Rule[BankWarmth](
    id="bank.near-frost", level=Level.ADVICE, when=_near_frost, source="practice", text=_SLOW_NEAR_FROST, mend=_to_cool,
)
KEPT = (ACID_MAY_FREEZE, IN_FROST, TOO_HOT, NEAR_FROST)

# Any bank
NEVER_CHARGE_IN_FROST = Rule[BankWarmth](
    id="bank.never-charge-in-frost", level=Level.ADVICE, when=lambda b: not b.lead_acid and not _in_frost(b), source="lfp-frost",
    text=_NEVER_IN_FROST,
)
FREEZING_POINT = Rule[Bank](
    id="bank.freezing-point", level=Level.ADVICE, when=lambda b: b.lead_acid and not at_least(b.temperature, FREEZING), source="acid-freezing",
    text="At {state} the acid freezes near {freezes}. Keep 3 K clear of it; never charge a frozen battery, it can burst.",
)
NO_FACTOR_FOR_COLD_LFP = Rule[BankWarmth](
    id="bank.no-factor-for-cold-lfp", level=Level.ADVICE, when=lambda b: not b.lead_acid and not at_least(b.temperature, BASE_TEMPERATURE), source="practice",
    text="Expect less than this in the cold: no published factor for cold LFP capacity is used. In hard frost it may be far less, and many management systems switch off.",
)
COLD_FROM_MEMORY = Rule[BankWarmth](
    id="bank.cold-factor-from-memory", level=Level.ADVICE, source="memory",
    when=lambda b: b.lead_acid and not at_least(b.temperature, seen_from()),
    text="The factor for cold below 4.4 °C is from memory, not from a source.",
)
COLD_BEYOND_TABLE = Rule[BankWarmth](
    id="bank.cold-beyond-table", level=Level.CAUTION, source="ieee-485",
    when=lambda b: b.lead_acid and not at_least(b.temperature, coldest()),
    headline="Count on less at {temperature}: the published factors for cold end at −3.9 °C.",
    text="Count on less. The published factors for cold end at −3.9 °C, and the last of them is used; a colder bank gives less.",
    mend=lambda _: Change({"temperature": coldest()}),
)

# The share that is used
DEEPER_THAN_HALF = Rule[Usable](
    id="bank.deeper-than-half", level=Level.CAUTION, when=lambda u: u.bank.lead_acid and not at_most(u.share, MOST_OF_LEAD_ACID),
    headline="Discharging below half wears a lead-acid bank fast.", mend=lambda _: Change({"usable": MOST_OF_LEAD_ACID}),
)
BELOW_A_FIFTH = Rule[Usable](
    id="bank.below-a-fifth", level=Level.ADVICE, when=lambda u: u.bank.lead_acid and not at_most(u.share, HARMFUL_OF_LEAD_ACID), source="practice",
    text="Below 20 % a lead-acid battery is damaged, and in frost its weak acid can freeze.",
    mend=lambda _: Change({"usable": HARMFUL_OF_LEAD_ACID}),
)
NOTHING_KEPT_BACK = Rule[Usable](
    id="bank.nothing-kept-back", level=Level.CAUTION,
    when=lambda u: u.bank.chemistry is Chemistry.LFP and not at_most(u.share, MOST_OF_LFP),
    headline="Keep a reserve: without one the management system cuts everything off at once at the end.",
    mend=lambda _: Change({"usable": MOST_OF_LFP}),
)


# The current that is drawn
class HasCurrent(Protocol):
    """A load whose current out of the bank is known [A]."""

    @property
    def current(self) -> float: ...


def _no_harder(draw: Draw) -> Change:
    return Change({"capacity": draw.current / draw.heavy_rate})


BEYOND_ALLOWED = Rule[Allowed](
    id="bank.beyond-what-it-may-give", level=Level.STOP, when=lambda a: not at_most(a.current, a.most), source="practice",
    headline="Use fewer loads at once or a stronger bank: {current} is needed, and it may give {most}.",
    text="Above its limit the management system disconnects, and everything goes off at once.",
    mend=lambda a: Change({"max_current": a.current}),
)
BEYOND_ANY_BANK = Rule[Draw](
    id="bank.beyond-any-such-bank", level=Level.STOP, when=lambda d: d.beyond_any, source="practice",
    headline="Use a larger bank or less load: {current} is {rate}, more than such a bank can give.",
    text="A management system disconnects at such a current, and a lead-acid bank falls below the cut-off at once. Only the battery's data sheet can allow more.",
    mend=lambda d: Change({"capacity": d.current / d.most_rate}),
    covers=frozenset({"bank.heavy-load", "load.beyond-one-battery", "inverter.beyond-one-battery"}),
)
HEAVY_LOAD = Rule[Draw](
    id="bank.heavy-load", level=Level.CAUTION, when=lambda d: d.hard, source="practice",
    headline="{current} is a heavy load for this bank: check the maker's limit, or use more batteries.",
    text="Check each battery's limit in its data sheet. Cables, fuse and management system must carry {current} too, and the voltage sags: an inverter may cut off early.",
    mend=_no_harder,
)
BEYOND_ONE_BATTERY = Rule[HasCurrent](
    id="load.beyond-one-battery", level=Level.CAUTION, when=lambda d: not at_most(d.current, ONE_BATTERY), source="practice",
    headline="{current} is more than one usual battery can give.",
    text="Read the battery's data sheet: one is usually allowed about 100 A. Share a larger current between batteries in parallel with equal cables.",
)
