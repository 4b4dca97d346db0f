"""What a fuse must be at least is shown as no less than it is."""

import pytest

import calc

LOADS = ("90 A", "30.1 A", "8.43 A", "99.7 A")


@pytest.mark.parametrize("load", LOADS)
@pytest.mark.parametrize(
    ("sheet", "name"), [("fuse-choice", "lowest"), ("wire-drop", "lowest"), ("wire-size", "need")]
)
def test_the_least_fuse_is_never_rounded_down(sheet, name, load):
    answer = calc.work(
        sheet, {"current": load, "conductor": "2 AWG"} if name == "lowest" else {"current": load}
    )
    assert float(answer.shown[name].split("\u00a0")[0]) >= answer.values[name] * (1 - 1e-9)
