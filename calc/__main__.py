"""`lugwise`, or `python -m calc`: worksheets in a terminal.

    lugwise --list
    lugwise --list wire-drop
    lugwise wire-drop current="30 A" length="12 ft"
    lugwise wire-drop --json current="30 A"
    lugwise --rules
    lugwise --rules fuse.
    lugwise wire-drop --practice 7
    lugwise wire-drop --practice 7 --reply "0.5 V"
    lugwise practice wire-drop fuse-choice --count 10 --seed 42
    lugwise wire-size --van marram.toml --circuit fridge length="4 m"
    lugwise van marram.toml

Bad input ends with status 2 and the sentences on standard error.
"""

import argparse
import json
import signal
import sys
from typing import Any

import calc
from calc.judge import Rule
from calc.practice import mark, question
from calc.units.shown import with_mm2
from calc.worksheet.answer import Answer
from calc.worksheet.data import as_data
from calc.worksheet.fields import Problem


def main(words: list[str] | None = None) -> int:
    """Work one worksheet and print its answer; return the exit status."""
    words = sys.argv[1:] if words is None else words
    if words[:1] == ["van"]:
        from calc import terminal_van  # imported for a whole van alone

        return terminal_van.main(words[1:])
    if words[:1] == ["practice"]:
        from calc import terminal_practice  # nor is a set needed elsewhere

        return terminal_practice.main(words[1:])
    parser = argparse.ArgumentParser(prog="lugwise", description="Calculate a Lugwise worksheet.")
    parser.add_argument("worksheet", nargs="?", help="its id; --list shows them")
    parser.add_argument("inputs", nargs="*", metavar="field=value", help='such as current="30 A"')
    parser.add_argument("--json", action="store_true", help="print the answer as data")
    parser.add_argument("--list", action="store_true", help="list the worksheets, or one's fields")
    parser.add_argument(
        "--rules",
        nargs="?",
        const="",
        metavar="ID",
        help="list the judgements, or those whose id begins so, each with the worksheets it is in",
    )
    parser.add_argument("--practice", type=int, metavar="NUMBER", help="ask that question")
    parser.add_argument("--reply", metavar="TEXT", help="check a reply to that question")
    parser.add_argument("--van", metavar="FILE", help="fill the fields from a van's file")
    parser.add_argument("--circuit", default="", metavar="ID", help="for which part of that van")
    options = parser.parse_intermixed_args(words)
    practised = options.practice is not None
    alone = practised and options.worksheet and not (options.inputs or options.list)
    if options.rules is not None:
        return _print_rules(options.rules)
    if not (options.worksheet or options.list) or ((practised or options.reply) and not alone):
        parser.print_usage(sys.stderr)
        return 2
    try:
        if options.list:
            print(_fields(options.worksheet) if options.worksheet else _sheets())
            return 0
        if options.practice is not None:
            print(_practice(options))
            return 0
        answer, told = _worked(options)
    except calc.InputError as error:
        for problem in error.problems:
            print(problem.message, file=sys.stderr)
        return 2
    print(
        json.dumps(as_data(answer), ensure_ascii=False, indent=2)
        if options.json
        else "\n\n".join((as_text(answer), *told))
    )
    return 0


def _worked(options: argparse.Namespace) -> tuple[Answer, tuple[str, ...]]:
    """Return the answer for what is typed, and what a van's file tells besides.

    Raises InputError, also where the van does not tell what the worksheet needs.
    """
    typed = _inputs(options.inputs)
    if not options.van:
        return calc.work(options.worksheet, typed), ()
    from calc.terminal_van import Unusable, text_of  # imported for a van alone
    from calc.van import asked

    sheet = calc.find(options.worksheet).id
    try:
        van = calc.read_van(text_of(options.van))
    except Unusable as sentence:
        raise calc.InputError((Problem("van", str(sentence)),)) from None
    part = asked.target(van, sheet, options.circuit)
    texts, found = asked.inputs_for(van, sheet, part, typed)
    return calc.work(sheet, texts), (asked.told(van, sheet, found, typed),)


def _print_rules(begins: str) -> int:
    """Print each rule with its level, its text's home and the worksheets that use it."""
    users: dict[str, list[str]] = {}
    rules: dict[str, Rule[Any]] = {}
    for name in calc.worksheets():
        for use in calc.find(name).uses:
            rules[use.rule.id] = use.rule
            users.setdefault(use.rule.id, []).append(name)
    homes = _homes()
    for rule_id in sorted(rule_id for rule_id in rules if rule_id.startswith(begins)):
        names = ", ".join(dict.fromkeys(users[rule_id]))
        print(f"{rule_id}  [{rules[rule_id].level}]  {homes.get(id(rules[rule_id]), 'a sheet')}")
        print(f"    in {names}")
    return 0 if any(rule_id.startswith(begins) for rule_id in rules) else 2


def _homes() -> dict[int, str]:
    """Return the module and the name under which each rule stands, by the rule's identity."""
    found: dict[int, str] = {}
    for name, module in sorted(sys.modules.items()):
        if name.startswith("calc."):
            for constant, value in vars(module).items():
                if isinstance(value, Rule) and (id(value) not in found or ".rules." in name):
                    found[id(value)] = f"{name}.{constant}"
    return found


def _practice(options: argparse.Namespace) -> str:
    """Return a question, or what is said to a reply, and the working; as data if asked for."""
    asked = question(options.worksheet, options.practice)
    marked = None if options.reply is None else mark(asked, options.reply)
    if options.json:
        data = {
            "worksheet": asked.worksheet,
            "number": asked.number,
            "question": asked.text,
            "inputs": dict(asked.inputs),
            "choices": list(asked.choices),
            "asks": asked.task.asks,
            "answer": as_data(asked.answer)["results"][asked.task.asks],
            "link": asked.link,
        }
        if marked:
            data["mark"] = {"right": marked.right, "says": marked.text}
        return json.dumps(data, ensure_ascii=False, indent=2)
    text = "\n".join((asked.text, *(f"    - {choice}" for choice in asked.choices)))
    if marked is None:
        return f'{text}\nTo check a reply, add --reply "…".'
    return f"{text}\n\n{marked.text}\n\n{as_text(asked.answer)}"


def _inputs(pairs: list[str]) -> dict[str, str]:
    inputs = {}
    for pair in pairs:
        name, equals, text = pair.partition("=")
        if not equals:
            raise calc.InputError(
                (
                    Problem(
                        name,
                        f'Write each input as field=value, like current="30 A", not {name!r}.',
                    ),
                )
            )
        inputs[name] = text
    return inputs


def _sheets() -> str:
    return "\n".join(f"{name:20}{calc.find(name).question}" for name in calc.worksheets())


def _fields(name: str) -> str:
    return "\n".join(
        f"{field.id:20}{field.label}"
        + (f" ({field.default})" if field.default else " (may be left out)")
        for field in calc.find(name).fields
    )


def as_text(answer: Answer) -> str:
    """Return the answer as lines for a terminal, with its working."""
    sheet = answer.worksheet
    lines = [sheet.question, f"{answer.verdict.upper()}: {answer.sentence}", ""]
    for result in sheet.results:
        value = answer.values[result.id]
        if result.hide_if_none and value is None:
            continue
        if result.id in answer.tables:
            lines += _table(answer, result.id)
        elif isinstance(value, tuple):
            parts = [f"    - {with_mm2(str(part))}" for part in value]
            lines += [f"{result.label}:", *parts] if parts else []
        else:
            lines.append(f"{result.label}: {answer.shown[result.id]}")
    lines += ["", "Working"]
    for line in answer.working:
        lines.append(f"  {line}".replace("^{", "^(").replace("}", ")"))
        lines.append(f"      {line.text}" + (f" [{line.source}]" if line.source else ""))
    if answer.cautions:
        lines += ["", "Cautions", *(f"  - {said}" for said in answer.cautions)]
    lines += ["", f"Valid for: {sheet.valid}", *(f"  - {said}" for said in answer.notes)]
    taken = [
        f"{sheet.field(name).label}: {r.text}"
        for name, r in answer.inputs.items()
        if not r.given and r.applies and r.value is not None
    ]
    if taken:
        lines += ["", f"Defaults used: {'; '.join(taken)}."]
    return "\n".join(lines)


def _table(answer: Answer, name: str) -> list[str]:
    """Return a table as lines: its first column, and below it the others with their headings."""
    table = next(table for table in answer.worksheet.tables if table.of == name)
    _, *heads = (column.label for column in table.columns)
    lines = [f"{answer.worksheet.result(name).label}:"]
    for first, *others in answer.tables[name]:
        pairs = zip(heads, others, strict=True)
        lines += [f"  {first}", f"      {'; '.join(f'{head}: {cell}' for head, cell in pairs)}"]
    return lines


def run() -> None:
    """Run the command `lugwise`: end quietly when the reader, like `head`, has seen enough."""
    if hasattr(signal, "SIGPIPE"):
        signal.signal(signal.SIGPIPE, signal.SIG_DFL)
    sys.exit(main())


if __name__ == "__main__":
    run()
