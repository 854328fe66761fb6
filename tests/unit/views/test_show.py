"""The show: one thing at a time, led by the keyboard."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from rigbuilder.viewmodels.answers import QUESTIONS
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.views.show import ShowWindow
from rigbuilder.views.theme_look import Look
from tests.unit.views.rigs import WRONG_FROG, bench_of, bench_with


@pytest.fixture
def bench() -> Bench:
    """A frog on sinking line."""
    return bench_of("frog", WRONG_FROG)


@pytest.fixture
def show(bench: Bench, look: Look, qtbot: QtBot) -> ShowWindow:
    """The show of it."""
    show = ShowWindow(bench, look)
    qtbot.addWidget(show)
    show.begin()
    qtbot.waitExposed(show)
    return show


def test_it_fills_the_screen_and_esc_leaves(show: ShowWindow) -> None:
    assert show.isFullScreen()
    QTest.keyClick(show, Qt.Key.Key_Escape)
    assert not show.isVisible()


def test_the_whole_rig_comes_first_then_each_reason_then_each_question(
    show: ShowWindow, bench: Bench
) -> None:
    report = bench.report
    assert report is not None
    titles = []
    for _ in range(show.place[1]):
        assert show.slide is not None
        titles.append(show.slide.title)
        show.grab()
        QTest.keyClick(show, Qt.Key.Key_Right)
    count = len(report.findings)
    assert count >= 1
    assert [title.casefold() for title in titles[1 : 1 + count]] == [
        finding.headline(bench.speaker).casefold() for finding in report.findings
    ]
    assert tuple(titles[1 + count : 1 + count + len(QUESTIONS)]) == QUESTIONS


def test_a_reason_is_shown_alone_and_spoken(show: ShowWindow) -> None:
    QTest.keyClick(show, Qt.Key.Key_Space)
    slide = show.slide
    assert slide is not None
    assert slide.scene is not None
    assert [pin.number for pin in slide.scene.pins] == [1]
    assert slide.title in show.accessibleDescription()
    assert show.accessibleName() == f"Slide 2 of {show.place[1]}"


def test_it_goes_back_and_stops_at_the_ends(show: ShowWindow) -> None:
    QTest.keyClick(show, Qt.Key.Key_Left)
    assert show.place[0] == 1
    QTest.keyClick(show, Qt.Key.Key_End)
    assert show.place[0] == show.place[1]
    QTest.keyClick(show, Qt.Key.Key_PageDown)
    assert show.place[0] == show.place[1]
    QTest.keyClick(show, Qt.Key.Key_PageUp)
    assert show.place[0] == show.place[1] - 1


def test_a_card_that_cannot_be_read_shows_nothing_and_does_not_fall(look: Look, qtbot: QtBot) -> None:
    show = ShowWindow(bench_with({}), look)
    qtbot.addWidget(show)
    show.resize(800, 600)
    show.grab()
    assert show.slide is None
