"""How often chance is asked, and from which seed: a fresh sample in a run, many in a long night.

`build_scripts/soak` sets LUGWISE_SOAK, and the same tests then try more. The seed is drawn anew
for each run and said when it ends; LUGWISE_SEED repeats a run.
"""

import os
from random import Random, SystemRandom

SOAK = bool(os.environ.get("LUGWISE_SOAK"))
SEED = os.environ.setdefault("LUGWISE_SEED", str(SystemRandom().randrange(10**9)))
"""Kept in the environment, so that all processes of a run draw alike."""


def often(usual: int, soak: int) -> int:
    """Return how often to try something in a run, or in a long night."""
    return soak if SOAK else usual


def chance(*names: object) -> Random:
    """Return a source of chance of its own for what is named, the same for all with one seed."""
    return Random(" ".join(map(str, (SEED, *names))))


def some_of[One](requests: list[One], usual: int) -> list[One]:
    """Return as many of the requests, drawn anew in each run; in a long night all."""
    return requests if SOAK else chance("requests", len(requests)).sample(requests, usual)
