"""The usual rigs: a whole card for each technique, inside practice. Common practice, no source."""

import json
import re
import uuid
from typing import Any

import pytest

from rigbuilder import resources
from rigbuilder.reference.knots import Knot
from rigbuilder.reference.load import load
from rigbuilder.reference.ranges import INCH_M, OZ_KG, Span
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.words import JointPlace, LeaderNeed, LineType, Power, ReelKind
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import parse

REFERENCE = load()
KEYS = [
    *("format", "version", "id", "name", "notes", "tags", "presentation", "lure", "rod", "reel", "main"),
    *("backing", "leader", "knots", "hardware", "drag", "water", "from", "cast", "fish", "silenced", "log"),
]
POWERS = dict(zip(("UL", "L", "ML", "M", "MH", "H", "XH"), Power, strict=False))
ROD = re.compile(r"(?P<ft>\d+)'(?P<inch>\d+)\" (?P<power>\w+) \w+ (?P<line>[\d-]+ lb) (?P<lure>.+ oz)")


def _card(technique: Technique) -> dict[str, Any]:
    card: dict[str, Any] = json.loads(resources.read_text("usual", f"{technique.id}.rigcard"))
    return card


PAIRS = [(technique, _card(technique)) for technique in REFERENCE.techniques.values()]
each = pytest.mark.parametrize(("technique", "card"), PAIRS, ids=[technique.id for technique, _ in PAIRS])


def _lb(text: str) -> float:
    return parse(text, Dimension.FORCE).low


def _span(text: str, dimension: Dimension) -> Span:
    found = parse(text, dimension)
    return Span(found.low, found.high)


def _rod(card: dict[str, Any]) -> re.Match[str]:
    found = ROD.fullmatch(card["rod"]["label"])
    assert found
    return found


def test_there_is_exactly_one_card_for_each_technique() -> None:
    cards = {path.stem for path in resources.path("usual").glob("*.rigcard")}
    assert cards == set(REFERENCE.techniques)
    assert len({card["id"] for _, card in PAIRS}) == len({card["name"] for _, card in PAIRS}) == 59


@each
def test_the_card_is_whole(technique: Technique, card: dict[str, Any]) -> None:
    assert list(card) == KEYS
    assert (card["format"], card["version"]) == ("rigbuilder.card", 1)
    assert str(uuid.UUID(card["id"])) == card["id"]
    assert card["name"].endswith(", usual rig")
    assert REFERENCE.technique(card["lure"]["technique"]) is technique
    assert card["presentation"] == technique.presentation
    assert card["silenced"] == card["log"] == []


@each
def test_the_lure_fits_technique_and_rod(technique: Technique, card: dict[str, Any]) -> None:
    weight_oz = parse(card["lure"]["weight"], Dimension.MASS).si / OZ_KG
    assert weight_oz in Span(technique.lure_oz.low - 1e-9, technique.lure_oz.high + 1e-9)
    rod = _rod(card)
    assert weight_oz in _span(rod["lure"], Dimension.MASS)
    assert POWERS[rod["power"]] in technique.rod.powers
    assert 12 * int(rod["ft"]) + int(rod["inch"]) in technique.rod.length_in
    cast_m = parse(card["cast"], Dimension.LENGTH).si
    assert technique.distance_m.low - 1 <= cast_m <= technique.distance_m.high + 1
    fish_kg = parse(card["fish"]["weight"], Dimension.MASS).si
    assert fish_kg in technique.fish_kg


@each
def test_the_line_is_the_one_that_practice_puts_on(technique: Technique, card: dict[str, Any]) -> None:
    main, base = card["main"], technique.base
    assert main["type"] == base.main
    assert _lb(main["test"]) == base.main_lb
    assert main["condition"] == "fresh"
    label = _span(_rod(card)["line"], Dimension.FORCE)
    ends = [_lb(main["test"])] + ([_lb(card["leader"]["test"])] if card["leader"] else [])
    if base.main.is_braided:
        assert max(ends) <= 2.5 * label.high
    else:
        assert ends[0] in label


@each
def test_the_reel_bears_the_line(technique: Technique, card: dict[str, Any]) -> None:
    reel, main, base = card["reel"], card["main"], technique.base
    kind, size = ReelKind(reel["kind"]), float(reel["size"])
    assert kind in technique.reel.kinds
    assert size in technique.reel.sizes[kind]
    ratio = re.search(r"([\d.]+):1", reel["label"])
    assert ratio
    assert float(ratio[1]) in technique.reel.ratio
    if kind is ReelKind.SPINNING:
        assert base.main_lb <= REFERENCE.spinning_limit(size).max_lb(base.main)
    elif base.main.is_braided:
        assert base.main_lb >= REFERENCE.casting_limits.braid_min_lb
    else:
        assert base.main_lb >= REFERENCE.casting_limits.nylon_min_lb
    length_m = parse(main["length"], Dimension.LENGTH).si
    cast_m = parse(card["cast"], Dimension.LENGTH).si
    assert length_m >= max(1.5 * cast_m, cast_m + 23) + 9
    assert not base.main.is_braided or card["backing"]


@each
def test_the_leader_is_inside_practice(technique: Technique, card: dict[str, Any]) -> None:
    leader, practice, base = card["leader"], technique.leader, technique.base
    need = practice.need_on(base.main)
    if leader is None:
        assert need in (LeaderNeed.NONE, LeaderNeed.OPTIONAL)
        return
    assert practice.length_m is not None
    assert practice.test_lb is not None
    assert leader["type"] in practice.materials
    assert parse(leader["length"], Dimension.LENGTH).si in Span(
        practice.length_m.low - INCH_M / 2, practice.length_m.high + INCH_M / 2
    )
    assert _lb(leader["test"]) in practice.test_lb
    assert _lb(leader["test"]) <= base.main_lb or practice.stronger_than_main
    jointed = "knot" in leader or card["hardware"]["swivel"] or leader["type"] == "wire"
    assert jointed


@each
def test_every_knot_suits_its_line_and_place(technique: Technique, card: dict[str, Any]) -> None:
    main = LineType(card["main"]["type"])
    leader = card["leader"]
    end = LineType(leader["type"]) if leader else main
    end_lb = _lb(leader["test"]) if leader else _lb(card["main"]["test"])
    lure = REFERENCE.knot(card["knots"]["lure"])
    _suits(lure, JointPlace.TERMINAL, end, end_lb)
    assert lure.for_large_trebles or not technique.hook_class.is_treble
    if leader and "knot" in leader:
        _suits(REFERENCE.knot(leader["knot"]), JointPlace.LINE_TO_LEADER, main, _lb(card["main"]["test"]))
        long = parse(leader["length"], Dimension.LENGTH).si > 1.0
        assert leader["knot"] == ("fg" if long else "double uni")
    last = LineType(card["backing"]["type"]) if card["backing"] else main
    _suits(REFERENCE.knot(card["knots"]["arbor"]), JointPlace.ARBOR, last, 0)
    if card["backing"]:
        _suits(REFERENCE.knot(card["backing"]["knot"]), JointPlace.BACKING, main, 0)


def _suits(knot: Knot, place: JointPlace, line: LineType, test_lb: float) -> None:
    assert knot.serves(place)
    assert line in knot.suits
    limit = knot.max_lb(line)
    assert limit is None or test_lb <= limit


@each
def test_the_drag_is_inside_practice_and_below_the_chain(technique: Technique, card: dict[str, Any]) -> None:
    drag_lb = _lb(card["drag"])
    assert drag_lb in technique.drag.drag_lb
    ends = [(LineType(card["main"]["type"]), _lb(card["main"]["test"]))]
    if card["leader"]:
        ends.append((LineType(card["leader"]["type"]), _lb(card["leader"]["test"])))
    share = REFERENCE.knot(card["knots"]["lure"]).efficiency_in(ends[-1][0])
    assert share is not None
    weakest_lb = min(test_lb for _, test_lb in ends)
    assert drag_lb <= 0.5 * weakest_lb
    assert drag_lb < 0.85 * share.low * ends[-1][1]
    label = _span(_rod(card)["line"], Dimension.FORCE)
    assert drag_lb <= 0.5 * label.high


@each
def test_what_spins_has_a_swivel_and_teeth_a_bite_leader(technique: Technique, card: dict[str, Any]) -> None:
    if REFERENCE.lure(technique).spins:
        assert card["hardware"]["swivel"]
    if card["fish"]["teeth"] == "present":
        assert card["leader"]["type"] == "wire" or _lb(card["leader"]["test"]) >= 60
