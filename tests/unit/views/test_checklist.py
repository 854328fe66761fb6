"""What holds in every window: names, sizes, keys, letters, the wheel, whole words, a quick answer."""

import time
from collections import Counter
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QAccessible, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractSlider,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QDialog,
    QLabel,
    QMenu,
    QScrollBar,
    QTabBar,
    QWidget,
)

from rigbuilder.views.controls.ask import Answer, WindowAsk
from rigbuilder.views.theme_look import Look
from tests.unit.views.parts import Window, focusable, type_into
from tests.unit.views.places import DIALOGS, NAMES, Places

TARGET = 24  # least side of what is to be hit, in logical pixels: WCAG 2.2, 2.5.8
SAYS_NOTHING = {"OK", "Yes", "No"}


@pytest.fixture(scope="module")
def places(tmp_path_factory: pytest.TempPathFactory, shared_look: Look) -> Iterator[Places]:
    places = Places(tmp_path_factory.mktemp("places"), shared_look)
    yield places
    places.close()


@pytest.fixture
def window(places: Places) -> Window:
    places.window.renew()
    return places.window


def _name(widget: QWidget) -> str:
    return f"{type(widget).__name__} {widget.objectName()} “{widget.accessibleName()}”"


def _own(place: QWidget, kind: type[QWidget]) -> Iterator[QWidget]:
    """Yield the widgets in sight that belong to this window and not to one over it."""
    for widget in place.findChildren(kind):
        if widget.isVisible() and widget.window() is place:
            yield widget


@pytest.mark.parametrize("name", NAMES)
def test_every_control_has_a_name(places: Places, name: str) -> None:
    place = places.open(name)
    nameless = []
    for widget in focusable(place):
        interface = QAccessible.queryAccessibleInterface(widget)
        if widget.window() is place and not interface.text(QAccessible.Text.Name).strip():
            nameless.append(_name(widget))
    assert nameless == []


@pytest.mark.parametrize("name", NAMES)
def test_every_control_is_large_enough_to_hit(places: Places, name: str) -> None:
    place = places.open(name)
    small = [
        (_name(widget), widget.width(), widget.height())
        for widget in focusable(place)
        if widget.window() is place and min(widget.width(), widget.height()) < TARGET
    ]
    assert small == []


@pytest.mark.parametrize("name", NAMES)
def test_tab_reaches_every_control_and_comes_back(places: Places, name: str) -> None:
    place = places.open(name)
    wanted = [w for w in focusable(place) if w.window() is place and not w.property("segment")]
    there = _walk(place, Qt.Key.Key_Tab, wanted[0])
    back = _walk(place, Qt.Key.Key_Backtab, wanted[0])
    assert [_name(w) for w in wanted if w not in there] == []
    assert set(back) == set(there)


def _walk(place: QWidget, key: Qt.Key, start: QWidget) -> list[QWidget]:
    place.activateWindow()
    QTest.qWaitForWindowActive(place)
    start.setFocus()
    modifier = (
        Qt.KeyboardModifier.ShiftModifier if key is Qt.Key.Key_Backtab else Qt.KeyboardModifier.NoModifier
    )
    seen: dict[QWidget, None] = {}
    for _ in range(400):
        here = QApplication.focusWidget()
        assert here is not None
        if here in seen:
            return list(seen)
        seen[here] = None
        QTest.keyClick(here, key, modifier)
    raise AssertionError("Tab never came back")


def _letters(place: QWidget) -> list[str]:
    """Return the letters that Alt brings to something in a window, with what they bring."""
    texts = [b.text() for b in _own(place, QAbstractButton) if isinstance(b, QAbstractButton)]
    texts += [label.text() for label in _own(place, QLabel) if isinstance(label, QLabel) and label.buddy()]
    for bar in _own(place, QTabBar):
        assert isinstance(bar, QTabBar)
        texts += [bar.tabText(index) for index in range(bar.count())]
    if hasattr(place, "menuBar"):
        texts += [action.text() for action in place.menuBar().actions()]
    return [t[t.index("&") + 1].casefold() for t in (text.replace("&&", "") for text in texts) if "&" in t]


@pytest.mark.parametrize("name", NAMES)
def test_no_letter_is_given_twice_in_a_window(places: Places, name: str) -> None:
    letters = Counter(_letters(places.open(name)))
    assert [letter for letter, count in letters.items() if count > 1] == []


def test_no_key_is_given_twice_on_the_bench(places: Places) -> None:
    bar = places.window.main.menuBar()
    menus = [menu for action in bar.actions() if isinstance(menu := action.menu(), QMenu)]
    actions = {action for menu in menus for action in menu.actions()}
    keys = Counter(key.toString() for action in actions for key in action.shortcuts())
    assert len(keys) > 25
    assert {key: count for key, count in keys.items() if count > 1} == {}


@pytest.mark.parametrize("name", NAMES)
def test_the_wheel_changes_no_field(places: Places, name: str) -> None:
    place = places.open(name)
    for widget in [*_own(place, QComboBox), *_own(place, QAbstractSpinBox), *_own(place, QAbstractSlider)]:
        if isinstance(widget, QScrollBar):
            continue
        before = _value(widget)
        middle = QPointF(widget.rect().center())
        wheel = QWheelEvent(
            middle, QPointF(widget.mapToGlobal(widget.rect().center())), QPoint(), QPoint(0, -120),
            Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
        )  # fmt: skip
        QApplication.sendEvent(widget, wheel)
        assert _value(widget) == before, _name(widget)


def _value(widget: QWidget) -> object:
    if isinstance(widget, QComboBox):
        return widget.currentText()
    return widget.text() if isinstance(widget, QAbstractSpinBox) else widget.value()  # type: ignore[attr-defined]


@pytest.mark.parametrize("name", NAMES)
def test_buttons_say_what_they_do(places: Places, name: str) -> None:
    buttons = [b for b in _own(places.open(name), QAbstractButton) if isinstance(b, QAbstractButton)]
    assert [b.text() for b in buttons if b.text().replace("&", "") in SAYS_NOTHING] == []
    assert [_name(b) for b in buttons if not (b.text() or b.accessibleName())] == []


@pytest.mark.parametrize("name", DIALOGS)
def test_esc_closes_a_dialog_and_enter_has_a_default(places: Places, name: str) -> None:
    dialog = places.open(name)
    assert isinstance(dialog, QDialog)
    buttons = [b for b in _own(dialog, QAbstractButton) if getattr(b, "isDefault", bool)()]
    assert len(buttons) == 1
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog.isVisible()


def test_a_question_closes_by_esc_and_enter_takes_the_safe_answer(places: Places) -> None:
    answers = [
        Answer("lose", "Throw it away", harmful=True),
        Answer("keep", "Keep it"),
        Answer("no", "Cancel"),
    ]
    box, buttons = WindowAsk(places.open("bench")).box("Title", "Text", answers)
    box.show()
    assert box.defaultButton() is buttons[1][0]
    QTest.keyClick(box, Qt.Key.Key_Escape)
    assert not box.isVisible()
    assert box.clickedButton() is buttons[2][0]


@pytest.mark.parametrize("zoom", [1.0, 1.5, 2.0])
def test_no_word_of_the_bench_is_cut_off(window: Window, zoom: float) -> None:
    main = window.main
    main.resize(1366, 768)
    main.form.keeping.set_open(True)
    main.look.set_zoom(zoom)
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    QApplication.processEvents()
    cut = [text for place in (main.form, main.header, main.panels.reasons) for text in _cut(place)]
    assert cut == []


def _cut(place: QWidget) -> Iterator[str]:
    """Yield what is wider than its place; what wraps needs room for its longest word."""
    for widget in place.findChildren(QWidget):
        if (
            not widget.isVisibleTo(place)
            or not isinstance(widget, QLabel | QAbstractButton)
            or not widget.text()
        ):
            continue
        metrics, text = widget.fontMetrics(), widget.text().replace("&", "")
        wraps = isinstance(widget, QLabel) and widget.wordWrap()
        need = max(map(metrics.horizontalAdvance, text.split() if wraps else text.splitlines() or [""]))
        if need > widget.width():
            yield f"{text}: needs {need}, has {widget.width()}"


def test_typing_is_answered_within_a_tenth_of_a_second(window: Window) -> None:
    """The time is the thread's own, and the quickest of many keys
    counts, so that a busy machine does not fail it."""
    row = window.row("main.test")
    spent = []
    for text in ("17", "18", "20", "14", "12"):
        type_into(row, "")
        for letter in text:
            begin = time.thread_time()
            QTest.keyClick(row.target, letter)
            QApplication.processEvents()
            spent.append(time.thread_time() - begin)
    assert min(spent) < 0.1, spent
