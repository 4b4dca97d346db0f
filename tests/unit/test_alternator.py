"""The current and the charge through a relay or a charger, against laws and other programs."""

import random
import shutil
import subprocess
from itertools import pairwise
from pathlib import Path

import pytest

import calc
from calc.electrical.network import (
    CurrentLoad,
    NoOperatingPoint,
    PowerLoad,
    Resistor,
    Source,
    solve,
)
from calc.energy import alternator, battery, charging, feeds, filling
from calc.tables import table
from tests.published.test_ngspice import deck, figures

IDEAL = 1e-12  # ohm: a regulator holds its voltage whatever flows
HOUR = 3600.0

# Technical manual of a marine diesel, page 83: amps of a 50 A machine by state and rpm.
PRINTED = {
    ("hot", 1300): 16,
    ("hot", 2500): 41,
    ("hot", 5000): 48,
    ("cold", 1300): 24,
    ("cold", 2500): 50,
}


def van(chance: random.Random) -> dict[str, float]:
    """Draw the figures of an engine, a run and a bank, some with the bank the higher one."""
    return {
        "engine": chance.uniform(11.5, 15.5),
        "bank": chance.uniform(11.0, 14.0),
        "run": 10 ** chance.uniform(-2.5, -1),
        "inside": 10 ** chance.uniform(-2.5, -1),
        "vehicle": chance.uniform(0, 80),
    }


def relay_parts(v: dict[str, float]) -> list:
    """Return the relay's circuit: the run in three pieces, the vehicle's load beside."""
    return [
        Source("alternator", "starter", "0", v["engine"], IDEAL),
        CurrentLoad("vehicle", "starter", "0", v["vehicle"]),
        Resistor("plus", "starter", "relay", 0.4 * v["run"]),
        Resistor("joints", "relay", "post", 0.1 * v["run"]),
        Source("bank", "post", "ground", v["bank"], v["inside"]),
        Resistor("minus", "ground", "0", 0.5 * v["run"]),
    ]


@pytest.mark.parametrize("seed", range(40))
def test_a_relay_s_current_is_that_of_the_network(seed):
    v = van(random.Random(seed))
    ours = feeds.relay_current(
        engine_voltage=v["engine"], bank_voltage=v["bank"], resistance=v["run"] + v["inside"]
    )
    point = solve(relay_parts(v), "0")
    assert ours == pytest.approx(-point.currents["bank"], rel=1e-9, abs=1e-9)
    assert point.currents["alternator"] == pytest.approx(ours + v["vehicle"], rel=1e-9, abs=1e-9)


@pytest.mark.parametrize("seed", range(40))
def test_a_charger_s_input_is_that_of_the_network_or_none_where_it_has_none(seed):
    chance = random.Random(100 + seed)
    v, power = van(chance), 10 ** chance.uniform(1.5, 3.5)
    parts = [
        Source("alternator", "starter", "0", v["engine"], IDEAL),
        Resistor("run", "starter", "input", v["run"]),
        PowerLoad("charger", "input", "0", power),
    ]
    ours = feeds.charger_input(power=power, engine_voltage=v["engine"], resistance=v["run"] + IDEAL)
    if ours is None:
        with pytest.raises(NoOperatingPoint):
            solve(parts, "0")
        return
    point = solve(parts, "0")
    assert ours.current == pytest.approx(point.currents["charger"], rel=1e-8)
    assert ours.voltage == pytest.approx(point.voltages["input"], rel=1e-8)


def test_a_simulator_of_circuits_finds_the_same_relay_current(tmp_path: Path):
    program = shutil.which("ngspice")
    assert program, "The program ngspice is missing: install your system's ngspice package."
    for seed in range(4):
        v = van(random.Random(seed))
        (tmp_path / "one.cir").write_text(deck(relay_parts(v)))
        commands = ["* run", ".control", "set numdgt=15", "source one.cir", "op", "print all"]
        (tmp_path / "all.cir").write_text("\n".join([*commands, "quit", ".endc", ".end", ""]))
        command = [program, "-b", "-n", "all.cir"]
        done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, timeout=60)
        into_bank = figures(done.stdout)["v4#branch"]
        ours = feeds.relay_current(
            engine_voltage=v["engine"], bank_voltage=v["bank"], resistance=v["run"] + v["inside"]
        )
        assert ours == pytest.approx(into_bank, rel=1e-6, abs=1e-6)


def test_the_published_machine_gives_what_its_manual_prints():
    shares = alternator.published_shares()
    assert {key: round(50 * share, 9) for key, share in shares.items()} == PRINTED


def stepped(current, duration: float) -> float:
    """Return the charge by adding up a current that depends on what is in already, midpoints."""
    put, count = 0.0, 20_000
    for _ in range(count):
        half = put + current(put) * duration / count / 2
        put += current(half) * duration / count
    return put


@pytest.mark.parametrize("engine", [13.2, 13.9, 14.6])
@pytest.mark.parametrize("hours", [0.5, 2, 6])
def test_a_relay_s_charge_is_the_sum_of_a_current_that_falls_with_the_room_left(hours, engine):
    """By Ohm's law in small steps: 12.4 V now, 14.2 V or the engine's when full."""
    room = 100 * HOUR / battery.charge_efficiency("LFP")
    bank, full, ohms = 12.4, 14.2, 0.04

    def current(put: float) -> float:
        own = bank + (max(full, engine) - bank) * put / room
        return max(0.0, engine - own) / ohms

    filled = filling.relay_filling(
        chemistry="LFP",
        capacity=200 * HOUR,
        state=0.5,
        current=(engine - bank) / ohms,
        reach=filling.reach(engine_voltage=engine, bank_voltage=bank, full_voltage=full),
    )
    by_steps = stepped(current, hours * HOUR)
    assert filled.after(hours * HOUR) == pytest.approx(by_steps, rel=1e-6)


def rested(chemistry: str, state: float) -> float:
    """Return the rested voltage [V] of a 12 V bank, along the last published table of points."""
    cells = 4 if chemistry == "LFP" else 6
    rows = [r for r in table("rested_states").rows if r["chemistry"] == chemistry]
    last = [r["source"] for r in rows if r["form"] == "points"][-1]
    for low, high in pairwise(r for r in rows if r["source"] == last):
        begin, end = float(low["state_low"]) / 100, float(high["state_low"]) / 100
        at_low, at_high = (float(r["low_v"]) / float(r["cells"]) * cells for r in (low, high))
        if state <= end:
            return at_low + (state - begin) / (end - begin) * (at_high - at_low)
    return at_high


@pytest.mark.parametrize("seed", range(60))
def test_the_sheet_promises_no_more_by_a_relay_than_the_network_would_give_step_by_step(seed):
    """The network is solved again for each step, the bank at its published rested voltage.

    What the reader gives as its voltage may be low, as under load. The bank takes no more than its
    acceptance, the hot alternator gives 120 A and the vehicle takes 20 A of them.
    """
    chance = random.Random(200 + seed)
    chemistry = list(battery.Chemistry)[seed % 8 // 2] if seed % 2 else "LFP"
    state = chance.choice([0.02, 0.05, 0.1, 0.2, 0.5, 0.8, 0.98])
    hours = chance.choice([0.5, 2, 24])
    typed = rested(chemistry, state) - chance.choice([0, 0, 0.1, 0.3])
    v = van(chance) | {"engine": chance.uniform(typed + 0.02, 15.0), "vehicle": 20.0}
    answer = calc.work(
        "alternator-charge",
        {
            "method": "relay",
            "chemistry": chemistry,
            "from_state": f"{100 * state:.9g} %",
            "bank_voltage": f"{typed:.12g} V",
            "engine_voltage": f"{v['engine']:.12g} V",
            "run_resistance": f"{v['run']:.12g} ohm",
            "bank_resistance": f"{v['inside']:.12g} ohm",
            "vehicle_load": "20 A",
            "alternator": "200 A",
            "hours": f"{hours} h",
        },
    )
    capacity, put, steps = 200 * HOUR, 0.0, 200
    now = state
    for _ in range(steps):
        flows = -solve(relay_parts(v | {"bank": rested(chemistry, now)}), "0").currents["bank"]
        takes = charging.acceptance(chemistry=chemistry, capacity=capacity, state=now)
        put += max(0.0, min(flows, 100.0, takes)) * hours * HOUR / steps
        now = min(1.0, state + put * battery.charge_efficiency(chemistry) / capacity)
    assert answer["charge"].m_as("A*h") <= put / HOUR + 1e-6


def test_a_low_engine_voltage_never_fills_the_bank():
    """Halfway from 12.4 V to 14.2 V: half of what is missing, however long the drive."""
    half = filling.reach(engine_voltage=13.3, bank_voltage=12.4, full_voltage=14.2)
    assert half == pytest.approx(0.5)
    filled = filling.relay_filling(
        chemistry="LFP", capacity=200 * HOUR, state=0.5, current=30.0, reach=half
    )
    assert filled.after(1e9) * battery.charge_efficiency("LFP") == pytest.approx(50 * HOUR)
