"""Two or three cards side by side: drawn over each other, and what differs in card, figures and reasons."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QGuiApplication, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QSplitter, QVBoxLayout, QWidget

from rigbuilder.viewmodels.compare import Comparison
from rigbuilder.viewmodels.literal import literal
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
_LIKE = 1.25  # water and cast up to a quarter apart are drawn in one picture


class ComparedRigs(QWidget):
    """Rigs in like water over each other, the others faint behind the one in front; unlike ones beside it."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._scenes: list[RigScene] = []
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName("The rigs drawn")
        look.changed.connect(lambda _: self.update())

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return room enough for lenses and words."""
        return QSize(self._look.theme.px(720), self._look.theme.px(282))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return the least in which a rig can be told."""
        return QSize(self._look.theme.px(360), self._look.theme.px(172))

    def show_rigs(self, scenes: Sequence[RigScene | None], front: int) -> None:
        """Draw rigs, the one at ``front`` first; missing ones are left out."""
        turned = [*scenes[front:], *scenes[:front]]
        self._scenes = [scene for scene in turned if scene is not None]
        titles = "; behind or beside it: ".join(scene.title for scene in self._scenes)
        self.setAccessibleDescription(titles or "Nothing to draw yet")
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint them."""
        painter, theme = QPainter(self), self._look.theme
        if not self._scenes:
            painter.setPen(theme.colour("soft"))
            words = "These cards make no whole rig to draw yet."
            painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, words)
        else:
            groups = overlaid(self._scenes)
            width = self.width() / len(groups)
            for place, (scene, behind) in enumerate(groups):
                room = QRectF(place * width, 0, width, self.height()).adjusted(1 if place else 0, 0, 0, 0)
                self._paint(painter, room, scene, behind)
        painter.end()

    def _paint(self, painter: QPainter, room: QRectF, scene: RigScene, behind: RigScene | None) -> None:
        """Paint one drawing under its name, so that the name covers no measure."""
        theme = self._look.theme
        words = scene.caption if behind is None else f"{scene.caption}, faint behind it {behind.caption}"
        font = theme.font("strong")
        strip = QFontMetricsF(font).height() + theme.px(6)
        head = QRectF(room.left() + theme.px(8), room.top(), room.width() - theme.px(16), strip)
        painter.setFont(font)
        painter.setPen(theme.colour("accent"))
        told = QFontMetricsF(font).elidedText(words, Qt.TextElideMode.ElideRight, head.width())
        painter.drawText(head, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, told)
        ghost = behind and behind.captioned("")
        paint_rig(painter, room.adjusted(0, strip, 0, 0), scene.captioned(""), theme, ghost=ghost)


def overlaid(scenes: Sequence[RigScene]) -> list[tuple[RigScene, RigScene | None]]:
    """Return the first rig with the next like it behind it, and beside it those in other water."""
    first, *others = scenes
    like = [scene for scene in others if _alike(first, scene)]
    unlike = [scene for scene in others if scene not in like[:1]]
    return [(first, like[0] if like else None), *((scene, None) for scene in unlike)]


def _alike(one: RigScene, other: RigScene) -> bool:
    """Whether two rigs fit one drawing: the same stand, water as deep, casts as long."""
    ratios = (other.water.depth_m / one.water.depth_m, other.cast_m / one.cast_m)
    return one.water.shore == other.water.shore and all(1 / _LIKE <= ratio <= _LIKE for ratio in ratios)


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
        self.drawing = ComparedRigs(look, self)
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
        split.setSizes([282, 420])
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
            self.front.button(str(place)).setToolTip(literal(side.name))
        self.front.set_value("0")
        self.table.show_comparison(comparison)
        self.alike.setText(comparison.alike)
        self._draw()

    def _draw(self) -> None:
        if self._comparison is None:
            return
        sides = enumerate(self._comparison.sides, start=1)
        scenes = [
            side.scene and side.scene.captioned(f"{place}  {_short(side.name)}") for place, side in sides
        ]
        front = int(self.front.value() or 0)
        self.drawing.show_rigs(scenes, front)

    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(self.table.as_text())


def _short(name: str) -> str:
    plain = " ".join(name.split())
    return plain if len(plain) <= _SHORT else plain[: _SHORT - 1] + "…"
