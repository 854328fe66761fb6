"""The sheet that the rig is painted on, with a handle over every part for mouse, keyboard and ears."""

from PySide6.QtCore import QEasingCurve, QPointF, QRectF, QSize, Qt, QVariantAnimation, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPainterPath, QPaintEvent, QPixmap, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QStyle, QWidget

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.scene import RigScene, between
from rigbuilder.views.drawing.rig import Drawn, paint_rig
from rigbuilder.views.paint.pencil import CENTRE, Pencil
from rigbuilder.views.rigdrawing_handles import Handles
from rigbuilder.views.theme_look import Look

MOVE_MS = 160


class Canvas(QWidget):
    """Paints a scene, moves softly to the next one, and knows where its parts are."""

    part_chosen = Signal(object)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.scene: RigScene | None = None
        self._shown: RigScene | None = None
        self._before: RigScene | None = None
        self._ghost: RigScene | None = None
        self._words = ""
        self._sheet: QPixmap | None = None
        self.drawn: Drawn | None = None
        self._handles = Handles(look, self)
        self._handles.picked.connect(self._pick)
        self._motion = QVariantAnimation(self)
        self._motion.setStartValue(0.0)
        self._motion.setEndValue(1.0)
        self._motion.setEasingCurve(QEasingCurve.Type.OutCubic)
        self._motion.valueChanged.connect(self._move)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName("The rig, drawn to scale")
        look.changed.connect(self._forget)

    def show_scene(self, scene: RigScene, *, ghost: RigScene | None = None) -> None:
        """Show another scene; what changes moves there softly, unless motion is switched off."""
        if scene == self.scene and ghost == self._ghost:
            return
        self._before, self._ghost, self.scene = self._shown, ghost, scene
        told = (scene.caption, *scene.spoken.values())
        self.setAccessibleDescription(" ".join(text for text in told if text))
        self._motion.stop()
        length = self.style().styleHint(QStyle.StyleHint.SH_Widget_Animation_Duration, None, self)
        if self._before is None or length <= 0 or not self.isVisible():
            self._shown = scene
            self._forget()
        else:
            self._motion.setDuration(MOVE_MS)
            self._motion.start()

    def wait(self, words: str) -> None:
        """Show no rig but a sentence."""
        self._motion.stop()
        self.scene = self._shown = self._ghost = None
        self._words = words
        self.setAccessibleDescription(words)
        self._forget()

    @property
    def at_rest(self) -> bool:
        """Whether nothing moves any more."""
        return self._motion.state() is not QVariantAnimation.State.Running

    def choose(self, part: Part | None) -> None:
        """Ring a part."""
        self._handles.choose(part)

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return a comfortable size."""
        theme = self._look.theme
        return QSize(theme.px(680), theme.px(330))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return the least size at which the parts can be told apart."""
        theme = self._look.theme
        return QSize(theme.px(420), theme.px(230))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint anew at the new size."""
        self._forget()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Show the sheet."""
        ratio = self.devicePixelRatioF()
        if self._sheet is None or self._sheet.size() != self.size() * ratio:
            self._sheet = self._painted(ratio)
        painter = QPainter(self)
        painter.drawPixmap(0, 0, self._sheet)
        painter.end()

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 (Qt's name)
        """Choose the part under the pointer."""
        part = self.part_at(event.position())
        if event.button() == Qt.MouseButton.LeftButton and part is not None:
            self._handles.focus(part)
            self._pick(part)

    def part_at(self, place: QPointF) -> Part | None:
        """Return the part at a place: the smallest of those that can be touched there."""
        if self.drawn is None:
            return None
        hits = [(_room(path), part) for part, path in self.drawn.parts.items() if path.contains(place)]
        return min(hits)[1] if hits else None

    def _pick(self, part: Part) -> None:
        self.choose(part)
        self.part_chosen.emit(part)

    def _move(self, share: float) -> None:
        if self.scene is not None and self._before is not None:
            self._shown = between(self._before, self.scene, share)
            self._forget()

    def _forget(self, *_: object) -> None:
        self._sheet = None
        self.update()

    def _painted(self, ratio: float) -> QPixmap:
        theme = self._look.theme
        sheet = QPixmap(self.size() * ratio)
        sheet.setDevicePixelRatio(ratio)
        sheet.fill(theme.colour("sky"))
        painter = QPainter(sheet)
        room = QRectF(self.rect())
        if self._shown is None:
            margin = theme.px(24)
            inner = room.adjusted(margin, margin, -margin, -margin)
            Pencil(painter, theme).write(inner, self._words, "body", theme.colour("soft"), CENTRE)
            self.drawn = None
        else:
            self.drawn = paint_rig(painter, room, self._shown, theme, ghost=self._ghost)
        painter.end()
        self._handles.place(self.drawn.parts if self.drawn is not None else {}, self.scene)
        return sheet


def _room(path: QPainterPath) -> float:
    box = path.boundingRect()
    return box.width() * box.height()
