"""The search as its reader meets it: links that lead on and back, and links from strangers."""

import json
import re
import time
from html import unescape

import pytest

import calc
from calc.__main__ import main
from calc.faults import graph
from calc.faults.graph import Symptom
from calc.render import sheet_html
from calc.render.answer import answer_html
from calc.render.bridge import ask
from calc.worksheet.link import open_fragment
from tests.contract.samples import answers
from tests.contract.trails import trails
from tests.unit.fault_van import FRIDGE, LARGE
from tests.whole import live_html, shown_html

SHEET = calc.find("find-fault")
SAME = {"length", "conductor", "capacity", "chemistry"}
ELSEWHERE = {"alternator-charge": {"length", "conductor"}}
"""What is not that of the circuit that was searched: the run from the engine is another one."""
WAY = re.compile(r'<a href="([^"]+)" class="lw-move">([^<]+)</a>')


def work(**texts: str) -> calc.Answer:
    return calc.work("find-fault", {"symptom": "flickers"} | texts)


def ways(html: str) -> dict[str, str]:
    """Return the links of an answer by their words."""
    return {unescape(words): unescape(href) for href, words in WAY.findall(html)}


def pressed(href: str) -> dict:
    """Return the reply to a press on one of the sheet's own links."""
    assert href.startswith(f"#v={SHEET.default_set}&")
    return json.loads(ask(json.dumps({"sheet": "find-fault", "fragment": href})))


def test_a_press_leads_to_the_next_step_and_keeps_every_figure():
    html = answer_html(work(load="7 A", length="9 ft", path="flickers.no.one"))
    (href,) = [href for href in ways(html).values() if href.endswith("path=flickers.no.one.ok")]
    reply = pressed(href)
    opened = open_fragment(SHEET, href)
    assert opened.notes == () and reply["notes"] == []
    assert opened.texts["path"] == "flickers.no.one.ok"
    assert (opened.texts["load"], opened.texts["length"]) == ("7A", "9ft")
    assert graph.step("run.plus").text in reply["status"]


@pytest.mark.parametrize("path", trails()[::9])
def test_every_press_from_every_step_leads_somewhere(path):
    answer = work(symptom=path.split(".")[0], path=path)
    html = answer_html(answer)
    for words, href in ways(html).items():
        if href.startswith("#"):
            reply = pressed(href)
            assert reply["answer"] and shown_html(reply) != live_html(answer), words
            assert reply["notes"] == []


@pytest.mark.parametrize("path", [path for path in trails() if path.count(".") > 2][::9])
def test_a_wrong_turn_is_taken_back_by_one_press_or_by_starting_again(path):
    symptom = path.split(".")[0]
    before = work(symptom=symptom, path=path.rpartition(".")[0])
    back = ways(answer_html(work(symptom=symptom, path=path)))
    assert shown_html(pressed(back["One step back"])) == live_html(before)
    assert shown_html(pressed(back["Start again"])) == live_html(work(symptom=symptom))


def test_at_the_start_there_is_no_way_back():
    assert work()["back"] == []
    assert "One step back" not in answer_html(work())


def test_the_steps_so_far_are_told_with_what_was_found():
    told = work(path="flickers.no.all.ok.high")["trail"]
    assert len(told) == 4
    assert (
        told[2]
        == "Measure the bank on its own posts, under load — 11.41\u00a0V or more: the bank is good."
    )


def test_the_figures_may_be_mended_half_way():
    """The way stays as it is; what a sound circuit shows goes with the figures."""
    first = work(path="flickers.no.one", load="6 A")
    heavier = work(path="flickers.no.one", load="12 A")
    assert heavier["step"] == first["step"]
    assert heavier["volts"].m_as("V") == pytest.approx(2 * first["volts"].m_as("V"))


@pytest.mark.parametrize(
    ("symptom", "path", "lost"),
    [
        ("charge", "charge.none.none.low.nil", False),
        ("charge", "charge.none.none.low.nil.ok", False),
        ("charge", "charge.none.none.low.low", True),
        ("flickers", "flickers.no.one", True),
    ],
)
def test_where_no_current_flows_a_sound_part_loses_nothing(symptom, path, lost):
    assert (work(symptom=symptom, path=path).values["volts"] > 0) is lost


def test_another_symptom_starts_afresh_and_says_so():
    answer = work(symptom="flat", path="flickers.no.one")
    assert answer["step"] == work(symptom="flat")["step"]
    assert answer["trail"] == []
    assert "search.path-does-not-fit" in answer.rules
    assert "search.path-does-not-fit" not in work(symptom="flat").rules


STRANGE = (
    "flickers", "flickers.", "flickers..no", "flickers.yes.yes", "nowhere.no", "..", "FLICKERS.NO",
    "flickers.no.one.ok.ok.else.and.on.and.on", "<img src=x onerror=alert(1)>", "a" * 81,
    "flickers." + "no." * 5000, "../../etc/passwd", "flickers.__class__", "\u202eno", "%00",
    "@run", "run.minus",
)  # fmt: skip


@pytest.mark.parametrize("path", STRANGE)
def test_a_path_from_a_stranger_does_no_harm(path):
    began = time.process_time()
    values = {"symptom": "flickers", "path": path}
    reply = json.loads(ask(json.dumps({"sheet": "find-fault", "values": values})))
    assert time.process_time() - began < 0.5
    assert reply["answer"] and reply["verdict"] in ("caution", "stop")
    assert "<img" not in reply["answer"]
    answer = work(path=path)
    known = graph.way_in(Symptom.FLICKERS)
    steps = (known.start, "flickers.which", "flickers.off")
    seen = [graph.step(name).text for name in steps] + [graph.end("clear-run").fix]
    assert answer["step"] in seen
    odd = "search.path-does-not-fit" in answer.rules
    assert odd is (path.lower() not in ("flickers", "flickers.no"))


def test_as_much_of_a_path_as_makes_sense_is_kept():
    assert work(path="flickers.no.one.nonsense.ok")["step"] == work(path="flickers.no.one")["step"]


def test_the_path_is_carried_by_the_form_and_never_shown():
    html = sheet_html(work(path="flickers.no"))
    place = html[html.index('data-field="path"') - 30 :]
    box = html[: html.index('data-field="path"')].rpartition("<input")[2]
    assert re.match(r'[^<>]*data-field="path" hidden>', place[place.index("data-field") :])
    assert 'name="path"' in html and 'value="flickers.no"' in html
    assert box
    reply = json.loads(ask(json.dumps({"sheet": "find-fault", "values": {"path": "flickers.no"}})))
    assert (
        reply["fields"]["path"] | {"entry": "flickers.no", "shown": False}
        == reply["fields"]["path"]
    )
    assert reply["fields"]["load"]["shown"] is True


def test_only_what_is_as_it_should_be_is_called_fine():
    fine = [answer for _, answer in answers("find-fault") if answer.verdict == "fine"]
    assert fine
    for answer in fine:
        usual = answer["cause"] == "No fault: the bank is near full and accepts less"
        assert usual or answer.inputs["symptom"].value == "check"
        assert answer.result.clear or not answer.result.found


@pytest.mark.parametrize("symptom", list(Symptom))
def test_what_must_be_made_safe_stops_before_anything_is_measured(symptom):
    for path in trails():
        answer = work(symptom=symptom, path=path) if path.startswith(f"{symptom}.") else None
        if answer and answer["cause"] is None and answer.verdict == "stop":
            assert answer["probes"] is None
            assert "safe" in answer.sentence


@pytest.mark.parametrize("texts", (FRIDGE.texts, LARGE.texts))
@pytest.mark.parametrize(
    "path", [path for path in trails() if work(symptom=path.split(".")[0], path=path)["cause"]][::4]
)
def test_what_prevents_a_cause_opens_with_the_reader_s_own_figures(path, texts):
    answer = calc.work("find-fault", texts | {"symptom": path.split(".")[0], "path": path})
    links = [href for href in ways(answer_html(answer)).values() if href.startswith("../")]
    assert len(links) == len(answer["prevents"])
    for href in links:
        name, _, fragment = href.removeprefix("../").partition("/#")
        opened = open_fragment(calc.find(name), fragment)
        assert opened.notes == ()
        other = calc.work(name, opened.texts)
        for field in set(opened.texts) & SAME - ELSEWHERE.get(name, set()):
            assert other.values[field] == pytest.approx(answer.values[field]) if field in (
                "length", "capacity"
            ) else other.values[field] == answer.values[field]  # fmt: skip
        nominal = float(answer.values["system"].split()[0])
        for field in {"voltage", "bank_voltage"} & set(graph.carried(name)):
            assert nominal <= other.values[field] <= 1.25 * nominal, "of the same bank"


def test_a_search_may_go_on_with_another_symptom():
    answer = work(symptom="dead", path="dead.no.none.none.open")
    (move,) = answer["moves"]
    assert dict(move.texts) == {"symptom": "fuse", "path": ""}
    (href,) = [href for words, href in ways(answer_html(answer)).items() if "Go on with" in words]
    assert shown_html(pressed(href)) == live_html(work(symptom="fuse"))


def test_a_terminal_shows_each_way_with_the_path_to_type(capsys):
    assert main(["find-fault", "symptom=flickers", "path=flickers.no"]) == 0
    said = capsys.readouterr().out
    assert "- Everything together (path=flickers.no.every)" in said
    assert "flickers.no.all" not in said, "an older turn is followed, and not offered"
    assert "- One step back (path=flickers)" in said
    assert "- Start again (path=)" in said
    assert "none" not in said.split("Working")[0]


def test_a_terminal_gives_the_ways_as_data_too(capsys):
    assert main(["find-fault", "--json"]) == 0
    first = json.loads(capsys.readouterr().out)["results"]["moves"][0]
    assert first["texts"] == [["path", "check.yes"]]


def test_more_than_the_circuit_can_feed_is_refused_with_what_it_could():
    """12.8 V over 6.4 mohm, two conductors of 25 mohm, six joints, shunt and fuse: about 190 A."""
    with pytest.raises(calc.InputError, match=r"must be less than 190\sA") as refusal:
        work(load="200 A", length="4.5 m", conductor="12 AWG", fuse="10 A")
    assert refusal.value.field == "load"
    with pytest.raises(calc.InputError, match=r"must be less than \d\d\d\sW"):
        work(load="900 W", length="4.5 m", conductor="12 AWG", fuse="10 A")


def test_a_bank_has_no_more_batteries_than_cells():
    assert work(blocks="6")["step"]
    with pytest.raises(calc.InputError, match="6 or fewer"):
        work(blocks="7")
    assert work(blocks="16", system="48 V", chemistry="LFP")["step"]


def test_for_a_charger_the_words_are_the_charger_s():
    load, charger = work(path="flickers.no.one"), work(symptom="charge", path="charge.no.low.low")
    assert load["step"] == charger["step"]
    assert "device's own minus" in load["probes"] and "charger's own minus" in charger["probes"]
    assert "Charger on" in charger["setting"] and "Load on" in load["setting"]
