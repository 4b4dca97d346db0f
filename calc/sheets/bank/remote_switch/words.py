"""The working of remote-switch in words, and what its answer says when nothing is wrong."""

# fmt: off
from collections.abc import Mapping

from calc.electrical.conductors import Series
from calc.electrical.switching import RemoteSwitch, Route, SwitchedLoad
from calc.judge import Level, Rule
from calc.worksheet.declare import Step

LOADS = {
    SwitchedLoad.HEATER: "heater (resistive)", SwitchedLoad.MOTOR: "motor, pump or fan",
    SwitchedLoad.COIL: "coil or solenoid", SwitchedLoad.LAMP: "lamps",
}
ROUTES: Mapping[str, str] = {Route.LINE: "switch the line", Route.RELAY: "switch a relay"}

STEPS: tuple[Step[RemoteSwitch], ...] = (
    Step(of="line_current", formula="power / (voltage * power_factor)", source="ohm", when=lambda r: not r.line.dc, text="Power is voltage times current; a power factor below one takes more."),
    Step(of="line_current", formula="power / voltage", source="ohm", when=lambda r: r.line.dc, text="Power is voltage times current."),
    Step(of="sustained", formula="line_current * margin", source="nec-125", text="A device is rated 125 % of a continuous load."),
    Step(of="factor", source="faa-switch", when=lambda r: r.line.dc and r.line.factor is not None, text="By kind of load and voltage: motors, coils and lamps draw far more at the start, or arc when switched off."),
    Step(of="factor", source="nec-switch", when=lambda r: not r.line.dc and r.line.load is SwitchedLoad.HEATER, text="A resistive load, up to the contact's rating."),
    Step(of="factor", source="relay-contact", when=lambda r: not r.line.dc and r.line.load in (SwitchedLoad.MOTOR, SwitchedLoad.COIL), text="Inductive: the printed reduction goes down to 0.35, so the contact is rated that much more."),
    Step(of="factor", source="lamp-inrush", when=lambda r: not r.line.dc and r.line.load is SwitchedLoad.LAMP, text="For the inrush."),
    Step(of="switch_rating", formula="line_current * max(factor, margin)", when=lambda r: r.line.factor is not None, source="practice", text="The larger of the two: both are for the same contact."),
    Step(of="route", source="practice", text="Up to {small}, the usual limit of panel switches, or with a switch that is rated for it, switch the line directly. Above that, a relay beside the appliance switches the line, and the switch controls its coil."),
    Step(of="must_see", formula="pull_in_margin * pull_in * control_voltage", source="relay-coil", text="110 % of its pull-in voltage."),
    Step(of="sags_to", formula="lowest * control_voltage", text="When the coil must close at the lowest voltage."),
    Step(of="allowed", formula="max(0, sags_to - must_see)", text="The drop left for the wire."),
    Step(of="need", formula="coil_current * margin", source="nec-125", text="The coil stays on for hours."),
    Step(of="control_conductor", source="33cfr-table", when=lambda r: r.coil.run is not None, text="The smallest, from 18 AWG or 1 mm² up, with at most {allowed} of drop, protected by a standard fuse with 60 °C insulation."),
    Step(of="control_fuse", source="fuse-ratings", when=lambda r: r.coil.fuse is not None, text="The standard rating from {need} up, in the order of fuse choice: published and common ones first, then the smallest. It protects the wire."),
    Step(of="per_length", source="nec-8", when=lambda r: r.coil.run is not None and r.series is Series.AWG, text="{control_conductor}, at 60 °C."),
    Step(of="per_length", source="iec-60228", when=lambda r: r.coil.run is not None and r.series is Series.METRIC, text="{control_conductor}, at 60 °C."),
    Step(of="resistance", formula="2 * distance * per_length", when=lambda r: r.coil.run is not None, text="To the switch and back."),
    Step(of="drop", formula="coil_current * resistance", source="ohm", when=lambda r: r.coil.run is not None, text="Ohm's law."),
    Step(of="drop_percent", formula="drop / control_voltage", when=lambda r: r.coil.run is not None, text="Compared with the coil's voltage."),
    Step(of="coil_voltage", formula="sags_to - drop", when=lambda r: r.coil.run is not None, text="At the worst moment."),
    Step(of="longest", formula="allowed / (2 * coil_current * per_length)", source="ohm", when=lambda r: r.coil.run is not None, text="The run at which that wire is at its limit."),
    Step(of="line_conductor", source="33cfr-table", when=lambda r: r.line_conductor is not None, text="For comparison: the wire if the line itself went to the switch and back, within 3 % and for the heat."),
    Step(of="coil_power", formula="coil_current * control_voltage", source="ohm", text="All the time it is on."),
    Step(of="held_charge", formula="coil_current * hours", text="Charge used only to keep a contact closed."),
)

FINE_RELAY = Rule[RemoteSwitch](
    id="remote-switch.fine-relay", level=Level.FINE, when=lambda r: r.relayed,
    headline="Use a relay rated for at least {line.rating} in the line, and {coil.run.laid.run.conductor} to its coil ({coil.run.drop} drop).",
)
FINE = Rule[RemoteSwitch](
    id="remote-switch.fine", level=Level.FINE,
    headline="Switch the line directly: a contact rated for at least {line.rating} and marked for DC, {line_conductor} out and back.",
)
