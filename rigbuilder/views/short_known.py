"""A small sheet that says how one value is known: result, formula, inputs, sources."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QObject, QPoint, Qt, QTimer
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QVBoxLayout, QWidget

from rigbuilder.viewmodels.short import Known, ShortRow
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look

_WIDE, _HIGH = 360, 420  # most room that the sheet takes
_NOTHING = "Nothing stands behind it but the card itself."


class KnownSheet(QFrame):
    """Lies over the window beside the value that was pressed.

    Esc or Close closes it, and so does going on elsewhere.
    """

    def __init__(self, look: Look, window: QWidget) -> None:
        super().__init__(window)
        self._look = look
        self._around = window
        self._beside: QWidget | None = None
        self.setProperty("sheet", "card")
        theme = look.theme
        column = QVBoxLayout(self)
        pad = theme.px(12)
        column.setContentsMargins(pad, pad, pad, pad)
        column.setSpacing(theme.px(6))
        self.title = text_label("", "heading", wrap=True, parent=self)
        self.meaning = text_label("", "caption", wrap=True, parent=self)
        self.scroll_area = QScrollArea(self)
        self.scroll_area.setWidgetResizable(True)
        self.scroll_area.setFrameShape(QFrame.Shape.NoFrame)
        self.scroll_area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.scroll_area.viewport().setAutoFillBackground(False)
        self.close_button = ActionButton("Close", parent=self)
        self.close_button.clicked.connect(self._go_back)
        self._leaving = QTimer(self)
        self._leaving.setSingleShot(True)
        self._leaving.timeout.connect(self._went_on)
        for part in (self.close_button, self.scroll_area):
            part.installEventFilter(self)
        column.addWidget(self.title)
        column.addWidget(self.meaning)
        column.addWidget(self.scroll_area, 1)
        column.addWidget(self.close_button, 0, Qt.AlignmentFlag.AlignRight)

    def text(self) -> str:
        """Return everything that the sheet says."""
        return self.accessibleDescription()

    def show_known(self, row: ShortRow, known: Sequence[Known], beside: QWidget) -> None:
        """Say how the value of ``row`` is known, beside the widget that shows it."""
        theme = self._look.theme
        self.title.setText(f"{row.name}: {row.value}")
        self.meaning.setText(row.meaning)
        self.setAccessibleName(f"How we know: {row.name}")
        blocks = [_lines(each) for each in known] or [[(_NOTHING, "body")]]
        self.setAccessibleDescription(" ".join(words for block in blocks for words, _ in block))
        body = self._body(blocks)
        self.scroll_area.setWidget(body)
        width = theme.px(_WIDE)
        for label in self.findChildren(QLabel):
            label.ensurePolished()
        inner = width - 2 * theme.px(12) - theme.px(14)
        heads = self.title.heightForWidth(inner) + self.meaning.heightForWidth(inner)
        high = body.heightForWidth(inner) + heads + self.close_button.sizeHint().height() + theme.px(56)
        around = self._around.rect()
        self.resize(min(width, around.width()), min(high, theme.px(_HIGH), around.height()))
        self.move(self._place(beside))
        self._beside = beside
        self.show()
        self.raise_()
        self.close_button.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 (Qt's name)
        """Esc closes the sheet."""
        if event.key() == Qt.Key.Key_Escape:
            self._go_back()
        else:
            super().keyPressEvent(event)

    def _go_back(self) -> None:
        beside, self._beside = self._beside, None
        self.hide()
        if beside is not None:
            beside.setFocus()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 (Qt's name)
        """Notice when the focus leaves one of the parts."""
        if event.type() == QEvent.Type.FocusOut:
            self._leaving.start(0)
        return super().eventFilter(watched, event)

    def _went_on(self) -> None:
        focus = self._around.focusWidget()
        if focus is not None and not self.isAncestorOf(focus):
            self.hide()

    def _body(self, blocks: Sequence[Sequence[tuple[str, str]]]) -> QWidget:
        body = QWidget()
        body.setProperty("plain", True)
        column = QVBoxLayout(body)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(self._look.theme.px(2))
        for index, block in enumerate(blocks):
            if index:
                column.addSpacing(self._look.theme.px(8))
            for words, role in block:
                column.addWidget(text_label(words, role, wrap=True, parent=body))
        column.addStretch(1)
        return body

    def _place(self, beside: QWidget) -> QPoint:
        """Return a place beside a widget at which the whole sheet is in the window."""
        corner = beside.mapTo(self._around, QPoint(0, 0))
        left = corner.x() - self.width() - 8
        if left < 0:
            left = corner.x()
        most = self._around.rect().bottomRight() - QPoint(self.width(), self.height())
        return QPoint(max(0, min(left, most.x())), max(0, min(corner.y(), most.y())))


def _lines(known: Known) -> list[tuple[str, str]]:
    lines = [(f"{known.title}: {known.result}", "strong")]
    if known.formula:
        lines.append((f"= {known.formula}", "body"))
    lines += [(f"· {words}", "caption") for words in known.inputs]
    lines += [(words + ("" if words.endswith(".") else "."), "caption") for words in known.sources]
    return lines
