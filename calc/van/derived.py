"""The functions that the bindings name: each says for a van, and a part of it, what a field takes.

Each returns a text with its place, an unknown one where the van does not tell, or None where the
van has no such thing and the worksheet's own usual text stands.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from calc.van import (
    currents,
    from_bank,
    from_fuses,
    from_loads,
    from_place,
    from_runs,
    from_sources,
)
from calc.van.came import Came
from calc.van.record import Part, Van

Function = Callable[[Van, Part | None], Came | None]

_BY_MODULE = {
    from_bank: (
        "bank_capacity", "bank_cells", "bank_chemistry", "bank_limit", "bank_voltage",
        "charging_voltage", "lowest_voltage", "management",
        "unit_capacity", "unit_current",
    ),
    from_loads: (
        "daily_energy", "daily_loads", "duty", "heaviest_power", "inverter_energy",
        "inverter_hours", "inverter_idle", "load_power", "load_type",
    ),
    from_sources: (
        "array", "array_facing", "array_mount", "array_tilt", "bank_temperature",
        "charger_current", "coefficient_of_voltage", "day_outside", "drive_charger",
        "night_outside", "pattern_climate", "pattern_latitude", "pattern_month",
        "pattern_own_skies", "pattern_sky", "recovery", "regulator_input", "regulator_kind",
        "regulator_limit", "regulator_volts", "shore_charger", "shore_night", "string_voltage",
    ),
    from_runs: (
        "allowed_fuse", "bank_fault", "each_fused", "fed_load", "fuse_place", "highest_voltage",
        "joint_full_current", "loop_length", "run_voltage", "sizes_in_use", "source_capacity",
         "source_known", "source_resistance", "source_series", "source_strings", "source_voltage",
        "used_voltage",
    ),
    from_fuses: (
        "far_end", "fault_high", "fault_low", "own_family", "upstream_family", "upstream_fuse",
        "upstream_fuse_voltage",
    ),
    from_place: (
        "bay_heat", "bay_vents", "co_alarm", "cooling_basis", "cooling_duty", "heat_loss", "joints",
        "lamp_return", "mains_feeds", "monitor", "residual", "shell_rate", "switched_distance",
        "switched_load", "switched_power", "switched_supply", "switched_voltage", "water_voltage",
    ),
    currents: ("load_current",),
}  # fmt: skip

DERIVED: Mapping[str, Function] = {
    name: getattr(module, name) for module, names in _BY_MODULE.items() for name in names
}

LOOKED_UP = frozenset({
    "allowed_fuse", "array_facing", "array_mount", "array_tilt", "bank_temperature", "bay_vents",
    "day_outside", "drive_charger", "heaviest_power", "inverter_idle", "load_power",
    "lowest_voltage", "management", "monitor", "night_outside", "own_family", "pattern_climate",
    "pattern_latitude", "pattern_month", "pattern_own_skies", "pattern_sky", "recovery",
    "regulator_input", "regulator_kind", "regulator_limit", "regulator_volts", "residual",
    "run_voltage", "shore_charger", "shore_night", "source_series", "source_strings",
    "switched_distance", "switched_power", "upstream_family", "upstream_fuse",
    "upstream_fuse_voltage",
})  # fmt: skip
"""Those that but look a value up: what is typed in its place goes to where it came from."""
