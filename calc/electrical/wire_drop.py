"""What a run of a given conductor loses, how far it may go, and the size that would do.

In scope: steady direct current, like copper conductors, out and back. The conductor as it lies is
held to the boats' rules, 33 CFR 183.425, by the same function as everywhere
(`calc.electrical.protection`).
"""

from dataclasses import dataclass

from calc.electrical.ampacity import RuleSet, Surroundings, insulation_rating
from calc.electrical.cable import Cable, cable
from calc.electrical.conductors import (
    Finish,
    GaugeReading,
    Strands,
    at_temperature,
    series_of,
)
from calc.electrical.drop import longest_run
from calc.electrical.protection import Protection, Warmth, select_fuse
from calc.electrical.run import LoadedRun, Run, again, designation, loaded, run_of
from calc.electrical.sizing import CHARGED, offered, together
from calc.judge.remedies import smallest_change
from calc.units.si import Amperes, Metres, Volts


@dataclass(frozen=True, kw_only=True)
class WireDrop:
    """A loaded run with the longest that keeps within its limit, and the thinnest size that does.

    `protection` is each conductor as it lies with a fuse for its share of the current;
    `smallest_conductor` keeps within the limit, and `smallest` is it with its fuse. Both are None
    where no size of the series does.
    """

    loaded: LoadedRun
    protection: Protection
    longest_run: Metres
    smallest_conductor: str | None
    smallest: Protection | None

    @property
    def cure(self) -> str:
        """What brings the drop within the limit, other than a shorter run."""
        if self.smallest_conductor is None:
            return "a higher voltage"
        if self.smallest is None or not self.smallest.window_open:
            return "a larger size"  # heat, not drop, says how large
        run = self.loaded.laid.run
        return designation(self.smallest_conductor, run.parallel, run.gauge_reading)

    @property
    def smallest_ampacity(self) -> Amperes | None:
        """What so many of the smallest conductor for the drop can carry."""
        if self.smallest is None:
            return None
        return self.smallest.cable.ampacity * self.loaded.laid.run.parallel

    @property
    def warmth(self) -> Warmth | None:
        """How warm the copper gets, None where no fuse fits it."""
        return self.protection.warmth

    @property
    def warm_drop(self) -> Volts | None:
        """The drop with the copper as warm as that."""
        drop, warmth = self.loaded.drop, self.warmth
        if drop is None or warmth is None:
            return None
        return at_temperature(drop, self.loaded.laid.run.temperature, warmth.warm)


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
    insulation: str,
    surroundings: Surroundings,
    bundled: float,
    ambient: float,
    terminals: float | None,
) -> WireDrop:
    """Return what a two-conductor run of one-way `length` [m] loses at `current` [A].

    The supply has `voltage` [V], of which the share `limit` may be lost; the copper is at
    `temperature` [°C]. `maker_resistance` [ohm/m] is that of one conductor at 20 °C. Ohm's law.
    `insulation` goes by its name; `ambient` and the weakest of the `terminals` [°C]; `bundled`
    counts the loaded conductors together. Raises NotCovered where no SAE area is published, and
    for air as hot as the insulation may be.
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

    def lies(name: str) -> Cable:
        return cable(
            conductor=name,
            insulation=insulation_rating(insulation),
            surroundings=surroundings,
            bundled=together(bundled, parallel),
            ambient=ambient,
            max_voltage=CHARGED * voltage,
            rule_set=RuleSet.CFR33,
            gauge_reading=gauge_reading,
        )

    def fused(name: str) -> Protection:
        share = current / parallel
        return select_fuse(cable=lies(name), current=share, fault_current=None, terminals=terminals)

    return WireDrop(
        loaded=run,
        protection=fused(conductor),
        longest_run=longest_run(current, laid.per_length / parallel, run.allowed),
        smallest_conductor=smallest,
        smallest=fused(smallest) if smallest else None,
    )
