"""Two or three cards side by side: drawn over each other, and what differs in card, figures and reasons."""

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QGuiApplication, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QSplitter, QVBoxLayout, QWidget

from rigbuilder.viewmodels.compare import Comparison
from rigbuilder.viewmodels.scene import RigScene
from rigbuilder.views.compare_table import CompareTable
from rigbuilder.views.controls.badge import SeverityBadge
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.segment_row import SegmentRow
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.drawing.rig import paint_rig
from rigbuilder.views.theme import SEVERITIES
from rigbuilder.views.theme_look import Look

_SHORT = 34


class OverlaidRigs(QWidget):
    """One rig drawn in full, another faint behind it."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._front: RigScene | None = None
        self._behind: RigScene | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName("Both rigs drawn over each other")
        look.changed.connect(lambda _: self.update())

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return room enough for lenses and words."""
        return QSize(self._look.theme.px(720), self._look.theme.px(260))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return the least in which a rig can be told."""
        return QSize(self._look.theme.px(360), self._look.theme.px(150))

    def show_rigs(self, front: RigScene | None, behind: RigScene | None) -> None:
        """Draw one rig over another; either may be missing."""
        self._front, self._behind = (front, behind) if front is not None else (behind, None)
        self.setAccessibleDescription(self._front.title if self._front is not None else "Nothing to draw yet")
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint them."""
        painter = QPainter(self)
        if self._front is None:
            painter.setPen(self._look.theme.colour("soft"))
            painter.drawText(
                self.rect(), Qt.AlignmentFlag.AlignCenter, "These cards make no whole rig to draw yet."
            )
        else:
            paint_rig(painter, QRectF(self.rect()), self._front, self._look.theme, ghost=self._behind)
        painter.end()


class CompareView(QWidget):
    """The comparison of two or three cards; ``closed`` when the person is done."""

    closed = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._comparison: Comparison | None = None
        self.setAccessibleName("Comparison")
        self._heads = QHBoxLayout()
        self.front = SegmentRow("Drawn in front", parent=self)
        self.drawing = OverlaidRigs(look, self)
        self.table = CompareTable(look, self)
        self.alike = text_label("", "label", parent=self)
        self.copy = ActionButton("Copy as table", tip="As text, to paste into a sheet", parent=self)
        self.close_button = ActionButton("Close", weight="first", parent=self)
        top = QHBoxLayout()
        top.addLayout(self._heads, 1)
        top.addWidget(text_label("In front", "label"))
        top.addWidget(self.front)
        split = QSplitter(Qt.Orientation.Vertical, self)
        split.addWidget(self.drawing)
        split.addWidget(self.table)
        split.setChildrenCollapsible(False)
        split.setStretchFactor(1, 1)
        split.setSizes([260, 420])
        foot = QHBoxLayout()
        foot.addWidget(self.alike, 1)
        foot.addWidget(self.copy)
        foot.addWidget(self.close_button)
        column = QVBoxLayout(self)
        column.addLayout(top)
        column.addWidget(split, 1)
        column.addLayout(foot)
        self.front.chosen.connect(lambda _: self._draw())
        self.copy.clicked.connect(self._copy)
        self.close_button.clicked.connect(lambda _: self.closed.emit())

    def show_comparison(self, comparison: Comparison) -> None:
        """Show a comparison."""
        self._comparison = comparison
        while (item := self._heads.takeAt(0)) is not None:
            if (old := item.widget()) is not None:
                old.deleteLater()
        for side in comparison.sides:
            kind = side.verdict if side.verdict in SEVERITIES else "note"
            self._heads.addWidget(text_label(_short(side.name), "heading", parent=self))
            self._heads.addWidget(SeverityBadge(self._look, kind, side.words, parent=self))
            self._heads.addSpacing(self._look.theme.px(12))
        self._heads.addStretch(1)
        self.front.set_options([(str(place), f"{place + 1}") for place, _ in enumerate(comparison.sides)])
        for place, side in enumerate(comparison.sides):
            self.front.button(str(place)).setAccessibleName(f"{side.name} in front")
            self.front.button(str(place)).setToolTip(side.name)
        self.front.set_value("0")
        self.table.show_comparison(comparison)
        self.alike.setText(comparison.alike)
        self._draw()

    def _draw(self) -> None:
        if self._comparison is None:
            return
        scenes = [side.scene for side in self._comparison.sides]
        front = int(self.front.value() or 0)
        self.drawing.show_rigs(scenes[front], scenes[(front + 1) % len(scenes)])

    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(self.table.as_text())


def _short(name: str) -> str:
    plain = " ".join(name.split())
    return plain if len(plain) <= _SHORT else plain[: _SHORT - 1] + "…"
