"""Paths through a search to try its worksheet with: the shortest to each step and to each end."""

from functools import cache

from calc.faults import graph
from calc.faults.graph import Symptom
from calc.faults.walk import follow


@cache
def trails() -> tuple[str, ...]:
    """Return a path to every step and every end, from each symptom that leads there."""
    found: list[str] = []
    for symptom in Symptom:
        seen = {graph.way_in(symptom).start}
        waiting = [(symptom, graph.step(graph.way_in(symptom).start))]
        for path, step in waiting:
            for turn in step.turns:
                further, _ = follow(symptom, turn)
                there = further.id if further else turn.found
                if there not in seen:
                    seen.add(there)
                    found.append(f"{path}.{turn.id}")
                    if further:
                        waiting.append((found[-1], further))
    return tuple(found)
