"""Where a fuse stands, and what a short can drive through it there.

At the battery it is the whole short-circuit current of the bank. Behind a main fuse the feed holds
it back: the short at the feed's end is worked as every short at the end of a run is
(`short_circuit`), at its highest, with cold solid copper; the main fuse with its holder and the
joints of the loop, new and clean, hold it back a little more.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.electrical.conductors import Finish, GaugeReading, Strands
from calc.electrical.run import Run, run_of
from calc.electrical.short_circuit import ANNEALED_AT, SolidRun, bolted, least_run
from calc.units.compare import at_most
from calc.units.covered import Enumeration
from calc.units.si import Amperes, Metres, Ohms, Tag, Volts

# A main fuse of 0.5 mΩ and ten good joints of 0.1 mΩ, out and back: common practice, no source
FEED_PARTS: Annotated[Ohms, Tag("main fuse, holder and joints of a feed")] = 1.5e-3


class Place(Enumeration):
    """Where a fuse stands."""

    AT_BATTERY = "at-the-battery"
    BEHIND_MAIN = "behind-a-main-fuse"
    KNOWN = "where-its-short-is-known"


@dataclass(frozen=True, kw_only=True)
class Feed:
    """The run from the main fuse to the fuse: its `conductor`, one-way `length`, and its least."""

    conductor: str
    length: Metres
    least: SolidRun


@dataclass(frozen=True, kw_only=True)
class FeedLoad:
    """A feed's `conductor` and the `current` of the load behind it.

    `ampacity` is the feed's as it is laid, None where no table has it.
    """

    conductor: str
    ampacity: Amperes | None
    current: Amperes

    @property
    def below_load(self) -> bool:
        """Whether the load alone is more than the feed may carry."""
        return self.ampacity is not None and not at_most(self.current, self.ampacity)


@dataclass(frozen=True, kw_only=True)
class FuseSite:
    """A fuse at its `place`: the bank's `bank_current` when shorted, and what of it gets there.

    `source` is the bank's own resistance, from `voltage`, the highest on the circuit. `feed` is
    None at the battery.
    """

    place: Place
    voltage: Volts
    bank_current: Amperes
    source: Ohms
    feed: Feed | None
    fault_current: Amperes

    @property
    def behind_main(self) -> bool:
        """Whether it stands behind a main fuse."""
        return self.place is Place.BEHIND_MAIN

    @property
    def at_battery(self) -> bool:
        """Whether it stands at the battery."""
        return self.place is Place.AT_BATTERY

    @property
    def parts(self) -> Ohms:
        """What the main fuse, its holder and the joints of a feed resist, new and clean."""
        return FEED_PARTS

    def more_feed(self, most: Amperes) -> Metres | None:
        """Return how much longer [m] the feed must be for a short to pass `most` [A] at most.

        None at the battery, and where it is long enough.
        """
        if self.feed is None:
            return None
        rest = self.voltage / most - self.source - FEED_PARTS
        more = rest / (2 * self.feed.least.per_length) - self.feed.length
        return more if more > 0 else None


def fuse_site(
    *, place: Place, voltage: float, bank_current: float, conductor: str, length: float
) -> FuseSite:
    """Return what a short can drive through a fuse at its `place`.

    `voltage` [V] is the highest on the circuit, `bank_current` [A] what the bank gives into a short
    at its posts, or what it gives at the fuse where that is known. The feed of one `conductor` each
    way, `length` [m] one way, counts behind a main fuse only. Raises NotCovered for a name that is
    not known.
    """
    source = voltage / bank_current
    if Place(place) is not Place.BEHIND_MAIN:
        return FuseSite(
            place=Place(place),
            voltage=voltage,
            bank_current=bank_current,
            source=source,
            feed=None,
            fault_current=bank_current,
        )
    laid = run_of(
        Run(
            conductor=conductor,
            length=length,
            parallel=1.0,
            temperature=ANNEALED_AT,
            finish=Finish.PLAIN,
            strands=Strands.FLEXIBLE,
            gauge_reading=GaugeReading.AWG,
            maker_resistance=None,
        )
    )
    feed = Feed(conductor=conductor, length=length, least=least_run(laid))
    return FuseSite(
        place=Place.BEHIND_MAIN,
        voltage=voltage,
        bank_current=bank_current,
        source=source,
        feed=feed,
        fault_current=bolted(
            voltage=voltage, source=source, rest=feed.least.resistance + FEED_PARTS
        ),
    )
