"""The small widgets, by mouse, wheel and keyboard."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QAccessible, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from rigbuilder.views.controls.ask import CANCEL, Answer, ScriptedAsk, WindowAsk
from rigbuilder.views.controls.badge import SeverityBadge
from rigbuilder.views.controls.buttons import ActionButton, LinkButton
from rigbuilder.views.controls.card import Card
from rigbuilder.views.controls.chips import Chip, ChipKind, Chips
from rigbuilder.views.controls.choice_field import ChoiceField
from rigbuilder.views.controls.flow_layout import FlowLayout
from rigbuilder.views.controls.foldable import Foldable
from rigbuilder.views.controls.patience import Patience
from rigbuilder.views.controls.quantity_field import QuantityField
from rigbuilder.views.controls.segment_row import SegmentRow
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.controls.toast import Toast
from rigbuilder.views.theme import contrast
from rigbuilder.views.theme_look import Look, Mode

TOO_LOW = "3 lb lies below the rod's 14–25 lb. Use 14 lb or more."


def judge(text: str) -> str:
    return "" if text.startswith("12") else TOO_LOW


def wheel_over(widget: QWidget) -> None:
    middle = QPointF(widget.rect().center())
    event = QWheelEvent(
        middle,
        QPointF(widget.mapToGlobal(widget.rect().center())),
        QPoint(0, 0),
        QPoint(0, -120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(widget, event)


@pytest.fixture
def field(qtbot: QtBot, look: Look) -> Iterator[QuantityField]:
    box = QWidget()
    column = QVBoxLayout(box)
    made, other = QuantityField("Test", unit="lb"), QPushButton("elsewhere")
    column.addWidget(made)
    column.addWidget(other)
    made.edited.connect(lambda text: made.set_problem(judge(text)))
    qtbot.addWidget(box)
    box.show()
    box.activateWindow()
    made.setFocus()
    qtbot.waitUntil(made.edit.hasFocus)
    yield made
    box.close()


def test_no_problem_while_typing_then_at_once_on_leaving(qtbot: QtBot, field: QuantityField) -> None:
    QTest.keyClicks(field.edit, "1")
    assert field.problem() == ""
    QTest.keyClick(field.edit, Qt.Key.Key_Tab)
    assert field.problem() == TOO_LOW
    assert field.problem_label.isVisible()
    assert TOO_LOW in field.edit.accessibleDescription()


def test_shown_problem_goes_with_the_mending_keystroke(qtbot: QtBot, field: QuantityField) -> None:
    QTest.keyClicks(field.edit, "1")
    field.patience.left()
    assert field.problem()
    QTest.keyClicks(field.edit, "2")
    assert field.problem() == ""
    assert field.problem_label.isHidden()
    assert TOO_LOW not in field.edit.accessibleDescription()


def test_problem_appears_after_a_pause(qtbot: QtBot) -> None:
    patience = Patience(pause_ms=10)
    patience.typed()
    with qtbot.waitSignal(patience.shown, timeout=1000) as shown:
        patience.tell("wrong")
    assert shown.args == ["wrong"]


def test_problem_of_an_untouched_field_is_shown_at_once(qtbot: QtBot, look: Look) -> None:
    field = QuantityField("Test", unit="lb")
    qtbot.addWidget(field)
    field.set_problem("wrong")
    assert field.problem() == "wrong"


def test_setting_text_tells_nobody(qtbot: QtBot, look: Look) -> None:
    field = QuantityField("Weight", unit="oz")
    qtbot.addWidget(field)
    with qtbot.assertNotEmitted(field.edited):
        field.set_text("3/8-1 oz")
    assert field.text() == "3/8-1 oz"


def test_unit_stands_inside_and_text_never_runs_under_it(qtbot: QtBot, look: Look) -> None:
    field = QuantityField("Weight", unit="oz")
    qtbot.addWidget(field)
    field.resize(160, 30)
    field.show()
    label = field.edit.findChild(QLabel)
    assert isinstance(label, QLabel)
    assert field.edit.rect().contains(label.geometry())
    assert field.edit.textMargins().right() >= label.width()
    interface = QAccessible.queryAccessibleInterface(field.edit)
    assert interface.text(QAccessible.Text.Name) == "Weight"
    assert "oz" in interface.text(QAccessible.Text.Description)


def test_wheel_scrolls_the_page_and_leaves_the_choice_alone(qtbot: QtBot, look: Look) -> None:
    area = QScrollArea()
    inner = QWidget()
    column = QVBoxLayout(inner)
    choice = ChoiceField("Cover")
    choice.set_options([("a", "open"), ("b", "wood"), ("c", "rock")])
    choice.set_value("b")
    column.addWidget(choice)
    inner.setMinimumHeight(2000)
    area.setWidget(inner)
    area.resize(200, 200)
    qtbot.addWidget(area)
    area.show()
    for focused in (False, True):
        if focused:
            choice.setFocus()
        before = area.verticalScrollBar().value()
        wheel_over(choice)
        assert choice.value() == "b"
        assert area.verticalScrollBar().value() > before


def test_choice_by_typing_part_of_a_name(qtbot: QtBot, look: Look) -> None:
    choice = ChoiceField("Technique", searchable=True)
    choice.set_options([("frog", "hollow-body frog"), ("drop", "drop shot")])
    choice.set_value("frog")
    qtbot.addWidget(choice)
    completer = choice.completer()
    completer.setCompletionPrefix("shot")
    assert completer.currentCompletion() == "drop shot"
    editor = choice.lineEdit()
    assert editor is not None
    editor.setText("Drop Shot")
    with qtbot.waitSignal(choice.chosen) as chosen:
        QTest.keyClick(editor, Qt.Key.Key_Return)
    assert chosen.args == ["drop"]
    editor.setText("no such thing")
    with qtbot.assertNotEmitted(choice.chosen):
        QTest.keyClick(editor, Qt.Key.Key_Return)
    assert choice.currentText() == "drop shot"
    assert choice.value() == "drop"


def test_choice_set_from_outside_tells_nobody(qtbot: QtBot, look: Look) -> None:
    choice = ChoiceField("Cover")
    qtbot.addWidget(choice)
    with qtbot.assertNotEmitted(choice.chosen):
        choice.set_options([("a", "open"), ("b", "wood")])
        choice.set_value("b")
        choice.set_value("unknown")
    assert choice.value() == ""


def test_segments_by_arrow_keys(qtbot: QtBot, look: Look) -> None:
    row = SegmentRow("Type", [("n", "nylon"), ("f", "fluoro"), ("b", "braid")])
    qtbot.addWidget(row)
    row.show()
    row.set_value("n")
    row.activateWindow()
    row.button("n").setFocus()
    qtbot.waitUntil(row.button("n").hasFocus)
    with qtbot.waitSignal(row.chosen) as chosen:
        QTest.keyClick(row.button("n"), Qt.Key.Key_Right)
    assert chosen.args == ["f"]
    assert row.value() == "f"
    row.set_value("")
    assert row.value() == ""
    with pytest.raises(ValueError, match="5 options, not 6"):
        row.set_options([(str(k), str(k)) for k in range(6)])


def test_chips_differ_by_more_than_colour(qtbot: QtBot, look: Look) -> None:
    chips = Chips("Rod label")
    qtbot.addWidget(chips)
    chips.set_chips([Chip(text="F", kind=kind, why="two meanings") for kind in ChipKind])
    labels = chips.findChildren(QLabel)
    assert len({label.text() for label in labels}) == 3
    assert all(label.textFormat() == Qt.TextFormat.PlainText for label in labels)
    assert "doubtful: F (two meanings)" in chips.accessibleDescription()
    chips.set_chips([])
    assert chips.isHidden()


def test_flow_takes_more_rows_when_narrow(qtbot: QtBot, look: Look) -> None:
    box = QWidget()
    flow = FlowLayout(box)
    for word in ("one", "two", "three", "four"):
        flow.addWidget(ActionButton(word))
    qtbot.addWidget(box)
    assert flow.heightForWidth(110) > flow.heightForWidth(2000)
    box.resize(110, flow.heightForWidth(110))
    box.show()
    rects = [flow.itemAt(k).geometry() for k in range(flow.count())]  # type: ignore[union-attr]
    assert not any(a.intersects(b) for k, a in enumerate(rects) for b in rects[k + 1 :])
    assert flow.itemAt(99) is None


def test_fold_remembers_and_keeps_its_badge_in_sight(qtbot: QtBot, look: Look) -> None:
    memory: dict[str, bool] = {}
    section = Foldable(look, "Water", key="water", memory=memory)
    qtbot.addWidget(section)
    section.show()
    section.set_badge("fault", 2)
    QTest.mouseClick(section.head, Qt.MouseButton.LeftButton)
    assert memory == {"water": False}
    assert section.body.isHidden()
    assert section.badge.isVisible()
    assert section.badge.text() == "2"
    assert section.head.accessibleName() == "Water, 2 fault"
    again = Foldable(look, "Water", key="water", memory=memory)
    qtbot.addWidget(again)
    assert not again.is_open()
    section.set_badge("fault", 0)
    assert section.badge.isHidden()


def test_badge_says_severity_and_count(qtbot: QtBot, look: Look) -> None:
    badge = SeverityBadge(look, "fault", "2 faults", filled=True)
    qtbot.addWidget(badge)
    assert badge.accessibleName() == "fault: 2 faults"
    image = badge.grab().toImage()
    colours = {image.pixelColor(x, image.height() // 2).name() for x in range(image.width())}
    assert look.theme.severity("fault").ink.lower() in colours


def test_card_shows_text_literally(qtbot: QtBot, look: Look) -> None:
    card = Card(look, severity="risk", number=3)
    label = text_label("<img src=x> 100 %n", wrap=True)
    card.column.addWidget(label)
    qtbot.addWidget(card)
    card.show()
    assert label.textFormat() == Qt.TextFormat.PlainText
    assert label.text() == "<img src=x> 100 %n"
    card.set_sign("")
    assert card.severity() == ""


@pytest.mark.parametrize("zoom", [1.0, 2.0])
def test_targets_are_large_enough(qtbot: QtBot, look: Look, zoom: float) -> None:
    look.set_zoom(zoom)
    box = QWidget()
    column = QVBoxLayout(box)
    quantity, choice = QuantityField("Test", unit="lb"), ChoiceField("Cover")
    action, link = ActionButton("Save"), LinkButton("How we know")
    row = SegmentRow("Type", [("n", "nylon"), ("b", "braid")])
    section = Foldable(look, "Water")
    for widget in (quantity, choice, action, link, row, section):
        column.addWidget(widget)
    qtbot.addWidget(box)
    box.show()
    for widget in (quantity.edit, choice, action, link, row.button("n"), section.head):
        assert widget.height() >= 24 * zoom, widget
        assert widget.width() >= 24 * zoom, widget


@pytest.mark.parametrize("mode", [Mode.LIGHT, Mode.DARK])
def test_focus_frame_is_seen(qtbot: QtBot, look: Look, mode: Mode) -> None:
    look.set_mode(mode)
    box = QWidget()
    column = QVBoxLayout(box)
    quantity, section = QuantityField("Test", unit="lb"), Foldable(look, "Water")
    widgets: list[QWidget] = [
        quantity.edit,
        ChoiceField("Cover"),
        ActionButton("Save", weight="first"),
        ActionButton("Use braid 50 lb", weight="remedy"),
        LinkButton("How we know"),
        section.head,
    ]
    for widget in (quantity, *widgets[1:-1], section):
        column.addWidget(widget)
    rest = QPushButton("elsewhere")
    column.addWidget(rest)
    qtbot.addWidget(box)
    box.show()
    box.activateWindow()
    for widget in widgets:
        rest.setFocus(Qt.FocusReason.TabFocusReason)
        qtbot.waitUntil(rest.hasFocus)
        before = widget.grab().toImage()
        widget.setFocus(Qt.FocusReason.TabFocusReason)
        qtbot.waitUntil(widget.hasFocus)
        after = widget.grab().toImage()
        changed = 0
        for x in range(before.width()):
            for y in (*range(3), *range(before.height() - 3, before.height())):
                one, other = before.pixelColor(x, y).name(), after.pixelColor(x, y).name()
                changed += one != other and contrast(one, other) >= 3.0
        assert changed >= 2 * (before.width() - 12), widget


def test_toast_offers_the_way_back_long_enough(qtbot: QtBot, look: Look) -> None:
    page = QWidget()
    page.resize(500, 300)
    qtbot.addWidget(page)
    toast = Toast(page)
    page.show()
    undone: list[int] = []
    toast.show_message("Moved to the bin.", undo=lambda: undone.append(1))
    assert toast.seconds_left() >= 10
    assert page.rect().contains(toast.geometry())
    QTest.mouseClick(toast.undo_button, Qt.MouseButton.LeftButton)
    assert undone == [1]
    assert toast.isHidden()
    toast.show_message("Saved.")
    assert toast.undo_button.isHidden()


SAVE, DISCARD = Answer("save", "Save"), Answer("discard", "Discard", harmful=True)


def test_question_has_verbs_plain_text_and_a_safe_default(qtbot: QtBot, look: Look) -> None:
    box, buttons = WindowAsk().box("Unsaved", "<b>Frog</b> has changes.", [SAVE, DISCARD, CANCEL])
    qtbot.addWidget(box)
    assert box.textFormat() == Qt.TextFormat.PlainText
    assert [button.text() for button, _ in buttons] == ["Save", "Discard", "Cancel"]
    assert box.defaultButton() is buttons[0][0]
    assert box.escapeButton() is buttons[2][0]


def test_scripted_answers() -> None:
    ask = ScriptedAsk(["discard", None, "/x/frog.rigcard"])
    assert ask.choose("Unsaved", "Frog has changes.", [SAVE, DISCARD, CANCEL]) == "discard"
    assert ask.open_path("Open a card", Path(), "*.rigcard") is None
    assert ask.save_path("Save the card", Path(), "*.rigcard") == Path("/x/frog.rigcard")
    assert ask.asked == ["Frog has changes.", "Open a card", "Save the card"]
    with pytest.raises(AssertionError, match="Nobody was expected"):
        ask.open_path("Open a card", Path(), "*.rigcard")
    with pytest.raises(AssertionError, match="not an answer"):
        ScriptedAsk(["maybe"]).choose("Unsaved", "Frog has changes.", [SAVE, CANCEL])
