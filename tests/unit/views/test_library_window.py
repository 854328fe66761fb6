"""The menu "Cards" of the bench: library, versions, comparison, text and sets."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent, QGuiApplication
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from rigbuilder.app import answer, build
from rigbuilder.model.usual import usual_document
from rigbuilder.store.paths import find_places
from rigbuilder.store.sets import export_set
from rigbuilder.views.compare import CompareView
from rigbuilder.views.controls.ask import ScriptedAsk
from rigbuilder.views.library_window import CardsMenu
from rigbuilder.views.library_work import Asking
from rigbuilder.views.window import MainWindow


@pytest.fixture
def window(qapp: QApplication, qtbot: QtBot, home: Path) -> Iterator[MainWindow]:
    window = build(qapp, find_places(), [])
    window.ask = ScriptedAsk()
    window.talk._ask = window.ask
    qtbot.addWidget(window, before_close_func=lambda window: window.bench.undo_stack.setClean())
    yield window
    qapp.setStyleSheet("")


@pytest.fixture
def menu(window: MainWindow, tmp_path: Path) -> Iterator[CardsMenu]:
    asking = Asking(window.ask, lambda *_: None, lambda _: None)
    menu = CardsMenu(window, tmp_path / "verdicts.json", asking)
    yield menu
    menu.close()


def press(window: MainWindow, name: str) -> None:
    window.actions_[name].trigger()


def test_the_library_opens_and_a_card_in_it_comes_onto_the_bench(
    window: MainWindow, menu: CardsMenu, qtbot: QtBot
) -> None:
    path = window.desk.store.create(usual_document("drop-shot") | {"id": "one", "name": "Rod 1"}).path
    press(window, "library")
    panel = menu.library.panel
    qtbot.waitUntil(lambda: panel.table.rowCount() == 1)
    panel.acts["open"].trigger()
    assert window.desk.path == path
    assert window.bench.text("name") == "Rod 1"
    assert menu.library is menu.library


def test_escape_closes_the_library_and_it_opens_again(
    window: MainWindow, menu: CardsMenu, qtbot: QtBot
) -> None:
    press(window, "library")
    library = menu.library
    qtbot.keyClick(library.panel.list, Qt.Key.Key_Escape)
    library.close()
    assert not library.isVisible()
    assert window.preferences.recall("library")
    press(window, "library")
    assert library.isVisible()


def test_versions_need_a_saved_card(window: MainWindow, menu: CardsMenu, qtbot: QtBot) -> None:
    press(window, "versions")
    assert "never saved" in window.toast.message.text()
    assert window.desk.save().done
    window.bench.edit("drag", "5 lb")
    assert window.desk.save().done
    press(window, "versions")
    side = menu.library.panel.side
    qtbot.waitUntil(lambda: side.history.list.count() == 1)
    assert side.currentWidget() is side.history


def test_the_rig_on_the_bench_is_compared_with_a_file(
    window: MainWindow, menu: CardsMenu, qtbot: QtBot
) -> None:
    path = window.desk.store.create(usual_document("drop-shot") | {"id": "one", "name": "Rod 1"}).path
    window.ask.answers = [path]  # type: ignore[attr-defined]
    press(window, "compare")
    assert menu.comparison is not None
    view = menu.comparison.findChildren(CompareView)[0]
    assert view.table.columnCount() == 3
    view.close_button.click()
    assert not menu.comparison.isVisible()
    window.ask.answers = [path.with_name("gone.rigcard")]  # type: ignore[attr-defined]
    press(window, "compare")
    assert "gone.rigcard" in window.toast.message.text()
    window.ask.answers = [None]  # type: ignore[attr-defined]
    press(window, "compare")


def test_the_card_goes_out_as_text_and_comes_in_as_text(
    window: MainWindow, menu: CardsMenu, qtbot: QtBot
) -> None:
    window.bench.edit("name", "Sent rod")
    press(window, "copy-card")
    assert QGuiApplication.clipboard().text().startswith("Rigbuilder card: Sent rod")
    press(window, "paste-card")
    panel = menu.library.panel
    qtbot.waitUntil(lambda: [card.name for card in panel.table.cards()] == ["Sent rod"])


def test_a_set_dropped_on_the_bench_comes_into_the_library(
    window: MainWindow, menu: CardsMenu, qtbot: QtBot, tmp_path: Path
) -> None:
    path = tmp_path / "club.rigset"
    export_set([usual_document("frog") | {"id": "a"}, usual_document("ned") | {"id": "b"}], path)
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    left, none = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    window.dropEvent(QDropEvent(QPointF(9, 9), Qt.DropAction.CopyAction, data, left, none))
    qtbot.waitUntil(lambda: menu.library.panel.table.rowCount() == 2)


def test_what_a_second_start_brings_is_opened_here(window: MainWindow, home: Path) -> None:
    paths = [home / name for name in ("a.rigcard", "b.rigcard")]
    for path in paths:
        path.write_text(json.dumps(usual_document("frog") | {"id": path.stem, "name": path.stem}))
    window.show()
    window.showMinimized()
    answer(window, paths)
    assert not window.isMinimized()
    assert window.desk.path == paths[0]
    assert window.preferences.recent[:2] == tuple(paths)


def test_a_second_start_without_files_only_brings_the_window_to_the_front(window: MainWindow) -> None:
    window.show()
    window.showMinimized()
    before = window.desk.document
    answer(window, [])
    assert not window.isMinimized()
    assert window.desk.document == before
