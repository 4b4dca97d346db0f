"""fuse-ladder from its fields: two fuses by family and rating, put to the test of selectivity."""

from calc.electrical.opening import Fuse
from calc.electrical.selectivity import Selectivity, selectivity


def calculate(
    *,
    downstream: float,
    downstream_family: str,
    upstream: float,
    upstream_family: str,
    fault_current: float,
    fault_low: float | None,
    voltage: float,
    downstream_voltage: float | None,
    upstream_voltage: float | None,
    other_load: float,
    downstream_clearing: float | None,
    upstream_melting: float | None,
) -> Selectivity:
    """Return which of two fuses in series opens first in a fault beyond both.

    Ratings and currents [A], `voltage` [V], I²t [A²·s]; see `calc.electrical.selectivity`.
    """
    return selectivity(
        downstream=Fuse(downstream_family, downstream),
        upstream=Fuse(upstream_family, upstream),
        fault_current=fault_current,
        lowest_fault=fault_low,
        voltage=voltage,
        downstream_printed=downstream_voltage,
        upstream_printed=upstream_voltage,
        other_load=other_load,
        downstream_clearing=downstream_clearing,
        upstream_melting=upstream_melting,
    )
