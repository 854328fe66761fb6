"""The commands. Exit codes: 0 no fault, 1 a fault, 2 the card or the call cannot be read."""

import argparse
import json
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from rigbuilder import __version__
from rigbuilder.model.labels.understand import understand
from rigbuilder.model.problems import CardUnreadable, nearest
from rigbuilder.model.reading import read_rig
from rigbuilder.model.schema import card_schema
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference, load
from rigbuilder.review.asjson import review_data, rule_data
from rigbuilder.review.engine import Report, review
from rigbuilder.review.explain import rule_text
from rigbuilder.review.printed import label_text, review_text, technique_text
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.speak import Speaker
from rigbuilder.store.cardfile import parse_card
from rigbuilder.store.codec import CARD_LIMITS
from rigbuilder.store.errors import StoreError
from rigbuilder.store.reading import read_file
from rigbuilder.units.systems import UnitSystem

NO_FAULT, FAULT, UNREADABLE = 0, 1, 2
_COMMANDS = ("review", "rules", "techniques", "schema", "label")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code."""
    given = list(sys.argv[1:] if arguments is None else arguments)
    if not given or (given[0] not in _COMMANDS and not given[0].startswith("-")):
        return _open_window([Path(name) for name in given])
    options = _parser().parse_args(given)
    run: Callable[[argparse.Namespace], int] = options.run
    try:
        return run(options)
    except (StoreError, CardUnreadable) as error:
        print(f"rigbuilder: {error}", file=sys.stderr)
        return UNREADABLE
    except BrokenPipeError:
        sys.stderr.close()
        return NO_FAULT


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="rigbuilder",
        description="Build a fishing rig at the bench and understand it. "
        "Without a command the window opens, on the cards named.",
    )
    parser.add_argument("--version", action="version", version=f"rigbuilder {__version__}")
    commands = parser.add_subparsers(dest="command", required=True)
    _add(commands, "review", _review, "review a card", ("card", "the .rigcard file"))
    rules = _add(commands, "rules", _rules, "what each rule says, why, and how that is known")
    rules.add_argument("rule", nargs="?", help="one rule by its name")
    _add(commands, "techniques", _techniques, "the techniques and the line that practice puts on each")
    _add(commands, "schema", _schema, "the JSON Schema of a card")
    label = _add(commands, "label", _label, "what is understood of a label, part by part")
    label.add_argument("kind", choices=("rod", "reel", "line", "lure"))
    label.add_argument("text", nargs="+", help="the label as printed")
    return parser


def _add(
    commands: Any, name: str, run: Callable[[argparse.Namespace], int], says: str, *words: tuple[str, str]
) -> argparse.ArgumentParser:
    command: argparse.ArgumentParser = commands.add_parser(name, help=says, description=says)
    for word, meaning in words:
        command.add_argument(word, help=meaning)
    command.add_argument("--json", action="store_true", help="print plain data")
    command.add_argument("--metric", action="store_true", help="write figures in kilograms and metres")
    command.set_defaults(run=run)
    return command


def _speaker(options: argparse.Namespace) -> Speaker:
    return Speaker(UnitSystem.METRIC if options.metric else UnitSystem.IMPERIAL)


def _print_json(data: Any) -> None:
    print(json.dumps(data, indent=2, ensure_ascii=False, allow_nan=False))


def _review(options: argparse.Namespace) -> int:
    path, reference = Path(options.card), load()
    data, _ = read_file(path, limit=CARD_LIMITS.size)
    reading = read_rig(parse_card(data, path), reference, file=str(path))
    assert reading.rig is not None  # noqa: S101 - read_rig raises otherwise
    report: Report = review(reading.rig, reference, House.shipped())
    if options.json:
        _print_json(review_data(reading, report, _speaker(options)))
    else:
        print(review_text(reading, report, _speaker(options)))
    return FAULT if report.verdict.word == "fault" else NO_FAULT


def _rules(options: argparse.Namespace) -> int:
    chosen = [rule for rule in RULES if options.rule in (None, rule.name)]
    if not chosen:
        hint = nearest(options.rule, [rule.name for rule in RULES])
        print(f"rigbuilder: there is no rule named {options.rule!r}. {hint}".rstrip(), file=sys.stderr)
        return UNREADABLE
    if options.json:
        _print_json([rule_data(rule) for rule in chosen])
    else:
        print("\n\n".join(rule_text(rule) for rule in chosen))
    return NO_FAULT


def _techniques(options: argparse.Namespace) -> int:
    reference: Reference = load()
    if options.json:
        _print_json([technique.model_dump(mode="json") for technique in reference.techniques.values()])
    else:
        print("\n".join(technique_text(technique) for technique in reference.techniques.values()))
    return NO_FAULT


def _schema(_: argparse.Namespace) -> int:
    _print_json(card_schema())
    return NO_FAULT


def _label(options: argparse.Namespace) -> int:
    understanding = understand(options.kind, " ".join(options.text))
    if options.json:
        _print_json(understanding.as_dict())
    else:
        print(label_text(understanding))
    return NO_FAULT


def _open_window(cards: Sequence[Path]) -> int:
    from rigbuilder.app import run  # the window's libraries are loaded by this one command only

    return run(cards)
