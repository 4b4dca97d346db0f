"""Judgements on a charge: its voltage, its current, the gas it makes.

Those on the temperature of the bank are in `calc.energy.rules.bank`.
"""

# fmt: off
from calc.energy.battery import Bank
from calc.energy.charging import ChargeOffer, ChargeVoltage
from calc.energy.limits import FILLS_NO_BLOCK, HARDLY_FILLS_LEAD
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most

VOLTAGE_TOO_HIGH = Rule[ChargeVoltage](
    id="charge.voltage-too-high", level=Level.STOP, source="practice", when=lambda v: not at_most(v.voltage, v.most),
    headline="Lower the voltage: {voltage} is above the {most} for such a bank. It gasses, or LFP switches off.",
    mend=lambda v: Change({"voltage": v.most}) if at_least(v.most, v.least) else None,
)
LEAD_ACID_ENDS_LOW = Rule[ChargeVoltage](
    id="charge.lead-acid-ends-low", level=Level.CAUTION,
    when=lambda v: v.chemistry.lead_acid and not at_least(v.voltage, v.blocks * HARDLY_FILLS_LEAD),
    headline="Set the charger as the bank's maker says: one that ends at {voltage} does not fill lead-acid.",
    mend=lambda v: Change({"voltage": v.blocks * HARDLY_FILLS_LEAD}),
)
VOLTAGE_FILLS_NOTHING = Rule[ChargeVoltage](
    id="charge.voltage-fills-nothing", level=Level.ADVICE, when=lambda v: not at_least(v.voltage, v.blocks * FILLS_NO_BLOCK), source="practice",
    text="Type the charger's real voltage, about 13.8 V for each 12 V: at {voltage} the bank does not fill. The real current from shore power is higher than shown.",
)
CURRENT_TOO_MUCH = Rule[ChargeOffer](
    id="charge.too-much-current", level=Level.CAUTION, when=lambda o: not at_most(o.current, o.most), source="practice",
    headline="Charge with less: {current} is more than the usual {most} for such a bank.",
    text="The bank's data sheet gives its charging limit. Above it lead-acid gets hot and gasses, and LFP ages or switches off.",
    mend=lambda o: None if o.fitting is None else Change({"charger": o.fitting}),
)
LEAD_ACID_GASSES = Rule[Bank](
    id="charge.lead-acid-gasses", level=Level.ADVICE, when=lambda b: b.lead_acid, source="en-50272",
    text="Explosion: a lead-acid bank gives off hydrogen while charging, a sealed one when overcharged. It needs air, and no sparks near it.",
)
