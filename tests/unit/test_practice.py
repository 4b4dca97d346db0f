"""Practice sets: how figures are drawn, how a reply is read and what it is told, the terminal."""

import json
import re
import subprocess
import sys

import pytest

import calc
from build_scripts import fence
from calc.__main__ import main
from calc.practice import mark, question
from calc.practice.declared import steps
from calc.practice.draw import Draw
from calc.units.shown import kept_together


def numbered(name: str, number: int, asks: str, **inputs: str):
    """Return a question, which must be the one described: a number keeps its question."""
    one = question(name, number)
    assert one.task.asks == asks
    assert inputs.items() <= one.inputs.items()
    return one


@pytest.fixture
def drop():
    """6 A over 5 m of 2.5 mm² (7.98 Ω/km at 20 °C, IEC 60228): 0.554 V at 60 °C."""
    one = numbered("wire-drop", 1076, "drop", current="6 A", length="5 m", conductor="2.5 mm2")
    by_hand = 6 * 2 * 5 * 7.98e-3 * (234.5 + 60) / (234.5 + 20)
    assert one.answer.values["drop"] == pytest.approx(by_hand)
    assert by_hand == pytest.approx(0.554, abs=0.0005)
    return one


def test_numbers_are_drawn_as_splitmix64_prints_them():
    """The five numbers for 1234567 in a public test of the generator (from memory)."""
    draw = Draw(1234567)
    assert [draw.number() for _ in range(5)] == [
        6457827717110365317,
        3203168211198807973,
        9817491932198370423,
        4593380528125082431,
        16408922859458223821,
    ]


def test_a_number_gives_the_same_question_in_any_process():
    command = "from calc.practice import question; print(question('wire-drop', 7).text)"
    texts = {
        subprocess.run(
            [sys.executable, "-c", command], capture_output=True, text=True, check=True
        ).stdout.strip()
        for _ in range(2)
    }
    assert texts == {question("wire-drop", 7).text}


def test_numbers_in_a_row_go_through_all_tasks():
    tasks = {id(question("wire-drop", number).task) for number in range(1, 5)}
    assert len(tasks) == 4


def test_sets_with_the_same_number_go_their_own_ways():
    first = [Draw.of(name, 1).number() for name in ("runtime", "wire-drop", "joint-heat")]
    assert len(set(first)) == 3


def test_steps_are_even_and_both_ends_count():
    assert steps(3, 4.5, 0.5, "m") == ("3 m", "3.5 m", "4 m", "4.5 m")
    assert steps(1, 1.3, 0.1, "V") == ("1 V", "1.1 V", "1.2 V", "1.3 V")


@pytest.mark.parametrize(
    "reply", ["0.554 V", "554 mV", "0,554", "0.55", ".554v", "0.538", "0.570 volts", "554mv"]
)
def test_a_reply_is_read_as_a_field_is_and_may_be_3_percent_off(drop, reply):
    assert mark(drop, reply).right


@pytest.mark.parametrize(
    ("reply", "says"),
    [
        ("0.277 V", "The current comes back through a second one"),
        ("0.28", "The current comes back through a second one"),
        ("1.11 V", "counts the way back twice"),
        ("4.6", "share in percent"),
        ("554 V", "1000 times too large: check the unit"),
        ("0.0554", "10 times too small: check the unit"),
        ("0.6 V", "It is too large."),
        ("0.5 V", "It is too small."),
        ("-0.554 V", "It is too small."),
        ("0", "It is too small."),
    ],
)
def test_a_wrong_reply_is_told_why(drop, reply, says):
    marked = mark(drop, reply)
    assert not marked.right
    assert marked.text.startswith("Not right. ")
    assert says in marked.text


@pytest.mark.parametrize(
    ("reply", "says"),
    [
        ("", "Type your answer: a number and its unit."),
        ("abc", "Your answer must be a number with a unit."),
        ("5 furlongs", "That unit is not known here."),
        ("1,234", "can be read two ways"),
        ("none", "Your answer must be a number"),
        ("0.5 4", "Your answer must be a number"),
        ("9" * 50, "at most 40 characters"),
        ("1e400 V", "too large a number"),
        ("10**10**8", "Your answer must be a number"),
    ],
)
def test_what_cannot_be_read_is_refused_and_no_unit_is_given_away(drop, reply, says):
    with pytest.raises(calc.InputError) as refusal:
        mark(drop, reply)
    assert refusal.value.field == "reply"
    assert says in refusal.value.message
    assert not re.search(r"\bm?V\b", refusal.value.message)


def test_amps_for_amp_hours_are_told_as_such_and_are_no_try():
    one = numbered("bank-size", 3, "capacity")
    marked = mark(one, "97.7 A")
    assert (marked.right, marked.counts) == (False, False)
    assert marked.text == ("Not right. You gave a current. The question asks for a charge.")
    assert "h" not in marked.text.split("for a charge")[-1]
    assert mark(one, "1 kWh").text.endswith("You gave an energy. The question asks for a charge.")


def test_a_unit_of_another_list_that_measures_the_same_is_read():
    """Seconds are no unit of run times, and a van's heat may be said in plain watts."""
    one = numbered("runtime", 3, "runtime")
    seconds = one.answer.values["runtime"]
    assert mark(one, f"{seconds:.6g} s").right
    assert not mark(one, f"{seconds / 60:.6g} s").right


def test_a_reply_that_is_near_enough_is_told_how_near(drop):
    assert mark(drop, "0.554 V").text == mark(drop, "0.55 V").text == f"Right: {drop.shown}."
    assert mark(drop, "0.565 V").text == (
        f"Right: {drop.shown}. Yours is within 5\u00a0% of it, which is near enough."
    )
    assert drop.counts_as_right == "Any unit will do. Within 5\u00a0% counts as right."


def test_a_larger_rating_is_accepted_where_that_is_safe_and_a_larger_fuse_never():
    one = numbered("inverter-size", 3, "continuous")
    need = one.answer.values["continuous"]
    assert one.counts_as_right.endswith(" Up to 25\u00a0% more is accepted.")
    assert mark(one, f"{need * 1.2:.6g} VA").text.startswith("Accepted: more than needed")
    assert not mark(one, f"{need * 1.3:.6g} VA").right
    fuse = numbered("fuse-choice", 3, "fuse", current="12 A")
    assert not mark(fuse, "25 A").right


def test_a_hint_says_how_and_not_how_much(drop):
    assert drop.hint.startswith("Ohm's law. U = I × R. U: Voltage drop; I: Current; R: ")
    assert not re.search(r"0\.55", drop.hint)


def test_the_steps_of_a_key_are_those_that_lead_to_the_answer(drop):
    assert [line.symbol for line in drop.steps] == ["r₀", "r", "R", "U"]


def test_none_is_an_answer_where_no_fuse_fits():
    one = numbered("fuse-choice", 6, "fuse", current="40 A", conductor="10 AWG", insulation="60 C")
    assert one.answer["fuse"] is None
    for text in ("none", "None", "nothing fits", "no"):
        assert mark(one, text).right
    assert mark(one, "60 A").text == "Not right. With these values there is none."
    other = numbered("fuse-choice", 3, "fuse", current="12 A", conductor="8 AWG")
    assert mark(other, "none").text == "Not right. There is one."
    assert mark(other, "20").right, "15 A would sit at 80 % of its rating"
    assert not mark(other, "20.1").right, "a standard rating is met exactly or not at all"


def test_a_choice_is_compared_without_case_and_spaces():
    one = numbered("fuse-ladder", 2, "order")
    assert mark(one, one.answer["order"].upper() + " ").right
    with pytest.raises(calc.InputError, match="Your answer must be opens first"):
        mark(one, "perhaps")


def test_a_slip_that_makes_no_difference_is_not_laid_at_anyone_s_door():
    one = numbered("wire-drop", 1, "drop_percent", voltage="12 V")
    says = [wrong.slip.text for wrong in one.slips]
    assert not any("higher voltage" in text for text in says)
    other = numbered("wire-drop", 17, "drop_percent", voltage="24 V")
    assert any("higher voltage" in wrong.slip.text for wrong in other.slips)


def test_what_does_not_exist_has_no_questions():
    with pytest.raises(calc.InputError, match="no worksheet 'wire-drops'"):
        question("wire-drops", 1)


@pytest.fixture
def run(capsys):
    """Run the command in this process; gives status, standard output and standard error."""

    def command(*words):
        status = main(list(words))
        captured = capsys.readouterr()
        return status, captured.out, captured.err

    return command


def test_the_terminal_asks_and_does_not_tell(run):
    one = question("wire-drop", 4)
    status, out, err = run("wire-drop", "--practice", "4")
    assert (status, err) == (0, "")
    assert one.text in out
    assert one.shown not in out


def test_the_terminal_marks_a_reply_and_shows_the_working(run):
    one = question("wire-drop", 4)
    status, out, err = run("wire-drop", "--practice", "4", "--reply", one.shown)
    assert (status, err) == (0, "")
    assert f"Right: {one.shown}." in out
    assert all(line.text in out for line in one.answer.working)
    assert "Not right." in run("wire-drop", "--practice", "4", "--reply", "9 V")[1]


def test_the_terminal_gives_a_question_as_data(run):
    words = ("fuse-ladder", "--practice", "2", "--json", "--reply", "Opens first for certain")
    status, out, _ = run(*words)
    data, one = json.loads(out), question("fuse-ladder", 2)
    assert status == 0
    assert data["question"] == one.text
    assert data["choices"] == ["opens first for certain", "not certain", "will not"]
    assert data["answer"] == one.answer["order"]
    assert data["link"] == one.link
    assert data["mark"] == {"right": True, "says": f"Right: {one.shown}."}


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["wire-drop", "--practice", "4", "--reply", "abc"], "Your answer must be a number"),
        (["joint-sheet", "--practice", "4"], "has no questions"),
        (["wire-drops", "--practice", "4"], "no worksheet 'wire-drops'"),
        (["--practice", "4"], "usage"),
        (["wire-drop", "--reply", "4"], "usage"),
        (["wire-drop", "current=3", "--practice", "4"], "usage"),
    ],
)
def test_the_terminal_ends_with_status_2_on_what_it_cannot_do(run, words, said):
    status, out, err = run(*words)
    assert (status, out) == (2, "")
    assert said in err


def put(source: str) -> str:
    return fence.practice(source, "practice", "practice", {}, None)


def test_a_fence_puts_three_questions_or_those_it_is_told():
    three, two = put("wire-drop"), put("wire-drop\nnumbers: 4 9")
    for html, numbers in ((three, (1, 2, 3)), (two, (4, 9))):
        assert html.count("<summary>Answer</summary>") == len(numbers)
        for number in numbers:
            one = question("wire-drop", number)
            assert kept_together(one.text) in html
            assert f'href="../wire-drop/#{one.link.replace("&", "&amp;")}"' in html
            assert all(
                kept_together(wrong.slip.text).replace('"', "&quot;") in html for wrong in one.slips
            )


@pytest.mark.parametrize(
    "source", ["wire-drops", "wire-drop\nnumbers: one", "wire-drop\nseed: 4", "joint-sheet"]
)
def test_a_fence_that_is_wrong_stops_the_build(source):
    with pytest.raises(fence.SuperFencesException):
        put(source)
