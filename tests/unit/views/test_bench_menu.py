"""The dialogs of the menu Bench, and the section for tags, price and log, by mouse and keys."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from rigbuilder import resources
from rigbuilder.store.house import read_house
from rigbuilder.views.controls.buttons import LinkButton
from rigbuilder.views.side_window import SideWindow
from rigbuilder.views.theme_look import Look
from tests.unit.viewmodels.parts import reference
from tests.unit.views.parts import Window
from tests.unit.views.places import Places


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory, shared_look: Look) -> Iterator[Places]:
    places = Places(tmp_path_factory.mktemp("menu"), shared_look)
    yield places
    places.close()


@pytest.fixture
def places(shared: Places) -> Places:
    shared.window.renew()
    shared.practice.decide({})
    return shared


@pytest.fixture
def window(places: Places) -> Window:
    return places.window


def test_a_severity_is_decided_kept_and_put_back(places: Places) -> None:
    bench = places.window.bench
    rule = bench.report.findings[0].rule.name
    dialog = places.menu.house()
    dialog.severities.search.setText(rule.replace("-", " "))
    field = dialog.severities.fields[rule]
    field.setCurrentIndex(field.findData("note"))
    field.activated.emit(field.currentIndex())
    assert dialog.count.text() == "1 decision of the house."
    dialog.save.click()
    assert [f.severity.word for f in bench.report.findings if f.rule.name == rule] == ["note"]
    again = places.menu.house()
    assert again.severities.fields[rule].value() == "note"
    again.back.click()
    assert again.severities.fields[rule].value() == ""
    again.save.click()
    assert [f.severity.word for f in bench.report.findings if f.rule.name == rule] == ["fault"]


def test_nothing_is_kept_by_cancel(places: Places) -> None:
    dialog = places.menu.house()
    key, boxes = next(iter(dialog.differ.boxes.items()))
    next(iter(boxes.values())).click()
    assert dialog.sheet.entries.get("disagreements", {}).keys() <= {key}
    dialog.cancel.click()
    assert places.practice.house.is_shipped


def test_a_range_is_moved_and_a_wrong_one_holds_the_dialog(places: Places) -> None:
    dialog = places.menu.house()
    field = dialog.ranges.ranges["lines", "braid", "test_lb"]
    QTest.keyClicks(field.edit, "80-50")
    dialog.save.click()
    assert "12-20" in dialog.problem.text()
    assert places.practice.house.is_shipped
    field.edit.clear()
    QTest.keyClicks(field.edit, "50-80")
    dialog.save.click()
    assert dialog.problem.text() == ""
    name = dialog.ranges.technique.value()
    assert places.practice.house.entries()["techniques"][name]["lines"]["braid"]["test_lb"] == [50.0, 80.0]
    assert read_house(places.practice._path) == places.practice.house.entries()


def test_the_middle_way_is_put_on_in_one_step(places: Places) -> None:
    bench = places.window.bench
    before = bench.document
    dialog = places.menu.middle()
    dialog.take(dialog.found[0])
    assert bench.text("main.test") == dialog.found[0].changes["main.test"]
    bench.undo_stack.undo()
    assert bench.document == before


def test_two_techniques_without_a_common_line_say_so(places: Places) -> None:
    dialog = places.menu.middle()
    for index in range(dialog.other.count()):
        dialog.other.setCurrentIndex(index)
        dialog.other.activated.emit(index)
        if not dialog.found:
            break
    assert not dialog.found
    assert "two rods" in dialog._cards.itemAt(0).widget().text()  # type: ignore[union-attr]


def test_a_word_is_found_by_typing(places: Places) -> None:
    dialog = places.menu.glossary()
    dialog.show()
    QTest.keyClicks(dialog.search, "backlash")
    assert dialog.words.currentItem().text() == "backlash"
    assert dialog.meaning.text() == reference().glossary["backlash"].meaning
    QTest.keyClicks(dialog.search, "qqq")
    assert dialog.meaning.text() == "No such word here."
    dialog.close()


def test_fill_and_chain_are_windows_that_esc_closes(places: Places, qtbot: QtBot) -> None:
    for show in (places.menu.show_fill, places.menu.show_chain):
        side = show()
        assert side.isVisible()
        assert show() is side
        qtbot.waitUntil(lambda side=side: QApplication.activeWindow() is side)
        QTest.keyClick(side, Qt.Key.Key_Escape)
        qtbot.waitUntil(lambda side=side: not side.isVisible())


def test_a_price_waits_until_its_field_is_left(window: Window) -> None:
    assert window.main.form.focus_field("main.price")
    field = window.main.form.keeping.prices["main"]
    field.edit.selectAll()
    QTest.keyClicks(field.edit, "24 EUR")
    assert window.bench.report is not None
    QTest.keyClicks(field.edit, " for 200 yd")
    QTest.keyClick(field.edit, Qt.Key.Key_Tab)
    assert window.bench.document["main"]["price"] == {"amount": 24.0, "currency": "EUR", "length": "200 yd"}


def test_a_price_typed_but_not_left_is_saved_too(window: Window) -> None:
    assert window.main.form.focus_field("main.price")
    field = window.main.form.keeping.prices["main"]
    field.edit.selectAll()
    QTest.keyClicks(field.edit, "9 EUR for 100 m")
    window.main.actions_["save"].trigger()
    assert '"amount": 9.0' in window.card.read_text(encoding="utf-8")


def test_the_log_is_kept_with_its_day(window: Window) -> None:
    log = window.main.form.keeping.log
    window.main.form.keeping.set_open(True)
    log.what.set_value("retied")
    log.on.set_text("someday")
    log.add.click()
    assert "2026-05-02" in log.on.problem()
    count = len(window.bench.document.get("log", []))
    log.on.set_text("2026-05-02")
    log.add.click()
    assert window.bench.document["log"][-1] == {"on": "2026-05-02", "what": "retied"}
    QApplication.processEvents()
    outs = [button for button in log.findChildren(LinkButton) if button.isVisible()]
    outs[-1].click()
    assert len(window.bench.document["log"]) == count


def test_a_shipped_card_says_that_it_is_an_example(window: Window, tmp_path: Path) -> None:
    assert window.room.desk.save_as(tmp_path / "own.rigcard").done
    assert window.main.header.saved.text() == "saved"
    assert window.room.desk.open(resources.path("demo", "pad-frog.rigcard")).done
    assert window.main.header.saved.text() == "example, not saved yet"


def test_a_long_name_shows_its_beginning(window: Window) -> None:
    window.bench.edit("name", "Pad frog for the far end of the north bay " * 4)
    assert window.main.header.name.cursorPosition() == 0


@pytest.mark.parametrize(
    ("question", "words"),
    [("Where will it break?", "Joints and drag…"), ("What fills the spool?", "Fill the reel…")],
)
def test_a_question_leads_to_its_plan(places: Places, question: str, words: str) -> None:
    panel = places.window.main.panels.questions
    places.window.main.workspace.show_panel(panel)
    panel.ask(question)
    panel.answer()
    assert panel.bar.plan.text() == words
    panel.bar.plan.click()
    side = places.window.main.findChild(SideWindow, "chain-window" if "break" in question else "fill-window")
    assert side is not None
    assert side.isVisible()
    side.close()
    panel.ask("How deep, how still?")
    assert panel.bar.plan.isHidden()
