"""Where each field of a worksheet comes from in a van, and for what of a van a worksheet opens.

A source is a key of the part that the worksheet is opened for (`length`), a key of a kind of part
of which there is one (`van.system`), or the name of a function of `calc.van.derived` with brackets
behind it (`bank_capacity()`). Behind a question mark (`management.draw?`) the worksheet's own usual
text is good enough for a plan that leaves it open; behind an exclamation mark (`limit!`) it is so
in an inspection too, for there it is no fact of the van but what the reader holds it to. A field
that is not named is about nothing that a record holds: there the usual text stands always.
"""

from __future__ import annotations

from collections.abc import Mapping

WHOLE = ""  # a worksheet that is opened for the van as a whole
RUNS = ("circuits", "cables", "regulators", "alternator", "shore", "inverter", "converters")

TARGETS: Mapping[str, tuple[str, ...]] = {
    "watts-to-amps": ("circuits",),
    "runtime": ("circuits",),
    "wire-drop": (*RUNS, "panels"),
    "fuse-choice": RUNS,
    "joint-torque": ("joints",),
    "wire-size": (*RUNS, "panels"),
    "fault-current": RUNS,
    "fuse-ladder": RUNS,
    "joint-heat": ("joints",),
    "joint-sheet": (WHOLE,),
    "find-fault": ("circuits", "cables"),
    "appliance-route": ("circuits",),
    "light-dimming": ("circuits",),
    "inverter-size": ("inverter",),
    "bank-size": (WHOLE,),
    "remote-switch": ("circuits", "water_heater"),
    "bank-gauge": (WHOLE,),
    "standby-drain": (WHOLE,),
    "sun-yield": ("patterns", "panels"),
    "panel-string": ("panels",),
    "alternator-charge": ("alternator",),
    "shore-charge": ("shore",),
    "week-ahead": ("patterns",),
    "converter": ("converters",),
    "heat-loss": ("patterns", WHOLE),
    "heater-night": ("patterns", "heater"),
    "cooling-day": ("patterns", "cooler"),
    "enclosure-airflow": (WHOLE,),
    "battery-air": (WHOLE,),
    "water-heater": ("water_heater",),
}
"""For what each worksheet opens: kinds of parts, the first one that the van has before the rest."""

_BANK = {"chemistry": "bank_chemistry()", "capacity": "bank_capacity()"}
_IN_USE = {**_BANK, "usable": "bank.usable", "voltage": "bank_voltage()"}
_LAID = {
    "current": "load_current()",
    "length": "loop_length()",
    "conductor": "conductor",
    "voltage": "run_voltage()",
    "limit": "limit!",
    "insulation": "insulation",
    "surroundings": "surroundings",
    "bundled": "bundled",
    "ambient": "ambient",
    "parallel": "parallel",
}
_FLAME = {"alarm": "co_alarm()", "exhaust": "heater.exhaust"}

_SHEETS: Mapping[str, Mapping[str, str]] = {
    "watts-to-amps": {
        "power": "load_power()", **_IN_USE, "voltage": "used_voltage()", "route": "route",
        "hours": "hours",
        "load_type": "load_type()", "efficiency": "inverter.efficiency",
    },
    "runtime": {
        **_IN_USE, "load": "load_power()", "route": "route", "temperature": "bank.coldest",
        "efficiency": "inverter.efficiency",
    },
    "wire-drop": _LAID,
    "fuse-choice": {
        "current": "load_current()", "conductor": "conductor", "insulation": "insulation",
        "voltage": "highest_voltage()", "fuse_place": "fuse_place()",
        "fault_current": "bank_fault()", "allowed": "allowed_fuse()", "fitted": "fuse",
        "fitted_family": "fuse_family", "fitted_voltage": "fuse_voltage",
        "surroundings": "surroundings", "bundled": "bundled", "ambient": "ambient",
        "rule_set": "van.rule_set!",
    },
    "joint-torque": {
        "stud": "stud", "maker_torque": "maker_torque", "grade": "grade", "condition": "condition",
        "lugs": "lugs", "joint": "joint",
    },
    "wire-size": {
        **{field: source for field, source in _LAID.items() if field != "conductor"},
        "series": "sizes_in_use()", "rule_set": "van.rule_set!",
    },
    "fault-current": {
        "voltage": "source_voltage()", "known": "source_known()",
        "source_resistance": "source_resistance()", "chemistry": "bank_chemistry()",
        "capacity": "source_capacity()", "batteries": "source_strings()",
        "series": "source_series()", "each_fused": "each_fused()", "conductor": "conductor",
        "length": "length", "fuse": "fuse", "fuse_family": "fuse_family",
        "fuse_voltage": "fuse_voltage", "far_end": "far_end()",
        "highest_voltage": "highest_voltage()", "parallel": "parallel",
    },
    "fuse-ladder": {
        "downstream": "fuse", "downstream_family": "own_family()",
        "downstream_voltage": "fuse_voltage", "upstream": "upstream_fuse()",
        "upstream_family": "upstream_family()", "upstream_voltage": "upstream_fuse_voltage()",
        "fault_current": "fault_high()", "fault_low": "fault_low()",
        "voltage": "highest_voltage()",
    },
    "joint-heat": {
        "drop": "drop", "current": "current", "full_current": "joint_full_current()",
        "voltage": "van.system",
    },
    "joint-sheet": {"vehicle": "van.name", "joints": "joints()"},
    "find-fault": {
        "system": "van.system", "chemistry": "bank_chemistry()", "load": "load_current()",
        "length": "length", "conductor": "conductor", "fuse": "fuse", "capacity": "bank_capacity()",
        "limit": "limit!", "charger": "charger_current()", "cutoff": "lowest_voltage()",
    },
    "appliance-route": {
        "dc_power": "load_power()", "dc_duty": "duty()", "idle": "inverter.idle",
        "efficiency": "inverter.efficiency", "chemistry": "bank_chemistry()",
        "voltage": "bank_voltage()", "usable": "bank.usable", "charger": "alternator.charger_limit",
    },
    "light-dimming": {
        "power": "load_power()", "hours": "hours", "voltage": "bank_voltage()",
        "returns": "lamp_return()",
    },
    "inverter-size": {
        "running": "rating", "surge": "surge", "efficiency": "efficiency", "idle": "idle",
        "lowest_voltage": "lowest_voltage()", **_BANK, "voltage": "bank_voltage()",
        "max_current": "bank_limit()", "taken": "inverter_energy()",
        "hours_on": "inverter_hours()",
    },
    "bank-size": {
        "daily_energy": "daily_energy()", "chemistry": "bank_chemistry()", "usable": "bank.usable",
        "voltage": "bank_voltage()", "temperature": "bank.coldest",
        "unit_capacity": "unit_capacity()", "unit_current": "unit_current()",
        "heaviest": "heaviest_power()",
    },
    "remote-switch": {
        "power": "switched_power()", "voltage": "switched_voltage()", "kind": "switched_supply()",
        "load": "switched_load()", "distance": "switched_distance()", "hours": "hours",
        "series": "sizes_in_use()",
    },
    "bank-gauge": {
        **_BANK, "monitor": "monitor()", "system": "van.system", "usable": "bank.usable",
        "temperature": "bank.coldest",
    },
    "standby-drain": {
        **_BANK, "management": "management.draw?", "coldest": "bank.coldest",
        "temperature": "bank.warmest",
    },
    "sun-yield": {
        "latitude": "pattern_latitude()", "month": "pattern_month()", "sky": "pattern_sky()",
        "climate": "pattern_climate()", "own_skies": "pattern_own_skies()",
        "array": "array()", "tilt": "array_tilt()",
        "facing": "array_facing()", "mount": "array_mount()", "daily_use": "daily_energy()",
        "chemistry": "bank_chemistry()", "voltage": "charging_voltage()",
        "temperature": "bank_temperature()", "cold_cut_off": "management.cold_cut_off",
        "regulator": "regulator_kind()", "regulator_limit": "regulator_limit()",
        "panel_voltage": "string_voltage()",
    },
    "panel-string": {
        "voc": "open_voltage", "vmp": "max_power_voltage", "isc": "short_current",
        "rated": "power", "coefficient": "coefficient_of_voltage()", "series": "series",
        "parallel": "strings",
        "regulator": "regulator_kind()", "volts_limit": "regulator_volts()",
        "regulator_limit": "regulator_limit()", "input_limit": "regulator_input()",
        "voltage": "charging_voltage()", "series_fuse": "series_fuse", "string_fuse": "fuse",
        "mount": "mount",
    },
    "alternator-charge": {
        "method": "method", "alternator": "alternator", "vehicle_load": "vehicle_load",
        "engine_voltage": "engine_voltage", "charger_limit": "charger_limit",
        "charger_efficiency": "charger_efficiency", "stops_by": "stops_by",
        "conductor": "conductor", "length": "length", "fused": "fused", "insulation": "insulation",
        **_BANK, "temperature": "bank.coldest", "cold_cut_off": "management.cold_cut_off",
        "rested_voltage": "bank.rested_voltage", "bank_voltage": "bank_voltage()",
        "charge_voltage": "charging_voltage()", "fault_current": "bank_fault()",
        "surroundings": "surroundings", "bundled": "bundled", "ambient": "ambient",
        "rule_set": "van.rule_set!",
    },
    "shore-charge": {
        "supply_voltage": "mains.supply_voltage", "supply_limit": "mains.supply_limit",
        "practice": "mains.practice!", "other_load": "mains.other_load", "charger": "charger",
        "charger_efficiency": "charger_efficiency", "power_factor": "power_factor?",
        "voltage": "charging_voltage()", **_BANK, "temperature": "bank.coldest",
        "cold_cut_off": "management.cold_cut_off", "rested_voltage": "bank.rested_voltage",
        "polarity": "mains.polarity", "switching": "mains.switching", "residual": "residual()",
        "feeds": "mains_feeds()", "inverter": "inverter.rating", "night": "shore_night()",
    },
    "week-ahead": {
        "question": "question", "nights": "nights", "recovery": "recovery()", **_IN_USE,
        "from_state": "from_state", "loads": "daily_loads()", "array": "array()",
        "latitude": "latitude", "month": "month", "sky": "sky", "climate": "climate",
        "own_skies": "pattern_own_skies()",
        "drive_hours": "drive_hours", "charger": "drive_charger()", "shore_every": "shore_every",
        "shore_hours": "shore_hours", "shore_charger": "shore_charger()",
        "temperature": "bank_temperature()", "cold_cut_off": "management.cold_cut_off",
        "efficiency": "inverter.efficiency", "idle": "inverter_idle()",
        "inverter_on": "inverter.inverter_on", "tilt": "array_tilt()", "facing": "array_facing()",
        "mount": "array_mount()", "regulator": "regulator_kind()",
        "panel_voltage": "string_voltage()",
    },
    "converter": {
        "system": "van.system", "output_voltage": "output_voltage", "load": "fed_load()",
        "rated": "rated_current", "efficiency": "efficiency", "standby": "standby",
        "input_length": "length", "insulation": "insulation", "bundled": "bundled",
        "ambient": "ambient", "series": "sizes_in_use()", "highest": "highest_voltage()",
        "fault_current": "fault_high()",
    },
    "heat-loss": {
        **{one: f"shell.{one}" for one in (
            "length", "width", "height", "insulation", "material", "glazing", "air_changes",
            "floor_insulation", "cover", "inside",
        )},
        "outside": "night_outside()", "heater_output": "heater.output", "fuel": "heater.fuel",
        **_FLAME, "people": "van.people", "draw": "heater.draw", "hours": "heater.hours", **_IN_USE,
    },
    "heater-night": {
        "loss": "heat_loss()", "hours": "heater.hours", "fuel": "heater.fuel", **_FLAME,
        "draw": "heater.draw", **_IN_USE, "starts": "heater.starts",
    },
    "cooling-day": {
        "cooling": "cooler.cooling", "efficiency_ratio": "cooler.efficiency_ratio",
        "duty": "cooling_duty()", "hours": "cooler.hours", **_IN_USE, "route": "cooler.route",
        "efficiency": "inverter.efficiency", "sun": "cooler.sun", "glazing": "shell.glazing",
        "outside": "day_outside()", "inside": "cooler.inside", "people": "van.people",
        "basis": "cooling_basis()", "shell": "shell_rate()",
    },
    "enclosure-airflow": {
        "outside": "bay.outside", "inside_limit": "bay.inside_limit", "height": "bay.height",
        "vents": "bay_vents()", "fan": "bay.fan", "rated_to": "bay.rated_to",
        "given_heat": "bay_heat()", "rated": "charger_current()",
    },
    "battery-air": {
        **_BANK, "management": "management()", "cells": "bank_cells()", "stands": "bank.stands",
        "vents": "bank.vents", "temperature": "bank.warmest",
    },
    "water-heater": {
        **{one: one for one in ("volume", "from", "to", "way", "power", "hours", "mixing_valve",
                                "fuel", "exhaust")},
        "alarm": "co_alarm()", **_BANK, "usable": "bank.usable",
        "supply_limit": "mains.supply_limit", "voltage": "water_voltage()",
    },
}  # fmt: skip

BINDINGS: Mapping[tuple[str, str], str] = {
    (sheet, field): source for sheet, fields in _SHEETS.items() for field, source in fields.items()
}
"""Where each field of a worksheet comes from, by worksheet and field."""

RESULTS: Mapping[tuple[str, str], str] = {
    ("wire-size", "conductor"): "conductor",
    ("wire-size", "fuse"): "fuse",
    ("wire-drop", "smallest_conductor"): "conductor",
    ("watts-to-amps", "current"): "current",
    ("fuse-choice", "fuse"): "fuse",
    ("fuse-choice", "families"): "fuse_family",
    ("alternator-charge", "fuse"): "fuse",
    ("panel-string", "fuse"): "fuse",
    ("converter", "input_cable"): "conductor",
    ("converter", "input_fuse"): "fuse",
    ("bank-size", "units"): "batteries.units",
    ("enclosure-airflow", "vent_area"): "bay.vents",
    ("battery-air", "opening"): "bank.vents",
    ("heat-loss", "to_buy"): "heater.output",
}
"""Where a result of a worksheet that sizes something goes in a van: a key, as in BINDINGS."""
