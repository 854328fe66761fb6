"""The questions in the window: the sentence, the figure, the ways to take it along."""

import csv
from io import StringIO
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.answers import QUESTIONS, SPOOL
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.views.paint.spec import BarSpec, ChartSpec
from rigbuilder.views.questions import QuestionsPanel
from rigbuilder.views.questions_spec import figure_of
from rigbuilder.views.theme_look import Look
from tests.unit.views.rigs import WRONG_FROG, bench_of, bench_with

CHARTED = [question for question in QUESTIONS if question != SPOOL]


@pytest.fixture
def bench() -> Bench:
    """A frog on sinking line."""
    return bench_of("frog", WRONG_FROG)


@pytest.fixture
def panel(bench: Bench, look: Look, qtbot: QtBot) -> QuestionsPanel:
    """The questions about it, on the screen."""
    panel = QuestionsPanel(bench, look)
    qtbot.addWidget(panel)
    panel.resize(700, 360)
    panel.show()
    qtbot.waitExposed(panel)
    return panel


@pytest.mark.parametrize("question", QUESTIONS)
def test_each_question_answers_in_a_sentence_and_a_figure_that_speaks(
    panel: QuestionsPanel, question: str
) -> None:
    panel.ask(question)
    found = panel.answer()
    assert found is not None
    assert panel.heading.text() == question
    assert panel.sentence.text() == found.sentence
    shown = panel.spool if question == SPOOL else panel.chart
    assert not shown.isHidden()
    assert any(letter.isdigit() for letter in shown.accessibleDescription())


def test_the_arrows_walk_the_questions(panel: QuestionsPanel) -> None:
    panel.tabs.setFocus()
    for question in QUESTIONS[1:]:
        QTest.keyClick(panel.tabs, Qt.Key.Key_Right)
        assert panel.question == question
    assert [panel.tabs.accessibleTabName(k) for k in range(panel.tabs.count())] == list(QUESTIONS)


@pytest.mark.parametrize("question", CHARTED)
def test_the_table_holds_the_numbers_of_the_figure(panel: QuestionsPanel, question: str) -> None:
    panel.ask(question)
    panel.bar.copy_table()
    rows = list(csv.reader(StringIO(QGuiApplication.clipboard().text())))
    found = panel.answer()
    assert found is not None
    spec = figure_of(found)
    if isinstance(spec, BarSpec):
        printed = {row[0]: [float(cell) for cell in row[1:4]] for row in rows[1 : 1 + len(spec.bars)]}
        for bar in spec.bars:
            assert printed[bar.label] == pytest.approx([bar.low, bar.typical, bar.high], rel=1e-5)
    else:
        assert isinstance(spec, ChartSpec)
        typical = [float(row[3]) for row in rows[1:] if not row[0].startswith("limit")]
        assert typical == pytest.approx([y for line in spec.series for _, y in line.points], rel=1e-5)


def test_a_figure_is_saved_as_svg_and_png(panel: QuestionsPanel, tmp_path: Path) -> None:
    panel.ask(QUESTIONS[1])
    panel.bar.save_as(tmp_path / "hook.svg")
    text = (tmp_path / "hook.svg").read_text(encoding="utf-8")
    assert "<svg" in text
    assert "Will the hook go home?" in text
    panel.bar.save_as(tmp_path / "hook.png")
    image = QImage(str(tmp_path / "hook.png"))
    assert (image.width(), image.height()) == (1800, 1040)


def test_the_section_of_the_spool_can_be_taken_along_too(panel: QuestionsPanel, tmp_path: Path) -> None:
    panel.ask(SPOOL)
    panel.bar.save_as(tmp_path / "spool.svg")
    assert "turns of the handle" in (tmp_path / "spool.svg").read_text(encoding="utf-8")


def test_how_we_know_shows_working_and_sources(panel: QuestionsPanel, qtbot: QtBot) -> None:
    panel.ask(QUESTIONS[0])
    note = panel.bar.explain()
    found = panel.answer()
    assert found is not None
    said = [label.text() for label in note.findChildren(QLabel)]
    assert set(found.working) | set(found.sources) <= set(said)
    note.close()


def test_an_edit_is_answered_when_the_typing_rests(panel: QuestionsPanel, bench: Bench, qtbot: QtBot) -> None:
    panel.ask(QUESTIONS[0])
    before = panel.sentence.text()
    bench.edit("main.test", "30 lb")
    assert panel.sentence.text() == before
    qtbot.waitUntil(lambda: panel.sentence.text() != before)


def test_the_preview_stands_among_the_lines(panel: QuestionsPanel, bench: Bench) -> None:
    panel.ask(QUESTIONS[1])
    bench.look_at(bench_of("frog").report)
    found = panel.answer()
    assert found is not None
    assert "looked at: braid 50 lb" in [curve.label for curve in found.curves]


def test_the_axes_follow_the_unit_system(panel: QuestionsPanel, bench: Bench) -> None:
    panel.ask(QUESTIONS[1])
    bench.speak(UnitSystem.METRIC)
    found = panel.answer()
    assert found is not None
    assert found.x is not None
    assert found.x.unit == "m"


def test_a_card_that_cannot_be_read_yet_is_explained(look: Look, qtbot: QtBot) -> None:
    panel = QuestionsPanel(bench_with({}), look)
    qtbot.addWidget(panel)
    assert panel.answer() is None
    assert "as soon as" in panel.sentence.text()
    panel.grab()
