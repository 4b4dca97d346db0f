"""A network of sixty nodes, and how long it takes to solve: run as it stands in the page's Python.

It is a bank with its cables and a bus bar, and circuits with a cable out and a cable back.
"""

import time

from calc.electrical.network import CurrentLoad, Part, PowerLoad, Resistor, Source, solve

NODES = 60
TIMES = 30


def network() -> list[Part]:
    """Return the parts: a third of the loads take a constant power, a third a current."""
    parts: list[Part] = [
        Source("bank", "bank +", "bank -", 12.8, 0.004),
        Source("second bank", "bank +", "bank -", 12.7, 0.005),
        Resistor("main cable", "bank +", "bar +", 0.0008),
        Resistor("main return", "bar -", "bank -", 0.0006),
        CurrentLoad("charger", "bar +", "bar -", -30.0),
    ]
    for number in range((NODES - 4) // 2):
        plus, minus = f"{number} +", f"{number} -"
        near = ("bar +", "bar -") if number % 4 else (f"{max(0, number - 4)} +", "bank -")
        near = near if number else ("bar +", "bar -")
        parts.append(Resistor(f"cable {number}", near[0], plus, 0.01 + 0.001 * number))
        parts.append(Resistor(f"return {number}", minus, near[1], 0.01 + 0.001 * number))
        kind = number % 3
        if kind == 0:
            parts.append(PowerLoad(f"load {number}", plus, minus, 10.0 + number))
        elif kind == 1:
            parts.append(CurrentLoad(f"load {number}", plus, minus, 0.5 + number / 20))
        else:
            parts.append(Resistor(f"load {number}", plus, minus, 5.0 + number))
    return parts


def solve_times() -> list[float]:
    """Return the milliseconds of each time that the network is solved."""
    parts = network()
    assert len(solve(parts, "bank -").voltages) == NODES
    times = []
    for _ in range(TIMES):
        start = time.perf_counter()
        solve(parts, "bank -")
        times.append((time.perf_counter() - start) * 1000)
    return times


if __name__ == "__main__":
    print(*(f"{spent:.2f}" for spent in sorted(solve_times())))
