"""The words of the trade, the middle way, and names for files."""

import pytest
from PySide6.QtWidgets import QApplication

from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.glossary import entries, words_in
from rigbuilder.viewmodels.middle import ways
from rigbuilder.viewmodels.naming import suggested_name
from tests.unit.viewmodels.parts import make_bench, reference


def test_all_words_stand_in_order_and_are_found_by_part() -> None:
    everything = entries(reference())
    assert len(everything) == len(reference().glossary)
    assert list(everything) == sorted(everything, key=lambda entry: entry[0].casefold())
    assert entries(reference(), "ARB")[0][0] == "arbor"
    assert entries(reference(), "no such word at all") == ()


def test_words_are_found_in_a_sentence_whole_and_longest_first() -> None:
    found = dict(words_in(["Tie a bite leader; the backing sits on the arbor."], reference()))
    assert {"bite leader", "backing", "arbor"} <= set(found)
    assert "bite" not in found


def test_the_middle_way_names_line_cost_and_change(qapp: QApplication) -> None:
    bench = make_bench()
    found = ways(bench, "hollow-body frog", "hollow-body frog")
    assert found
    best = found[0]
    assert [job.name for job in best.jobs] == ["Light end", "Heavy end"]
    assert best.line.startswith(best.changes["main.type"].capitalize())
    bench.apply(best.changes, "try")
    assert bench.text("main.test") == best.changes["main.test"]


def test_the_middle_way_speaks_the_units_chosen(qapp: QApplication) -> None:
    bench = make_bench()
    bench.speak(UnitSystem.METRIC)
    assert " kg" in ways(bench, "frog", "frog")[0].line


@pytest.mark.parametrize(
    ("title", "name"),
    [("Pad frog, rod 3", "pad-frog-rod-3.pdf"), ("", "rig.pdf"), (None, "rig.pdf"), ("CON", "card-con.pdf")],
)
def test_suggested_names_are_safe(title: str | None, name: str) -> None:
    assert suggested_name(title, ".pdf") == name
