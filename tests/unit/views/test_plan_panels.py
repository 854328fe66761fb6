"""The panes of the reel and the chain: what is typed and chosen goes onto the card, what follows is shown."""

from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from pytestqt.qtbot import QtBot

from rigbuilder.model.document import get
from rigbuilder.plans.fill import fill_plan
from rigbuilder.plans.fillwords import headline
from rigbuilder.reference.load import load
from rigbuilder.store.pulltests import NAME, PullTestFile
from rigbuilder.viewmodels.pullshelf import PullShelf
from rigbuilder.views.controls.ask import ScriptedAsk
from rigbuilder.views.plan_care import CarePanel
from rigbuilder.views.plan_chain import ChainPanel
from rigbuilder.views.plan_fill import FillPanel
from rigbuilder.views.plan_parts import ScrollPane
from rigbuilder.views.theme_look import Look
from tests.unit.views.rigs import bench_of, bench_with

PRICE = {"amount": 28, "currency": "EUR", "length": "150 m"}


@pytest.fixture
def fill(qtbot: QtBot, look: Look) -> FillPanel:
    panel = FillPanel(bench_of("walking-bait", {"main.price": PRICE}), look)
    qtbot.addWidget(panel)
    panel.resize(900, 700)
    panel.show()
    return panel


@pytest.fixture
def chain(qtbot: QtBot, look: Look, tmp_path: Path) -> ChainPanel:
    shelf = PullShelf(PullTestFile(tmp_path / NAME, load()), load())
    panel = ChainPanel(bench_of("walking-bait"), look, shelf=shelf)
    qtbot.addWidget(panel)
    panel.resize(800, 700)
    panel.show()
    return panel


class TestFill:
    def test_it_says_the_fill_first(self, fill: FillPanel) -> None:
        bench = fill.model.bench
        assert bench.report is not None
        assert fill.headline.text() == headline(fill_plan(bench.report.case), bench.speaker)
        assert "of nylon 14 lb, then 100 yd of braid 40 lb" in fill.headline.text()
        assert fill.table.cell(1, 3) == "100"
        assert any("Wind on the backing" in text for text in fill.steps.texts())
        assert fill.taken.texts()
        assert fill.sources.texts()

    def test_refills_a_year_are_typed_and_undone(self, fill: FillPanel, qtbot: QtBot) -> None:
        field, bench = fill.refills.field, fill.model.bench
        fill.shown()
        assert float(field.edit.placeholderText()) > 0.0
        qtbot.keyClicks(field.edit, "2,5")
        assert bench.document["fill"]["season_refills"] == 2.5
        assert fill.model.refills() == "2.5"
        for wrong in ("often", "0", "-1", "1000", "nan"):
            assert "number above 0" in fill.model.set_refills(wrong)
        assert fill.model.set_refills("") == ""
        assert fill.model.refills() == ""

    def test_typing_pins_and_the_rest_follows(self, fill: FillPanel, qtbot: QtBot) -> None:
        row = fill.pins.rows["main"]
        before = fill.table.cell(0, 3)
        row.field.edit.setFocus()
        row.field.edit.selectAll()
        qtbot.keyClicks(row.field.edit, "70 yd")
        fill.shown()
        assert get(fill.model.bench.document, "fill.main") == "70 yd"
        assert row.pin.isChecked()
        assert row.pin.text() == "Pinned"
        assert fill.table.cell(0, 3) != before

    def test_the_pin_button_holds_and_lets_go(self, fill: FillPanel, qtbot: QtBot) -> None:
        row = fill.pins.rows["lip_gap"]
        qtbot.mouseClick(row.pin, Qt.MouseButton.LeftButton)
        assert get(fill.model.bench.document, "fill.lip_gap") == "2.3 mm"
        fill.shown()
        qtbot.mouseClick(row.pin, Qt.MouseButton.LeftButton)
        assert get(fill.model.bench.document, "fill") is None

    def test_an_impossible_wish_gets_a_clear_word(self, fill: FillPanel) -> None:
        fill.model.pin("main", "900 yd")
        fill.shown()
        assert fill.headline.text().startswith("Nearest that fits")
        assert "more than the spool holds" in fill.remarks.texts()[0]

    def test_nonsense_is_told_at_the_field(self, fill: FillPanel, qtbot: QtBot) -> None:
        row = fill.pins.rows["main"]
        row.field.edit.setFocus()
        row.field.edit.selectAll()
        qtbot.keyClicks(row.field.edit, "lots")
        qtbot.waitUntil(lambda: "length is wanted" in row.field.problem())
        assert get(fill.model.bench.document, "fill.main") is None

    def test_the_table_goes_out_as_csv(self, qtbot: QtBot, look: Look, tmp_path: Path) -> None:
        path = tmp_path / "fill.csv"
        panel = FillPanel(bench_of("walking-bait"), look, ask=ScriptedAsk([path]))
        qtbot.addWidget(panel)
        panel.shown()
        qtbot.mouseClick(panel.save, Qt.MouseButton.LeftButton)
        assert path.read_text(encoding="utf-8-sig").startswith("part,line,metres,yards")
        qtbot.mouseClick(panel.copy, Qt.MouseButton.LeftButton)
        assert QGuiApplication.clipboard().text().startswith("part,line")

    def test_a_failed_save_is_told(self, qtbot: QtBot, look: Look, tmp_path: Path) -> None:
        ask = ScriptedAsk([tmp_path / "no folder" / "fill.csv"])
        panel = FillPanel(bench_of("walking-bait"), look, ask=ask)
        qtbot.addWidget(panel)
        panel.shown()
        qtbot.mouseClick(panel.save, Qt.MouseButton.LeftButton)
        assert "could not be written" in ask.asked[-1]

    def test_it_waits_for_a_card(self, qtbot: QtBot, look: Look) -> None:
        panel = FillPanel(bench_with({"format": "rigbuilder.card", "version": 1, "name": "x"}), look)
        qtbot.addWidget(panel)
        assert panel.shown() is None
        assert "first" in panel.headline.text()
        assert not panel.save.isEnabled()


class TestChain:
    def test_bars_verdict_and_what_is_lost(self, chain: ChainPanel) -> None:
        shown = chain.shown()
        assert shown is not None
        assert "fuse" in chain.verdict.texts()[0]
        spec = chain.chart.spec()
        assert spec is not None
        assert "Split ring: 20 lb (11–33), first in " in chain.chart.accessibleDescription()
        assert "stays in the water" in chain.lost.cell(5, 2)
        assert chain.drag.cell(0, 0) == "To set on the scale, rod pointed at it"

    def test_a_knot_is_looked_at_before_it_is_tied(self, chain: ChainPanel, qtbot: QtBot) -> None:
        chain.shown()
        box = chain.joints.boxes["Main line to leader"]
        assert not box.tie.isVisible()
        box.choice.set_value("fg")
        box.choice.chosen.emit("fg")
        assert get(chain.model.bench.document, "leader.knot") == "double uni"
        assert box.tie.text() == "Use the fg"
        assert any("braid" in text for text in box.steps.texts())
        qtbot.mouseClick(box.tie, Qt.MouseButton.LeftButton)
        assert get(chain.model.bench.document, "leader.knot") == "fg"
        chain.shown()
        assert chain.joints.boxes["Main line to leader"] is box
        assert not box.tie.isVisible()

    def test_joints_come_and_go_with_the_rig(self, chain: ChainPanel) -> None:
        chain.shown()
        chain.model.bench.edit("leader", None)
        chain.shown()
        assert "Main line to leader" not in chain.joints.boxes

    def test_pull_tests_are_entered_and_counted(self, chain: ChainPanel, qtbot: QtBot) -> None:
        dialog = chain.pull_dialog()
        qtbot.addWidget(dialog)
        assert (dialog.type.value(), dialog.test.text()) == ("nylon", "20 lb")
        dialog.knot.set_value("palomar")
        dialog.readings.edit.setText("12, 12.5, 13, 11.5, 12.2")
        qtbot.mouseClick(dialog.add, Qt.MouseButton.LeftButton)
        assert dialog.list.count() == 1
        assert "5 pulls" in dialog.results.text()
        dialog.readings.edit.setText("strong")
        qtbot.mouseClick(dialog.add, Qt.MouseButton.LeftButton)
        assert "readings" in dialog.problem.text()
        assert dialog.list.count() == 1
        dialog.list.setCurrentRow(0)
        qtbot.mouseClick(dialog.remove, Qt.MouseButton.LeftButton)
        assert dialog.list.count() == 0

    def test_without_a_shelf_nothing_is_offered(self, qtbot: QtBot, look: Look) -> None:
        panel = ChainPanel(bench_of("walking-bait"), look)
        qtbot.addWidget(panel)
        assert panel.pulls.isHidden()
        with pytest.raises(LookupError):
            panel.pull_dialog()

    def test_it_waits_for_a_card(self, qtbot: QtBot, look: Look) -> None:
        panel = ChainPanel(bench_with({"format": "rigbuilder.card", "version": 1, "name": "x"}), look)
        qtbot.addWidget(panel)
        assert panel.shown() is None
        assert "first" in panel.headline.text()


class TestCare:
    @pytest.fixture
    def care(self, qtbot: QtBot, look: Look) -> CarePanel:
        log = [{"on": "2026-06-01", "what": "filled"}]
        panel = CarePanel(bench_of("spinnerbait", {"log": log}), look, today=lambda: date(2026, 8, 1))
        qtbot.addWidget(panel)
        panel.show()
        return panel

    def test_the_log_is_written_and_what_is_due_follows(self, care: CarePanel, qtbot: QtBot) -> None:
        assert care.headline.text() == "What is due, as of 2026-08-01"
        care.what.set_value("kink found")
        qtbot.mouseClick(care.add, Qt.MouseButton.LeftButton)
        assert care.due.texts()[0].startswith("Now: cut back above the kink")
        assert care.log.item(1).text() == "2026-08-01 · kink found"
        care.log.setCurrentRow(1)
        qtbot.mouseClick(care.remove, Qt.MouseButton.LeftButton)
        assert care.log.count() == 1
        assert care.advice.texts()

    def test_a_wrong_day_is_told(self, care: CarePanel, qtbot: QtBot) -> None:
        care.what.set_value("filled")
        care.on.edit.setText("yesterday")
        qtbot.mouseClick(care.add, Qt.MouseButton.LeftButton)
        qtbot.waitUntil(lambda: "no date" in care.on.problem())
        assert care.log.count() == 1

    def test_it_waits_for_a_card(self, qtbot: QtBot, look: Look) -> None:
        panel = CarePanel(bench_with({"format": "rigbuilder.card", "version": 1, "name": "x"}), look)
        qtbot.addWidget(panel)
        assert panel.shown() is None
        assert not panel.add.isEnabled()


@pytest.mark.parametrize("width", [380, 560, 900, 1400])
def test_nothing_is_wider_than_the_pane(fill: FillPanel, chain: ChainPanel, width: int) -> None:
    for panel in (fill, chain):
        panel.resize(width, 700)
        panel.shown()
        QGuiApplication.processEvents()
        pane = panel.findChild(ScrollPane)
        assert isinstance(pane, ScrollPane)
        assert pane.widget().width() <= pane.viewport().width()
