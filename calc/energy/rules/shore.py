"""Judgements on charging from shore power: the inlet, the supply's share, the night."""

# fmt: off
from dataclasses import replace

from calc.energy import charging
from calc.energy.shore import Feeds, Inlet, Polarity, ResidualDevice, ShoreCharge
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most


def _charger_turned_down(found: ShoreCharge) -> Change | None:
    """Return the output that the supply carries, unless the loads on the bank take all of it."""
    if found.setting is None or at_most(found.setting, found.load.charger.house_load):
        return None
    return Change({"charger": found.setting})


def _less_else(found: ShoreCharge) -> Change | None:
    """Return how much else may hang on the supply; where that does not do, a smaller charger.

    The charger is left as it is where the night would be too short for less, and all is where the
    bank gets nothing: that comes first.
    """
    load = found.load
    if found.night is None:
        return None
    if at_most(load.current, load.supply.sustained):
        return Change({"other_load": max(0.0, load.supply.sustained - load.current)})
    change, night = _charger_turned_down(found), found.night
    if change is None or found.setting is None:
        return None
    charge = night.charge
    slower = charging.stages(
        capacity=charge.capacity,
        current=min(found.setting - load.charger.house_load, found.offer.most),
        from_state=charge.from_state,
        to_state=charge.to_state,
        efficiency=charge.efficiency,
        time_constant=charge.time_constant,
    )
    return change if night.short or not replace(night, charge=slower).short else None


def _no_house_load(found: ShoreCharge) -> Change | None:
    return None if found.setting is None else Change({"house_load": 0.0})


# The inlet
SOURCES_JOINED = Rule[Inlet](
    id="shore.sources-joined", level=Level.STOP, when=lambda i: i.feeds is Feeds.JOINED,
    headline="Do not plug in: shore power and an inverter on the same sockets, with no transfer switch, destroy the inverter.",
    mend=lambda i: Change({"feeds": Feeds.SWITCHED}),
)
POLARITY_REVERSED = Rule[Inlet](
    id="shore.polarity-reversed", level=Level.STOP, when=lambda i: i.live_when_off, source="practice",
    headline="Do not switch on: polarity is reversed, and a single-pole breaker leaves the circuit live. Unplug.",
    text="Shock: with live and neutral reversed, a single-pole breaker opens the neutral, and everything behind it stays live when it is off.",
    mend=lambda i: Change({"polarity": Polarity.CORRECT}),
)
REVERSED_BUT_ISOLATED = Rule[Inlet](
    id="shore.reversed-but-isolated", level=Level.CAUTION, when=lambda i: i.isolates_reversed and not i.usual, source="practice",
    headline="Use a polarity adapter: polarity is reversed. The double-pole breaker still isolates, single-pole switches do not.",
    text="Shock: behind a single-pole switch or fuse, appliances stay live when off. Unplug them before you open or clean anything.",
    mend=lambda i: Change({"polarity": Polarity.CORRECT}),
)
REVERSED_CHECK_BREAKER = Rule[Inlet](
    id="shore.reversed-check-breaker", level=Level.CAUTION, when=lambda i: i.isolates_reversed and i.usual, source="practice",
    headline="Use a polarity adapter: polarity is reversed. Check that the inlet breaker opens both poles.",
    text="Shock: a single-pole breaker would open the neutral and leave everything live. Behind single-pole switches appliances stay live in any case: unplug them before you open them.",
    mend=lambda i: Change({"polarity": Polarity.CORRECT}),
)
NO_RESIDUAL_DEVICE = Rule[Inlet](
    id="shore.no-residual-device", level=Level.STOP, when=lambda i: i.residual is ResidualDevice.NOT_FITTED,
    headline="Have a residual-current device fitted first: without one a fault to the van's metal can kill.",
    mend=lambda i: Change({"residual": ResidualDevice.TRIPS}),
)
UNTESTED = Rule[Inlet](
    id="shore.untested", level=Level.CAUTION, when=lambda i: not i.tested,
    headline="First test polarity and the residual-current device.",
    mend=lambda i: Change({
        "polarity": Polarity.CORRECT if i.polarity is Polarity.UNTESTED else i.polarity,
        "residual": ResidualDevice.TRIPS if i.residual is ResidualDevice.UNTESTED else i.residual,
    }),
)
TEST_POLARITY = Rule[Inlet](
    id="shore.test-polarity", level=Level.ADVICE, when=lambda i: i.polarity is Polarity.UNTESTED, source="practice",
    text="A tester shows reversed polarity and a missing earth before you touch anything. With either, unplug and tell the site: do not repair the post.",
)
TRANSFER_SWITCH = Rule[Inlet](
    id="shore.transfer-switch", level=Level.ADVICE, when=lambda i: i.transfer_rating is not None, source="practice",
    text="A transfer switch opens every live pole of one source before it closes the other. It is rated {transfer_rating} or more.",
)
NEUTRAL_AND_EARTH = Rule[Inlet](
    id="shore.neutral-and-earth", level=Level.ADVICE, when=lambda i: i.transfer_rating is not None, source="neutral-apart",
    text="Shock: on shore power neutral and earth are bonded ashore only. An inverter with its own bond must open it before shore power connects (no source). Have both tested.",
)
INPUT_LIMIT = Rule[ShoreCharge](
    id="shore.input-limit", level=Level.ADVICE, when=lambda s: s.inlet.feeds is Feeds.COMBINED, source="practice",
    text="An inverter-charger has its transfer relay inside. Set its input limit to {load.supply.sustained} or less, so that it charges less while other loads run.",
)
CHARGER_ON_SHORE_SIDE = Rule[Inlet](
    id="shore.charger-on-shore-side", level=Level.ADVICE, when=lambda i: i.feeds is Feeds.SWITCHED, source="practice",
    text="With a transfer switch added later, keep the charger on the shore side: otherwise the inverter feeds the charger of its own bank.",
)
UNCOIL_LEAD = Rule[Inlet](
    id="shore.uncoil-lead", level=Level.ADVICE, source="caravan-supply",
    text="Fire: uncoil the cable completely; on a drum it overheats. Each time, check polarity, then press the residual-current device's test button.",
)
MAINS_CAN_KILL = Rule[Inlet](
    id="shore.mains-can-kill", level=Level.ADVICE, source="practice",
    text="Mains can kill. Inlet, breaker, residual-current device, earth and sockets are for a licensed person, to local rules and the makers' instructions.",
)
ONE_SOURCE_ONLY = Rule[Inlet](
    id="shore.one-source-only", level=Level.ADVICE, source="practice",
    text="Shock: never let shore power and an inverter feed the same sockets without a transfer switch.",
)
LEAD_OF_16_A = Rule[Inlet](
    id="shore.lead-of-16-a", level=Level.NOTE, source="caravan-lead",
    text="A 16 A shore cable has 2.5 mm² and is at most 25 m long. A smaller or an extended one is rated for less.",
)

# The supply
NO_ROOM = Rule[ShoreCharge](
    id="shore.no-room", level=Level.STOP, when=lambda s: s.setting is None,
    headline="Switch loads off: the supply carries {load.supply.sustained} for hours, and other loads draw {load.supply.other_load}.",
    mend=lambda s: Change({"other_load": max(0.0, s.load.supply.sustained - s.load.current)}),
    covers=frozenset({"shore.overload", "shore.bank-not-filled"}),
)
OVERLOAD = Rule[ShoreCharge](
    id="shore.overload", level=Level.STOP, when=lambda s: s.load.over,
    headline="Set the charger to {setting}: {load.total} on a supply of {load.supply.limit} trips the breaker or overheats the cable.",
    mend=_charger_turned_down,
    covers=frozenset({"shore.overload-for-hours"}),
)
BANK_NOT_FILLED = Rule[ShoreCharge](
    id="shore.bank-not-filled", level=Level.STOP, when=lambda s: s.night is None,
    headline="The bank does not fill: its loads draw {load.charger.house_load}, the charger's whole output.",
    mend=_no_house_load,
)
OVERLOAD_FOR_HOURS = Rule[ShoreCharge](
    id="shore.overload-for-hours", level=Level.CAUTION, when=lambda s: not s.load.sustained,
    headline="Set the charger to {setting}: the supply carries {load.supply.sustained} for hours, and {load.total} is drawn.",
    mend=_less_else,
)
MAY_BE_UNCORRECTED = Rule[ShoreCharge](
    id="shore.may-be-uncorrected", level=Level.CAUTION, when=lambda s: s.load.may_be_uncorrected, source="practice",
    headline="Check the charger's label: without power-factor correction it may draw {load.uncorrected}, more than the supply carries for hours.",
    text="The power factor was assumed to be one. Check the charger's label: trust its input in amps.",
)

# The night
NIGHT_TOO_SHORT = Rule[ShoreCharge](
    id="shore.night-too-short", level=Level.CAUTION, when=lambda s: s.night is not None and s.night.short,
    headline="In {night.duration} it reaches {night.after}; full takes {night.charge.total}.",
    mend=lambda s: None if s.night is None else Change({"night": s.night.charge.total}),
)
LEAD_ACID_NOT_FILLED = Rule[ShoreCharge](
    id="shore.lead-acid-not-filled", level=Level.ADVICE, source="incomplete-charge",
    when=lambda s: s.bank.lead_acid and s.night is not None and not at_least(s.night.after, s.acceptance.full),
    text="Lead-acid that is rarely full loses capacity early. Charge it all night to the end every week or two.",
)
NO_MORE_THAN_TAIL = Rule[ShoreCharge](
    id="shore.no-more-than-tail", level=Level.ADVICE, source="practice",
    when=lambda s: s.night is not None and at_most(s.night.charge.current, s.acceptance.tail * s.bank.capacity),
    text="This current is no more than the tail current: the charger cannot detect full, so use a timer.",
)
EASES_OFF = Rule[ShoreCharge](
    id="shore.eases-off", level=Level.NOTE, when=lambda s: s.night is not None and s.night.charge.falling > 0, source="practice",
    text="While the current falls, the charger draws less from the supply, and other loads may be switched on. At the end the voltage is about 5 % higher than the average you typed.",
)
SEALED_TAKES_HOURS = Rule[ShoreCharge](
    id="shore.sealed-takes-hours", level=Level.NOTE, when=lambda s: s.bank.lead_acid, source="sealed-hours",
    text="Check value: from empty, a charger of a tenth of the Ah takes 12 to 16 h for a sealed lead-acid bank. A charger with an absorption timer of 2 to 4 h may stop early.",
)
FULL_BY_TAIL = Rule[ShoreCharge](
    id="shore.full-by-tail", level=Level.NOTE, when=lambda s: s.night is not None and s.to_state > s.acceptance.full, source="practice",
    text="Full means that the current has fallen to the tail current. In this model that is {acceptance.full}; the rest takes hours.",
)
