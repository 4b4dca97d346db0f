"""What a run of a given conductor loses, how far it may go, and the size that would do.

In scope: steady direct current, like copper conductors, out and back. What the conductor can carry
is set against the table alone; where it lies is for `calc.electrical.cable`.
"""

from dataclasses import dataclass

from calc.electrical.ampacity import TableAmpacity, ampacity_of_run
from calc.electrical.conductors import Finish, GaugeReading, Strands, series_of
from calc.electrical.drop import longest_run
from calc.electrical.run import LoadedRun, Run, again, loaded, run_of
from calc.electrical.sizing import offered
from calc.judge.remedies import smallest_change
from calc.units.si import Amperes, Metres


@dataclass(frozen=True, kw_only=True)
class WireDrop:
    """A loaded run with the longest that keeps within its limit, and the thinnest size that does.

    `ampacity` is what the conductors carry by the table alone; `smallest_conductor` keeps within
    the limit, and `smallest_ampacity` is what so many of it carry. Both are None where no size of
    the series does.
    """

    loaded: LoadedRun
    ampacity: TableAmpacity
    longest_run: Metres
    smallest_conductor: str | None
    smallest_ampacity: Amperes | None


def thinnest_within(run: LoadedRun, share: float) -> str | None:
    """Return the thinnest size of the run's series that loses at most `share`, or None.

    By the published tables, whatever a maker says of the size that is laid. Sizes below 18 AWG and
    0.75 mm² are left to signals, unless the run is of one.
    """
    laid = run.laid.run
    series = series_of(laid.conductor)[0].series

    def keeps_within(name: str) -> bool | None:
        return again(run, conductor=name, maker_resistance=None).within(share) or None

    sizes = (one.name for one in offered(series, laid.gauge_reading, laid.conductor))
    found = smallest_change(sizes, keeps_within)
    return found.change if found else None


def wire_drop(
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
) -> WireDrop:
    """Return what a two-conductor run of one-way `length` [m] loses at `current` [A].

    The supply has `voltage` [V], of which the share `limit` may be lost; the copper is at
    `temperature` [°C]. `maker_resistance` [ohm/m] is that of one conductor at 20 °C. Ohm's law.
    Raises NotCovered where no SAE area is published.
    """
    laid = run_of(
        Run(
            conductor=conductor,
            length=length,
            parallel=parallel,
            temperature=temperature,
            finish=finish,
            strands=strands,
            gauge_reading=gauge_reading,
            maker_resistance=maker_resistance,
        )
    )
    run = loaded(laid, current=current, voltage=voltage, limit=limit)
    smallest = thinnest_within(run, limit)

    def carries(name: str) -> TableAmpacity:
        return ampacity_of_run(name, parallel=parallel, gauge_reading=gauge_reading)

    return WireDrop(
        loaded=run,
        ampacity=carries(conductor),
        longest_run=longest_run(current, laid.per_length / parallel, run.allowed),
        smallest_conductor=smallest,
        smallest_ampacity=carries(smallest).at_105 if smallest else None,
    )
