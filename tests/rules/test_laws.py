"""Laws of the rule book over many rigs: what may never happen, whatever the rig."""

import random
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from rigbuilder.model.document import Document, put_all
from rigbuilder.model.reading import read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.reference.words import LineType
from rigbuilder.review.engine import Report, review
from rigbuilder.review.leader_aim import leader_aim
from rigbuilder.review.proof import make_right
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import UnitSystem

TECHNIQUES = some.sampled_from(sorted(load().techniques))
TYPES = (LineType.NYLON, LineType.FLUOROCARBON, LineType.BRAID)
GRASS = ("open", "sparse grass", "thick grass", "matted grass")
HARD = ("open", "rock", "wood")
CLEARNESS_M = (0.2, 0.6, 1.5, 4.0)
DAYS = some.fixed_dictionaries(
    {},
    optional={
        "water.pressure": some.sampled_from(["low", "medium", "high"]),
        "water.depth": some.sampled_from(["1 m", "3 m", "7 m", "12 m"]),
        "water.temperature": some.sampled_from(["4 C", "18 C"]),
        "water.wind": some.sampled_from(["calm", "breeze", "strong"]),
        "water.cover": some.sampled_from(
            ["open", "sparse grass", "thick grass", "matted grass", "wood", "rock"]
        ),
        "water.clarity": some.sampled_from(["0.2 m", "0.6 m", "1.5 m", "4 m"]),
        "fish.weight": some.sampled_from(["0.2 kg", "1.5 kg", "6 kg"]),
        "fish.teeth": some.sampled_from(["none", "present"]),
        "from": some.sampled_from(["shore", "boat"]),
        "cast": some.sampled_from(["6 m", "20 m", "35 m", "50 m"]),
    },
)
RIGS = some.fixed_dictionaries(
    {},
    optional={
        "main.test": some.sampled_from(["4 lb", "8 lb", "14 lb", "20 lb", "40 lb", "65 lb"]),
        "main.type": some.sampled_from(["nylon", "copolymer", "fluorocarbon", "braid"]),
        "main.condition": some.sampled_from(["fresh", "worn", "kinked"]),
        "main.length": some.sampled_from(["40 yd", "100 yd", "200 yd"]),
        "backing": some.none(),
        "leader": some.none(),
        "knots.lure": some.sampled_from(["palomar", "improved clinch", "uni", "snell"]),
        "drag": some.sampled_from(["1 lb", "4 lb", "12 lb"]),
        "rod.line": some.sampled_from(["4-10 lb", "10-20 lb", "30-65 lb"]),
        "rod.lure": some.sampled_from(["1/16-3/8 oz", "1/4-1 oz", "1-4 oz"]),
        "hardware.swivel": some.sampled_from([None, "8 lb", "50 lb"]),
    },
)


def reported(document: Document) -> Report:
    """Review a card that must be readable."""
    reading = read(document, load())
    assert reading.rig is not None, [str(problem) for problem in reading.problems]
    return review(reading.rig, load(), House.shipped())


def card(technique: str, *changes: dict[str, Any]) -> Document:
    """Return the usual card of a technique with changes."""
    document = usual_document(technique)
    for change in changes:
        document = put_all(document, change)
    return document


@settings(max_examples=20, deadline=None, derandomize=True)
@given(technique=TECHNIQUES, day=DAYS, family=some.sampled_from([GRASS, HARD]))
def test_heavier_cover_within_its_family_never_asks_for_lighter_line(
    technique: str, day: dict[str, str], family: tuple[str, ...]
) -> None:
    reports = [reported(card(technique, day, {"water.cover": cover})) for cover in family]
    for kind in TYPES:
        aims = [bounds for report in reports if (bounds := report.case.aim.for_type(kind)) is not None]
        assert [found.aim_lb for found in aims] == sorted(found.aim_lb for found in aims)
        assert [found.low_lb for found in aims] == sorted(found.low_lb for found in aims)


@settings(max_examples=20, deadline=None, derandomize=True)
@given(technique=TECHNIQUES, day=DAYS)
def test_clearer_water_never_asks_for_a_shorter_or_more_visible_leader(
    technique: str, day: dict[str, str]
) -> None:
    cases = [reported(card(technique, day, {"water.clarity": f"{clear} m"})).case for clear in CLEARNESS_M]
    leaders = [leader_aim(case.aim, case.main.type) for case in cases]
    lengths = [leader.length_in[1] for leader in leaders if leader.length_in is not None]
    assert lengths == sorted(lengths)
    for murky, clear in pairwise(leaders):
        if murky.materials and murky.materials[0] is LineType.FLUOROCARBON:
            assert clear.materials[0] is LineType.FLUOROCARBON


@settings(max_examples=20, deadline=None, derandomize=True)
@given(technique=TECHNIQUES, day=DAYS)
def test_clearer_water_never_asks_for_heavier_line(technique: str, day: dict[str, str]) -> None:
    cases = [reported(card(technique, day, {"water.clarity": f"{clear} m"})).case for clear in CLEARNESS_M]
    for kind in TYPES:
        aims = [found.aim_lb for case in cases if (found := case.aim.for_type(kind)) is not None]
        assert aims == sorted(aims, reverse=True)


@settings(max_examples=20, deadline=None, derandomize=True)
@given(technique=TECHNIQUES, ounces=some.lists(some.floats(0.02, 8.0), min_size=2, max_size=5))
def test_a_heavier_lure_never_asks_for_a_lighter_rod_or_line(technique: str, ounces: list[float]) -> None:
    reports = [reported(card(technique, {"lure.weight": f"{weight:.3f} oz"})) for weight in sorted(ounces)]
    said = [{found.rule.name for found in report.findings} for report in reports]
    for lighter, heavier in pairwise(said):
        assert not ("lure-heavier-than-rod" in lighter and "lure-heavier-than-rod" not in heavier)
        assert not ("lure-lighter-than-rod" not in lighter and "lure-lighter-than-rod" in heavier)
    for kind in TYPES:
        aims = [found.aim_lb for report in reports if (found := report.case.aim.for_type(kind)) is not None]
        assert aims == sorted(aims)


@settings(max_examples=30, deadline=None, derandomize=True)
@given(technique=TECHNIQUES, day=DAYS, rig=RIGS, seed=some.integers(0, 999))
def test_a_review_never_depends_on_the_order_of_fields(
    technique: str, day: dict[str, str], rig: dict[str, Any], seed: int
) -> None:
    document = card(technique, day, rig)
    assert _said(reported(document)) == _said(reported(_shuffled(document, random.Random(seed))))


def _shuffled(value: Any, order: random.Random) -> Any:
    if not isinstance(value, dict):
        return value
    keys = list(value)
    order.shuffle(keys)
    return {key: _shuffled(value[key], order) for key in keys}


def _said(report: Report) -> list[tuple[str, str, str, str]]:
    say = Speaker()
    return [(f.rule.name, f.severity.word, f.headline(say), f.why(say)) for f in report.findings]


@settings(max_examples=30, deadline=None, derandomize=True)
@given(technique=TECHNIQUES, day=DAYS, rig=RIGS)
def test_words_stay_in_bounds_on_any_rig_and_in_any_units(
    technique: str, day: dict[str, str], rig: dict[str, Any]
) -> None:
    """Units are for the eye: the same reasons in both, each within the convention."""
    report = reported(card(technique, day, rig))
    for system in UnitSystem:
        say = Speaker(system)
        for found in report.findings:
            headline, why = found.headline(say), found.why(say)
            assert 8 <= len(headline) <= 90, headline
            assert "None" not in headline + why
            assert "nan" not in (headline + why).split()
            found.hit.numbers()
        for _, words in report.right(say):
            assert words


METRIC = {"lb": ("kg", 0.45359237), "oz": ("g", 28.349523125), "in": ("cm", 2.54), "yd": ("m", 0.9144)}


@settings(max_examples=20, deadline=None, derandomize=True)
@given(technique=TECHNIQUES, day=DAYS, rig=RIGS)
def test_silence_is_stable_when_a_card_is_written_in_other_units(
    technique: str, day: dict[str, str], rig: dict[str, Any]
) -> None:
    document = card(technique, day, rig)
    metric = put_all(document, {path: _metric(_at(document, path)) for path in _plain(document)})
    convention = {"main.convention": "US test"}  # else kilograms would be read by the European convention
    before, after = (reported(put_all(version, convention)) for version in (document, metric))
    assert [(f.rule.name, f.severity) for f in before.findings] == [
        (f.rule.name, f.severity) for f in after.findings
    ]


def _plain(document: Document) -> list[str]:
    paths = (
        "main.test",
        "main.length",
        "leader.test",
        "leader.length",
        "drag",
        "lure.weight",
        "hardware.swivel",
    )
    return [path for path in paths if isinstance(_at(document, path), str)]


def _at(document: Document, path: str) -> Any:
    here: Any = document
    for key in path.split("."):
        here = here.get(key) if isinstance(here, dict) else None
    return here


def _metric(text: str) -> str:
    value, unit = text.rsplit(" ", 1)
    if unit not in METRIC:
        return text
    symbol, factor = METRIC[unit]
    whole, _, part = value.partition(" ")
    number = sum(_number(piece) for piece in (whole, part) if piece)
    return f"{number * factor:.9f} {symbol}"


def _number(text: str) -> float:
    top, _, bottom = text.partition("/")
    return float(top) / float(bottom) if bottom else float(top)


@settings(max_examples=12, deadline=None, derandomize=True)
@given(technique=TECHNIQUES, rig=RIGS)
def test_make_right_never_makes_it_worse_and_settles(technique: str, rig: dict[str, Any]) -> None:
    document = card(technique, rig)
    before = reported(document)
    made = make_right(document, before)
    assert _burden(made.after) <= _burden(before)
    assert _burden(reported(made.document)) == _burden(made.after)
    again = make_right(made.document, made.after)
    assert len(made.remedies) == 6 or not again.remedies


def _burden(report: Report) -> tuple[int, int]:
    words = [found.severity.word for found in report.findings]
    return words.count("fault"), words.count("risk")


@pytest.mark.parametrize("technique", ["drop-shot", "flip-jig", "walking-bait", "spinnerbait"])
def test_make_right_takes_one_remedy_for_one_mistake(technique: str) -> None:
    document = card(technique, {"drag": "30 lb"})
    made = make_right(document, reported(document))
    assert len(made.remedies) == 1
    assert _burden(made.after) == (0, 0)
