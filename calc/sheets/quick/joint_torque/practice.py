"""Practice for joint-torque."""

from calc.practice.declared import Practice, Slip, Task


def clamping(stud: str, torques: tuple[str, ...]) -> Task:
    """Return the question after the clamping force on one stud, with torques that suit it."""
    return Task(
        asks="preload",
        text="The maker of a part gives {maker_torque} on a {condition} {stud} stud. With a nut factor of {grip}, what clamping force does that give?",
        draw={"stud": (stud,), "maker_torque": torques, "condition": ("dry",), "grade": ("8.8",)},
        slips=(
            Slip(
                formula="torque / diameter",
                text="The nut factor is missing: most of the torque goes into friction. Divide by K times the diameter.",
            ),
            Slip(
                formula="2 * torque / (grip * diameter)",
                text="The rule takes the diameter of the thread, not its radius.",
            ),
            Slip(
                formula="grip * torque / diameter",
                text="Divide by the nut factor: more friction, less clamping.",
            ),
        ),
    )


PRACTICE = Practice(
    tasks=(
        clamping("M8", ("8 N·m", "10 N·m", "12 N·m", "15 N·m")),
        Task(
            asks="ceiling",
            text="A {condition} {stud} stud of {grade} has a proof load of {proof}. Used to {preload_share} of it, with a nut factor of {factor}, what is the largest torque for the thread?",
            draw={
                "stud": ("M6", "M8", "M10", "M12"),
                "grade": ("8.8", "A2-70", "brass"),
                "condition": ("dry", "lubricated"),
                "opened": ("often",),
            },
            slips=(
                Slip(
                    formula="factor * diameter * proof",
                    text="That uses the whole proof load. A joint that will be opened again is tightened to part of it.",
                ),
                Slip(
                    formula="diameter * preload_limit",
                    text="The nut factor is missing: torque is K times diameter times force.",
                ),
                Slip(
                    formula="factor * diameter * preload_limit / 2",
                    text="The rule takes the diameter of the thread, not its radius.",
                ),
            ),
        ),
        clamping("M6", ("3 N·m", "4 N·m", "5 N·m", "6 N·m")),
    )
)
