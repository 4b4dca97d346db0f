"""The alternator cold and hot, at idle and on the road: the table of alternator-charge."""

from dataclasses import dataclass

from calc.energy.alternator import COLD, DRIVING, FAST, HOT, IDLE, left_for_bank, published_shares


@dataclass(frozen=True)
class State:
    """What an alternator gives [A] in one state, and what is left of it for the bank [A]."""

    name: str
    share: float
    output: float
    left: float
    load: float | None

    def __str__(self) -> str:
        return f"{self.name}: {self.output:.4g} A"


def states(
    rated: float, vehicle_load: float, idle_share: float, hot_share: float, total: float | None
) -> tuple[State, ...]:
    """Return what is there in each state: one published machine's shares, then the reader's own."""
    shown = published_shares()
    shares = (
        ("cold, idle", shown[COLD, IDLE]),
        ("cold, driving", shown[COLD, DRIVING]),
        ("hot, idle", shown[HOT, IDLE]),
        ("hot, driving", shown[HOT, DRIVING]),
        ("hot, fast", shown[HOT, FAST]),
        ("hot, idle, as you count", idle_share),
        ("hot for hours, as you count", hot_share),
    )
    return tuple(
        State(
            name,
            share,
            rated * share,
            left_for_bank(rated=rated, share=share, vehicle_load=vehicle_load),
            total / (rated * share) if total is not None else None,
        )
        for name, share in shares
    )
