"""Comparing cards: what differs is there, what does not is not, and nothing is said that was not computed."""

from pathlib import Path

import pytest

from rigbuilder.model.document import Document, drop, put_all
from rigbuilder.model.reading import read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference, load
from rigbuilder.reference.ranges import Range
from rigbuilder.review.engine import review
from rigbuilder.review.figuring.table import FACTS
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.compare import Comparison, Row, compare, figure_words, said
from rigbuilder.viewmodels.compare_cards import BENCH, compare_cards
from tests.unit.viewmodels.parts import make_room


@pytest.fixture(scope="module")
def reference() -> Reference:
    return load()


def compared(reference: Reference, *documents: Document, metric: bool = False) -> Comparison:
    speaker = Speaker(UnitSystem.METRIC if metric else UnitSystem.IMPERIAL)
    return compare(documents, reference, House.shipped(), speaker)


def row(rows: tuple[Row, ...], what: str) -> Row:
    return next(each for each in rows if each.what == what)


FROG = usual_document("frog")


def changed(**changes: object) -> Document:
    return put_all(FROG, {key.replace("__", "."): value for key, value in changes.items()})


def test_a_card_and_itself_are_alike(reference: Reference) -> None:
    found = compared(reference, FROG, changed(name="Other name", id="other"))
    assert found.card == found.figures == found.reasons == ()
    assert "alike" in found.alike
    assert [side.verdict for side in found.sides] == ["right", "right"]


def test_what_differs_is_told_with_its_figures_and_reasons(reference: Reference) -> None:
    other = changed(main__type="fluorocarbon", main__test="16 lb")
    found = compared(reference, FROG, other)
    assert [each.what for each in found.card] == ["Main line type", "Main line test"]
    assert row(found.card, "Main line type").values == ("braid", "fluorocarbon")
    assert row(found.card, "Main line type").told == ("", "differs")
    chain = row(found.figures, "What the whole chain bears")
    before, after = (
        review(reading.rig, reference, House.shipped()).case.facts.chain_n.typical
        for document in (FROG, other)
        if (reading := read(document, reference)).rig is not None
    )
    assert chain.told[1] == f"{after / before - 1:+.0%}".replace("%", " %").replace("-", "−")
    assert chain.stands_out
    reason = row(found.reasons, "Sinking line on surface lure")
    assert reason.values[0] == "—"
    assert reason.values[1].startswith("fault: ")
    assert found.sides[1].scene is not None


def test_small_changes_of_a_figure_are_not_pointed_out(reference: Reference) -> None:
    found = compared(reference, FROG, changed(drag="12.5 lb"))
    drag = row(found.figures, "Drag, straight off the reel")
    assert drag.told == ("", "")
    assert not drag.stands_out


def test_three_cards_are_compared_with_the_first(reference: Reference) -> None:
    found = compared(reference, FROG, FROG, usual_document("flip-jig"))
    technique = row(found.card, "Lure technique")
    assert technique.values == ("hollow-body frog", "hollow-body frog", "flipping jig")
    assert technique.told == ("", "", "differs")
    assert technique.spoken.startswith("Lure technique: hollow-body frog;")


@pytest.mark.parametrize("count", [0, 1, 4])
def test_only_two_or_three_can_be_compared(reference: Reference, count: int) -> None:
    with pytest.raises(ValueError, match=str(count)):
        compared(reference, *[FROG] * count)


def test_a_card_that_is_not_complete_has_no_figures_and_no_drawing(reference: Reference) -> None:
    found = compared(reference, FROG, changed(main__test="strong"))
    assert found.sides[1].verdict == "unfinished"
    assert found.sides[1].scene is None
    assert row(found.card, "Main line test").values == ("50 lb", "strong")
    assert all(each.values[1] == "—" for each in found.figures)


@pytest.mark.parametrize(
    ("document", "path", "words"),
    [
        (FROG | {"leader": None}, "leader.test", "none"),
        (drop(FROG, "main.condition"), "main.condition", "fresh (assumed)"),
        (drop(FROG, "notes"), "notes", "not said"),
        (FROG | {"tags": ["a", "b"]}, "tags", "a, b"),
        (FROG | {"tags": []}, "tags", "none"),
        (FROG | {"log": [{"on": "2026-05-02", "what": "filled"}]}, "log", "2026-05-02 filled"),
        (FROG | {"notes": "one\n two"}, "notes", "one two"),
    ],
)
def test_what_a_card_says_in_words(reference: Reference, document: Document, path: str, words: str) -> None:
    assert said(read(document, reference), path) == words


def test_metric_figures_are_metric(reference: Reference) -> None:
    other = changed(main__type="fluorocarbon", main__test="16 lb")
    found = compared(reference, FROG, other, metric=True)
    assert "kg" in row(found.figures, "What the whole chain bears").values[0]
    assert "mm" in row(found.figures, "Diameter of the main line").values[0]


@pytest.mark.parametrize(
    ("value", "name", "words"),
    [
        (None, "drag_share", "—"),
        (Range(0.2, 0.25, 0.3), "drag_share", "25 % (20–30)"),
        (Range(0.5, 0.5, 0.5), "fill_share", "50 %"),
        (Range(3.0, 4.0, 6.0), "drop_s", "4 s (3–6)"),
        (Range(0.00001, 0.00001, 0.00001), "glint_ratio", "under 0.01 %"),
    ],
)
def test_figures_in_words(value: Range | None, name: str, words: str) -> None:
    assert figure_words(value, FACTS[name], Speaker()) == words


@pytest.mark.usefixtures("qapp")
def test_cards_are_compared_with_the_bench(tmp_path: Path) -> None:
    room = make_room(tmp_path)
    path = room.store.create(usual_document("flip-jig") | {"id": "other"}).path
    found = compare_cards([path], room.desk, room.bench, with_bench=True)
    assert isinstance(found, Comparison)
    assert found.sides[0].name.startswith(BENCH)
    assert "two or three" in str(compare_cards([path], room.desk, room.bench, with_bench=False))
    assert "gone" in str(compare_cards([tmp_path / "gone.rigcard"], room.desk, room.bench, with_bench=True))
