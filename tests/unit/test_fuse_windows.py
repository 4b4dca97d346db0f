"""Where no fuse fits a wire: what is said of a narrow window, a closed one, and an empty one."""

import pytest

import calc
from calc.electrical.fuse_site import Place, fuse_site


def ask(**inputs):
    return calc.work("fuse-choice", {"fuse_place": "at the battery"} | inputs)


def amps(answer, name):
    return answer[name].m_as("A")


def test_a_wire_that_carries_the_load_but_takes_no_fuse_is_a_caution_and_one_that_does_not_a_stop():
    """8 AWG at 105 °C carries 80 A, with a fuse 64 A."""
    assert ask(current="64.1 A", conductor="8 AWG").verdict == "caution"
    assert ask(current="80 A", conductor="8 AWG").verdict == "caution"
    assert ask(current="80.1 A", conductor="8 AWG").verdict == "stop"


def test_a_shut_window_stops_with_what_would_open_it():
    answer = ask(current="81 A", conductor="8 AWG")
    assert answer.verdict == "stop"
    assert answer["fuse"] is None
    assert answer["remedies"]
    assert answer.working


def test_a_window_without_a_standard_rating_in_it_is_said():
    """9 A asks for 11.25 A; 18 AWG of 80 °C in air of 35 °C bears 15 A × √(45/50) = 14.2 A.

    A fault of 15 kA leaves class T alone, which begins at 15 A.
    """
    answer = ask(
        current="9 A", conductor="18 AWG", insulation="80 C", ambient="35 C", fault_current="15 kA"
    )
    assert amps(answer, "lowest") == pytest.approx(11.25)
    assert amps(answer, "highest") == pytest.approx(14.2, abs=0.05)
    assert answer["fuse"] is None
    assert (answer.verdict, answer.rule) == ("caution", "fuse.no-rating-for-this-fault")
    blades = {"conductor": "18 AWG", "insulation": "60 C"}  # 10 A
    answer = ask(current="6 A", fault_current="15 kA", **blades)
    assert (answer.verdict, answer.rule) == ("caution", "fuse.no-rating-for-this-fault")
    assert ask(current="6 A", fault_current="900 A", **blades)["fuse"] is not None


def test_a_load_is_split_no_further_than_it_must_be():
    """Two circuits of 40.5 A want 50.6 A of fuse or more, and 8 AWG of 105 °C takes 80 A."""
    assert any(" 2 circuits of 40.5" in one for one in ask(current="81 A")["remedies"])


def test_a_feed_that_is_made_longer_by_what_is_named_passes_just_that():
    def at(length):
        return fuse_site(
            place=Place.BEHIND_MAIN,
            voltage=14.6,
            bank_current=2000.0,
            conductor="8 AWG",
            length=length,
        )

    here = at(4.0)
    assert here.more_feed(1.01 * here.fault_current) is None
    for share in (0.99, 0.5):
        more = here.more_feed(share * here.fault_current)
        assert at(4.0 + more).fault_current == pytest.approx(share * here.fault_current, rel=1e-9)
