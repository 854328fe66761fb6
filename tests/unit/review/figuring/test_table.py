"""Every figure and every input has its row, and every row its figure."""

import pytest

from rigbuilder.review.facts import Facts
from rigbuilder.review.figuring.batch import GROUPS, Batch
from rigbuilder.review.figuring.inputs import INPUTS
from rigbuilder.review.figuring.table import FACTS
from rigbuilder.review.figuring.usual import usual_rig
from rigbuilder.review.figuring.working import working
from tests.unit.review.figuring.rigs import REFERENCE, facts

RIGS = [usual_rig(name, REFERENCE) for name in REFERENCE.techniques]
BATCH = Batch(RIGS, [REFERENCE.techniques[rig.technique] for rig in RIGS], REFERENCE, {})


def test_every_figure_has_a_row() -> None:
    assert set(Facts.names()) <= set(FACTS)


def test_no_name_is_both_figure_and_input() -> None:
    assert not set(FACTS) & set(INPUTS)


@pytest.mark.parametrize("name", FACTS)
def test_inputs_of_a_figure_are_known(name: str) -> None:
    row = FACTS[name]
    assert row.label
    assert row.formula
    assert row.sources
    assert set(row.inputs) <= set(FACTS) | set(INPUTS)


def test_every_input_serves_a_figure() -> None:
    used = {name for row in FACTS.values() for name in row.inputs}
    assert set(INPUTS) <= used | set(FACTS) | {"backing_diameter_m", "water_depth_m", "end_wet_weight_n_m"}


@pytest.mark.parametrize("group", GROUPS, ids=lambda group: group.__name__)
def test_a_group_gives_what_it_promises(group: object) -> None:
    names = GROUPS[group]  # type: ignore[index]
    found = group(BATCH.rows, BATCH.triple)  # type: ignore[operator]
    assert set(names) <= set(found)
    assert set(names) <= set(FACTS) | set(INPUTS)


@pytest.mark.parametrize("technique", ["frog", "drop-shot", "deep-diver", "walleye-troll"])
def test_every_figure_of_a_usual_rig_can_be_worked(technique: str) -> None:
    found = facts(usual_rig(technique, REFERENCE))[0]
    for name in FACTS:
        told = working(name, found)
        assert told.name == name
        assert len(told.inputs) == len(FACTS[name].inputs)
