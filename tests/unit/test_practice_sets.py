"""A practice set: the same from a choice, a link, the terminal and the door; hostile links."""

import json

import pytest

import calc
from calc.__main__ import main
from calc.practice.sets import PracticeSet
from calc.render.bridge import ask


@pytest.fixture
def run(capsys):
    """Run the command in this process; gives status, standard output and standard error."""

    def command(*words):
        status = main(list(words))
        captured = capsys.readouterr()
        return status, captured.out, captured.err

    return command


def test_a_set_is_the_same_from_a_choice_a_link_and_in_any_order():
    one = PracticeSet.of(["bank-size", "wire-drop"], 5, 42)
    other = PracticeSet.open(f"https://x.invalid/practice/#{one.link}")
    assert one == other == PracticeSet.of(["wire-drop", "bank-size"], "5", " 42 ")
    assert one.link == "v=1&sheets=wire-drop,bank-size&count=5&seed=42"
    asked = one.questions()
    assert [(q.worksheet, q.number) for q in asked] == list(one.numbers())
    assert [q.worksheet for q in asked] == ["wire-drop", "bank-size"] * 2 + ["wire-drop"]
    assert len({q.text for q in asked}) == 5
    assert PracticeSet.of(["bank-size", "wire-drop"], 5, 43).numbers() != one.numbers()


@pytest.mark.parametrize(
    ("link", "says"),
    [
        ("", "Pick at least one worksheet."),
        ("#" + "x" * 5000, "too long"),
        ("sheets=wire-drop&count=41&seed=1", "from 1 to 40"),
        ("sheets=wire-drop&count=1e9&seed=1", "from 1 to 40"),
        ("sheets=wire-drop&count=5&seed=-1", "from 0 to 999999"),
        ("sheets=wire-drop&count=5&seed=²", "from 0 to 999999"),
        ("sheets=joint-sheet&count=5&seed=1", "no questions for 'joint-sheet'"),
        ("sheets=../../etc,<b>&count=5&seed=1", "no questions for '../../etc', '<b>'"),
        ("&".join(f"a{n}=1" for n in range(99)), "Pick at least one worksheet."),
        ("%FF=%00&=&;", "Pick at least one worksheet."),
    ],
)
def test_a_link_of_a_stranger_is_refused_in_a_sentence(link, says):
    with pytest.raises(calc.InputError) as refusal:
        PracticeSet.open(link)
    assert says in " ".join(problem.message for problem in refusal.value.problems)


def test_the_terminal_makes_a_set_and_its_key(run):
    chosen = PracticeSet.of(["wire-drop", "fuse-ladder"], 4, 7)
    words = ("practice", "fuse-ladder", "wire-drop", "--count", "4", "--seed", "7")
    status, out, err = run(*words)
    assert (status, err) == (0, "")
    asked = chosen.questions()
    assert all(f"{place}. {one.text}" in out for place, one in enumerate(asked, 1))
    assert not any(f"{one.asked.label}: {one.shown}" in out for one in asked)
    key = run(*words, "--key")[1]
    assert all(
        f"{place}. {one.asked.label}: {one.shown}" in key for place, one in enumerate(asked, 1)
    )
    data = json.loads(run("practice", chosen.link, "--json")[1])
    assert [one["question"] for one in data["questions"]] == [one.text for one in asked]
    assert "wire-drop" in run("practice", "--list")[1].split()


def test_the_door_makes_the_set_that_the_terminal_prints_and_checks_a_reply():
    chosen = PracticeSet.of(["wire-drop", "fuse-ladder"], 4, 7)
    made = through_the_door(do="set", link=f"#{chosen.link}", target="x/")
    assert made["link"] == chosen.link
    for one in chosen.questions():
        assert one.text in made["html"]
        assert made["html"].count(f'data-nr="{one.number}"') >= 1
    one = chosen.questions()[0]
    asked = {"do": "judge", "sheet": one.worksheet, "nr": str(one.number)}
    right = through_the_door(**asked, reply=one.shown, tries=0)
    assert (right["right"], right["open"]) == (True, True)
    first = through_the_door(**asked, reply="9e9", tries=0)
    assert (first["right"], first["open"], first["tries"]) == (False, False, 1)
    assert "there is a hint" in first["html"]
    second = through_the_door(**asked, reply="8e9", tries=first["tries"])
    assert (second["open"], second["tries"]) == (True, 2)
    kind = through_the_door(**asked, reply="99 kg", tries=0)
    assert (kind["open"], kind["tries"]) == (False, 0)
    assert through_the_door(**asked, reply="<b>", tries="x")["problems"][0]["field"] == "reply"
    hostile = through_the_door(do="judge", sheet="<b>", nr="1e9", reply="1", tries=0)
    assert "no worksheet" in hostile["problems"][0]["message"]


def through_the_door(**asked):
    return json.loads(ask(json.dumps({"quiz": asked})))


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ([], "Pick at least one worksheet."),
        (["wire-drop", "--count", "0"], "from 1 to 40"),
        (["sheets=wire-drop&count=3"], "Seed must be a whole number"),
    ],
)
def test_the_terminal_ends_with_status_2_on_a_set_it_cannot_make(run, words, said):
    status, out, err = run("practice", *words)
    assert (status, out) == (2, "")
    assert said in err
