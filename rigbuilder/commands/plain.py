"""The commands about one card, the rules, the techniques and labels."""

import argparse
import json
import sys
from dataclasses import asdict
from pathlib import Path
from typing import Any

from rigbuilder.commands.exits import FAULT, NO_FAULT, UNREADABLE
from rigbuilder.commands.house import practice
from rigbuilder.model.labels.understand import understand
from rigbuilder.model.problems import nearest
from rigbuilder.model.reading import read_rig
from rigbuilder.model.schema import card_schema
from rigbuilder.plans.data import figures_of_plans
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference, UnknownName, load
from rigbuilder.review.asjson import review_data, rule_data
from rigbuilder.review.coverage import coverage, coverage_text
from rigbuilder.review.engine import Report, review
from rigbuilder.review.explain import rule_text
from rigbuilder.review.middle import middle_data, middle_text, middle_ways
from rigbuilder.review.printed import label_text, review_text, technique_text
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.speak import Speaker
from rigbuilder.store.cardfile import parse_card
from rigbuilder.store.codec import CARD_LIMITS
from rigbuilder.store.reading import read_file
from rigbuilder.units.systems import UnitSystem


def speaker(options: argparse.Namespace) -> Speaker:
    """Return the speaker for the units asked for."""
    return Speaker(UnitSystem.METRIC if options.metric else UnitSystem.IMPERIAL)


def print_json(data: Any) -> None:
    """Print plain data for another program."""
    print(json.dumps(data, indent=2, ensure_ascii=False, allow_nan=False))


def review_card(options: argparse.Namespace) -> int:
    """Review a card; return the exit code."""
    path = Path(options.card)
    reference, house = practice()
    data, _ = read_file(path, limit=CARD_LIMITS.size)
    reading = read_rig(parse_card(data, path), reference, file=str(path))
    assert reading.rig is not None  # noqa: S101 - read_rig raises otherwise
    report: Report = review(reading.rig, reference, house)
    if options.json:
        told = review_data(reading, report, speaker(options))
        told["figures"] |= figures_of_plans(report.case, speaker(options))
        print_json(told)
    else:
        print(review_text(reading, report, speaker(options)))
    return FAULT if report.verdict.word == "fault" else NO_FAULT


def tell_rules(options: argparse.Namespace) -> int:
    """Print the rule book, one rule of it, or what it covers; return the exit code."""
    if options.coverage:
        return _tell_coverage(options)
    chosen = [rule for rule in RULES if options.rule in (None, rule.name)]
    if not chosen:
        hint = nearest(options.rule, [rule.name for rule in RULES])
        print(f"rigbuilder: there is no rule named {options.rule!r}. {hint}".rstrip(), file=sys.stderr)
        return UNREADABLE
    if options.json:
        print_json([rule_data(rule) for rule in chosen])
    else:
        print("\n\n".join(rule_text(rule) for rule in chosen))
    return NO_FAULT


def _tell_coverage(options: argparse.Namespace) -> int:
    if options.json:
        print_json([asdict(row) for row in coverage(load())])
    else:
        print(coverage_text(load()))
    return NO_FAULT


def tell_techniques(options: argparse.Namespace) -> int:
    """Print the techniques, or the middle way between two of them; return the exit code."""
    reference, house = practice()
    if options.between:
        return _tell_middle(options, reference, house)
    if options.json:
        print_json([technique.model_dump(mode="json") for technique in reference.techniques.values()])
    else:
        print("\n".join(technique_text(technique) for technique in reference.techniques.values()))
    return NO_FAULT


def _tell_middle(options: argparse.Namespace, reference: Reference, house: House) -> int:
    try:
        one, other = (reference.technique(name) for name in options.between)
    except UnknownName as error:
        print(f"rigbuilder: {error}", file=sys.stderr)
        return UNREADABLE
    ways = middle_ways(one, other, reference, house)
    if options.json:
        print_json(middle_data(ways))
    else:
        print(middle_text(ways, one, other))
    return NO_FAULT


def print_schema(_: argparse.Namespace) -> int:
    """Print the JSON Schema of a card; return the exit code."""
    print_json(card_schema())
    return NO_FAULT


def understand_label(options: argparse.Namespace) -> int:
    """Print what is understood of a label; return the exit code."""
    understanding = understand(options.kind, " ".join(options.text))
    if options.json:
        print_json(understanding.as_dict())
    else:
        print(label_text(understanding))
    return NO_FAULT
