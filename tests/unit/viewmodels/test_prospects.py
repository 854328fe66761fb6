"""Before → after in words, over the wrong rigs of the whole rule book."""

import pytest

from rigbuilder.model.document import put_all
from rigbuilder.review.core import Example, Rule
from rigbuilder.viewmodels.pins import first_field, numbering
from rigbuilder.viewmodels.prospects import changes_of, gaps, make_right_prospect, options, prospect
from rigbuilder.viewmodels.reasons import reasons, silenced
from rigbuilder.viewmodels.takes import hear_again, silence, take
from tests.rules.examples import all_examples, document_of, example_id
from tests.unit.views.rigs import WRONG_FROG, bench_of, bench_with

FIRST_WRONG = {rule.name: (rule, example) for rule, example in reversed(all_examples("wrong"))}.values()


@pytest.mark.parametrize(("rule", "example"), FIRST_WRONG, ids=example_id)
def test_every_remedy_can_be_shown_beforehand_and_no_two_read_alike(rule: Rule, example: Example) -> None:
    bench = bench_with(document_of(example))
    assert bench.report is not None
    finding = next(found for found in bench.report.findings if found.rule.name == rule.name)
    offered = options(bench, finding)
    assert len({option.say for option in offered}) == len(offered)
    for option in offered:
        if option.advice:
            continue
        seen = prospect(bench, option)
        assert seen is not None
        assert seen.changes
        assert all(change.old != change.new for change in seen.changes)
        assert finding.headline(bench.speaker) not in " ".join(seen.remains)
        take(bench, option.changes, option.say)
        assert bench.report == seen.report or bench.report.verdict is seen.report.verdict
        bench.undo_stack.undo()


@pytest.mark.parametrize(("rule", "example"), FIRST_WRONG, ids=example_id)
def test_every_reason_can_be_shown(rule: Rule, example: Example) -> None:
    bench = bench_with(document_of(example))
    assert bench.report is not None
    shown = reasons(bench.report, bench.speaker)
    assert {reason.rule: reason.number for reason in shown} == numbering(bench.report)
    for reason in shown:
        assert reason.headline[0] == reason.headline[0].upper()
        assert reason.why
        assert reason.basis
        assert reason.field == first_field(reason.part)
        for figure in reason.figures:
            assert figure.low <= figure.typical <= figure.high
            assert figure.text.split()[0] != "0" or figure.typical == 0, figure


def test_numbers_are_nothing_without_a_review() -> None:
    assert numbering(None) == {}


def test_changes_say_old_and_new_as_the_card_has_them() -> None:
    bench = bench_of("frog", WRONG_FROG | {"main.diameter": "0.35 mm"})
    sets = {
        "main.test": "40 lb",
        "main.diameter": None,
        "leader.type": "nylon",
        "drag": "6 lb",
        "lure.sinker": None,
    }
    said = {change.field: (change.old, change.new) for change in changes_of(bench.reading, sets)}
    assert said["main.test"] == ("16 lb", "40 lb")
    assert said["main.diameter"] == ("0.35 mm", "not given")
    assert said["leader.type"][1] == "nylon"
    assert "drag" not in said  # stays as it is
    assert "lure.sinker" not in said  # is none already


def test_what_is_assumed_is_called_so() -> None:
    document = put_all(bench_of("frog").document, {})
    document.pop("drag")
    bench = bench_with(document)
    change = changes_of(bench.reading, {"drag": "3 lb"})[0]
    assert change.old.endswith("(assumed)")


def test_a_right_rig_needs_no_mending() -> None:
    assert make_right_prospect(bench_of("drop-shot")) is None


def test_making_right_does_what_it_promised() -> None:
    bench = bench_of("frog", WRONG_FROG)
    promised = make_right_prospect(bench)
    assert promised is not None
    back = take(bench, promised.sets, "make it right")
    assert bench.report is not None
    assert bench.report.verdict.word == promised.after.severity
    assert back is not None
    back()
    assert bench.text("main.type") == "fluorocarbon"


def test_nothing_taken_is_nothing_to_undo() -> None:
    bench = bench_of("frog")
    assert take(bench, {}, "nothing") is None


def test_silencing_and_hearing_again_are_steps() -> None:
    bench = bench_of("frog", WRONG_FROG | {"silenced": [{"rule": "no-such-rule", "why": "once"}]})
    assert bench.report is not None
    rule = bench.report.findings[0].rule.name
    silence(bench, rule, " taped ")
    assert [(entry.rule, entry.why) for entry in silenced(bench.report, bench.speaker)] == [
        (rule, "taped"),
        ("no-such-rule", "once"),
    ]
    assert [bool(entry.headline) for entry in silenced(bench.report, bench.speaker)] == [True, False]
    hear_again(bench, "no-such-rule")
    hear_again(bench, rule)
    assert bench.document["silenced"] == []
    assert bench.undo_stack.count() == 3


def test_gaps_lead_to_fields_of_the_form() -> None:
    bench = bench_with({"name": "New", "lure": {"technique": "frogg"}})
    found = {path: words for path, _, words in gaps(bench.reading)}
    assert "Did you mean" in found["lure.technique"]
    assert "main.type" in found
    assert all(path for path in found)
