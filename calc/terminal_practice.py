"""`lugwise practice`: a set of questions for a class in a terminal, the same as in the page.

    lugwise practice wire-drop fuse-choice --count 10 --seed 42
    lugwise practice wire-drop fuse-choice --count 10 --seed 42 --key
    lugwise practice "v=1&sheets=wire-drop,fuse-choice&count=10&seed=42" --json

One question is asked and checked by `lugwise wire-drop --practice 7 --reply "0.5 V"`.
"""

import argparse
import json
import sys

from calc.practice import Question
from calc.practice.sets import PracticeSet, asking
from calc.worksheet.answer import InputError


def main(words: list[str]) -> int:
    """Print one set; return the exit status."""
    parser = argparse.ArgumentParser(prog="lugwise practice", description="Make a practice set.")
    parser.add_argument("sheets", nargs="*", help="ids of worksheets, or the link of a set")
    parser.add_argument("--count", default="10", help="how many questions (10)")
    parser.add_argument("--seed", default="1", help="the same seed gives the same set (1)")
    parser.add_argument("--key", action="store_true", help="print the answers and the working")
    parser.add_argument("--json", action="store_true", help="print the set as data")
    parser.add_argument("--list", action="store_true", help="list the worksheets with questions")
    options = parser.parse_args(words)
    if options.list:
        print("\n".join(asking()))
        return 0
    try:
        chosen = _chosen(options)
    except InputError as error:
        for problem in error.problems:
            print(problem.message, file=sys.stderr)
        return 2
    asked = chosen.questions()
    print(as_data(chosen, asked) if options.json else as_text(chosen, asked, key=options.key))
    return 0


def _chosen(options: argparse.Namespace) -> PracticeSet:
    if len(options.sheets) == 1 and "=" in options.sheets[0]:
        return PracticeSet.open(options.sheets[0])
    return PracticeSet.of(options.sheets, options.count, options.seed)


def as_text(chosen: PracticeSet, asked: tuple[Question, ...], *, key: bool) -> str:
    """Return a set as lines: its questions, or with `key` their answers and working."""
    lines = [f"Practice set: {chosen.link}", ""]
    for place, one in enumerate(asked, 1):
        lines.append(f"{place}. {one.asked.label}: {one.shown}" if key else f"{place}. {one.text}")
        if key:
            steps = (str(line).replace("^{", "^(").replace("}", ")") for line in one.steps)
            lines += [f"      {step}" for step in steps]
        else:
            lines += [f"    - {choice}" for choice in one.choices]
        lines += [f"    ({one.worksheet} --practice {one.number})", ""]
    return "\n".join(lines).rstrip()


def as_data(chosen: PracticeSet, asked: tuple[Question, ...]) -> str:
    """Return a set as JSON text."""
    questions = [
        {
            "worksheet": one.worksheet,
            "number": one.number,
            "question": one.text,
            "choices": list(one.choices),
            "hint": one.hint,
            "shown": one.shown,
        }
        for one in asked
    ]
    data = {"link": chosen.link, "questions": questions}
    return json.dumps(data, ensure_ascii=False, indent=2)
