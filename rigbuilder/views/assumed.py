"""What is assumed because the card does not say it, each with its reason and a link that sets it."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QGridLayout, QScrollArea, QVBoxLayout, QWidget

from rigbuilder.viewmodels.form import FormModel
from rigbuilder.viewmodels.slate import field_words
from rigbuilder.views.controls.buttons import ActionButton, LinkButton
from rigbuilder.views.controls.texts import text_label


class AssumedPanel(QScrollArea):
    """A list that is made anew only when the assumptions change."""

    field_wanted = Signal(str)

    def __init__(self, model: FormModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("assumed")
        self.setAccessibleName("Assumed, since the card does not say")
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._model = model
        self._shown: tuple[object, ...] | None = None
        self._sheet = QWidget()
        self._sheet.setProperty("plain", True)
        self._column = QVBoxLayout(self._sheet)
        self._head = text_label("", "caption", wrap=True)
        self._all = ActionButton("Set all of it on the card", weight="quiet")
        self._all.setObjectName("set-all-assumed")
        self._all.clicked.connect(self.set_all)
        self._list = QWidget()
        self._column.addWidget(self._head)
        self._column.addWidget(self._list)
        self._column.addWidget(self._all, 0, Qt.AlignmentFlag.AlignLeft)
        self._column.addStretch(1)
        self.setWidget(self._sheet)
        model.changed.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        """Show what is assumed now."""
        found = tuple(e for e in self._model.bench.reading.assumed if e.field != "backing.length")
        if found == self._shown:
            return
        self._shown = found
        count = len(found)
        self._head.setText(
            "Assumed, since the card does not say. Each can be set on the card, then changed there."
            if count
            else "Nothing is assumed: the card says everything."
        )
        self._all.setVisible(count > 1)
        fresh = QWidget()
        grid = QGridLayout(fresh)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setColumnStretch(0, 1)
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(1)
        for line, entry in enumerate(found):
            self._add(grid, line, entry.field, "none" if entry.value is None else str(entry.value), entry.why)
        self._column.replaceWidget(self._list, fresh)
        self._list.deleteLater()
        self._list = fresh

    def _add(self, grid: QGridLayout, line: int, path: str, value: str, why: str) -> None:
        name = field_words(path)
        link = LinkButton(name[0].upper() + name[1:], tip="Go to the field")
        link.setAccessibleName(f"Go to {name}")
        link.clicked.connect(lambda: self.field_wanted.emit(path))
        words = text_label(f"{value} · {why}", "label", wrap=True)
        words.setIndent(3)
        set_it = LinkButton("Set it", tip=f"Put “{value}” on the card")
        set_it.setObjectName(f"set:{path}")
        set_it.setAccessibleName(f"Set {name} to {value}")
        set_it.clicked.connect(lambda: self._model.set_assumed([path]))
        top = Qt.AlignmentFlag.AlignTop
        grid.addWidget(link, 2 * line, 0, top)
        grid.addWidget(set_it, 2 * line, 1, top)
        grid.addWidget(words, 2 * line + 1, 0, 1, 2)

    def set_all(self) -> None:
        """Put everything that is assumed on the card."""
        self._model.set_assumed([entry.field for entry in self._model.bench.reading.assumed])
