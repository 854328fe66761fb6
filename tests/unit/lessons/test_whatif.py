"""What if: the limits are those of the rules, found by the same review."""

import pytest

from rigbuilder.lessons.whatif import FIELDS, limits
from rigbuilder.model.document import put
from rigbuilder.units.systems import UnitSystem
from tests.unit.lessons.cases import HOUSE, card, reference, report


def test_a_leader_becomes_too_strong_where_it_passes_the_main_line() -> None:
    document = card("carolina")  # main line 17 lb
    sweep = limits(document, "leader.test", reference(), HOUSE)
    found = [limit for limit in sweep.limits if limit.finding.rule.name == "leader-stronger-than-main"]
    assert [limit.appears for limit in found] == [True]
    below, above = sweep.steps[found[0].after], sweep.steps[found[0].after + 1]
    assert "leader-stronger-than-main" not in below.rules
    assert "leader-stronger-than-main" in above.rules
    assert (below.value, above.value) == ("17 lb", "18 lb")


@pytest.mark.parametrize("system", list(UnitSystem))
@pytest.mark.parametrize("field", sorted({field for fields in FIELDS.values() for field in fields}))
def test_every_field_is_swept_as_if_each_value_had_been_typed(field: str, system: UnitSystem) -> None:
    document = card("ned")
    sweep = limits(document, field, reference(), HOUSE, system=system)
    assert len(sweep.steps) >= 5
    assert sum(step.present for step in sweep.steps) == (
        1 if field != "main.length" or sweep.present >= 0 else 0
    )
    for step in (sweep.steps[0], sweep.steps[-1]):
        assert step.document == put(document, field, step.value)
        assert step.rules == {found.rule.name for found in report(step.document).findings}


def test_between_two_steps_without_a_limit_nothing_changes() -> None:
    sweep = limits(card("popper"), "drag", reference(), HOUSE)
    marked = {limit.after for limit in sweep.limits}
    assert marked
    for place in range(len(sweep.steps) - 1):
        same = sweep.steps[place].rules == sweep.steps[place + 1].rules
        assert same == (place not in marked)


def test_choices_have_no_limit_and_a_rig_without_leader_no_leader_field() -> None:
    sweep = limits(card("frog"), "main.type", reference(), HOUSE)
    assert not sweep.ordered
    assert sweep.limits == ()
    assert limits(card("frog"), "leader.test", reference(), HOUSE).steps == ()
