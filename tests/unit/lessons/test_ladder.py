"""What was missed comes back in another rig, at distances that grow, and then leaves the ladder."""

from rigbuilder.lessons.progress import (
    RUNGS,
    Answered,
    Progress,
    Sitting,
    comes_back,
    due,
    ladder,
    right_rigs,
    standings,
)
from rigbuilder.model.fields import Part
from tests.unit.lessons.cases import lesson, shipped

RULE = "leader-stronger-than-main"
POOL = [(("one", 0), [RULE]), (("one", 1), []), (("two", 3), [RULE]), (("two", 4), [RULE])]


def _missed(rig: int = 0) -> Answered:
    return Answered(lesson="one", rig=rig, not_yet=(RULE,))


def _other() -> Answered:
    return Answered(lesson="one", rig=1, right=True)


def _got(rig: int = 3) -> Answered:
    return Answered(lesson="two", rig=rig, understood=(RULE,))


def test_what_was_understood_at_once_is_not_on_the_ladder() -> None:
    assert ladder([_got(), _other()]) == ()


def test_a_missed_rule_is_due_some_rigs_later_and_in_another_rig() -> None:
    answers = [_missed()]
    assert due(answers) == ()
    answers += [_other()] * RUNGS[0]
    assert [rung.rule for rung in due(answers)] == [RULE]
    assert comes_back(answers, POOL) == ("two", 3)


def test_the_rig_seen_least_comes_first() -> None:
    answers = [_missed(), *[_other()] * RUNGS[0], _missed(), *[_other()] * RUNGS[0]]
    assert comes_back([*answers[:-1], Answered(lesson="two", rig=3), answers[-1]], POOL) == ("two", 4)


def test_each_time_it_is_understood_the_distance_grows_until_it_leaves() -> None:
    answers = [_missed()]
    for rung, distance in enumerate(RUNGS):
        assert ladder(answers)[0].rung == rung
        assert ladder(answers)[0].due == len(answers) + distance
        answers += [*[_other()] * distance, _got()]
    assert ladder(answers) == ()


def test_missing_it_again_begins_at_the_first_rung() -> None:
    answers = [_missed(), _other(), _other(), _got(), _missed(2)]
    assert ladder(answers)[0].rung == 0
    assert ladder(answers)[0].missed_at == ("one", 2)


def test_nothing_comes_back_where_no_other_rig_shows_it() -> None:
    answers = [_missed(), *[_other()] * RUNGS[0]]
    assert comes_back(answers, POOL[:2]) is None


def test_the_coach_sees_per_rule_what_is_understood() -> None:
    rows = standings([_missed(), _got(), Answered(lesson="one", rig=5, not_yet=("line-worn",))])
    assert [(row.rule, row.is_understood, row.understood, row.not_yet) for row in rows] == [
        ("line-worn", False, 0, 1),
        (RULE, True, 1, 1),
    ]


def test_right_rigs_and_marks_without_cause_are_seen_as_well() -> None:
    marked = Answered(lesson="one", rig=4, without_cause=(Part.REEL,))
    found = right_rigs([_other(), marked, _missed(), _got()])
    assert (found.seen_as_right, found.total, found.without_cause) == (1, 2, (Part.REEL,))


def test_progress_survives_its_own_file_form() -> None:
    sitting = Sitting(lesson="one", at=2, again=("two", 3), hints=1)
    progress = Progress(name="Mia", answers=(_missed(), _got()), sitting=sitting)
    told = {key: value for key, value in progress.as_document().items() if key not in ("format", "version")}
    assert Progress.model_validate(told) == progress


def test_most_rules_of_the_shipped_lessons_can_come_back_in_another_rig() -> None:
    meant = [rule for path in shipped() for rig in lesson(path).rigs for rule in rig.meant]
    assert sum(meant.count(rule) > 1 for rule in set(meant)) >= 5
