"""The form: what it shows, when it complains, and what each keystroke does to the card."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QWidget
from pytestqt.qtbot import QtBot

from rigbuilder.model.fields import FIELDS
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.form import badge
from rigbuilder.views.controls.patience import PAUSE_MS
from rigbuilder.views.form import FormPanel
from rigbuilder.views.form_help import expects, help_for
from rigbuilder.views.form_plan import SECTIONS
from rigbuilder.views.form_rows import ChoiceRow, SegmentsRow, TextRow
from rigbuilder.views.theme_look import Look
from tests.unit.viewmodels.parts import Room, demo_card, make_room
from tests.unit.views.parts import make_form, show_row, type_into


@pytest.fixture
def room(tmp_path: Path, qapp: QApplication) -> Room:
    room = make_room(tmp_path)
    room.bench.replace(demo_card())
    return room


@pytest.fixture
def form(room: Room, look: Look) -> Iterator[FormPanel]:
    form = make_form(room, look)
    yield form
    form.close()
    form.deleteLater()


def _text(form: FormPanel, path: str) -> TextRow:
    row = show_row(form, path)
    assert isinstance(row, TextRow)
    return row


def test_every_field_of_the_card_but_its_name_has_a_row() -> None:
    rows = [row.path for section in SECTIONS for row in section.rows]
    assert sorted(rows) == sorted(field.path for field in FIELDS if field.path != "name")


@pytest.mark.parametrize("path", [row.path for section in SECTIONS for row in section.rows])
def test_every_field_has_its_help(path: str) -> None:
    assert help_for(path).endswith(".")
    assert expects(path).endswith(".")


def test_at_most_twelve_fields_are_in_sight_at_first(form: FormPanel) -> None:
    shown = [row for section in form.sections.values() for row in section.rows.values() if row.isVisible()]
    assert 8 <= len(shown) <= 12


def test_what_was_opened_is_remembered(room: Room, form: FormPanel, look: Look) -> None:
    form.sections["water"].show_further(True)
    form.sections["lure"].set_open(False)
    again = make_form(room, look)
    assert again.sections["water"].rows["water.wind"].isVisible()
    assert not again.sections["lure"].is_open()
    again.close()
    again.deleteLater()


def test_a_bare_number_goes_on_the_card_with_the_unit_in_sight(room: Room, form: FormPanel) -> None:
    row = _text(form, "main.test")
    type_into(row, "17")
    assert row.field.edit.unit() == "lb"
    assert room.bench.text("main.test") == "17 lb"
    assert row.field.text() == "17"
    form.focus_field("lure.weight")
    assert row.field.text() == "17 lb"
    assert row.field.edit.unit() == ""


def test_typing_is_one_step_and_comes_back_whole(room: Room, form: FormPanel) -> None:
    row = _text(form, "main.diameter")
    type_into(row, "0,33 mm")
    form.focus_field("lure.weight")
    assert room.bench.text("main.diameter") == "0,33 mm"
    assert room.bench.undo_stack.count() == 1
    room.bench.undo_stack.undo()
    assert room.bench.document == demo_card()
    assert row.field.text() == "0.35 mm"


def test_undo_in_a_field_takes_back_the_edit_of_the_card(room: Room, form: FormPanel) -> None:
    row = _text(form, "main.test")
    type_into(row, "17")
    room.bench.undo_stack.undo()
    assert row.field.text() == "16 lb"


def test_nothing_is_said_while_someone_types(room: Room, form: FormPanel, qtbot: QtBot) -> None:
    row = _text(form, "main.test")
    report = room.bench.report
    type_into(row, "1 l")
    assert row.field.problem() == ""
    assert room.bench.report is not None
    QTest.keyClick(row.field.edit, Qt.Key.Key_B)
    assert room.bench.text("main.test") == "1 lb"
    assert row.field.problem() == ""
    assert room.bench.report is not report


def test_a_problem_shows_after_a_pause(form: FormPanel, qtbot: QtBot) -> None:
    row = _text(form, "main.test")
    type_into(row, "16 bananas")
    qtbot.wait(PAUSE_MS // 2)
    assert row.field.problem() == ""
    qtbot.waitUntil(lambda: "bananas" in row.field.problem(), timeout=2 * PAUSE_MS)


def test_a_problem_shows_when_the_field_is_left_and_goes_when_mended(room: Room, form: FormPanel) -> None:
    row = _text(form, "main.test")
    type_into(row, "16 bananas")
    form.focus_field("lure.weight")
    assert "16 bananas" in row.field.problem()
    assert "12 lb" in row.field.problem()
    assert row.field.problem_label.isVisible()
    assert row.field.problem() in row.field.edit.accessibleDescription()
    row.field.edit.setFocus()
    row.field.edit.selectAll()
    QTest.keyClick(row.field.edit, Qt.Key.Key_2)
    assert row.field.problem() == ""
    assert room.bench.text("main.test") == "2 lb"


def test_a_required_field_may_be_empty_for_a_moment(room: Room, form: FormPanel) -> None:
    row = _text(form, "main.test")
    type_into(row, "")
    assert room.bench.report is not None
    form.focus_field("lure.weight")
    assert row.field.problem().startswith("Needed here")
    assert not room.bench.says("main.test")


def test_emptying_a_field_says_nothing_any_more(room: Room, form: FormPanel) -> None:
    row = _text(form, "drag")
    type_into(row, "")
    assert not room.bench.says("drag")
    assert row.field.edit.placeholderText().startswith("assumed: ")
    assert "Assumed: " in row.field.edit.toolTip()
    assert row.field.edit.unit() == ""


def test_the_small_button_sets_what_is_assumed_and_clears_what_is_said(room: Room, form: FormPanel) -> None:
    row = _text(form, "drag")
    row.act.click()
    assert not room.bench.says("drag")
    assumed = row.field.edit.placeholderText().removeprefix("assumed: ")
    row.act.click()
    assert room.bench.text("drag") == assumed


def test_none_can_be_typed(room: Room, form: FormPanel) -> None:
    row = _text(form, "hardware.snap")
    type_into(row, "40")
    assert room.bench.text("hardware.snap") == "40 lb"
    type_into(row, "none")
    form.focus_field("lure.weight")
    assert room.bench.document["hardware"]["snap"] is None
    assert row.field.text() == "none"


def test_a_label_shows_what_was_made_of_it(form: FormPanel) -> None:
    row = _text(form, "rod.label")
    type_into(row, "7'3\" H F gibberish 30-65 lb")
    chips = row.findChildren(QWidget, "") and form.sections["rod"].rows["rod.label"].chips  # type: ignore[attr-defined]
    kinds = {str(chip.kind): chip.text for chip in chips.chips()}
    assert kinds["not understood"] == "gibberish"
    assert "gibberish" in chips.accessibleDescription()
    assert all(chip.why for chip in chips.chips())


@pytest.mark.qt_log_ignore("This plugin does not support", extend=True)
def test_a_technique_is_found_by_part_of_its_name(room: Room, form: FormPanel) -> None:
    row = show_row(form, "lure.technique")
    assert isinstance(row, ChoiceRow)
    assert row.field.count() == 59
    editor = row.field.lineEdit()
    assert editor is not None
    editor.setFocus()
    editor.selectAll()
    QTest.keyClicks(editor, "Drop shot")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert room.bench.text("lure.technique") == "drop shot"


def test_an_alias_shows_the_technique_and_stays_on_the_card(room: Room, form: FormPanel) -> None:
    alias = room.bench.reference.techniques["walking-bait"].aliases[0]
    room.bench.edit("lure.technique", alias.upper())
    row = show_row(form, "lure.technique")
    assert isinstance(row, ChoiceRow)
    assert row.field.value() == "walking bait"
    assert room.bench.text("lure.technique") == alias.upper()


def test_knots_made_for_the_place_come_first(form: FormPanel) -> None:
    row = show_row(form, "knots.arbor")
    assert isinstance(row, ChoiceRow)
    assert row.field.itemData(0) == "arbor"


def test_presentation_is_chosen_among_segments(room: Room, form: FormPanel) -> None:
    row = show_row(form, "presentation")
    assert isinstance(row, SegmentsRow)
    row.field.button("finesse").click()
    assert room.bench.text("presentation") == "finesse"
    assert room.bench.undo_stack.undoText() == "change presentation"


@pytest.mark.parametrize("group", ["leader", "backing"])
def test_a_part_is_as_usual_or_none_or_given(room: Room, form: FormPanel, group: str) -> None:
    assert form.focus_field(group)
    chooser = form.sections[group].group
    assert chooser is not None
    for how in ("none", "own", "usual", "own", "none", "usual"):
        chooser.field.button(how).click()
        assert room.bench.reading.problems == ()
        assert chooser.field.value() == how
        assert form.sections[group].fields.isVisible() == form._model.has_group(group)
    room.bench.undo_stack.setIndex(0)
    assert room.bench.document == demo_card()


def test_typing_into_an_assumed_leader_brings_the_rest_of_it_along(room: Room, form: FormPanel) -> None:
    room.bench.replace(
        demo_card()
        | {"lure": {"technique": "drop shot", "weight": "1/4 oz"}, "main": {"type": "braid", "test": "10 lb"}}
    )
    room.bench.clear("leader")
    row = _text(form, "leader.length")
    assert row.field.edit.placeholderText().startswith("assumed: ")
    type_into(row, "30")
    leader = room.bench.document["leader"]
    assert leader["length"] == "30 in"
    assert {"type", "test"} <= set(leader)
    assert room.bench.reading.problems == ()


def test_parts_can_be_pinned(room: Room, form: FormPanel) -> None:
    form.sections["knots"].show_further(True)
    knots, drag = form.sections["knots"].pins
    drag.click()
    knots.click()
    assert room.bench.document["pinned"] == ["knots", "drag"]
    drag.click()
    knots.click()
    assert "pinned" not in room.bench.document


def test_the_unit_switch_changes_no_letter_of_the_card(room: Room, form: FormPanel) -> None:
    before = json.dumps(room.bench.document)
    for system in (UnitSystem.METRIC, UnitSystem.IMPERIAL, UnitSystem.METRIC):
        room.bench.speak(system)
        QApplication.processEvents()
    assert json.dumps(room.bench.document) == before
    assert room.bench.undo_stack.count() == 0
    row = _text(form, "main.test")
    type_into(row, "7")
    assert room.bench.text("main.test") == "7 kg"


def test_the_wheel_never_changes_a_field_and_the_page_scrolls(room: Room, form: FormPanel) -> None:
    form.resize(330, 400)
    QApplication.processEvents()
    before, bar = room.bench.document, form.verticalScrollBar()
    bar.setValue(0)
    for combo in form.findChildren(QComboBox):
        if combo.isVisible():
            place = QPointF(combo.rect().center())
            turn = QWheelEvent(
                place,
                QPointF(combo.mapToGlobal(place.toPoint())),
                QPoint(),
                QPoint(0, -120),
                Qt.MouseButton.NoButton,
                Qt.KeyboardModifier.NoModifier,
                Qt.ScrollPhase.NoScrollPhase,
                False,
            )
            QApplication.sendEvent(combo, turn)
    assert room.bench.document == before


@given(
    changes=st.dictionaries(
        st.sampled_from([field.path for field in FIELDS if "." in field.path]),
        st.sampled_from(["", "x", "12 lb", "3", "braid", "nylon", "0.3 mm"]),
        max_size=4,
    )
)
@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_every_badge_counts_exactly_what_is_in_its_section(
    room: Room, form: FormPanel, changes: dict[str, str]
) -> None:
    room.bench.replace(demo_card())
    room.bench.apply(changes, "spoil")
    total = 0
    for section in form.sections.values():
        severity, count = badge(room.bench, section.section.parts)
        assert section.badge.isHidden() == (count == 0)
        if count:
            assert (section.badge.kind(), section.badge.text()) == (severity, str(count))
        total += count
    findings = () if room.bench.report is None else room.bench.report.findings
    assert total == len(findings) + len(room.bench.reading.problems)


def test_no_field_is_wider_than_the_form(form: FormPanel) -> None:
    form.resize(296, 900)
    for section in form.sections.values():
        section.show_further(True)
    QApplication.processEvents()
    sheet = form.widget()
    assert sheet is not None
    assert sheet.width() <= form.viewport().width()
    assert sheet.minimumSizeHint().width() <= form.viewport().width()
