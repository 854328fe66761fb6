"""The questions answer with the review's own figures."""

import pytest

from rigbuilder.model.document import put_all
from rigbuilder.model.reading import read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.load import load
from rigbuilder.reference.ranges import Range
from rigbuilder.review.asjson import review_data
from rigbuilder.review.questions.answer import Answer, Curve, Question
from rigbuilder.review.questions.ask import ASK, ask
from rigbuilder.review.questions.compare import rivals
from rigbuilder.review.questions.distances import cast_of
from rigbuilder.review.questions.spool import section
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import UnitSystem
from tests.unit.review.questions.cases import TECHNIQUES, WRONG_FROG, report_of, usual_report

BOTH = [Speaker(UnitSystem.IMPERIAL), Speaker(UnitSystem.METRIC)]


def strong(answer: Answer) -> Curve:
    """Return the present rig's curve."""
    (found,) = [curve for curve in answer.curves if curve.strong]
    return found


def at(curve: Curve, x: float) -> Range:
    """Return the computed range at a place."""
    ((_, low, typical, high),) = [point for point in curve.points if point[0] == pytest.approx(x)]
    return Range(low, typical, high)


def test_every_question_is_answered() -> None:
    assert set(ASK) == set(Question)


@pytest.mark.parametrize("technique", TECHNIQUES)
@pytest.mark.parametrize("question", Question)
def test_an_answer_is_a_sentence_with_working_sources_and_ordered_ranges(
    technique: str, question: Question
) -> None:
    answer = ask(question, usual_report(technique).case)
    for speaker in BOTH:
        assert answer.sentence(speaker).endswith((".", ":"))
        assert all(row.label(speaker) for row in answer.rows)
        assert all(curve.label(speaker) for curve in answer.curves)
    assert answer.sources
    for curve in answer.curves:
        assert all(low <= typical <= high for _, low, typical, high in curve.points)
        assert [x for x, *_ in curve.points] == sorted(x for x, *_ in curve.points)


@pytest.mark.parametrize("technique", TECHNIQUES)
def test_the_curves_pass_through_the_figures_of_the_review(technique: str) -> None:
    case = usual_report(technique).case
    facts, cast = case.facts, cast_of(case)
    pairs = [
        (Question.HOOK, cast, facts.hook_share.scaled(100.0)),
        (Question.FEEL, cast, facts.tug_share.scaled(100.0)),
        (Question.CAST, case.rig.lure.weight_kg, facts.cast_share.scaled(100.0)),
    ]
    if facts.depth_m is not None:
        pairs.append((Question.DEPTH, cast, facts.depth_m))
    for question, x, expected in pairs:
        assert tuple(at(strong(ask(question, case)), x)) == pytest.approx(tuple(expected), rel=1e-9)


def test_the_links_are_those_that_the_machine_reads() -> None:
    document = put_all(usual_document("frog"), WRONG_FROG)
    report = report_of("frog", WRONG_FROG)
    printed = review_data(read(document, load()), report, Speaker())["figures"]
    rows = {row.label(Speaker()): row for row in ask(Question.BREAKS, report.case).rows}
    for link in printed["chain"]:
        assert tuple(rows[link["name"]].value) == pytest.approx(
            (link["low"], link["typical"], link["high"]), rel=1e-3
        )
    assert rows[printed["weakest_link"]["name"]].strong


@pytest.mark.parametrize("technique", TECHNIQUES)
def test_the_section_of_the_spool_is_in_order_and_wound_as_reviewed(technique: str) -> None:
    case = usual_report(technique).case
    found = section(case)
    assert found.barrel_m <= found.core_m <= found.after_cast_m <= found.fill_m
    assert (found.lip_m - found.fill_m) / 2 == pytest.approx(found.gap_m.typical, abs=1e-9)
    assert found.main.length_m == case.facts.main_wound_m
    assert found.main.turns == case.facts.main_turns


def test_the_level_after_a_cast_leaves_what_was_not_cast() -> None:
    found = section(usual_report("deep-diver").case)
    left = (found.after_cast_m**2 - found.core_m**2) / (found.fill_m**2 - found.core_m**2)
    assert left == pytest.approx(1.0 - found.cast_m / found.main.length_m.typical)


def test_rivals_are_few_distinct_and_led_by_the_present_line() -> None:
    for technique in TECHNIQUES:
        found = rivals(usual_report(technique).case)
        assert found[0].strong
        assert 2 <= len(found) <= 4
        assert len({rival.label(Speaker()) for rival in found}) == len(found)
        assert len({rival.role for rival in found}) == len(found)


def test_a_previewed_line_stands_beside_the_present_one() -> None:
    now, looked = report_of("frog", WRONG_FROG).case, usual_report("frog").case
    found = rivals(now, looked)
    assert [rival.role for rival in found][:2] == ["present", "candidate"]
    assert found[1].label(Speaker()).startswith("looked at: braid")


def test_sinking_line_on_a_frog_pulls_at_the_nose_and_braid_does_not() -> None:
    wrong = ask(Question.DEPTH, report_of("frog", WRONG_FROG).case).sentence(Speaker())
    right = ask(Question.DEPTH, usual_report("frog").case).sentence(Speaker())
    assert "hangs on the nose" in wrong
    assert "lies on the water" in right
