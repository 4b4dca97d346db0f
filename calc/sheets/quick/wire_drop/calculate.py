"""wire-drop from its fields: the book's function, with the insulation by its name."""

from calc.electrical.ampacity import Surroundings, insulation_rating
from calc.electrical.conductors import Finish, GaugeReading, Strands
from calc.electrical.wire_drop import WireDrop, wire_drop


def calculate(
    *,
    current: float,
    length: float,
    conductor: str,
    voltage: float,
    limit: float,
    temperature: float,
    finish: Finish,
    maker_resistance: float | None,
    strands: Strands,
    gauge_reading: GaugeReading,
    parallel: float,
    insulation: str,
    surroundings: Surroundings,
    bundled: float,
    ambient: float,
    terminals: float | None,
) -> WireDrop:
    """Return what a run loses, and whether its conductor can carry the current where it lies.

    See `calc.electrical.wire_drop`. Raises NotCovered.
    """
    return wire_drop(
        current=current,
        length=length,
        conductor=conductor,
        voltage=voltage,
        limit=limit,
        temperature=temperature,
        finish=finish,
        maker_resistance=maker_resistance,
        strands=strands,
        gauge_reading=gauge_reading,
        parallel=parallel,
        insulation=insulation_rating(insulation),
        surroundings=surroundings,
        bundled=bundled,
        ambient=ambient,
        terminals=terminals,
    )
