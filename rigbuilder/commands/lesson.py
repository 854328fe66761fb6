"""``rigbuilder lesson``: check a lesson, rig by rig, and print it."""

import argparse
import sys
import textwrap
from pathlib import Path
from typing import Any

from rigbuilder.commands.exits import FAULT, NO_FAULT, UNREADABLE
from rigbuilder.commands.plain import print_json, speaker
from rigbuilder.lessons.check import RigCheck, check_lesson
from rigbuilder.lessons.document import Lesson, LessonUnreadable
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.asjson import finding_data
from rigbuilder.review.core import Finding
from rigbuilder.review.explain import finding_text
from rigbuilder.review.proof import proven
from rigbuilder.review.speak import Speaker
from rigbuilder.store.errors import shown
from rigbuilder.store.lessons import load_lesson

_HELP = "check a lesson, rig by rig, and print it"
_CODES = (
    "Exit codes: 0 every rig is as it is meant, 1 a meant rule is silent on some rig, or a fault or risk "
    "speaks there that nobody meant, 2 the lesson cannot be read."
)
_WIDTH = 88


def add_to(commands: Any) -> None:
    """Put ``lesson`` among the commands."""
    lesson = commands.add_parser("lesson", help=_HELP, description=f"{_HELP.capitalize()}. {_CODES}")
    lesson.add_argument("file", type=Path, help="the .riglesson file")
    lesson.add_argument("--json", action="store_true", help="print plain data")
    lesson.add_argument("--metric", action="store_true", help="write figures in kilograms and metres")
    lesson.set_defaults(run=check)


def check(options: argparse.Namespace) -> int:
    """Check and print a lesson; return the exit code."""
    reference = load()
    try:
        lesson = load_lesson(options.file, reference).lesson
    except LessonUnreadable as error:
        for line in str(error).splitlines():
            print(f"rigbuilder: {line}", file=sys.stderr)
        return UNREADABLE
    checks = check_lesson(lesson, reference, House.shipped())
    if options.json:
        print_json(_data(lesson, checks, options.file, speaker(options)))
    else:
        print(_text(lesson, checks, speaker(options)))
    return NO_FAULT if all(each.is_as_meant for each in checks) else FAULT


def _data(lesson: Lesson, checks: tuple[RigCheck, ...], path: Path, said: Speaker) -> dict[str, Any]:
    return {
        "file": shown(path),
        "id": lesson.id,
        "name": lesson.name,
        "seed": lesson.seed,
        "as_meant": all(each.is_as_meant for each in checks),
        "rigs": [_rig_data(each, said) for each in checks],
    }


def _rig_data(check: RigCheck, said: Speaker) -> dict[str, Any]:
    def found(findings: tuple[Finding, ...]) -> list[dict[str, Any]]:
        return [finding_data(check.rig.card, check.report, finding, said) for finding in findings]

    return {
        "rig": check.number,
        "name": check.rig.name,
        "question": check.rig.question,
        "meant": list(check.rig.meant),
        "as_meant": check.is_as_meant,
        "fired": found(check.fired),
        "silent": list(check.silent),
        "unmeant": found(check.unmeant),
        "beside": found(check.beside),
    }


def _text(lesson: Lesson, checks: tuple[RigCheck, ...], said: Speaker) -> str:
    blocks = [lesson.name, _wrapped(lesson.introduction)]
    for check in checks:
        blocks += [_rig_text(check, said)]
    blocks += [_wrapped(lesson.closing)]
    wrong = [str(check.number) for check in checks if not check.is_as_meant]
    if wrong:
        blocks.append(f"Not as meant: rig {', '.join(wrong)} of {len(checks)}.")
    else:
        blocks.append(f"All {len(checks)} rigs are as meant.")
    return "\n\n".join(block for block in blocks if block)


def _rig_text(check: RigCheck, said: Speaker) -> str:
    head = "as meant" if check.is_as_meant else "NOT AS MEANT"
    meant = ", ".join(check.rig.meant) or "a right rig"
    lines = [f"Rig {check.number}: {check.rig.name} ({head}: {meant})"]
    lines += [_wrapped(check.rig.question)] if check.rig.question else []
    for finding in (*check.fired, *check.beside):
        lines.append(finding_text(finding, proven(check.rig.card, check.report, finding), said))
    lines += [f"  the rule {name} is meant and does not speak" for name in check.silent]
    for finding in check.unmeant:
        lines.append(f"  not meant, but true: {finding.severity.word}, {finding.headline(said)}")
        lines.append(f"    (the rule {finding.rule.name})")
    lines += [_wrapped(check.rig.remark)] if check.rig.remark else []
    return "\n".join(lines)


def _wrapped(text: str) -> str:
    return textwrap.fill(text, _WIDTH, initial_indent="  ", subsequent_indent="  ")
