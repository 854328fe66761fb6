"""The reasons panel on real cards: read, looked ahead, mended, silenced, by mouse and keyboard."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QWidget
from pytestqt.qtbot import QtBot

from rigbuilder.model.fields import Part
from rigbuilder.review.core import Severity
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.pins import numbering
from rigbuilder.views.controls.toast import Toast
from rigbuilder.views.preview_toast import toast_of
from rigbuilder.views.reason_card import ReasonCard
from rigbuilder.views.reasons import ReasonsPanel
from rigbuilder.views.theme_look import Look, Mode
from tests.unit.views.rigs import WRONG_FROG, bench_of, bench_with

LEFT = Qt.MouseButton.LeftButton


def shown(qtbot: QtBot, look: Look, bench: Bench) -> ReasonsPanel:
    panel = ReasonsPanel(bench, look)
    qtbot.addWidget(panel)
    panel.resize(332, 800)
    panel.show()
    qtbot.waitUntil(lambda: all(card.remedies.buttons or card.remedies.advice for card in panel.cards()))
    return panel


@pytest.fixture
def wrong(qtbot: QtBot, look: Look) -> tuple[Bench, ReasonsPanel]:
    bench = bench_of("frog", WRONG_FROG)
    return bench, shown(qtbot, look, bench)


def texts(widget: QWidget) -> str:
    return "\n".join(label.text() for label in widget.findChildren(QLabel) if label.isVisibleTo(widget))


def test_every_reason_has_a_sheet_worst_first_with_the_number_of_its_pin(
    wrong: tuple[Bench, ReasonsPanel],
) -> None:
    bench, panel = wrong
    assert bench.report is not None
    cards = panel.cards()
    assert [card.reason.rule for card in cards] == [f.rule.name for f in bench.report.findings]
    assert {card.reason.rule: card.reason.number for card in cards} == numbering(bench.report)
    assert [Severity[card.severity().upper()] for card in cards] == sorted(
        (finding.severity for finding in bench.report.findings), reverse=True
    )
    assert panel.badge.kind() == "fault"


def test_a_sheet_says_all_of_its_reason(wrong: tuple[Bench, ReasonsPanel]) -> None:
    bench, panel = wrong
    assert bench.report is not None
    for card, finding in zip(panel.cards(), bench.report.findings, strict=True):
        said = texts(card)
        assert finding.headline(bench.speaker)[1:] in said
        assert finding.why(bench.speaker) in said
        assert card.badge.text() == finding.severity.word
        assert finding.severity.word in card.accessibleName()
        figures = card.figures.accessibleName()
        assert all(number.name in figures for number in finding.hit.numbers())
        card.know.click()
        assert card.basis.isVisible()
        assert card.basis.text()


def test_no_label_takes_markup(wrong: tuple[Bench, ReasonsPanel]) -> None:
    labels = wrong[1].findChildren(QLabel)
    assert labels
    assert all(label.textFormat() == Qt.TextFormat.PlainText for label in labels)


def test_a_remedy_is_looked_at_before_it_is_taken(qtbot: QtBot, wrong: tuple[Bench, ReasonsPanel]) -> None:
    bench, panel = wrong
    before = bench.document
    button = panel.cards()[0].remedies.buttons[0]
    button.looked.emit(True)
    qtbot.waitUntil(lambda: bench.preview is not None)
    sheet = panel._previewer.sheet
    assert sheet.isVisible()
    assert "fluorocarbon → braid" in texts(sheet)
    assert sheet.view.before.kind() == "fault"
    assert sheet.view.after.kind() != "fault"
    assert bench.document == before
    button.looked.emit(False)
    assert bench.preview is None
    assert not sheet.isVisible()


def test_a_remedy_is_one_step_and_the_toast_takes_it_back(wrong: tuple[Bench, ReasonsPanel]) -> None:
    bench, panel = wrong
    before, rule = bench.document, panel.cards()[0].reason.rule
    QTest.mouseClick(panel.cards()[0].remedies.buttons[0], LEFT)
    assert bench.text("main.type") == "braid"
    assert rule not in [card.reason.rule for card in panel.cards()]
    assert bench.undo_stack.count() == 1
    toast = toast_of(panel)
    assert toast.isVisible()
    QTest.mouseClick(toast.undo_button, LEFT)
    assert bench.document == before
    assert panel.cards()[0].reason.rule == rule


def test_the_toast_undoes_nothing_but_its_own_step(wrong: tuple[Bench, ReasonsPanel]) -> None:
    bench, panel = wrong
    panel.cards()[0].remedies.buttons[0].click()
    bench.edit("notes", "written later")
    toast_of(panel).undo_button.click()
    assert bench.text("notes") == "written later"
    assert bench.text("main.type") == "braid"


def test_make_it_right_shows_everything_first(wrong: tuple[Bench, ReasonsPanel]) -> None:
    bench, panel = wrong
    before = bench.document
    QTest.mouseClick(panel.mend_button, LEFT)
    assert panel.mend.isVisible()
    assert "fluorocarbon → braid" in texts(panel.mend)
    assert bench.document == before
    assert bench.preview is not None
    promised = panel.mend.view.after.text()
    QTest.keyClick(panel.mend.apply, Qt.Key.Key_Escape)
    assert not panel.mend.isVisible()
    assert bench.preview is None
    panel.mend_button.click()
    panel.mend.apply.click()
    assert panel.badge.text() == promised
    assert bench.undo_stack.count() == 1
    assert bench.report is not None
    assert bench.report.verdict < Severity.RISK
    assert not panel.mend_button.isVisible()


def test_silencing_asks_for_a_why_and_can_be_taken_back(wrong: tuple[Bench, ReasonsPanel]) -> None:
    bench, panel = wrong
    card = panel.cards()[-1]
    rule = card.reason.rule
    card.silence.click()
    assert not card.form.commit.isEnabled()
    QTest.keyClicks(card.form.edit, "  the juniors fight off the reel ")
    QTest.keyClick(card.form.edit, Qt.Key.Key_Return)
    assert bench.document["silenced"] == [{"rule": rule, "why": "the juniors fight off the reel"}]
    assert rule not in [card.reason.rule for card in panel.cards()]
    assert panel.silenced.isVisibleTo(panel)
    panel.silenced.set_open(True)
    assert "Silenced because: the juniors fight off the reel" in texts(panel.silenced)
    panel.silenced.wanted_again.emit(rule)
    assert bench.document["silenced"] == []
    assert rule in [card.reason.rule for card in panel.cards()]
    assert not panel.silenced.isVisibleTo(panel)


def test_escape_drops_the_silencing(wrong: tuple[Bench, ReasonsPanel]) -> None:
    bench, panel = wrong
    card = panel.cards()[0]
    card.silence.click()
    QTest.keyClick(card.form.edit, Qt.Key.Key_Escape)
    assert not card.form.isVisible()
    assert "silenced" not in bench.document or not bench.document["silenced"]


def test_links_lead_to_field_and_part(qtbot: QtBot, wrong: tuple[Bench, ReasonsPanel]) -> None:
    _, panel = wrong
    card = panel.cards()[0]
    with qtbot.waitSignal(panel.field_wanted) as field:
        card.part_link.click()
    assert field.args == ["main.type"]
    panel.activateWindow()
    card.setFocus()
    qtbot.waitUntil(card.hasFocus)
    with qtbot.waitSignal(panel.part_chosen) as part:
        QTest.keyClick(card, Qt.Key.Key_Return)
    assert part.args == [Part.MAIN]


def test_choosing_a_part_frames_its_reasons_and_tells_nobody(wrong: tuple[Bench, ReasonsPanel]) -> None:
    _, panel = wrong
    told: list[object] = []
    panel.part_chosen.connect(told.append)

    def framed() -> list[Part]:
        return [card.reason.part for card in panel.cards() if card.property("chosen")]

    part = panel.cards()[-1].reason.part
    panel.choose_part(part)
    assert framed()
    assert set(framed()) == {part}
    panel.choose_part(None)
    assert framed() == []
    assert told == []


def test_focus_begins_at_the_worst_reason(qtbot: QtBot, wrong: tuple[Bench, ReasonsPanel]) -> None:
    _, panel = wrong
    panel.activateWindow()
    panel.focus_first()
    assert panel.focusWidget() is panel.cards()[0]


def test_a_card_that_cannot_be_read_says_what_is_missing(qtbot: QtBot, look: Look) -> None:
    bench = bench_with({"format": "rigbuilder.card", "version": 1, "id": "x", "name": "New",
                        "lure": {"technique": "frogg"}})  # fmt: skip
    panel = ReasonsPanel(bench, look)
    qtbot.addWidget(panel)
    panel.show()
    assert panel.cards() == ()
    assert len(panel.missing.links) == len(bench.reading.problems)
    with qtbot.waitSignal(panel.field_wanted) as field:
        panel.missing.links[0].click()
    assert field.args == ["lure.technique"]
    assert "Did you mean" in texts(panel.missing)
    assert not panel.mend_button.isVisible()


def test_a_right_rig_is_told_what_is_right(qtbot: QtBot, look: Look) -> None:
    panel = shown(qtbot, look, bench_of("drop-shot"))
    assert panel.badge.kind() == "right"
    assert panel.right.isVisible()
    assert panel.right.points()


def test_a_kept_sheet_stays_the_same_widget(wrong: tuple[Bench, ReasonsPanel]) -> None:
    bench, panel = wrong
    sheets: dict[str, ReasonCard] = {card.reason.rule: card for card in panel.cards()}
    panel.cards()[0].know.click()
    bench.edit("main.test", "15 lb")
    for card in panel.cards():
        assert sheets.get(card.reason.rule, card) is card
    assert panel.cards()[0].know.isChecked()


def test_units_change_words_and_nothing_else(wrong: tuple[Bench, ReasonsPanel]) -> None:
    bench, panel = wrong
    before = bench.document
    rules = [card.reason.rule for card in panel.cards()]
    bench.speak(UnitSystem.METRIC)
    assert " kg" in panel.cards()[0].headline.text()
    assert [card.reason.rule for card in panel.cards()] == rules
    assert bench.document == before


def test_the_settled_verdict_is_announced_once(qtbot: QtBot, wrong: tuple[Bench, ReasonsPanel]) -> None:
    bench, panel = wrong
    said: list[str] = []
    panel._announcer.announced.connect(said.append)
    for text in ("17 lb", "18 lb"):
        bench.edit("main.test", text)
    bench.apply({"main.type": "braid", "main.test": "50 lb", "drag": "15 lb"}, "mend")
    qtbot.wait(900)
    assert len(said) == 1
    assert said[0].startswith("Review: ")


def test_narrow_and_large_nothing_is_cut_off_at_the_side(qtbot: QtBot, look: Look) -> None:
    panel = shown(qtbot, look, bench_of("frog", WRONG_FROG))
    for zoom, width in ((1.0, 270), (1.5, 405), (2.0, 540)):
        look.set_zoom(zoom)
        panel.resize(width, 900)
        qtbot.wait(20)
        inner = panel.sheets.widget()
        assert inner.minimumSizeHint().width() <= panel.sheets.viewport().width()
    look.set_zoom(1.0)


@pytest.mark.parametrize("width", [270, 332, 480])
def test_the_preview_shows_all_its_words(qtbot: QtBot, look: Look, width: int) -> None:
    bench = bench_of("frog", WRONG_FROG | {"main.diameter": "0.35 mm"})
    panel = shown(qtbot, look, bench)
    panel.resize(width, 900)
    panel.cards()[0].remedies.buttons[-1].looked.emit(True)
    qtbot.waitUntil(panel._previewer.sheet.isVisible)
    sheet = panel._previewer.sheet
    assert panel.rect().contains(sheet.geometry())
    for label in sheet.findChildren(QLabel):
        if label.isVisible():
            assert label.height() >= label.heightForWidth(label.width()), label.text()
            assert label.mapTo(sheet, label.rect().bottomRight()).x() < sheet.width()


def test_the_dark_theme_dresses_all_sheets(wrong: tuple[Bench, ReasonsPanel], look: Look) -> None:
    look.set_mode(Mode.DARK)
    image = wrong[1].grab().toImage()
    assert image.pixelColor(3, image.height() - 3).lightness() < 80
    look.set_mode(Mode.LIGHT)


def test_a_window_has_one_toast(qtbot: QtBot, look: Look) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    children = [QWidget(window), QWidget(window)]
    assert len({id(toast_of(child)) for child in children}) == 1
    assert len(window.findChildren(Toast)) == 1
