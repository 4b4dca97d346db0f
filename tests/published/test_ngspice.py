"""Our network solver beside ngspice, a circuit simulator, on networks drawn by chance.

Loads of constant power are put to ngspice as a current of P/V, begun from the voltages without
them. At that guess, and nowhere else, ngspice is told a figure of ours; which of the two solutions
it then comes to is its own finding.
"""

import random
import re
import shutil
import subprocess
import tempfile
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from calc.electrical.network import (
    CurrentLoad,
    NoOperatingPoint,
    Part,
    PowerLoad,
    Resistor,
    Source,
    solve,
)

SIZES = (*range(2, 32), *range(2, 62, 2), 60, 60)
NETWORKS = range(len(SIZES))
BEYOND = range(8)
GROUND = "0"
DIGITS = 1e-6  # agreement asked for, as a share of each figure
DUST = 1e-12  # V and A: the last digits of some tens of volts
FAILED = "DC solution failed"


def resistance(chance: random.Random, low: float, high: float) -> float:
    """Draw a resistance between two powers of ten."""
    return 10 ** chance.uniform(low, high)


def wires(chance: random.Random, size: int) -> tuple[list[Part], list[str], list[str]]:
    """Draw banks, cables and joints; return the nodes on the sides of plus and minus, too."""
    bank = chance.choice((12.8, 25.6, 51.2))
    parts: list[Part] = [Source("bank", "n1", GROUND, bank, resistance(chance, -3, -1.5))]
    plus, minus = ["n1"], [GROUND]
    for number in range(2, size):
        end, side = f"n{number}", plus if chance.random() < 0.65 else minus
        low, high = (-6, -4) if chance.random() < 0.2 else (-3.5, -1)
        start = chance.choice(side[-6:])
        parts.append(Resistor(f"wire{number}", start, end, resistance(chance, low, high)))
        if side is plus and chance.random() < 0.15:
            own = bank * chance.uniform(0.97, 1.03)
            inside = resistance(chance, -2.5, -1)
            parts.append(Source(f"bank{number}", end, chance.choice(minus), own, inside))
        side.append(end)
    return parts, plus, minus


@cache
def drawn(seed: int) -> list[Part]:
    """Draw a network of the size for `seed`, whose constant-power loads can be fed.

    With every second seed they could not be if they took 1.3 times as much.
    """
    chance, size = random.Random(seed), SIZES[seed]
    parts, plus, minus = wires(chance, size)
    for number in range(chance.randint(0, size // 4)):
        side = chance.choice((plus, minus))
        ring = resistance(chance, -3, -1)
        if len(side) > 1:
            parts.append(Resistor(f"ring{number}", *chance.sample(side, 2), ring))
    for number in range(chance.randint(1, 2 + size // 2)):
        ends = chance.choice(plus), chance.choice(minus)
        kind = chance.random()
        if kind < 0.25:
            parts.append(CurrentLoad(f"steady{number}", *ends, chance.uniform(-5, 10)))
        elif kind < 0.5:
            parts.append(Resistor(f"heater{number}", *ends, resistance(chance, 0, 6)))
        else:
            parts.append(PowerLoad(f"power{number}", *ends, resistance(chance, 0, 3)))
    if not any(isinstance(part, PowerLoad) for part in parts):
        return parts
    while not fed(parts):
        parts = [scaled(part, 0.7) for part in parts]
    while seed % 2 and fed(louder := [scaled(part, 1.3) for part in parts]):
        parts = louder
    return parts


def fed(parts: list[Part]) -> bool:
    """Return whether there is an operating point."""
    try:
        solve(parts, GROUND)
    except NoOperatingPoint:
        return False
    return True


def scaled(part: Part, factor: float) -> Part:
    return replace(part, power=part.power * factor) if isinstance(part, PowerLoad) else part


def beyond(seed: int) -> tuple[list[Part], float]:
    """Draw a network with one constant-power load that asks too much, and the most it could have.

    The edge is u²/4R of the network as ngspice would see it: from two currents drawn there.
    """
    chance = random.Random(1000 + seed)
    parts, plus, minus = wires(chance, 3 + seed)
    end, back = plus[-1], minus[-1]
    at = [
        solve([*parts, CurrentLoad("probe", end, back, amps)], GROUND).between(end, back)
        for amps in (0.0, 1.0)
    ]
    edge = at[0] ** 2 / 4 / (at[0] - at[1])
    return [*parts, PowerLoad("greedy", end, back, edge)], edge


def deck(parts: list[Part]) -> str:
    """Return the network in ngspice's words.

    With a closer `reltol` ngspice does not see that it has arrived: it begins again from nothing
    and may come to the lower voltage.
    """
    lines = ["* drawn network", ".options reltol=1e-9 abstol=1e-10 vntol=1e-10 itl1=1000"]
    for number, part in enumerate(parts):
        if isinstance(part, Source):
            lines.append(f"V{number} e{number} {part.minus} {part.voltage!r}")
            lines.append(f"R{number} e{number} {part.plus} {part.resistance!r}")
        elif isinstance(part, Resistor):
            lines.append(f"R{number} {part.a} {part.b} {part.resistance!r}")
        elif isinstance(part, CurrentLoad):
            lines.append(f"I{number} {part.plus} {part.minus} {part.current!r}")
        else:
            ends = f"{part.plus} {part.minus}"
            lines.append(f"B{number} {ends} I={part.power!r}/V({part.plus},{part.minus})")
    still = solve([part for part in parts if not isinstance(part, PowerLoad)], GROUND)
    for node, voltage in still.voltages.items():
        if node != GROUND:
            lines.append(f".nodeset v({node})={voltage!r}")
    return "\n".join([*lines, ".end", ""])


@cache
def simulated() -> list[str]:
    """Return what ngspice prints for each network, all in one run of the program."""
    program = shutil.which("ngspice")
    if program is None:
        pytest.fail("The program ngspice is missing: install your system's ngspice package.")
    networks = [drawn(seed) for seed in NETWORKS]
    for seed in BEYOND:
        parts, _ = beyond(seed)
        networks += [[scaled(part, factor) for part in parts] for factor in (0.999, 1.001)]
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        commands = ["* all networks", ".control", "set numdgt=15"]
        for number, parts in enumerate(networks):
            (folder / f"{number}.cir").write_text(deck(parts))
            commands += [f"source {number}.cir", "op", "print all", "destroy all", "remcirc"]
            commands.append("echo ======")
        (folder / "all.cir").write_text("\n".join([*commands, "quit", ".endc", ".end", ""]))
        command = [program, "-b", "-n", "all.cir"]  # -n: whatever the reader's own set-up file says
        done = subprocess.run(command, cwd=folder, capture_output=True, text=True, timeout=120)
    outputs = done.stdout.split("======")[:-1]
    assert len(outputs) == len(networks), done.stdout[-2000:] + done.stderr[-2000:]
    return outputs


def figures(output: str) -> dict[str, float]:
    """Return every voltage and current that ngspice prints, by its name there."""
    assert FAILED not in output, output
    found = re.findall(r"^([\w#]+) = (\S+)$", output, re.M)
    return {name: float(figure) for name, figure in found}


@pytest.mark.parametrize("seed", NETWORKS, ids=lambda seed: f"{seed}-of-{SIZES[seed]}-nodes")
def test_every_voltage_and_current_is_that_of_ngspice(seed: int) -> None:
    parts = drawn(seed)
    ours, theirs = solve(parts, GROUND), figures(simulated()[seed])
    assert len(ours.voltages) == SIZES[seed]
    for node, voltage in ours.voltages.items():
        if node != GROUND:
            assert voltage == pytest.approx(theirs[node], rel=DIGITS, abs=DUST), node
    for number, part in enumerate(parts):
        if isinstance(part, Source):
            current = -theirs[f"v{number}#branch"]
            assert ours.currents[part.name] == pytest.approx(current, rel=DIGITS, abs=DUST)


@pytest.mark.parametrize("seed", BEYOND)
def test_just_below_the_edge_ngspice_agrees_and_just_above_neither_finds_a_point(seed: int) -> None:
    parts, edge = beyond(seed)
    below, above = simulated()[len(NETWORKS) + 2 * seed :][:2]
    ours = solve([scaled(part, 0.999) for part in parts], GROUND)
    for node, voltage in ours.voltages.items():
        if node != GROUND:
            assert voltage == pytest.approx(figures(below)[node], rel=DIGITS, abs=DUST)
    assert FAILED in above
    with pytest.raises(NoOperatingPoint) as refused:
        solve([scaled(part, 1.001) for part in parts], GROUND)
    assert refused.value.loads == ("greedy",)
    assert refused.value.most == pytest.approx(edge, rel=1e-9)


def test_the_networks_are_of_every_kind() -> None:
    """Each kind of part many times; and loads of which a good part work near their edge."""
    networks = [drawn(seed) for seed in NETWORKS]
    for kind, least in (Source, 100), (Resistor, 1500), (CurrentLoad, 100), (PowerLoad, 200):
        assert sum(isinstance(part, kind) for parts in networks for part in parts) >= least
    edge = [parts for parts in networks if not fed([scaled(part, 1.3) for part in parts])]
    assert len(edge) >= 25
