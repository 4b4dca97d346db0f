"""What remote-switch works out: the contact that breaks the line, and the coil's own small circuit."""

from dataclasses import dataclass

from calc.electrical import fuses, switching
from calc.electrical.ampacity import LAW, OUTSIDE
from calc.electrical.conductors import AWG, FLEXIBLE, PLAIN, Series
from calc.electrical.drop import longest_run, loop_resistance
from calc.electrical.sizing import CHARGED, Chosen, choose, one_cable, sizes, thickest_bears
from calc.units.compare import at_least, at_most
from calc.worksheet.fields import Problem
from calc.worksheet.next_steps import Move

LINE, RELAY = "switch the line", "switch a relay"
UNSAID = "not said"
SMALL = 15.0  # A, what switches for a panel are made for: common practice, no source
MAINS, EXTRA_LOW = 100.0, 65.0  # V, the least of a mains supply and the most of a bank
WARM, COOL_INSULATION, AIR = 60.0, 60.0, 30.0  # °C: copper at work, unmarked insulation, air
STRICT = 0.03  # ABYC E-11 11.14.2.6, for the line itself


@dataclass(frozen=True, kw_only=True)
class RemoteSwitch:
    """The line's current [A] and contact, and the run to the coil.

    `switch_rating` is None where no factor is published, `control_conductor` and what hangs on it where
    no size does or the coil has no volts to spare. `line_conductor` is the size that the line itself
    would need over the same way, on a bank.
    """

    line_current: float
    margin: float
    factor: float | None
    sustained: float
    switch_rating: float | None
    route: str
    small: float
    pull_in_margin: float
    must_see: float
    sags_to: float
    allowed: float
    need: float
    control_conductor: str | None
    control_fuse: float | None
    per_length: float | None
    resistance: float | None
    drop: float | None
    drop_percent: float | None
    coil_voltage: float | None
    longest: float | None
    line_conductor: str | None
    thickest_cable: float
    held_charge: float
    coil_power: float
    at_hand: bool
    relayed: bool
    dc: bool
    no_cable: bool
    moves: tuple[Move, ...]


def run(
    *, power: float, voltage: float, kind: str, load: str, distance: float, coil_current: float, control_voltage: float,
    hours: float, switch: float | None, marked: str, lowest: float, pull_in: float, series: Series, power_factor: float,
) -> RemoteSwitch:
    """Return how to switch `power` [W] from `distance` [m] away."""
    dc = kind == switching.DC
    if dc and not at_most(voltage, EXTRA_LOW):
        raise Problem("voltage", f"Voltage of the line must be the bank's own for DC, up to {EXTRA_LOW:g} V, like 12.8 V.")
    if not dc and not at_least(voltage, MAINS):
        raise Problem("voltage", f"Voltage of the line must be that of the mains for AC, {MAINS:g} V or more, like 120 V.")
    current = power / (voltage * power_factor)
    factor = switching.derating(kind=kind, voltage=voltage, load=load)
    rating = switching.contact_rating(current=current, factor=factor) if factor is not None else None
    fits = switch is not None and rating is not None and at_least(switch, rating) and marked == kind
    line = rating is not None and (at_most(rating, SMALL) or fits)
    allowed = switching.coil_allowance(voltage=control_voltage, lowest=lowest, pull_in=pull_in)
    need = fuses.CONTINUOUS * coil_current
    size = None
    if allowed > 0:
        chosen = _chosen(series, current=coil_current, length=distance, allowed=allowed, need=need, voltage=control_voltage)
        size = chosen.size
    loop = loop_resistance(distance, size.per_length) if size else None
    drop = coil_current * loop if loop is not None else None
    conductor = None
    if dc:
        whole = _chosen(
            series, current=current, length=distance, allowed=STRICT * voltage,
            need=fuses.CONTINUOUS * current, voltage=voltage,
        )
        conductor = whole.size.name if whole.size else None
    return RemoteSwitch(
        line_current=current,
        margin=switching.CONTINUOUS,
        factor=factor,
        sustained=current * switching.CONTINUOUS,
        switch_rating=rating,
        route=LINE if line else RELAY,
        small=SMALL,
        pull_in_margin=switching.PULL_IN_MARGIN,
        must_see=switching.PULL_IN_MARGIN * pull_in * control_voltage,
        sags_to=lowest * control_voltage,
        allowed=max(0.0, allowed),
        need=need,
        control_conductor=size.name if size else None,
        control_fuse=chosen.fuse if size else None,
        per_length=size.per_length if size else None,
        resistance=loop,
        drop=drop,
        drop_percent=drop / control_voltage if drop is not None else None,
        coil_voltage=lowest * control_voltage - drop if drop is not None else None,
        longest=longest_run(coil_current, size.per_length, allowed) if size else None,
        line_conductor=conductor,
        thickest_cable=thickest_bears(),
        held_charge=coil_current * hours,
        coil_power=coil_current * control_voltage,
        at_hand=switch is not None,
        relayed=not line,
        dc=dc,
        no_cable=dc and not one_cable(current=current, highest=CHARGED * voltage),
        moves=_moves(current, voltage, coil_current, dc, relayed=not line),
    )


def _chosen(series: Series, *, current: float, length: float, allowed: float, need: float, voltage: float) -> Chosen:
    """Return the size of a run with a standard fuse, as cable that bears no marking bears it."""
    highest = CHARGED * voltage
    among = sizes(
        series=series, parallel=1, temperature=WARM, finish=PLAIN, strands=FLEXIBLE, gauge_reading=AWG,
        insulation=COOL_INSULATION, surroundings=OUTSIDE, bundled=2, ambient=AIR, voltage=highest, rule_set=LAW,
    )
    rated = [one for one in fuses.families() if one.interrupting(highest) is not None]
    ratings = tuple(sorted({rating for one in rated for rating in one.ratings}))
    return choose(among=among, current=current, length=length, allowed=allowed, need=need, ratings=ratings)


def _moves(current: float, voltage: float, coil_current: float, dc: bool, *, relayed: bool) -> tuple[Move, ...]:
    """Return where the coil's draw and a bank's own line are worked out further."""
    moves = []
    if relayed:
        moves.append(Move("How long the bank stands with the coil held", (("drain", f"{coil_current:.6g} A"),), "standby-drain"))
    if dc and at_least(current, 0.01) and at_most(current, 2000.0):
        moves.append(Move("The line's own wire", (("current", f"{current:.6g} A"), ("voltage", f"{voltage:.6g} V")), "wire-size"))
    return tuple(moves)
