"""remote-switch: a switch within reach for something hidden."""

from types import SimpleNamespace

from calc.electrical.switching import AC, DC, loads
from calc.sheets.bank.remote_switch.calculate import UNSAID, run
from calc.units.compare import at_least
from calc.units.kinds import (
    CHARGE,
    CURRENT,
    LENGTH,
    LINEAR_RESISTANCE,
    NUMBER,
    POWER,
    RATIO,
    RESISTANCE,
    TIME,
    VOLTAGE,
)
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.work import Worksheet

_IF_AC = ("kind", AC)
_CALLED = {"heater": "heater (resistive)", "motor": "motor, pump or fan", "coil": "coil or solenoid", "lamp": "lamps"}


def _found(v: SimpleNamespace) -> bool:
    return v.control_conductor is not None


def _covered(v: SimpleNamespace) -> bool:
    return v.factor is not None


def _ac_on_dc(v: SimpleNamespace) -> bool:
    return bool(v.at_hand and v.dc and v.marked == AC)


def _weak(v: SimpleNamespace) -> bool:
    return v.at_hand and not at_least(v.switch, v.line_current)


WORKSHEET = Worksheet(
    id="remote-switch",
    title="Remote switch",
    question="How do I switch what is hidden?",
    entry_question="How do I switch the heater under the bed?",
    about="The line or a relay, the contact's rating, and the coil's wire.",
    calculate=run,
    fields=(
        Quantity(id="power", label="Power", symbol="P", kinds=(POWER,), default="1500 W", low="0.1 W", high="20 kW", hint="Of what is switched, from its label."),
        Choice(id="kind", label="Kind of supply", default=AC, options=(Option(AC, "AC (mains or inverter)", aliases=("mains",)), Option(DC, "DC (bank)", aliases=("bank",))), hint="A contact breaks the two quite differently."),
        Quantity(id="voltage", label="Voltage of the line", symbol="U", kinds=(VOLTAGE,), low="5 V", high="300 V", default_by=("kind", {AC: "120 V", DC: "12 V"}), hint="Mains 120 V or 230 V; a bank's own, like 12.8 V."),
        Choice(id="load", label="What it switches", default="heater", options=tuple(Option(name, _CALLED[name]) for name in loads()), hint="Electronics with a large input, like an inverter, count as lamps."),
        Quantity(id="distance", label="Distance, one way", symbol="L", kinds=(LENGTH,), default="12 ft", low="1 cm", high="100 m", hint="Along the cable from the hidden thing to the switch."),
        Quantity(id="coil_current", label="Relay's coil takes", symbol="I_c", kinds=(CURRENT,), default="0.15 A", low="0.001 A", high="10 A", hint="From its sheet: 0.1 to 0.2 A is usual at 12 V; a large contactor 1 A (no source)."),
        Quantity(id="control_voltage", label="Coil's voltage", symbol="U_c", kinds=(VOLTAGE,), default="12 V", low="5 V", high="48 V", hint="Nominal, of the bank that feeds it. A coil at mains voltage is not covered."),
        Quantity(id="hours", label="Held on in a day", symbol="t", kinds=(TIME,), default="24 h", low="0 h", high="24 h", hint="24 h if someone may forget it."),
        Quantity(id="switch", label="Switch for the line, if at hand", symbol="I_s", kinds=(CURRENT,), optional=True, low="0.1 A", high="1000 A", example="20 A", hint="The rating printed on it. Empty: the sheet says what to look for."),
        Choice(id="marked", label="It is marked for", default=UNSAID, options=(Option(UNSAID), Option(AC, "AC"), Option(DC, "DC at this voltage")), hint="Beside that figure. The rating for the one says nothing of the other."),
        Quantity(id="lowest", advanced=True, label="Lowest the bank sags to", symbol="l", kinds=(RATIO,), default="92 %", low="60 %", high="110 %", hint="Of the coil's voltage, with the heaviest load on: 11 V of 12 V is 92 %."),
        Quantity(id="pull_in", advanced=True, label="Pull-in voltage", symbol="p", kinds=(RATIO,), default="80 %", low="30 %", high="95 %", hint="Of the coil's voltage, warm. 75 to 85 % is usual (no source)."),
        Choice(id="series", advanced=True, label="Wire sizes", default="AWG", options=(Option("AWG"), Option("mm2", "mm²", aliases=("metric",))), hint="Which sizes to choose from."),
        Quantity(id="power_factor", advanced=True, only_if=_IF_AC, label="Power factor", symbol="λ", kinds=(NUMBER,), default="1", low="0.3", high="1", hint="1 for a heater; motors 0.5 to 0.8 (no source)."),
    ),
    results=(
        Output(id="route", label="What the switch within reach works"),
        Output(id="line_current", label="Current in the line", symbol="I", kind=CURRENT, rounding=UP),
        Output(id="switch_rating", label="Contact that breaks it, rated at least", symbol="I_r", kind=CURRENT, rounding=UP),
        Output(id="control_conductor", label="Wire to the coil"),
        Output(id="drop", label="Lost on the way to the coil", symbol="U_d", kind=VOLTAGE, rounding=UP),
        Output(id="drop_percent", label="Of the coil's voltage", symbol="d", kind=RATIO, rounding=UP),
        Output(id="control_fuse", label="Fuse for the coil's wire", symbol="I_f", kind=CURRENT, hide_if_none=True),
        Output(id="line_conductor", label="Wire for the line itself over the same way", hide_if_none=True),
        Output(id="held_charge", label="Coil takes in a day", symbol="Q", kind=CHARGE, rounding=UP),
        Output(id="longest", label="Farthest with this wire", symbol="L_max", kind=LENGTH, rounding=DOWN, hide_if_none=True),
        Output(id="moves", label="Go on with", hide_if_none=True, needs_step=False),
    ),
    intermediates=(
        Output(id="margin", label="Margin for hours", symbol="m", kind=NUMBER),
        Output(id="factor", label="Factor for this load", symbol="k", kind=NUMBER),
        Output(id="sustained", label="For hours, at least", symbol="I_m", kind=CURRENT, rounding=UP),
        Output(id="small", label="Panel switches go to about", kind=CURRENT),
        Output(id="pull_in_margin", label="Margin on pull-in", symbol="m_p", kind=NUMBER),
        Output(id="must_see", label="The coil must see", symbol="U_p", kind=VOLTAGE, rounding=UP),
        Output(id="sags_to", label="The bank sags to", symbol="U_l", kind=VOLTAGE, rounding=DOWN),
        Output(id="allowed", label="May be lost", symbol="U_max", kind=VOLTAGE, rounding=DOWN),
        Output(id="need", label="The coil's wire bears at least", symbol="I_n", kind=CURRENT),
        Output(id="per_length", label="Resistance per length, warm", symbol="r", kind=LINEAR_RESISTANCE, digits=4),
        Output(id="resistance", label="Resistance, out and back", symbol="R", kind=RESISTANCE),
        Output(id="coil_voltage", label="Left at the coil", symbol="U_k", kind=VOLTAGE, rounding=DOWN),
        Output(id="thickest_cable", label="What 4/0 AWG bears", kind=CURRENT),
        Output(id="coil_power", label="Heat of the coil", symbol="P_c", kind=POWER, rounding=UP),
    ),
    steps=(
        Step(of="line_current", formula="power / (voltage * power_factor)", source="ohm", when=lambda v: not v.dc, says="Power is voltage times current; a power factor below one takes more."),
        Step(of="line_current", formula="power / voltage", source="ohm", when=lambda v: v.dc, says="Power is voltage times current."),
        Step(of="sustained", formula="line_current * margin", source="nec-125", says="A device is rated 125 % of what stays on for hours."),
        Step(of="factor", source="faa-switch", when=lambda v: v.dc and _covered(v), says="By kind of load and voltage: motors, coils and lamps take far more at the start, or arc as they are broken."),
        Step(of="factor", source="nec-switch", when=lambda v: not v.dc and v.load == "heater", says="A resistive load, up to the contact's rating."),
        Step(of="factor", source="relay-contact", when=lambda v: not v.dc and v.load in ("motor", "coil"), says="Inductive: the printed reduction goes down to 0.35, so the contact is rated that much more."),
        Step(of="factor", source="lamp-inrush", when=lambda v: not v.dc and v.load == "lamp", says="For the inrush."),
        Step(of="switch_rating", formula="line_current * max(factor, margin)", when=_covered, source="practice", says="The larger of the two: both speak of the same contact."),
        Step(of="route", source="practice", says="Up to a rating of {small}, which panel switches have, or with a switch at hand that does, the line may pass through it. Beyond that a relay beside the hidden thing breaks the line, and the switch works its coil."),
        Step(of="must_see", formula="pull_in_margin * pull_in * control_voltage", source="relay-coil", says="110 % of the voltage at which it surely closes."),
        Step(of="sags_to", formula="lowest * control_voltage", says="When the coil is asked to close at the worst moment."),
        Step(of="allowed", formula="max(0, sags_to - must_see)", says="What is left for the wire."),
        Step(of="need", formula="coil_current * margin", source="nec-125", says="The coil stays on for hours."),
        Step(of="control_conductor", source="33cfr-table", when=_found, says="The thinnest, from 18 AWG or 1 mm² up, that loses no more than {allowed}, and bears a standard fuse with 60 °C insulation."),
        Step(of="control_fuse", source="fuse-ratings", when=lambda v: v.control_fuse is not None, says="The smallest standard rating from {need} up. It protects the wire."),
        Step(of="per_length", source="nec-8", when=lambda v: _found(v) and v.series == "AWG", says="{control_conductor}, at 60 °C."),
        Step(of="per_length", source="iec-60228", when=lambda v: _found(v) and v.series != "AWG", says="{control_conductor}, at 60 °C."),
        Step(of="resistance", formula="2 * distance * per_length", when=_found, says="To the switch and back."),
        Step(of="drop", formula="coil_current * resistance", source="ohm", when=_found, says="Ohm's law."),
        Step(of="drop_percent", formula="drop / control_voltage", when=_found, says="Compared with the coil's voltage."),
        Step(of="coil_voltage", formula="sags_to - drop", when=_found, says="At the worst moment."),
        Step(of="longest", formula="allowed / (2 * coil_current * per_length)", source="ohm", when=_found, says="Where that wire loses just what it may."),
        Step(of="line_conductor", source="33cfr-table", when=lambda v: v.line_conductor is not None, says="For comparison: within 3 % and for the heat, had the line itself to go to the switch and back."),
        Step(of="coil_power", formula="coil_current * control_voltage", source="ohm", says="All the time it is held."),
        Step(of="held_charge", formula="coil_current * hours", says="Out of the bank, for nothing but keeping a contact closed."),
    ),
    rules=(
        Verdict(verdict=STOP, when=_ac_on_dc, says="Not with this switch in the line: an AC rating says nothing of DC, and the arc may not go out."),
        Verdict(verdict=STOP, when=_weak, says="Not with this switch in the line: it is rated {switch}, and the line carries {line_current}. With a DC figure it may work a relay's coil."),
        Verdict(verdict=STOP, when=lambda v: v.no_cable, says="{line_current} is too much for one cable: no standard fuse of a quarter more suits the thickest in the table ({thickest_cable}). Use a higher voltage, or less power."),
        Verdict(verdict=STOP, when=lambda v: v.relayed and v.allowed <= 0, says="The relay may not close: at {sags_to} the coil has less than the {must_see} it must see, before any wire."),
        Verdict(verdict=STOP, when=lambda v: v.relayed and not _found(v), says="No wire in the table brings enough to the coil: it may lose {allowed}. Take a coil of less current, or feed it nearer."),
        Verdict(verdict=CAUTION, when=lambda v: not _covered(v), says="Switch a relay, but no factor is published for DC this high: take a contactor whose own DC rating at {voltage}, for such a load, covers {sustained}."),
        Verdict(verdict=CAUTION, when=lambda v: v.at_hand and not at_least(v.switch, v.switch_rating), says="The switch carries {line_current}, but for this load its contact should be rated {switch_rating}: let it work a relay."),
        Verdict(verdict=CAUTION, when=lambda v: v.at_hand and v.marked != v.kind, says="The switch does only if it is marked for {kind} at {voltage}: its figure for anything else says nothing."),
        Verdict(verdict=CAUTION, when=lambda v: not v.dc and v.relayed, says="{line_current} at mains voltage: a licensed person fits a relay of {switch_rating} or more near it. Your switch works its coil over {control_conductor}."),
        Verdict(verdict=CAUTION, when=lambda v: not v.dc, says="The line may be switched itself, with a contact of {switch_rating} or more: mains, so by a licensed person."),
        Verdict(verdict=FINE, when=lambda v: v.relayed, says="A relay of {switch_rating} or more breaks the line; {control_conductor} to its coil loses {drop}."),
        Verdict(verdict=CAUTION, when=lambda v: v.line_conductor is None, says="The line may be switched itself, but no wire carries it that far within 3 %: keep the switch close, or take a relay."),
        Verdict(verdict=FINE, says="The line may be switched itself, with a contact of {switch_rating} or more marked for DC; on the way there and back it needs {line_conductor}."),
    ),
    remarks=(
        Remark(when=lambda v: v.dc, source="faa-switch", says="Look for the DC figure at {voltage} or more beside the amps. A switch marked only for AC must not break DC: the arc does not go out by itself, and the switch burns."),
        Remark(when=lambda v: not _covered(v), source="relay-contact", says="How fast it falls: a relay for 10 A at 30 V DC was given no more than 0.5 A at 110 V DC."),
        Remark(when=lambda v: not v.dc, source="practice", says="Mains can kill. The line, its relay, enclosure and earth are for a licensed person, to local rules and the maker's instructions. The contact breaks live, or both poles where polarity can turn over; the coil's wires keep apart from mains."),
        Remark(when=lambda v: v.relayed, source="relay-coil", says="A coil that is let go kicks back: put a diode or what its maker asks for right at the coil, the diode's band to plus. It slows the release a little."),
        Remark(when=lambda v: v.relayed and not v.dc, source="faa-switch", says="The switch within reach breaks the coil's DC, whatever the line is: it too needs a DC figure, twice the coil's current on 12 V, four times on 24 V."),
        Remark(when=lambda v: v.relayed and v.coil_current < 0.5, source="faa-switch", says="Silver contacts made for many amps may not close so small a current well in the long run: below 0.5 A take a switch rated for it."),
        Remark(when=lambda v: v.held_charge > 0 and v.relayed, source="practice", says="Held on, the coil takes {held_charge} a day and warms by {coil_power}. A latching relay takes a pulse instead; a lamp at the switch shows that it is on."),
        Remark(when=lambda v: v.load == "heater", source="practice", says="The switch, a thermostat and a thermal cut-out are three things. A cut-out is the last guard against fire and must never be used as the switch; a thermostat comes on again by itself."),
        Remark(source="33cfr-place", says="Switch and relay protect nothing: the line has its own fuse near its source, and so has the thin wire to the coil. Contacts spark: none of them in a gas locker, beside a vented battery or where petrol fumes gather."),
        Remark(when=lambda v: v.load != "heater", source="practice", says="What moves or heats by itself must not start while someone works on it: a switch within sight, or one that locks."),
        Remark(level=NOTE, source="practice", when=lambda v: v.relayed, says="A 12 V coil sees up to 14.6 V while the bank charges, and a warm coil needs more volts to close than a cold one. Ask the relay's sheet about both."),
        Remark(level=NOTE, source="practice", when=lambda v: not v.dc, says="On an inverter, its own remote input may be the better switch: it takes the idle draw away too."),
        Remark(level=NOTE, source="practice", says="A relay's contact drops a little and gets warm: give it air, and measure across it under load once."),
    ),
    valid="One steady load and one relay with a battery-voltage coil. Soft-start, solid-state relays and breaking of shorts are not covered.",
    summary="{route}, {line_current}",
    keep_distinct=(("sags_to", "must_see"),),
)
