"""A whole van's review: any van gives one, and nothing that is struck ever counts as fine."""

import pytest

from calc.judge import Level
from calc.van.demos import DEMOS, demo
from calc.van.inspection import inspection_list
from calc.van.judging import mended
from calc.van.mends import mends_of
from calc.van.patterns import worked_patterns
from calc.van.proven import matters
from calc.van.record import KINDS, Van
from calc.van.review import ORDER, review
from calc.van.values import State
from tests.counts import chance, often
from tests.van_samples import drawn_van

# What only tells who and where, and what kind of record it is.
NOT_JUDGED = {"name", "place", "note", "kind", "inspector", "date", "who", "when", "instrument"}


def judged_by_part(found):
    """Return the worst level of what is proven wrong with each part."""
    worst = {}
    for one in found.findings:
        if not one.not_proven:
            worst[one.part_id] = min(worst.get(one.part_id, 9), ORDER[one.level])
    return worst


def unproven_places(found):
    return {place for one in found.findings if one.not_proven for place in one.places}


def strike(van, place):
    """Strike a value, and hold that no part gets better, or that it is told to be not proven."""
    before, after = review(van), review(van.changed({place: "not seen"}))
    if place in unproven_places(after):
        return
    now = judged_by_part(after)
    better = {id for id, rank in judged_by_part(before).items() if now.get(id, 9) > rank}
    assert not better, (place, better)


def given(van):
    """Return the places of all values that a van states or takes as usual."""
    return [
        f"{part.place}.{key}"
        for part in van.everything()
        for key, value in part.values.items()
        if key not in NOT_JUDGED and part.kind.id != "log"
        and value.state in (State.GIVEN, State.DEFAULT, State.NONE)
    ]  # fmt: skip


@pytest.mark.parametrize("name", DEMOS)
def test_a_value_that_is_struck_makes_no_part_better(name):
    rng, van = chance(f"strike-{name}"), demo(name)
    places = given(van)
    for place in rng.sample(places, min(len(places), often(30, 1000))):
        strike(van, place)


def test_a_value_that_is_struck_in_a_drawn_van_makes_no_part_better():
    rng = chance("strike-drawn")
    for _ in range(often(8, 150)):
        van = drawn_van(rng)
        places = given(van)
        for place in rng.sample(places, min(len(places), 8)):
            strike(van, place)


@pytest.mark.parametrize("name", DEMOS)
def test_a_kind_of_parts_that_is_not_seen_makes_no_part_better(name):
    rng, van = chance(f"kinds-{name}"), demo(name)
    kinds = [kind for kind in KINDS if kind != "van" and (van.all(kind) or kind in van.none)]
    for kind in rng.sample(kinds, min(len(kinds), often(8, 50))):
        after = review(van.stating(kind, State.NOT_SEEN))
        now = judged_by_part(after)
        worse = {id for id, rank in judged_by_part(review(van)).items() if now.get(id, 9) > rank}
        assert not worse or kind in unproven_places(after), kind


def test_told_passes_no_safety_item():
    rng, van = chance("told"), demo("marram").changed({"van.kind": "inspection"})
    safety = [
        (f"{part.place}.{key.id}", part[key.id].text)
        for part in van.everything()
        for key in part.kind.keys
        if key.safety and part[key.id].state is State.GIVEN and matters(van, part, key)
    ]
    for place, text in rng.sample(safety, often(12, len(safety))):
        told = van.changed({place: {"found": text, "evidence": "told"}})
        stops = [one for one in review(told).findings if one.not_proven and one.level is Level.STOP]
        assert [one for one in stops if place in one.places], place


def test_mends_of_drawn_vans_hold_and_never_fail():
    rng = chance("mends-drawn")
    for _ in range(often(3, 60)):
        van = drawn_van(rng, circuits=3)
        found = review(van)
        for finding in found.findings[: often(12, 60)]:
            for mend in mends_of(van, found, finding):
                assert mend.text
                keys = {one.key for one in review(mended(van, mend)).findings}
                assert finding.key not in keys


def test_two_hundred_drawn_vans_are_reviewed():
    rng = chance("review-drawn")
    for _ in range(often(25, 200)):
        van = drawn_van(rng)
        found = review(van)
        assert isinstance(found.van, Van)
        assert found.disposition.sentence
        for one in found.findings:
            assert one.sentence and "None" not in one.sentence and "{" not in one.sentence
            assert isinstance(one.level, Level)
        assert len(inspection_list(van)) == 11
        for pattern in worked_patterns(van):
            assert pattern.sentence
