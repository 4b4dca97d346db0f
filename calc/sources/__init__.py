"""The bibliography: every source a step, a caution or a table may name, by chapter."""

from calc.sources.bank import BANK
from calc.sources.charging import CHARGING
from calc.sources.comfort import COMFORT
from calc.sources.common import COMMON, MEMORY, PRACTICE
from calc.sources.faults import FAULTS
from calc.sources.joints import JOINTS
from calc.sources.loads import LOADS
from calc.sources.protection import PROTECTION
from calc.sources.source import Source
from calc.sources.sun import SUN
from calc.sources.switches import SWITCHES
from calc.sources.wires import WIRES

__all__ = ["MEMORY", "PRACTICE", "SOURCES", "Source"]

SOURCES: dict[str, Source] = {
    **COMMON,
    **WIRES,
    **PROTECTION,
    **JOINTS,
    **FAULTS,
    **BANK,
    **CHARGING,
    **SWITCHES,
    **LOADS,
    **COMFORT,
    **SUN,
}
