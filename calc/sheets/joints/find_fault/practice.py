"""Practice for find-fault: what a sound circuit shows, and what a row of readings tells."""

from calc.faults.graph import end
from calc.practice.declared import Practice, Slip, Task, steps

POST, GROUND, PLUS, THIN = (
    end(name).cause for name in ("loose-minus", "ground", "loose-plus", "thin-cable")
)
LOADS = ("4 A", "5 A", "6 A", "7 A")


def finding(path: str, readings: str, **slips: str) -> Task:
    """Return the question after the cause at the end of `path`, from `readings` told in words."""
    causes = {"post": POST, "ground": GROUND, "plus": PLUS, "thin": THIN}
    return Task(
        asks="cause",
        text="A fridge at the end of {length} of cable cuts out while driving and comes back with the next bump. At {load} a good minus side drops {minus_drop}, a good plus side {plus_drop}. "
        + readings
        + " What is the cause?",
        draw={
            "symptom": ("flickers",),
            "load": LOADS,
            "length": steps(3, 6, 0.5, "m"),
            "path": (path,),
        },
        choices=tuple(causes.values()),
        hint="Which side loses more than a sound one? Then look for the one place on it that loses most. If there is none, the cable itself is left.",
        slips=tuple(Slip(reply=causes[name], text=says) for name, says in slips.items()),
    )


PRACTICE = Practice(
    tasks=(
        finding(
            "flickers.no.one.high.high",
            "You read more than twice that on the minus side, and 120 mV across the joint on the bank's minus post.",
            ground="That is further on. The joint on the post is measured first, and it drops the most.",
            thin="A cable that is too small drops voltage along its whole length. Here one joint does.",
            plus="The reading is on the minus side.",
        ),
        Task(
            asks="volts",
            text="Before you look for a fault, know what is normal. {load} flows. The minus side, from the bank's post to the device, has one conductor of {run} ({length} of {conductor}), {joints} joints of {joint} and a shunt of {shunt}. What should the meter show across it?",
            draw={
                "symptom": ("flickers",),
                "path": ("flickers.no.one",),
                "load": ("20 A", "30 A", "40 A", "60 A"),
                "length": steps(1, 3, 1, "m"),
                "conductor": ("6 AWG", "4 AWG", "2 AWG"),
                "joint": ("0.05 mΩ", "0.08 mΩ", "0.1 mΩ"),
                "joints": ("3", "4", "5"),
            },
            hint="Add up all the resistance between the two probes: each joint, the conductor, the shunt. Ohm's law does the rest.",
            slips=(
                Slip(
                    formula="flow * run",
                    text="That is the conductor alone. Its joints and the shunt are on the way too.",
                ),
                Slip(
                    formula="flow * 2 * (joints * joint + shunt + run)",
                    text="That is both sides together. The meter is across the minus side only.",
                ),
                Slip(
                    formula="flow * (joint + shunt + run)",
                    text="That counts one joint. Each of them drops its part.",
                ),
            ),
        ),
        finding(
            "flickers.no.one.high.ok.high",
            "You read more than twice that on the minus side: half a millivolt across the bank's minus post, 90 mV across the ground point.",
            post="The joint on the post drops half a millivolt, no more than a good one.",
            thin="A cable that is too small drops voltage along its whole length. Here one point does.",
            plus="The reading is on the minus side.",
        ),
        Task(
            asks="volts",
            text="A rested, full {chemistry} bank is at {rest_full} and has {source_resistance} inside. What should the meter show on its posts while a good bank gives {load}?",
            draw={
                "symptom": ("inverter",),
                "path": ("inverter.no.low",),
                "load": ("60 A", "80 A", "100 A", "120 A"),
                "source_resistance": ("5 mΩ", "6 mΩ", "8 mΩ"),
                "conductor": ("2/0 AWG",),
                "fuse": ("200 A",),
                "length": ("1 m",),
            },
            tolerance=0.003,
            hint="The bank's own resistance takes its part of the voltage: Ohm's law, taken off the voltage at rest.",
            slips=(
                Slip(
                    formula="rest_full",
                    text="That is the bank at rest. Under load its own resistance drops a part.",
                ),
                Slip(
                    formula="rest_full + current * source",
                    text="Under load the voltage falls; only charging raises it.",
                ),
            ),
        ),
        finding(
            "flickers.no.one.high.ok.ok.ok.ok.high",
            "You read half as much again on the minus side. No joint on it drops more than a good one, and nearly all the drop is along the cable.",
            post="No joint drops more than a good one.",
            ground="No joint drops more than a good one, the ground point included.",
            plus="The reading is on the minus side.",
        ),
        finding(
            "flickers.no.one.ok.high.high",
            "The minus side is good. On the plus side you read more than twice the value, and 140 mV of it across the joint on the bank's plus post.",
            post="The minus side is good.",
            ground="The ground point is on the minus side, which is good.",
            thin="A cable that is too small drops voltage along its whole length. Here one joint does.",
        ),
    )
)
