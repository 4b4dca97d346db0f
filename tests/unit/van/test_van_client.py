"""A van explained to a client: its link says what the review says, and is believed in nothing."""

import json
import re
from functools import cache
from random import Random

import pytest

import calc
from calc.judge import Level
from calc.render.bridge import ask
from calc.render.client_page import van_kit
from calc.render.van_client import link_of
from calc.van.advised import ADVICE, CAUTIONS, NEGLECT, advised, headlines
from calc.van.compared import GROUPS, LABELS, LASTS
from calc.van.demos import DEMOS, demo
from calc.van.link import LONGEST
from calc.worksheet.shown_values import NAME
from tests.contract.test_client import APPROVING, filled
from tests.van_samples import drawn_van

START = "https://example.org/lugwise/client/#"
GRAVE = (Level.STOP, Level.CAUTION)


def told(do: str, **more):
    return json.loads(ask(json.dumps({"van": {"do": do, **more}})))


@cache
def made(text: str) -> str:
    return told("client-make", text=text, start=START)["fragment"]


@cache
def check(fragment: str):
    return told("client-check", fragment=fragment, more=True)


@pytest.fixture(params=DEMOS, scope="module")
def link(request) -> str:
    return made(told("demo", name=request.param)["text"])


@pytest.fixture(scope="module")
def mistaken() -> str:
    return made(told("demo", name="ten-mistakes")["text"])


def test_a_fresh_review_agrees_with_the_link_that_was_made(link):
    assert "&van=" in link and len(START + link) < 1500
    reply = check(link + "&.by=A.+Brandt&.note=For+Tuesday&.on=2026-11-30")
    assert reply["agrees"], reply["told"]
    assert told("client-check", fragment=link) == {"more": True}


@pytest.mark.parametrize("name", DEMOS)
def test_it_counts_and_begins_as_the_review_does(name):
    found, said = demo(name).review(), advised(demo(name).review())
    levels = [one.level for one in found.findings]
    counts = [int(text.split()[0]) for text in said.counts.values()]
    assert counts == [levels.count(level) for level in GRAVE]
    assert said.level == (found.findings[0].level if sum(counts) else Level.FINE)
    best = [one for one, _ in found.best if one.level is Level.STOP]
    names = [reason.name for reason in said.reasons]
    assert names[: len(best)] == [one.part_name for one in best]


@pytest.mark.parametrize("name", DEMOS)
def test_a_reason_says_what_its_finding_says(name):
    found = demo(name).review()
    sentences = {one.part_name: one.sentence for one in reversed(found.findings)}
    for reason in advised(found).reasons:
        if reason.name and reason.key != "not-proven":
            sentence = filled(headlines()[reason.key], reason.found)
            assert sentence in [one.sentence for one in found.findings]
            assert reason.name in sentences


def test_what_decides_is_compared_and_else_how_the_battery_fares():
    """0.8 kW of 2179 W are 37 %; the tightest week falls to 43.2 %, and may fall to 20 %."""
    said = {name: advised(demo(name).review()).bars for name in ("ten-mistakes", "marram")}
    bars = {name: [(LABELS[b.row], b.share) for b in own] for name, own in said.items()}
    assert bars["ten-mistakes"] == [("The van loses in the cold", 100), ("Its heater gives", 37)]
    assert bars["marram"] == [("The battery falls to", 100), ("It may fall to", 46)]
    values = [one.text for one in said["ten-mistakes"]]
    assert values == ["2179\u00a0W", "800\u00a0W"]


def test_every_group_of_bars_names_values_of_one_kind():
    for name, rows in GROUPS.items():
        sheet = calc.find("week-ahead" if name == LASTS else name)
        kinds = set()
        for _, value in rows:
            field = next((one for one in sheet.fields if one.id == value), None)
            outputs = (*sheet.results, *sheet.intermediates)
            kinds.add(field.kinds[0] if field else next(o.kind for o in outputs if o.id == value))
        assert len(kinds) == 1 and None not in kinds, name


@pytest.mark.parametrize("seed", range(3))
def test_every_finding_of_a_drawn_van_has_a_headline_of_ours(seed):
    missed = []
    for one in drawn_van(Random(seed), circuits=3).review().findings:
        if one.level in GRAVE and not one.not_proven:
            own = [text for key, text in headlines().items() if key.split("~")[0] == one.rule]
            patterns = [re.escape(NAME.sub("\0", text)).replace("\0", ".+") for text in own]
            if not any(re.fullmatch(pattern, one.sentence) for pattern in patterns):
                missed.append((one.rule, one.sentence))
    assert not missed


def test_a_van_that_is_too_large_leaves_its_review_in_the_link():
    said = advised(demo("ten-mistakes").review())
    link = link_of(drawn_van(Random(3), circuits=60), said, START)
    assert link.startswith("van&.say=") and len(link) < 1000
    assert len(START + link) <= LONGEST
    assert check(link)["problem"].startswith("This cannot be checked: This link holds no van")


@pytest.mark.parametrize(
    ("of", "by", "says"),
    [
        (r":stops=[^&]*", ":stops=0+stops", "Stops: the link said 0, calculated"),
        (r":stops=[^&]*", ":stops=all+is+fine", "Stops: the link said something else, calculated"),
        (r":stops=[^&]*", ":stops=<b>9</b>", "Stops: the link said something else, calculated"),
        (r"\.say=[^&]*", ".say=4..2", "The advice in the link was another one."),
        (r"\.say=[^&]*", ".say=" + "9" * 5_000, "The advice in the link was another one."),
        (r"\.r1=[^&]*", ".r1=nothing-found", "The advice in the link was another one."),
        (r"\.bar=[^&]*", ".bar=10.100", "The advice in the link was another one."),
        (r":bar0=[^&]*", ":bar0=9_kW", "The advice in the link was another one."),
        (r"\.n1=[^&]*", ".n1=all+is+fine", "The advice in the link was another one."),
    ],
)
def test_what_a_stranger_writes_into_a_link_is_not_believed(mistaken, of, by, says):
    reply = check(re.sub(of, lambda _: by, mistaken))
    assert not reply["agrees"]
    assert says in reply["told"]
    assert "<b>9</b>" not in reply["told"] and "is fine" not in reply["told"]
    assert reply["html"] == check(mistaken)["html"]


@pytest.mark.parametrize(
    "fragment",
    [
        "",
        "van",
        "van&",
        "van&v=1&van=AAAA",
        "van&v=9&van=AAAA",
        "x" * 100_000,
        "van&v=1&van=%&.say=1",
    ],
)
def test_a_link_that_holds_no_van_is_told(fragment):
    problem = check(fragment)["problem"]
    assert problem.startswith("This cannot be checked: ") and len(problem) < 300


def test_its_sentences_are_short_and_approve_of_nothing():
    for text in (*ADVICE, *NEGLECT, *CAUTIONS):
        assert len(NAME.sub("value", text).split()) <= 20, text
        assert not APPROVING.search(text), text
    kit = van_kit()
    assert set(kit["findings"]) == set(headlines())
    assert "lw-verdict" not in kit["html"]


def test_a_part_is_named_as_text():
    text = told("demo", name="ten-mistakes")["text"]
    named = told(
        "change", text=text, drafts={}, changes={"patterns[1].name": {"typed": "<b>&winter"}}
    )
    link = made(named["text"])
    reply = check(link)
    assert reply["agrees"] and "<b>" not in link
    assert "“&lt;b&gt;&amp;winter”" in reply["html"]
