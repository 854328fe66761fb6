"""What was said beside what is: found, seen, missed, without cause, and a right rig."""

from rigbuilder.lessons.answer import Change, Mark, Said, judge
from rigbuilder.lessons.choices import OFFERED, choices
from rigbuilder.model.fields import Part
from tests.unit.lessons.cases import card, report

LEADER = "leader-stronger-than-main"
STRONG = card("carolina", leader__test="25 lb")


def test_place_and_mechanism_make_it_found() -> None:
    result = judge(Said((Mark(Part.LEADER, LEADER),)), report(STRONG), [LEADER])
    assert result.understood == (LEADER,)
    assert result.is_full


def test_the_place_alone_is_seen_and_not_yet_understood() -> None:
    result = judge(Said((Mark(Part.LEADER, "leader-worn"),)), report(STRONG), [LEADER])
    assert [found.rule.name for found in result.seen] == [LEADER]
    assert result.not_yet == (LEADER,)
    assert not result.without_cause


def test_the_mechanism_from_the_part_that_touches_it_counts() -> None:
    result = judge(Said((Mark(Part.MAIN, LEADER),)), report(STRONG), [LEADER])
    assert result.is_full


def test_a_mark_elsewhere_has_no_cause_and_the_reason_is_missed() -> None:
    result = judge(Said((Mark(Part.REEL, "spool-half-empty"),)), report(STRONG), [LEADER])
    assert result.without_cause == (Mark(Part.REEL, "spool-half-empty"),)
    assert result.not_yet == (LEADER,)


def test_marking_everything_is_no_way_to_a_full_answer() -> None:
    everything = Said(tuple(Mark(part, LEADER) for part in Part))
    result = judge(everything, report(STRONG), [LEADER])
    assert result.without_cause
    assert not result.is_full


def test_a_right_rig_may_be_called_right() -> None:
    right = report(card("carolina"))
    assert judge(Said().nothing(), right, []).is_full
    marked = judge(Said((Mark(Part.LEADER, LEADER),)), right, [])
    assert marked.without_cause
    assert not marked.right


def test_calling_a_wrong_rig_right_misses_the_reason() -> None:
    result = judge(Said().nothing(), report(STRONG), [LEADER])
    assert not result.right
    assert result.not_yet == (LEADER,)


def test_mending_is_told_beside_the_rest() -> None:
    mended = card("carolina", leader__test="12 lb")
    result = judge(Said().nothing(), report(STRONG), [LEADER], Change(STRONG, mended, report(mended)))
    assert result.mended is not None
    assert [found.rule.name for found in result.mended.gone] == [LEADER]
    assert result.mended.is_right
    assert result.mended.changed == ("leader.test",)


def test_a_mending_that_spoils_something_else_says_so() -> None:
    other = card("carolina", leader__test="25 lb", main__condition="kinked")
    result = judge(Said().nothing(), report(STRONG), [LEADER], Change(STRONG, other, report(other)))
    assert result.mended is not None
    assert "line-kinked" in {found.rule.name for found in result.mended.new}
    assert not result.mended.is_right


BOTH = card("carolina", leader__test="25 lb", leader__condition="worn")
TWO = [LEADER, "leader-worn"]


def test_two_reasons_on_one_part_are_both_offered_and_both_found() -> None:
    found = report(BOTH)
    assert {finding.rule.name for finding in found.findings if finding.part is Part.LEADER} == set(TWO)
    assert {choice.rule for choice in choices(found, Part.LEADER, seed=7, meant=TWO)} >= set(TWO)
    said = Said().marked(Part.LEADER).because(Part.LEADER, LEADER)
    half = judge(said, found, TWO)
    assert (half.understood, half.not_yet) == ((LEADER,), ("leader-worn",))
    assert not half.without_cause
    assert judge(said.because(Part.LEADER, "leader-worn"), found, TWO).is_full


def test_ticking_every_mechanism_of_a_part_is_no_way_to_a_full_answer() -> None:
    for document, meant in ((STRONG, [LEADER]), (BOTH, TWO)):
        found, said = report(document), Said().marked(Part.LEADER)
        for choice in choices(found, Part.LEADER, seed=7, meant=meant):
            said = said.because(Part.LEADER, choice.rule)
        result = judge(said, found, meant)
        assert set(result.understood) == set(meant)
        assert {mark.rule for mark in result.without_cause}.isdisjoint(meant)
        assert not result.is_full


def test_a_mechanism_is_ticked_and_taken_back_in_its_place() -> None:
    said = Said().marked(Part.LEADER).marked(Part.REEL).because(Part.LEADER, LEADER)
    both = said.because(Part.LEADER, "leader-worn")
    assert both.parts == (Part.LEADER, Part.REEL)
    assert both.reasons(Part.LEADER) == (LEADER, "leader-worn")
    assert both.because(Part.LEADER, LEADER) == both
    assert both.not_because(Part.LEADER, "leader-worn") == said
    assert said.not_because(Part.LEADER, LEADER) == Said().marked(Part.LEADER).marked(Part.REEL)
    assert said.because(Part.MAIN, LEADER) == said
    assert both.unmarked(Part.LEADER).parts == (Part.REEL,)


def test_however_many_reasons_a_part_has_all_are_offered_and_two_that_are_not_true() -> None:
    worst = card("carolina", main__condition="kinked", main__test="4 lb", leader__test="25 lb", drag="20 lb")
    found = report(worst)
    for part in Part:
        own = {finding.rule.name for finding in found.findings if finding.part is part}
        offered = {choice.rule for choice in choices(found, part, seed=3)}
        assert own <= offered
        assert len(offered - {finding.rule.name for finding in found.findings}) >= 2


def test_the_choices_hold_the_reason_and_others_that_are_not_true_here() -> None:
    found = report(STRONG)
    offered = choices(found, Part.LEADER, seed=7, meant=[LEADER])
    names = [choice.rule for choice in offered]
    assert len(names) == len(set(names)) == OFFERED
    assert LEADER in names
    assert {finding.rule.name for finding in found.findings} & set(names) == {LEADER}
    covered = {name for finding in found.findings for name in finding.rule.replaces}
    assert not covered & set(names)
    assert len({choice.why for choice in offered}) == OFFERED


def test_the_same_seed_gives_a_class_the_same_choices() -> None:
    found = report(STRONG)
    orders = {tuple(c.rule for c in choices(found, Part.LEADER, seed=seed)) for seed in range(12)}
    assert len(orders) > 1
    for seed in (1, 2, 3):
        assert choices(found, Part.LEADER, seed=seed) == choices(found, Part.LEADER, seed=seed)


def test_every_part_of_a_right_rig_offers_something_to_weigh() -> None:
    right = report(card("drop-shot"))
    for part in Part:
        assert len(choices(right, part, seed=1)) == OFFERED
