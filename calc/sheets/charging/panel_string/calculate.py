"""panel-string from its fields: figures of one label in either form, and the ways on."""

from calc.energy import panel_string as book
from calc.energy.panel_string import Alike, InputLimits, PanelLabel, PanelString
from calc.energy.panels import Mount, Regulator
from calc.units.kinds import POWER
from calc.units.kinds.heat import DERATING
from calc.worksheet.fields import Measured
from calc.worksheet.next_steps import NextStep


def calculate(
    *,
    voc: float,
    vmp: float,
    isc: float,
    rated: Measured,
    coefficient: Measured | None,
    series: float,
    parallel: float,
    cold: float,
    hot_air: float,
    regulator: Regulator,
    volts_limit: float,
    regulator_limit: float | None,
    voltage: float,
    series_fuse: float | None,
    string_fuse: float | None,
    alike: Alike,
    input_limit: float | None,
    headroom: float,
    mount: Mount,
    heat_coefficient: float,
) -> PanelString:
    """Return what strings of panels do in frost, in heat and at their regulator.

    Of a label `voc` and `vmp` [V], `isc` [A]; `rated` is the current or the power at best power,
    `coefficient` that of the open voltage, as a share or in volts, with either sign. `cold` and
    `hot_air` [°C]; `volts_limit` [V] and `input_limit` [A] are the most into the regulator,
    `regulator_limit` [A] the most out of it. Raises NotCovered below NEC's table.
    """
    fall = None
    if coefficient is not None:
        # Labels write a minus; what is lost by the degree is meant either way
        lost = abs(coefficient.value)
        fall = lost if coefficient.kind is DERATING else lost / voc
    label = PanelLabel(
        voc=voc,
        vmp=vmp,
        isc=isc,
        power=rated.value if rated.kind is POWER else rated.value * vmp,
        voc_fall=fall,
        power_fall=abs(heat_coefficient),
        series_fuse=series_fuse,
    )
    return book.panel_string(
        label=label,
        alike=alike,
        series=series,
        parallel=parallel,
        cold=cold,
        hot_air=hot_air,
        mount=mount,
        regulator=regulator,
        voltage=voltage,
        current=regulator_limit,
        limits=InputLimits(volts=volts_limit, amps=input_limit, headroom=headroom),
        string_fuse=string_fuse,
    )


def onward(found: PanelString) -> tuple[NextStep, ...]:
    """Return where its cable, the regulator's fuse and its yield are worked out."""
    array = found.array
    out = array.peak_current if array.limit is None else min(array.limit, array.peak_current)
    cable = (
        ("current", f"{found.max_current:.4g} A"),
        ("voltage", f"{min(1000.0, array.panel_voltage):.4g} V"),
    )
    fuse = (
        ("current", f"{min(600.0, out):.4g} A"),
        ("voltage", f"{array.voltage:.4g} V"),
        ("fuse_place", "at-the-battery"),
    )
    moves = [
        NextStep("Cable from the panels", cable, "wire-size"),
        NextStep("Fuse between regulator and battery", fuse, "fuse-choice"),
    ]
    if array.reached and not (found.over_input or found.blocked_when_hot):
        sun = (
            ("array", f"{min(20e3, array.power):.6g} W"),
            ("regulator", array.regulator),
            ("panel_voltage", f"{min(1000.0, array.panel_voltage):.6g} V"),
            ("voltage", f"{array.voltage:.6g} V"),
        )
        moves.append(NextStep("Their yield in a day", sun, "sun-yield"))
    return tuple(moves)
