"""The whole window off the screen: keys, names, order, and what leads where."""

from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QAccessible, QDropEvent, QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu, QPlainTextEdit, QWidget
from pytestqt.qtbot import QtBot

from rigbuilder.model.document import drop
from rigbuilder.units.systems import UnitSystem
from rigbuilder.views.actions import MENUS, Spec
from rigbuilder.views.form_section import FormSection
from rigbuilder.views.theme_look import Look, Mode
from tests.unit.viewmodels.parts import demo_card
from tests.unit.views.parts import Window, focusable, type_into


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory, shared_look: Look) -> Iterator[Window]:
    window = Window(tmp_path_factory.mktemp("desk"), shared_look)
    yield window
    window.close()


@pytest.fixture
def window(shared: Window) -> Window:
    shared.renew()
    return shared


def _walk(window: Window, key: Qt.Key, start: QWidget) -> list[QWidget]:
    """Press Tab (or Shift+Tab) until a control comes up a second time."""
    start.setFocus()
    seen: list[QWidget] = []
    modifier = (
        Qt.KeyboardModifier.ShiftModifier if key is Qt.Key.Key_Backtab else Qt.KeyboardModifier.NoModifier
    )
    for _ in range(400):
        here = QApplication.focusWidget()
        assert here is not None
        if here in seen:
            return seen
        seen.append(here)
        QTest.keyClick(here, key, modifier)
    raise AssertionError("Tab never came back")


def test_title_and_star_follow_the_card(window: Window) -> None:
    assert window.main.windowTitle() == "Pad frog, rod 3[*] — Rigbuilder"
    assert not window.main.isWindowModified()
    window.main.header.name.setFocus()
    window.main.header.name.selectAll()
    QTest.keyClicks(window.main.header.name, "Frog")
    assert window.main.windowTitle() == "Frog[*] — Rigbuilder"
    assert window.main.isWindowModified()
    assert window.main.header.saved.text() == "unsaved changes"
    assert window.bench.undo_stack.count() == 1
    window.main.actions_["save"].trigger()
    assert not window.main.isWindowModified()
    assert window.main.header.saved.text() == "saved"
    window.main.actions_["undo"].trigger()
    assert window.main.header.name.text() == "Pad frog, rod 3"


def test_tab_reaches_every_control_of_the_form_in_reading_order_and_comes_back(window: Window) -> None:
    form = window.main.form
    for section in form.sections.values():
        section.show_further(True)
    form.notes.set_open(True)
    QApplication.processEvents()
    there = _walk(window, Qt.Key.Key_Tab, window.main.header.name)
    back = _walk(window, Qt.Key.Key_Backtab, window.main.header.name)
    assert back[1:] == there[:0:-1]
    wanted = [w for w in focusable(form) if not _is_other_segment(w)]
    missed = [w.accessibleName() or w.objectName() for w in wanted if w not in there]
    assert missed == []
    assert any(isinstance(widget, QPlainTextEdit) for widget in there)
    sheet = form.widget()
    assert sheet is not None
    inside = [w for w in there if form.isAncestorOf(w)]
    places = [w.mapTo(sheet, w.rect().topLeft()) for w in inside]
    tops = [(place.y(), place.x()) for place in places]
    for (y0, x0), (y1, x1) in pairwise(tops):
        assert y1 > y0 or (abs(y1 - y0) < 16 and x1 > x0)


def _is_other_segment(widget: QWidget) -> bool:
    """Buttons of a segment row are one stop; arrow keys go on from there."""
    return bool(widget.property("segment"))


def test_the_focus_is_never_scrolled_out_of_sight(window: Window) -> None:
    form = window.main.form
    window.main.resize(1024, 640)
    for section in form.sections.values():
        section.show_further(True)
    QApplication.processEvents()
    for widget in _walk(window, Qt.Key.Key_Tab, window.main.header.name):
        if form.isAncestorOf(widget):
            widget.setFocus(Qt.FocusReason.TabFocusReason)
            QApplication.processEvents()
            form.ensureWidgetVisible(widget)
            seen = widget.visibleRegion().boundingRect()
            assert seen.height() >= 0.9 * min(widget.height(), form.viewport().height())


def test_every_control_has_a_name_of_its_own_in_its_section(window: Window) -> None:
    for section in window.main.form.sections.values():
        section.show_further(True)
    QApplication.processEvents()
    for place in [*window.main.form.findChildren(FormSection), window.main.header]:
        names = []
        for widget in focusable(place):
            interface = QAccessible.queryAccessibleInterface(widget)
            name = interface.text(QAccessible.Text.Name)
            assert name, f"{widget.objectName()} in {place.objectName()}"
            names.append(name)
        assert len(names) == len(set(names)), names


def test_every_control_of_the_form_is_large_enough_to_hit(window: Window) -> None:
    for section in window.main.form.sections.values():
        section.show_further(True)
    QApplication.processEvents()
    small = [
        (w.accessibleName(), w.width(), w.height())
        for place in (window.main.form, window.main.header)
        for w in focusable(place)
        if w.width() < 24 or w.height() < 24
    ]
    assert small == []


def test_no_two_actions_share_their_keys_and_no_menu_its_letters(window: Window) -> None:
    keys = [key.toString() for action in window.main.actions_.all() for key in action.shortcuts()]
    assert len(keys) == len(set(keys))
    menus = [menu for menu in window.main.menuBar().findChildren(QMenu) if menu.title()]
    groups = [
        [a.text() for a in window.main.menuBar().actions()],
        *([a.text() for a in m.actions()] for m in menus),
    ]
    for texts in groups:
        letters = [text[text.index("&") + 1].casefold() for text in texts if "&" in text]
        assert len(letters) == len(set(letters)), texts
    for title, entries in MENUS:
        assert "&" in title
        assert all("&" in entry.text for entry in entries if isinstance(entry, Spec))


@pytest.mark.parametrize(
    ("name", "key"),
    [
        ("new", QKeySequence.StandardKey.New),
        ("open", QKeySequence.StandardKey.Open),
        ("save", QKeySequence.StandardKey.Save),
        ("undo", QKeySequence.StandardKey.Undo),
    ],
)
def test_the_usual_keys_do_the_usual_things(window: Window, name: str, key: QKeySequence.StandardKey) -> None:
    assert QKeySequence(key) in window.main.actions_[name].shortcuts()


def test_undo_says_what_it_takes_back(window: Window) -> None:
    type_into(window.row("main.test"), "17")
    assert window.main.actions_.undo.text() == "&Undo change main line test"


def test_ctrl_z_in_a_field_takes_back_the_edit_of_the_card(window: Window) -> None:
    row = window.row("main.test")
    type_into(row, "17")
    QTest.keyClick(row.target, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.bench.document == demo_card()
    QTest.keyClick(
        row.target, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
    )
    assert window.bench.text("main.test") == "17 lb"


def test_the_verdict_counts_and_leads_to_the_first_field_to_mend(window: Window) -> None:
    verdict = window.main.header.verdict
    assert "fault" in verdict.text()
    assert verdict.text() in verdict.accessibleName()
    window.bench.edit("drag", "6 bananas")
    assert "1 field" in verdict.text()
    verdict.click()
    assert QApplication.focusWidget() is window.row("drag").target


def test_the_verdict_is_announced_once_when_an_edit_has_settled(window: Window, qtbot: QtBot) -> None:
    spoken: list[str] = []
    header = window.main.header
    qtbot.waitUntil(lambda: bool(header._spoken), timeout=2000)
    before = header._spoken
    for text in ("2 lb", "20 lb", "50 lb"):
        window.bench.edit("main.type", "braid")
        window.bench.edit("main.test", text)
        spoken.append(header._spoken)
    assert set(spoken) == {before}
    qtbot.waitUntil(lambda: header._spoken != before, timeout=2000)


def test_a_reason_leads_to_its_field_even_where_that_is_folded_away(window: Window) -> None:
    section = window.main.form.sections["water"]
    section.set_open(False)
    window.main.panels.reasons.field_wanted.emit("water.wind")
    assert section.is_open()
    QApplication.processEvents()
    assert window.main.form.focused_row() is section.rows["water.wind"]


def test_units_are_switched_by_segment_and_menu_alike(window: Window) -> None:
    before = window.bench.document
    window.main.header.units.button(str(UnitSystem.METRIC)).click()
    assert window.main.actions_["metric"].isChecked()
    assert window.room.preferences.units is UnitSystem.METRIC
    window.main.actions_["imperial"].trigger()
    assert window.main.header.units.value() == str(UnitSystem.IMPERIAL)
    assert window.bench.document is before


def test_light_and_dark_are_remembered(window: Window) -> None:
    window.main.actions_["dark"].trigger()
    assert window.main.look.mode is Mode.DARK
    assert window.room.preferences.theme == "dark"
    window.main.actions_["light"].trigger()


def test_assumptions_can_be_set_one_by_one_and_at_once(window: Window) -> None:
    window.bench.replace(drop(drop(demo_card(), "water.temperature"), "cast"))
    count = len(window.bench.reading.assumed)
    link = window.main.assumed.findChild(QWidget, "set:water.temperature")
    assert link is not None
    link.click()  # type: ignore[attr-defined]
    assert window.bench.says("water.temperature")
    assert len(window.bench.reading.assumed) == count - 1
    window.main.actions_["set-all"].trigger()
    assert [e for e in window.bench.reading.assumed if e.field != "backing.length"] == []
    window.main.actions_["undo"].trigger()
    window.main.actions_["undo"].trigger()
    assert not window.bench.says("water.temperature")


def test_the_field_in_hand_is_set_and_cleared_by_key(window: Window) -> None:
    row = window.row("drag")
    QTest.keyClick(
        row.target,
        Qt.Key.Key_Backspace,
        Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier,
    )
    assert not window.bench.says("drag")
    QTest.keyClick(row.target, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert window.bench.says("drag")


def test_help_tells_what_the_field_in_hand_is_for(window: Window) -> None:
    window.row("drag")
    window.main.actions_["help"].trigger()
    assert "scale" in window.ask.asked[-1]


def test_about_names_the_program_and_its_version(window: Window) -> None:
    window.ask.answers = ["close"]
    window.main.actions_["about"].trigger()
    assert window.ask.asked[-1].startswith("Rigbuilder ")


def test_closing_with_unsaved_work_asks_and_may_be_called_off(window: Window) -> None:
    window.bench.edit("main.test", "17 lb")
    window.ask.answers = ["cancel"]
    window.main.close()
    assert window.main.isVisible()


def test_what_is_still_in_a_field_is_saved_too(window: Window) -> None:
    type_into(window.row("main.test"), "17 bananas")
    window.main.actions_["save"].trigger()
    assert "17 bananas" in window.card.read_text(encoding="utf-8")


def test_recent_cards_are_listed_and_missing_ones_switched_off(window: Window, tmp_path: Path) -> None:
    window.room.preferences.opened(tmp_path / "gone.rigcard")
    menu = window.main._recent
    menu.fill()
    first, second = menu.actions()[:2]
    assert not first.isEnabled()
    assert second.isEnabled()
    assert "frog.rigcard" in second.text()


@pytest.mark.parametrize(("name", "opened"), [("frog.rigcard", True), ("picture.png", False), ("two", False)])
def test_a_card_dropped_on_the_window_is_opened_and_nothing_else(
    window: Window, name: str, opened: bool
) -> None:
    window.main.desk.new("drop-shot")
    data = QMimeData()
    names = ["a.rigcard", "b.rigcard"] if name == "two" else [name]
    data.setUrls([QUrl.fromLocalFile(str(window.card.with_name(each))) for each in names])
    window.main.dropEvent(
        QDropEvent(
            QPointF(5, 5),
            Qt.DropAction.CopyAction,
            data,
            Qt.MouseButton.LeftButton,
            Qt.KeyboardModifier.NoModifier,
        )
    )
    assert (window.main.desk.path == window.card) is opened
    assert window.main.toast.isVisible() is not opened


@pytest.mark.parametrize("size", [(1024, 640), (1366, 700), (1920, 1000)])
def test_nothing_is_wider_than_the_window(window: Window, size: tuple[int, int]) -> None:
    window.main.resize(*size)
    QApplication.processEvents()
    assert (window.main.width(), window.main.height()) == size
    columns = window.main.workspace.columns
    assert sum(columns.sizes()) <= size[0]
    assert window.main.form.widget().width() <= window.main.form.viewport().width()  # type: ignore[union-attr]


@pytest.mark.parametrize("zoom", [1.25, 2.0])
def test_the_window_fits_a_small_screen_at_every_zoom(window: Window, zoom: float) -> None:
    window.main.look.set_zoom(zoom)
    QApplication.processEvents()
    hint = window.main.minimumSizeHint()
    window.main.look.set_zoom(1.0)
    assert hint.width() <= 1280
    assert hint.height() <= 800
