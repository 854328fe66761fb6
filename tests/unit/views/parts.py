"""Windows and forms for the tests of views."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.form import FormModel
from rigbuilder.viewmodels.preferences import Folds
from rigbuilder.views.controls.ask import ScriptedAsk
from rigbuilder.views.form import FormPanel
from rigbuilder.views.form_rows import FieldRow, TextRow
from rigbuilder.views.theme_look import Look, Mode
from rigbuilder.views.window import MainWindow
from tests.unit.viewmodels.parts import Room, make_room, save_card


class Window:
    """A main window over fresh folders, with the answers to its questions prepared."""

    def __init__(self, folder: Path, look: Look, document: dict[str, Any] | None = None) -> None:
        self.room: Room = make_room(folder)
        self.card = save_card(folder / "own", document)
        self.ask = ScriptedAsk()
        self.main = MainWindow(self.room.bench, self.room.desk, self.room.preferences, look, ask=self.ask)
        assert self.main.talk.open(self.card)
        self.main.resize(1366, 700)
        self.main.setWindowState(Qt.WindowState.WindowNoState)
        self.main.show()
        QTest.qWaitForWindowActive(self.main)

    def renew(self) -> None:
        """Put everything back as it was at first, so that many tests can share one window."""
        self.ask.answers, self.ask.asked = [], []
        self.card = save_card(self.card.parent)
        self.room.desk.new("frog")
        assert self.room.desk.open(self.card, force=True).done
        self.main.commands.speak(UnitSystem.IMPERIAL)
        self.main.look.set_mode(Mode.LIGHT)
        self.main.look.set_zoom(1.0)
        for section in self.main.form.sections.values():
            section.show_further(False)
            section.set_open(section.section.open_at_first)
        for fold in (self.main.form.keeping, self.main.form.notes):
            fold.set_open(False)
        self.main.toast.hide()
        self.main.resize(1366, 700)
        self.main.setWindowState(Qt.WindowState.WindowNoState)
        self.main.show()
        self.main.activateWindow()
        QTest.qWaitForWindowActive(self.main)
        self.main.header.verdict.setFocus()

    @property
    def bench(self) -> Any:
        """The bench of the window."""
        return self.room.bench

    def row(self, path: str) -> FieldRow:
        """The row of a field, brought into sight."""
        return show_row(self.main.form, path)

    def close(self) -> None:
        """Close without a question."""
        self.ask.answers = ["discard"]
        self.main.close()
        self.main.deleteLater()
        QApplication.processEvents()


def make_form(room: Room, look: Look) -> FormPanel:
    """A form by itself, shown."""
    form = FormPanel(FormModel(room.bench, room.bench), look, Folds(room.preferences))
    form.resize(330, 900)
    form.show()
    QTest.qWaitForWindowActive(form)
    return form


def show_row(form: FormPanel, path: str) -> FieldRow:
    """Bring a field into sight, with the focus in it, and return its row."""
    assert form.focus_field(path)
    QApplication.processEvents()
    row = form.findChild(FieldRow, f"row:{path}")
    assert isinstance(row, FieldRow)
    return row


def type_into(row: FieldRow, text: str) -> None:
    """Replace what stands in a text field by keys."""
    assert isinstance(row, TextRow)
    row.field.edit.setFocus()
    row.field.edit.selectAll()
    if text:
        QTest.keyClicks(row.field.edit, text)
    else:
        QTest.keyClick(row.field.edit, Qt.Key.Key_Delete)


def focusable(parent: QWidget) -> Iterator[QWidget]:
    """Every control in sight that Tab should reach."""
    for widget in parent.findChildren(QWidget):
        by_tab = widget.focusPolicy() & Qt.FocusPolicy.TabFocus
        if by_tab and widget.isVisible() and widget.isEnabled() and widget.focusProxy() is None:
            yield widget
