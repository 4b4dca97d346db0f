"""Practice for battery-air."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="airflow",
            text="A bank of {cells} lead-acid cells in series, {capacity}, has a gas current of {gas_current}. The standard uses {air_per_charge} of air. How much air does it need?",
            draw={
                "chemistry": ("AGM",),
                "cells": ("6", "12", "24"),
                "capacity": ("100 Ah", "200 Ah", "300 Ah"),
                "gas_current": ("4 mA/Ah", "8 mA/Ah", "20 mA/Ah"),
            },
            slips=(
                Slip(
                    formula="airflow / cells",
                    text="Each cell in series makes gas with the same current: count them all.",
                ),
                Slip(formula="airflow * 1000", text="The gas current is in milliamps."),
            ),
        ),
        Task(
            asks="opening",
            text="A box with {cells} cells of {chemistry}, {capacity}, needs {airflow} of air, and in an opening natural air moves at {vent_speed}. How large must each of the two openings be?",
            draw={
                "chemistry": ("AGM", "flooded"),
                "cells": ("6", "12"),
                "capacity": ("100 Ah", "200 Ah", "400 Ah"),
            },
            slips=(
                Slip(
                    formula="opening / 2",
                    text="All the air comes in through one and leaves through the other: each must pass all of it.",
                ),
                Slip(
                    formula="opening * 3600",
                    text="Convert the air to cubic metres per second first.",
                ),
            ),
        ),
    )
)
