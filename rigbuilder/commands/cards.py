"""``rigbuilder cards``: list the cards of a folder, check them all, pack them into one file."""

import argparse
from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from rigbuilder.commands.cardlook import look_at_all
from rigbuilder.commands.exits import FAULT, NO_FAULT, UNREADABLE
from rigbuilder.commands.plain import print_json
from rigbuilder.commands.progress import Stopped
from rigbuilder.store.codec import Document
from rigbuilder.store.errors import AlreadyThere, CannotWrite, NotFound, StoreError, shown
from rigbuilder.store.listing import card_paths
from rigbuilder.store.paths import find_places
from rigbuilder.store.sets import SET_SUFFIX, export_set

_WHERE = "folders or .rigcard files; without any, your own cards"
_HELP = "list cards, check them all, or pack them into one file"
_CODES = (
    "Exit codes: 0 nothing to say, 1 at least one card has a fault (check), 2 something cannot be read, "
    "130 stopped with Ctrl+C."
)
_COLUMNS = ("name", "technique", "line", "verdict", "file")
_WIDEST = 40


def add_to(commands: Any) -> None:
    """Put ``cards`` with its three verbs among the commands."""
    cards = commands.add_parser("cards", help=_HELP, description=f"{_HELP}. {_CODES}".capitalize())
    verbs = cards.add_subparsers(dest="verb", required=True, metavar="list|check|export")
    for name, run, says in (
        ("list", _list, "name, technique, line, verdict and file of each card"),
        ("check", _check, "what the review says of each card, and which cannot be read"),
        ("export", _export, "pack cards into one .rigset file"),
    ):
        verb = verbs.add_parser(name, help=says, description=f"{says[0].upper()}{says[1:]}. {_CODES}")
        verb.add_argument("where", nargs="*", type=Path, metavar="FOLDER|CARD", help=_WHERE)
        verb.add_argument("--json", action="store_true", help="print plain data")
        verb.set_defaults(run=run)
    verb.add_argument("--to", type=Path, required=True, metavar="SET", help="the .rigset file to write")
    verb.add_argument("--over", action="store_true", help="write over a file that is there")


def _list(options: argparse.Namespace) -> int:
    try:
        looked = look_at_all(_paths(options.where))
    except Stopped as stop:
        return stop.tell()
    if options.json:
        print_json([card.as_data() for card in looked])
        return NO_FAULT
    rows = [(card.name, card.technique, card.line, card.verdict, shown(card.path.name)) for card in looked]
    for line in _table([_COLUMNS, *rows]) if rows else ["There are no cards here."]:
        print(line)
    return NO_FAULT


def _check(options: argparse.Namespace) -> int:
    try:
        looked = look_at_all(_paths(options.where))
    except Stopped as stop:
        return stop.tell()
    counts = Counter(card.verdict for card in looked)
    if options.json:
        print_json({"cards": [card.as_data(whole=True) for card in looked], "counts": dict(counts)})
    else:
        for card in looked:
            print(f"{card.verdict:<10} {shown(card.path)}: {card.name}")
            for reason in card.reasons:
                print(f"           {reason}")
        print(_summary(counts) if looked else "There are no cards here.")
    if any(not card.readable for card in looked):
        return UNREADABLE
    return FAULT if counts["fault"] else NO_FAULT


def _export(options: argparse.Namespace) -> int:
    target: Path = options.to
    target = target if target.suffix == SET_SUFFIX else target.with_name(target.name + SET_SUFFIX)
    if target.exists() and not options.over:
        raise AlreadyThere(
            target, f"“{shown(target)}” exists already.", "Choose another name, or add --over to replace it."
        )
    try:
        looked = look_at_all(_paths(options.where), review=False)
    except Stopped as stop:
        return stop.tell()
    broken = next((card for card in looked if card.document is None), None)
    if broken is not None:
        raise StoreError(
            broken.path, f"Nothing was exported. {broken.trouble}", "Mend that card or leave it out."
        )
    documents: list[Document] = [card.document for card in looked if card.document is not None]
    if not documents:
        raise CannotWrite(found="no cards", expected="at least one card to pack")
    for note in export_set(documents, target):
        print(note)
    if options.json:
        print_json({"file": str(target), "cards": len(documents)})
    else:
        print(f"{len(documents):,} card{'s' if len(documents) != 1 else ''} in {shown(target)}")
    return NO_FAULT


def _paths(given: Sequence[Path]) -> list[Path]:
    """Return the cards meant, each once, in the order given.

    Raises:
        StoreError: something named does not exist, or a folder cannot be listed.
    """
    if not given:
        own = find_places().cards
        return card_paths(own) if own.exists() else []
    found: list[Path] = []
    for place in given:
        if place.is_dir():
            found += card_paths(place)
        elif place.exists() or place.is_symlink():
            found.append(place)
        else:
            raise NotFound(place, f"“{shown(place)}” does not exist.", "Name a folder of cards, or a card.")
    return list(dict.fromkeys(found))


def _table(rows: Sequence[Sequence[str]]) -> list[str]:
    """Return rows as lines with aligned columns; the last one as long as it is."""
    texts = [[_short(text) for text in row[:-1]] + [row[-1]] for row in rows]
    widths = [max(map(len, column)) for column in list(zip(*texts, strict=True))[:-1]]
    return [
        "  ".join([*(text.ljust(width) for text, width in zip(row[:-1], widths, strict=True)), row[-1]])
        for row in texts
    ]


def _short(text: str) -> str:
    plain = shown(" ".join(text.split()))
    return plain if len(plain) <= _WIDEST else plain[: _WIDEST - 1] + "…"


def _summary(counts: Counter[str]) -> str:
    total = sum(counts.values())
    said = ", ".join(f"{count:,} {word}" for word, count in counts.most_common())
    return f"{total:,} card{'s' if total != 1 else ''}: {said}"
