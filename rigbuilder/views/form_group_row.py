"""The rows that stand for a whole part: leader or backing, and what of it is pinned."""

from PySide6.QtWidgets import QCheckBox, QGridLayout, QWidget

from rigbuilder.viewmodels.form import NONE, OWN, USUAL, FormModel
from rigbuilder.views.controls.segment_row import SegmentRow
from rigbuilder.views.controls.texts import text_label

_PIN_WORDS = {
    "leader": "Pin this leader",
    "backing": "Pin this backing",
    "knots": "Pin these knots",
    "drag": "Pin this drag",
}
_PIN_HELP = (
    "The line chart puts with each line what practice would hang on it. "
    "Pinned, this part stays as it is on your card."
)


class GroupRow(QWidget):
    """As practice has it, none at all, or one that the card gives."""

    def __init__(self, model: FormModel, group: str, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._model, self._group = model, group
        self.setObjectName(f"row:{group}")
        options = [(USUAL, "as usual"), (NONE, "none"), (OWN, "this one")]
        self.field = SegmentRow(f"{title}, which", options, parent=self)
        self.field.setObjectName(f"field:{group}")
        self.remark = text_label("", "caption", wrap=True, parent=self)
        self.field.chosen.connect(lambda how: self._model.set_group(self._group, how))
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setVerticalSpacing(2)
        grid.addWidget(self.field, 0, 0)
        grid.addWidget(self.remark, 1, 0)

    def refresh(self, *_: object) -> None:
        """Check how the part is given, and say why none is assumed where that is so."""
        how = self._model.group(self._group)
        self.field.set_value(how)
        state = self._model.state(self._group)
        self.remark.setText(f"{state.placeholder} · {state.why}" if how == USUAL and state.instead else "")
        self.remark.setVisible(bool(self.remark.text()))
        self.field.setAccessibleDescription(self.remark.text())


class PinBox(QCheckBox):
    """Keeps one part as it is while lines are compared."""

    def __init__(self, model: FormModel, part: str, parent: QWidget | None = None) -> None:
        super().__init__(_PIN_WORDS[part], parent)
        self._model, self._part = model, part
        self.setObjectName(f"pin:{part}")
        self.setAccessibleName(_PIN_WORDS[part])
        self.setAccessibleDescription(_PIN_HELP)
        self.setToolTip(_PIN_HELP)
        self.clicked.connect(lambda on: self._model.pin(self._part, on))

    def refresh(self, *_: object) -> None:
        """Show whether the part is pinned."""
        self.setChecked(self._model.pinned(self._part))
