"""A ten-minute lesson in its window, by keyboard and by mouse, closed half-way and gone on with."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QWidget

from rigbuilder.model.fields import Part
from rigbuilder.store.progress import ProgressStore
from rigbuilder.viewmodels.lesson import LessonRun
from rigbuilder.views.controls.badge import SeverityBadge
from rigbuilder.views.lesson_window import LessonWindow
from rigbuilder.views.theme_look import Look, Mode
from tests.unit.lessons.cases import lesson, shipped
from tests.unit.viewmodels.parts import make_bench
from tests.unit.views.parts import focusable

LEADERS = shipped()[3]
STRONG = "leader-stronger-than-main"


def _open(folder: Path, look: Look, qtbot: object) -> LessonWindow:
    store = ProgressStore(folder)
    run = LessonRun(lesson(LEADERS), LEADERS, store.load("Mia"), store, make_bench({}))
    window = LessonWindow(run, look)
    run.setParent(window)
    window.resize(1366, 728)
    window.show()
    QTest.qWaitForWindowActive(window)
    return window


@pytest.fixture
def window(tmp_path: Path, look: Look, qtbot: object) -> Iterator[LessonWindow]:
    made = _open(tmp_path, look, qtbot)
    yield made
    _shut(made)


def _shut(window: LessonWindow) -> None:
    window.close()
    window.deleteLater()
    QApplication.processEvents()


def _click(widget: QWidget) -> None:
    QTest.mouseClick(widget, Qt.MouseButton.LeftButton)


def _key(window: LessonWindow, key: Qt.Key) -> None:
    QTest.keyClick(window, key, Qt.KeyboardModifier.ControlModifier)


def _words(widget: QWidget) -> str:
    return "\n".join(label.text() for label in widget.findChildren(QLabel) if label.isVisibleTo(widget))


def test_a_lesson_by_mouse(window: LessonWindow) -> None:
    assert lesson(LEADERS).introduction in _words(window.opening)
    _click(window.opening.button)
    _click(window.answer.nothing)
    _click(window.answer.show_button)
    assert "Nothing is wrong with this rig, and you saw it." in _words(window.outcome)
    _click(window.outcome.next_button)
    assert window.title.text() == "Rig 2 of 7"
    _click(window.answer.parts.buttons[Part.LEADER])
    card = window.answer.cards[Part.LEADER]
    _click(card.boxes[STRONG].parentWidget())  # type: ignore[arg-type]
    assert card.boxes[STRONG].isChecked()
    _click(window.answer.show_button)
    assert "You found all there is, and why." in _words(window.outcome)
    assert "25 lb leader on 17 lb fluorocarbon" in _words(window.outcome)


def test_a_whole_lesson_by_keyboard(window: LessonWindow) -> None:
    _key(window, Qt.Key.Key_Return)
    assert window.answer.parts.buttons[Part.LURE].hasFocus()
    for rig in lesson(LEADERS).rigs:
        if rig.meant:
            finding = window.run.given.findings[0]  # type: ignore[union-attr]
            part = finding.part
            window.answer.parts.buttons[part].setFocus()
            QTest.keyClick(window.answer.parts.buttons[part], Qt.Key.Key_Space)
            box = window.answer.cards[part].boxes[finding.rule.name]
            box.setFocus()
            QTest.keyClick(box, Qt.Key.Key_Space)
        else:
            window.answer.nothing.setFocus()
            QTest.keyClick(window.answer.nothing, Qt.Key.Key_Space)
        _key(window, Qt.Key.Key_Return)
        assert window.run.result().is_full  # type: ignore[union-attr]
        _key(window, Qt.Key.Key_Return)
    assert window.title.text() == "The lesson is done"
    assert lesson(LEADERS).closing in _words(window.done)
    _click(window.done.again)
    assert window.title.text() == "Rig 1 of 7"


def test_a_part_is_marked_in_the_drawing_and_in_the_form(window: LessonWindow) -> None:
    window.begin()
    window.drawing.part_chosen.emit(Part.REEL)
    assert window.answer.parts.buttons[Part.REEL].isChecked()
    assert window.form.focus_field("main.test")
    QApplication.processEvents()
    window.mark_here()
    assert set(window.answer.cards) == {Part.REEL, Part.MAIN}
    _click(window.answer.parts.buttons[Part.REEL])
    assert set(window.answer.cards) == {Part.MAIN}


def test_nothing_in_sight_tells_of_reasons_before_they_are_shown(window: LessonWindow) -> None:
    window.begin()
    window.run.say(window.run.sitting.said.nothing())
    window.run.show_reasons()
    window.run.next()
    scene = window.drawing.canvas.scene
    assert scene is not None
    assert scene.pins == ()
    assert "eason" not in " ".join(scene.spoken.values())
    badges = [each for each in window.form.findChildren(SeverityBadge) if not each.isHidden()]
    assert badges == []
    assert not window.tabs.isTabEnabled(1)
    window.run.say(window.run.sitting.said.nothing())
    window.run.show_reasons()
    opened = window.drawing.canvas.scene
    assert opened is not None
    assert [pin.number for pin in opened.pins] == [1]
    assert window.tabs.isTabEnabled(1)
    assert [each for each in window.form.findChildren(SeverityBadge) if not each.isHidden()]


def test_closed_half_way_it_goes_on_from_the_same_place(tmp_path: Path, look: Look, qtbot: object) -> None:
    first = _open(tmp_path, look, qtbot)
    first.begin()
    _click(first.answer.parts.buttons[Part.KNOTS])
    _key(first, Qt.Key.Key_H)
    assert first.form.focus_field("drag")
    row = first.form.focused_row()
    assert row is not None
    QTest.keyClicks(row.target, "0")
    _shut(first)
    again = _open(tmp_path, look, qtbot)
    try:
        assert again.run.resumed
        assert again.pages.currentWidget() is again._areas[again.answer]
        assert again.answer.parts.buttons[Part.KNOTS].isChecked()
        assert again.answer.hints.text().startswith("1. ")
        assert again.run.bench.document != lesson(LEADERS).rigs[0].card
    finally:
        _shut(again)


def test_hints_and_the_way_on_are_offered_only_when_there_is_something(window: LessonWindow) -> None:
    window.begin()
    assert not window.answer.show_button.isEnabled()
    for _ in range(3):
        _click(window.answer.hint)
    assert not window.answer.hint.isEnabled()
    _key(window, Qt.Key.Key_Return)
    assert "Mark a part first" in window.toast.message.text()
    window.mark_here()
    assert "Go to a field" in window.toast.message.text()


@pytest.mark.parametrize("mode", [Mode.LIGHT, Mode.DARK])
@pytest.mark.parametrize("size", [(1366, 728), (1920, 1040)])
def test_the_window_fits_the_screens_and_every_control_has_a_name(
    window: LessonWindow, look: Look, mode: Mode, size: tuple[int, int]
) -> None:
    look.set_mode(mode)
    window.begin()
    window.answer.toggle(Part.LEADER, True)
    window.resize(*size)
    QApplication.processEvents()
    assert (window.width(), window.height()) == size
    assert window.answer.width() <= window.pages.width()
    nameless = [
        widget.objectName() or type(widget).__name__
        for widget in focusable(window.pages)
        if not (widget.accessibleName() or getattr(widget, "text", str)())
    ]
    assert nameless == []


def test_what_if_moves_the_drawing_and_leaves_the_card_alone(window: LessonWindow) -> None:
    window.begin()
    window.run.say(window.run.sitting.said.nothing())
    window.run.show_reasons()
    window.run.next()
    window.run.say(window.run.sitting.said.nothing())
    window.run.show_reasons()
    panel, bench = window.what_if, window.run.bench
    window.tabs.setCurrentIndex(1)
    before = bench.document
    panel.ask("Where will it break?")
    panel.move_to("leader.test")
    assert panel.shown is not None
    assert panel.shown.limits
    start = panel.scale.at()
    assert panel.shown.steps[start].present
    panel.scale.setFocus()
    QTest.keyClick(panel.scale, Qt.Key.Key_Home)
    assert panel.scale.at() == 0
    assert bench.preview is panel.shown.steps[0].report
    assert bench.document == before
    assert "what if" in panel.words.text()
    _click(panel.back)
    assert bench.preview is None
    assert panel.scale.at() == start


def test_two_mechanisms_are_ticked_for_one_part_and_one_is_taken_back(window: LessonWindow) -> None:
    window.begin()
    _click(window.answer.parts.buttons[Part.LEADER])
    card = window.answer.cards[Part.LEADER]
    first, second, *_ = card.boxes
    _click(card.boxes[first].parentWidget())  # type: ignore[arg-type]
    _click(card.boxes[second].parentWidget())  # type: ignore[arg-type]
    assert window.run.sitting.said.reasons(Part.LEADER) == (first, second)
    assert window.answer.cards[Part.LEADER] is card
    _click(card.boxes[first].parentWidget())  # type: ignore[arg-type]
    assert window.run.sitting.said.reasons(Part.LEADER) == (second,)
    assert window.answer.show_button.isEnabled()
    _click(card.boxes[second].parentWidget())  # type: ignore[arg-type]
    assert window.run.sitting.said.parts == (Part.LEADER,)
    assert not window.answer.show_button.isEnabled()
