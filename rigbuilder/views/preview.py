"""Before → after: the fields that would change, and the verdict with them."""

from PySide6.QtCore import QObject, Qt, QTimer
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QVBoxLayout, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.prospects import Option, Prospect, prospect
from rigbuilder.views.controls.badge import SeverityBadge
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.reasons_flow import FlowRow
from rigbuilder.views.theme_look import Look

INTENT_MS = 90  # a pointer that only passes over a button previews nothing
_MOST_REMAINING = 3


class ProspectView(QWidget):
    """A table of changes, the verdict before and after, and what would remain."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(look.theme.px(6))
        self._table = QWidget(self)
        self._column.addWidget(self._table)
        row = FlowRow(look.theme.px(4), self)
        self.before = SeverityBadge(look, parent=row)
        self.after = SeverityBadge(look, parent=row)
        arrow = text_label("→", parent=row)
        arrow.setContentsMargins(0, look.theme.px(3), 0, 0)
        for widget in (self.before, arrow, self.after):
            row.add(widget)
        self._column.addWidget(row)
        self.remains = text_label("", "caption", wrap=True, parent=self)
        self._column.addWidget(self.remains)

    def show_prospect(self, prospect: Prospect) -> None:
        """Show what would be."""
        table = QWidget(self)
        grid = QGridLayout(table)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(self._look.theme.px(8))
        grid.setVerticalSpacing(self._look.theme.px(2))
        grid.setColumnStretch(1, 1)
        for index, change in enumerate(prospect.changes):
            grid.addWidget(text_label(change.what, "caption", parent=table), index, 0, _TOP)
            words = text_label(f"{change.old} → {change.new}", "body", wrap=True, parent=table)
            words.setAccessibleName(change.spoken)
            grid.addWidget(words, index, 1)
        self._column.replaceWidget(self._table, table)
        self._table.deleteLater()
        self._table = table
        self.before.set_kind(prospect.before.severity, prospect.before.text)
        self.after.set_kind(prospect.after.severity, prospect.after.text)
        self.remains.setText(_remaining_words(prospect.remains))
        self.remains.setVisible(bool(prospect.remains))
        self.setAccessibleName(prospect.spoken)


class PreviewSheet(QFrame):
    """A sheet over the edge of its parent that shows what the remedy under the pointer would bring."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._around = parent
        self.setProperty("sheet", "card")
        self.setProperty("chosen", True)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        column = QVBoxLayout(self)
        pad = look.theme.px(10)
        column.setContentsMargins(pad, pad, pad, pad)
        column.setSpacing(look.theme.px(4))
        self.title = text_label("", "strong", wrap=True, parent=self)
        self.view = ProspectView(look, self)
        column.addWidget(self.title)
        column.addWidget(self.view)
        self.hide()

    def show_for(self, prospect: Prospect, source: QWidget) -> None:
        """Show a prospect at the edge that is farther from ``source``, the button it belongs to."""
        self.title.setText(f"If you take it: {prospect.title}")
        self.view.show_prospect(prospect)
        around, margin = self._around.rect(), 6
        width = around.width() - 2 * margin
        height = self._height_at(width)
        self.setFixedSize(width, height)
        middle = source.mapTo(self._around, source.rect().center()).y()
        below = middle < around.height() / 2
        self.move(margin, around.height() - height - margin if below else margin)
        self.show()
        self.raise_()
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, prospect.spoken))

    def _height_at(self, width: int) -> int:
        """Return the height that all words need at ``width``, in the fonts that the style gives them."""
        for widget in self.findChildren(QWidget):
            widget.ensurePolished()
            widget.updateGeometry()
        layout = self.layout()
        if layout is None:
            return self.sizeHint().height()
        layout.invalidate()
        layout.activate()
        return layout.totalHeightForWidth(width)


class Previewer(QObject):
    """Looks ahead for the remedy under pointer or focus: on the bench and on a sheet."""

    def __init__(self, bench: Bench, look: Look, around: QWidget) -> None:
        super().__init__(around)
        self._bench = bench
        self._sheet = PreviewSheet(look, around)
        self._wanted: tuple[Option, QWidget] | None = None
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(INTENT_MS)
        self._timer.timeout.connect(self._show)
        bench.report_changed.connect(self.stop)

    @property
    def sheet(self) -> PreviewSheet:
        """The sheet, visible while something is previewed."""
        return self._sheet

    def look(self, option: Option, source: QWidget) -> None:
        """Preview a remedy, shortly, if pointer or focus stays."""
        self._wanted = (option, source)
        self._timer.start()

    def stop(self, *_: object) -> None:
        """Stop previewing."""
        self._timer.stop()
        self._wanted = None
        if self._sheet.isVisible():
            self._sheet.hide()
            self._bench.look_at(None)

    def _show(self) -> None:
        if self._wanted is None:
            return
        option, source = self._wanted
        found = prospect(self._bench, option)
        if found is not None and source.isVisible():
            self._sheet.show_for(found, source)
            self._bench.look_at(found.report)


_TOP = Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft


def _remaining_words(remains: tuple[str, ...]) -> str:
    if not remains:
        return ""
    more = len(remains) - _MOST_REMAINING
    tail = f"\n… and {more} more" if more > 0 else ""
    return "What would remain:\n" + "\n".join(remains[:_MOST_REMAINING]) + tail
