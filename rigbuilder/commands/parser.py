"""The commands that need no window: what may be typed, and who does it."""

import argparse
import sys
from collections.abc import Callable, Sequence
from typing import Any

from rigbuilder import __version__
from rigbuilder.commands import cards, lesson, plain, plan
from rigbuilder.commands.exits import NO_FAULT, UNREADABLE
from rigbuilder.model.problems import CardUnreadable
from rigbuilder.store.errors import StoreError

Run = Callable[[argparse.Namespace], int]


def run_command(given: Sequence[str]) -> int:
    """Run one command and return its exit code; what went wrong is one sentence on the error output."""
    options = _parser().parse_args(given)
    run: Run = options.run
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
    _add(commands, "review", plain.review_card, "review a card", ("card", "the .rigcard file"))
    says = "fill and cost of the reel, joints, where it breaks, what drag, what is due"
    _add(commands, "plan", plan.plan_card, says, ("card", "the .rigcard file"))
    rules = _add(commands, "rules", plain.tell_rules, "what each rule says, why, and how that is known")
    rules.add_argument("rule", nargs="?", help="one rule by its name")
    rules.add_argument("--coverage", action="store_true", help="what the book covers, and by what")
    techniques = _add(
        commands,
        "techniques",
        plain.tell_techniques,
        "the techniques and the line that practice puts on each",
    )
    techniques.add_argument(
        "--between",
        nargs=2,
        metavar="TECHNIQUE",
        help="the line for both, and what it costs",
    )
    _add(commands, "schema", plain.print_schema, "the JSON Schema of a card")
    label = _add(commands, "label", plain.understand_label, "what is understood of a label, part by part")
    label.add_argument("kind", choices=("rod", "reel", "line", "lure"))
    label.add_argument("text", nargs="+", help="the label as printed")
    cards.add_to(commands)
    lesson.add_to(commands)
    return parser


def _add(commands: Any, name: str, run: Run, says: str, *words: tuple[str, str]) -> argparse.ArgumentParser:
    command: argparse.ArgumentParser = commands.add_parser(name, help=says, description=says)
    for word, meaning in words:
        command.add_argument(word, help=meaning)
    command.add_argument("--json", action="store_true", help="print plain data")
    command.add_argument("--metric", action="store_true", help="write figures in kilograms and metres")
    command.set_defaults(run=run)
    return command
