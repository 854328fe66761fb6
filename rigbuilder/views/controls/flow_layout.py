"""A layout that sets its items in rows, as words are set in a paragraph."""

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


class FlowLayout(QLayout):
    """Items from left to right, going on in the next row when one is full."""

    def __init__(self, parent: QWidget | None = None, *, gap: int = 6) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self._gap = gap
        self.setContentsMargins(0, 0, 0, 0)

    def addItem(self, item: QLayoutItem) -> None:  # noqa: N802 (Qt's name)
        """Take one more item."""
        self._items.append(item)

    def count(self) -> int:
        """Return the number of items."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:  # noqa: N802 (Qt's name)
        """Return an item, or None past the end as Qt expects."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:  # noqa: N802 (Qt's name)
        """Remove and return an item, or None past the end as Qt expects."""
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:  # noqa: N802 (Qt's name)
        """Return no direction: the layout takes the width it is given."""
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:  # noqa: N802 (Qt's name)
        """Return True: narrower means more rows."""
        return True

    def heightForWidth(self, width: int) -> int:  # noqa: N802 (Qt's name)
        """Return the height needed at ``width``."""
        return self._arrange(QRect(0, 0, width, 0), move=False)

    def setGeometry(self, rect: QRect) -> None:  # noqa: N802 (Qt's name)
        """Place all items in ``rect``."""
        super().setGeometry(rect)
        self._arrange(rect, move=True)

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return the least size; the true height comes from ``heightForWidth``."""
        return self.minimumSize()

    def minimumSize(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return room for the largest item."""
        size = QSize()
        for item in self._items:
            size = size.expandedTo(item.minimumSize())
        margins = self.contentsMargins()
        return size + QSize(margins.left() + margins.right(), margins.top() + margins.bottom())

    def _arrange(self, rect: QRect, *, move: bool) -> int:
        margins = self.contentsMargins()
        inner = rect.marginsRemoved(margins)
        x, y, row = inner.x(), inner.y(), 0
        for item in self._items:
            if item.isEmpty():
                continue
            size = item.sizeHint().boundedTo(QSize(max(1, inner.width()), 100_000))
            if x > inner.x() and x + size.width() > inner.x() + inner.width():
                x, y, row = inner.x(), y + row + self._gap, 0
            if move:
                item.setGeometry(QRect(QPoint(x, y), size))
            x += size.width() + self._gap
            row = max(row, size.height())
        return y + row - rect.y() + margins.bottom()
