"""Beside the list: the card that is looked at, its earlier versions, the deleted cards."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QScrollArea, QSizePolicy, QTabWidget, QVBoxLayout, QWidget

from rigbuilder.viewmodels.library_look import CardLook
from rigbuilder.viewmodels.scene import RigScene
from rigbuilder.views.bin import BinPane
from rigbuilder.views.controls.badge import SeverityBadge
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.drawing.rig import paint_rig
from rigbuilder.views.history import HistoryPane
from rigbuilder.views.theme import SEVERITIES
from rigbuilder.views.theme_look import Look

_SMALLER = 0.84  # a strip beside a list: the drawing with its words a little smaller than on the bench
_TITLES = {"broken": "cannot be read", "unfinished": "unfinished"}


class RigPicture(QWidget):
    """The drawn rig of the card that is looked at."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._scene: RigScene | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(lambda _: self.updateGeometry())

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return a strip in which the rig can be told."""
        return QSize(self._look.theme.px(300), self._look.theme.px(236))

    def show_scene(self, scene: RigScene | None) -> None:
        """Draw a rig, or nothing."""
        self._scene = scene
        self.setVisible(scene is not None)
        if scene is not None:
            self.setAccessibleName(f"Drawing of {scene.title}")
            self.setAccessibleDescription("; ".join(scene.labels.values()))
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint it."""
        if self._scene is not None:
            painter = QPainter(self)
            painter.scale(_SMALLER, _SMALLER)
            room = QRectF(0, 0, self.width() / _SMALLER, self.height() / _SMALLER)
            paint_rig(painter, room, self._scene, self._look.theme)
            painter.end()


class CardPane(QWidget):
    """One card in short: drawing, verdict, reasons, notes; of a broken one what could be read."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.name = text_label("", "heading", wrap=True, parent=self)
        self.picture = RigPicture(look, self)
        self.badge = SeverityBadge(look, "note", "", parent=self)
        self.says = text_label("", wrap=True, parent=self)
        self.lines = text_label("", wrap=True, parent=self)
        self.notes = text_label("", wrap=True, parent=self)
        self.place = text_label("", "small", wrap=True, parent=self)
        self.place.setAccessibleName("File of the card")
        self.place.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        sheet = QWidget(self)
        sheet.setProperty("plain", True)
        column = QVBoxLayout(sheet)
        for widget in (self.name, self.badge, self.picture, self.says, self.lines, self.notes, self.place):
            column.addWidget(widget)
        column.addStretch(1)
        area = QScrollArea(self)
        area.setAccessibleName("The card in short")
        area.setWidget(sheet)
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(area)

    def show_card(self, card: CardLook, remark: str = "") -> None:
        """Show a card, with a remark on its file if there is one."""
        self._tell(self.name, " ".join(card.name.split()))
        self.picture.show_scene(card.scene)
        known = card.verdict in SEVERITIES
        kind = card.verdict if known else ("fault" if card.verdict == "broken" else "note")
        self.badge.set_kind(kind, card.words if known else _TITLES[card.verdict])
        self.badge.show()
        broken = card.verdict == "broken"
        told = f"{card.words}\n\nWhat could be read of it:" if broken else remark[:1].upper() + remark[1:]
        self._tell(self.says, told)
        self._tell(self.lines, "\n".join(f"• {text}" for _, text in card.lines))
        self._tell(self.notes, f"Notes: {card.notes}" if card.notes else "")
        self._tell(self.place, card.place)

    def show_none(self, words: str) -> None:
        """Say why no card is shown."""
        self.picture.show_scene(None)
        self.badge.hide()
        for label in (self.name, self.lines, self.notes, self.place):
            self._tell(label, "")
        self._tell(self.says, words)

    def _tell(self, label: QWidget, text: str) -> None:
        label.setProperty("text", text)
        label.setVisible(bool(text))


class LibrarySide(QTabWidget):
    """Card, earlier versions and deleted cards behind tabs."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setDocumentMode(True)
        self.setAccessibleName("Card, versions, deleted")
        self.card, self.history, self.bin = CardPane(look, self), HistoryPane(self), BinPane(self)
        self.addTab(self.card, "Card")
        self.addTab(self.history, "Versions")
        self.addTab(self.bin, "Deleted")
