"""A step of the search in words: where the meter goes, what it shows, what a reading is called."""

from math import inf

from calc.faults import graph
from calc.faults.graph import Reads, Step, Turn
from calc.faults.walk import Band, Values, bands
from calc.units.kinds import CHARGE, CURRENT, RESISTANCE
from calc.units.quantities import Kind, Unit
from calc.units.shown import quantity_text

METER = Kind(
    "voltage",
    "volt",
    (Unit("volt", "V", "V"), Unit("millivolt", "mV", "mV")),
    shown=("millivolt", "volt"),
)
"""Voltage as a meter shows it: in millivolts below one volt."""

KINDS = {Reads.VOLTS: METER, Reads.AMPS: CURRENT, Reads.OHMS: RESISTANCE, Reads.CHARGE: CHARGE}


def meter(step: Step, charging: bool) -> str | None:
    """Return where the meter goes, None for a question; `charging` if a charger's current flows."""
    if step.clamp:
        return f"{graph.words('clamps', charging)[step.clamp]}."
    if not step.red:
        return None
    places = graph.words("places", charging)
    sign = " The sign does not matter." if step.reads is Reads.VOLTS else ""
    return f"Red probe on {places[step.red]}; black probe on {places[step.black]}.{sign}"


def setting(step: Step, charging: bool) -> str | None:
    """Return what must run while the meter is read, None for a question."""
    return graph.words("settings", charging)[step.state] if step.state else None


def amount(value: float, reads: Reads) -> str:
    """Return a reading [in SI] as a meter shows it."""
    digits = 4 if reads is Reads.VOLTS and value >= 1 else 3
    return quantity_text(value, KINDS[reads], digits=digits)


def said(band: Band, reads: Reads) -> str:
    """Return the readings of a band in words."""
    if band.high == inf:
        return f"{amount(band.low, reads)} or more"
    if band.low == -inf:
        return f"less than {amount(band.high, reads)}"
    return f"{amount(band.low, reads)} to {amount(band.high, reads)}"


def answered(step: Step, turn: Turn, values: Values) -> str:
    """Return what an answer is called: its readings and what they mean, or the words alone."""
    if not step.reads:
        return turn.text
    band = next((band for band in bands(step, values) if band.turn == turn), None)
    words = said(band, step.reads) if band else "a reading that your values exclude"
    return f"{words[0].upper()}{words[1:]}: {turn.text}"
