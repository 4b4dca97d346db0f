"""Judgements on a switch that works from afar: its contact, its marking, the relay and its coil."""

# fmt: off
from typing import Annotated, Any

from calc.electrical.easier_circuit import remedies
from calc.electrical.sizing import SizedCircuit
from calc.electrical.switching import (
    Marking,
    RemoteSwitch,
    SwitchedLoad,
    remote_switch,
)
from calc.judge import Change, Level, Rule, mends
from calc.units.si import Amperes, Tag

# Below it silver contacts for many amps may not close well: FAA AC 43.13-1B
SMALL_CURRENT: Annotated[Amperes, Tag("current too small for a large contact")] = 0.5


def _reworked(found: RemoteSwitch, change: Change) -> RemoteSwitch:
    line, coil = found.line, found.coil
    inputs: dict[str, Any] = {
        "power": line.power, "voltage": line.voltage, "kind": line.kind, "load": line.load, "power_factor": line.power_factor,
        "distance": coil.distance, "coil_current": coil.current, "control_voltage": coil.voltage, "hours": coil.hours,
        "lowest": coil.lowest, "pull_in": coil.pull_in, "switch": found.switch.rated, "marked": found.switch.marked, "series": found.series,
    }
    return remote_switch(**{**inputs, **change.values})


def _if_it_mends(rule: Rule[RemoteSwitch], found: RemoteSwitch, change: Change) -> Change | None:
    return change if mends(rule, JUDGEMENTS, found, _reworked(found, change)) else None


def _larger_switch(rule: Rule[RemoteSwitch], found: RemoteSwitch) -> Change | None:
    line = found.line
    return _if_it_mends(rule, found, Change({"switch": line.rating or line.sustained}))


def _marked_for_it(rule: Rule[RemoteSwitch], found: RemoteSwitch) -> Change | None:
    return _if_it_mends(rule, found, Change({"marked": Marking(found.line.kind.value)}))


def _nearer(rule: Rule[RemoteSwitch], found: RemoteSwitch, sized: SizedCircuit | None) -> Change | None:
    """Return the longest way over which a size does, if that mends what the `rule` found."""
    lengths = [one.change.values.get("length") for one in remedies(sized)] if sized else []
    longest = next((one for one in lengths if one is not None), None)
    return None if longest is None else _if_it_mends(rule, found, Change({"distance": longest}))


AC_SWITCH_ON_DC: Rule[RemoteSwitch] = Rule(
    id="switch.ac-rating-on-dc", level=Level.STOP, source="faa-switch",
    when=lambda r: r.switch.at_hand and r.line.dc and r.switch.marked is Marking.AC,
    headline="Do not use this switch in the line: an AC rating is not valid for DC arcs.",
    mend=lambda r: _marked_for_it(AC_SWITCH_ON_DC, r),
)
SWITCH_TOO_WEAK: Rule[RemoteSwitch] = Rule(
    id="switch.rated-below-current", level=Level.STOP, source="practice",
    when=lambda r: r.switch.at_hand and not r.switch.carries(r.line.current),
    headline="Use a relay: the switch is rated {switch.rated}, the line carries {line.current}. A DC-rated switch works the coil.",
    mend=lambda r: _larger_switch(SWITCH_TOO_WEAK, r),
)
RELAY_MAY_NOT_CLOSE = Rule[RemoteSwitch](
    id="relay.may-not-close", level=Level.STOP, when=lambda r: r.relayed and r.coil.allowed <= 0, source="relay-coil",
    headline="The relay may not close: at {coil.sags_to} the bank is already below the {coil.must_see} its coil needs.",
)
NO_WIRE_TO_COIL: Rule[RemoteSwitch] = Rule(
    id="relay.no-wire-to-coil", level=Level.STOP, when=lambda r: r.relayed and r.coil.allowed > 0 and r.coil.run is None, source="33cfr-table",
    headline="Use a coil with less current, or a shorter run: no wire is within the {coil.allowed} of drop allowed.",
    mend=lambda r: _nearer(NO_WIRE_TO_COIL, r, r.coil.sized),
)
NO_FACTOR_PUBLISHED = Rule[RemoteSwitch](
    id="switch.no-factor-published", level=Level.CAUTION, when=lambda r: r.line.factor is None, source="relay-contact",
    headline="Use a contactor rated for {line.sustained} of d.c. at {line.voltage} for such a load: no factor is published.",
    text="Ratings fall fast with voltage: a relay for 10 A at 30 V DC was rated only 0.5 A at 110 V DC.",
)
SWITCH_SMALL_FOR_LOAD: Rule[RemoteSwitch] = Rule(
    id="switch.rated-below-load", level=Level.CAUTION, source="faa-switch",
    when=lambda r: r.switch.at_hand and r.line.rating is not None and not r.switch.carries(r.line.rating),
    headline="Use it to switch a relay: the switch carries {line.current}, but this load needs a contact rated {line.rating}.",
    mend=lambda r: _larger_switch(SWITCH_SMALL_FOR_LOAD, r),
)
MARKED_FOR_ANOTHER: Rule[RemoteSwitch] = Rule(
    id="switch.not-marked-for-supply", level=Level.CAUTION, source="faa-switch",
    when=lambda r: r.switch.at_hand and not r.switch.marked_for(r.line.kind),
    headline="Use the switch only if it is marked for {line.kind} at {line.voltage}: no other rating applies.",
    mend=lambda r: _marked_for_it(MARKED_FOR_ANOTHER, r),
)
MAINS_BY_RELAY = Rule[RemoteSwitch](
    id="switch.mains-by-relay", level=Level.CAUTION, when=lambda r: not r.line.dc and r.relayed, source="practice",
    headline="Have a relay rated for at least {line.rating} fitted by a licensed person: {coil.run.laid.run.conductor} wire to its coil.",
)
MAINS_ITSELF = Rule[RemoteSwitch](
    id="switch.mains-itself", level=Level.CAUTION, when=lambda r: not r.line.dc and not r.relayed, source="practice",
    headline="Switch the line itself, with a contact rated for at least {line.rating}: mains work, for a licensed person.",
)
LINE_TOO_LONG: Rule[RemoteSwitch] = Rule(
    id="switch.line-too-long", level=Level.CAUTION, source="33cfr-table",
    when=lambda r: r.line.dc and not r.relayed and r.line_conductor is None,
    headline="Keep the switch close or use a relay: no wire reaches it and back within 3 % voltage drop.",
    mend=lambda r: _nearer(LINE_TOO_LONG, r, r.line_sized),
)
STOPS = (AC_SWITCH_ON_DC, SWITCH_TOO_WEAK, RELAY_MAY_NOT_CLOSE, NO_WIRE_TO_COIL)
CAUTIONS = (NO_FACTOR_PUBLISHED, SWITCH_SMALL_FOR_LOAD, MARKED_FOR_ANOTHER, MAINS_BY_RELAY, MAINS_ITSELF, LINE_TOO_LONG)
JUDGEMENTS = (*STOPS, *CAUTIONS)  # what makes the verdict on a switch, the gravest first

DC_FIGURE = Rule[RemoteSwitch](
    id="switch.look-for-dc-figure", level=Level.ADVICE, when=lambda r: r.line.dc, source="faa-switch",
    text="Look for the DC rating at {line.voltage} or more beside the amps. Fire: a switch marked only for AC must not break DC, because the arc does not go out.",
)
MAINS_KILLS = Rule[RemoteSwitch](
    id="switch.mains-kills", level=Level.ADVICE, when=lambda r: not r.line.dc, source="practice",
    text="Mains can kill. The line, its relay, enclosure and earth are for a licensed person, to local rules and the maker's instructions.",
)
MAINS_CONTACT = Rule[RemoteSwitch](
    id="switch.mains-contact", level=Level.ADVICE, when=lambda r: not r.line.dc, source="practice",
    text="Shock: the contact must break live, or both poles where polarity can be reversed. Keep the coil's wires apart from mains.",
)
COIL_KICKS_BACK = Rule[RemoteSwitch](
    id="relay.coil-kicks-back", level=Level.ADVICE, when=lambda r: r.relayed, source="relay-coil",
    text="Fit a diode at the coil, band to plus, or what the relay's maker prescribes: a coil makes a voltage spike when switched off. The diode slows release a little.",
)
COIL_IS_DC = Rule[RemoteSwitch](
    id="relay.coil-is-dc", level=Level.ADVICE, when=lambda r: r.relayed and not r.line.dc, source="faa-switch",
    text="The switch within reach breaks the coil's DC, whatever the line is: it too needs a DC rating, twice the coil's current on 12 V, four times on 24 V.",
)
SMALL_COIL_CURRENT = Rule[RemoteSwitch](
    id="relay.small-coil-current", level=Level.ADVICE, when=lambda r: r.relayed and r.coil.current < SMALL_CURRENT, source="faa-switch",
    text="Silver contacts made for high current may not switch such a small current reliably: below 0.5 A use a switch rated for it.",
)
HELD_COIL = Rule[RemoteSwitch](
    id="relay.held-coil", level=Level.ADVICE, when=lambda r: r.relayed and r.coil.held_charge > 0, source="practice",
    text="Held on, the coil takes {coil.held_charge} a day and warms by {coil.power}. A latching relay takes a pulse instead; a lamp at the switch shows that it is on.",
)
CUT_OUT_IS_NO_SWITCH = Rule[RemoteSwitch](
    id="switch.cut-out-is-no-switch", level=Level.ADVICE, when=lambda r: r.line.load is SwitchedLoad.HEATER, source="practice",
    text="Never use a thermal cut-out as the switch: it is the last guard against fire. A thermostat is no switch either: it switches on again without warning.",
)
PROTECTS_NOTHING = Rule[RemoteSwitch](
    id="switch.protects-nothing", level=Level.ADVICE, source="33cfr-place",
    text="A switch or relay protects nothing: the line needs its own fuse near its source, and so does the small wire to the coil.",
)
CONTACTS_SPARK = Rule[RemoteSwitch](
    id="switch.contacts-spark", level=Level.ADVICE, source="practice",
    text="Explosion: contacts spark. Never fit them in a gas locker, beside a vented battery or near petrol fumes.",
)
MAY_START_BY_ITSELF = Rule[RemoteSwitch](
    id="switch.may-start-by-itself", level=Level.ADVICE, when=lambda r: r.line.load is not SwitchedLoad.HEATER, source="practice",
    text="A load that starts automatically must not start while someone works on it: fit a switch within sight, or one that locks.",
)
COIL_WHILE_CHARGING = Rule[RemoteSwitch](
    id="relay.coil-while-charging", level=Level.NOTE, when=lambda r: r.relayed, source="practice",
    text="A 12 V coil sees up to 14.6 V while the bank charges, and a warm coil needs more volts to close than a cold one. Check both in the relay's data sheet.",
)
INVERTER_REMOTE = Rule[RemoteSwitch](
    id="switch.inverter-remote-input", level=Level.NOTE, when=lambda r: not r.line.dc, source="practice",
    text="On an inverter, its own remote input may be the better switch: it stops the idle draw too.",
)
CONTACT_WARMS = Rule[RemoteSwitch](
    id="relay.contact-warms", level=Level.NOTE, source="practice",
    text="A relay's contact has some drop and gets warm: give it air, and measure across it once under load.",
)
