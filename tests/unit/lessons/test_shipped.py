"""The lessons that ship: each rig has exactly the faults it is meant to have, and can be solved."""

import re
from pathlib import Path

import pytest

from rigbuilder.lessons.answer import Said, judge
from rigbuilder.lessons.check import check_lesson
from rigbuilder.lessons.choices import choices
from tests.unit.lessons.cases import HOUSE, lesson, reference, shipped

_BLAME = re.compile(r"\b(stupid|silly|careless|wrongly|fool|lazy|bad junior|your fault|should know)\b", re.I)


def test_at_least_eight_ship_with_their_own_ids() -> None:
    lessons = [lesson(path) for path in shipped()]
    assert len(lessons) >= 8
    assert len({each.id for each in lessons}) == len(lessons)
    assert len({rig.card["id"] for each in lessons for rig in each.rigs}) == sum(
        len(each.rigs) for each in lessons
    )


@pytest.mark.parametrize("path", shipped(), ids=lambda path: path.stem)
def test_each_rig_has_exactly_the_faults_it_is_meant_to_have(path: Path) -> None:
    for check in check_lesson(lesson(path), reference(), HOUSE):
        assert [found.rule.name for found in check.report.findings] == [
            found.rule.name for found in check.fired
        ], check.rig.name
        assert set(check.rig.meant) == {found.rule.name for found in check.fired}, check.rig.name


@pytest.mark.parametrize("path", shipped(), ids=lambda path: path.stem)
def test_each_lesson_has_five_to_eight_rigs_and_a_right_one(path: Path) -> None:
    found = lesson(path)
    assert 5 <= len(found.rigs) <= 8
    assert any(not rig.meant for rig in found.rigs)
    assert found.introduction
    assert found.closing
    for rig in found.rigs:
        assert rig.question
        assert rig.remark
        assert not _BLAME.search(f"{rig.question} {rig.hint} {rig.remark}")


@pytest.mark.parametrize("path", shipped(), ids=lambda path: path.stem)
def test_each_rig_can_be_solved_by_what_is_on_offer(path: Path) -> None:
    found = lesson(path)
    for check in check_lesson(found, reference(), HOUSE):
        said = Said()
        for finding in check.fired:
            offered = choices(check.report, finding.part, seed=found.seed, meant=check.rig.meant)
            assert finding.rule.name in {choice.rule for choice in offered}, check.rig.name
            said = said.marked(finding.part).because(finding.part, finding.rule.name)
        if not check.fired:
            said = said.nothing()
        result = judge(said, check.report, check.rig.meant)
        assert result.is_full, check.rig.name
        assert set(result.understood) == set(check.rig.meant)
