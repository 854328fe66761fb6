"""One reason as a sheet: what, where, why, the figures, what to do, how it is known."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from rigbuilder.viewmodels.literal import literal
from rigbuilder.viewmodels.prospects import Option
from rigbuilder.viewmodels.reasons import Reason
from rigbuilder.views.controls.badge import SeverityBadge
from rigbuilder.views.controls.buttons import LinkButton
from rigbuilder.views.controls.card import Card
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.reason_card_disclosure import Disclosure
from rigbuilder.views.reason_card_figures import FigureBars
from rigbuilder.views.reason_card_remedies import Remedies
from rigbuilder.views.reasons_flow import FlowRow
from rigbuilder.views.silence import SilenceForm
from rigbuilder.views.theme_look import Look


class ReasonCard(Card):
    """Shows one reason and keeps its place while the reason's figures change."""

    field_wanted = Signal(str)
    pressed = Signal(object)  # the part of the reason
    looked = Signal(object, object)  # option and button under pointer or focus, or None twice
    taken = Signal(object)  # the option pressed
    silence_wanted = Signal(str)  # the written why

    def __init__(self, look: Look, reason: Reason, parent: QWidget | None = None) -> None:
        super().__init__(look, severity=reason.severity, number=reason.number, parent=parent)
        self._reason = reason
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.badge = SeverityBadge(look, reason.severity, reason.severity, parent=self)
        self.part_link = LinkButton("", parent=self)
        self.headline = text_label("", "strong", wrap=True, parent=self)
        self.why = text_label("", wrap=True, parent=self)
        self.figures = FigureBars(look, self)
        self.remedies = Remedies(look, self)
        self.basis = text_label("", "caption", wrap=True, parent=self)
        self.know = Disclosure("How we know", self.basis, self)
        self.sides = text_label("", "caption", wrap=True, parent=self)
        self.differ = Disclosure("Anglers differ", self.sides, self)
        self.terms = text_label("", "caption", wrap=True, parent=self)
        self.words = Disclosure("Words", self.terms, self)
        self.silence = LinkButton("Silence…", tip="Put the reason aside on this card.", parent=self)
        self.silence.setAccessibleName("Silence on this card")
        self.form = SilenceForm(self)
        self._lay_out()
        self._connect()
        self.set_reason(reason)

    @property
    def reason(self) -> Reason:
        """The reason shown."""
        return self._reason

    def set_reason(self, reason: Reason) -> None:
        """Show a reason of the same rule as it stands now."""
        self._reason = reason
        self.set_sign(reason.severity, reason.number)
        self.badge.set_kind(reason.severity, reason.severity)
        self.part_link.setText(reason.where)
        self.part_link.setToolTip(literal(f"Go to the field: {reason.where}"))
        self.part_link.setAccessibleName(f"Go to the field: {reason.where}")
        self.headline.setText(reason.headline)
        self.why.setText(reason.why)
        self.figures.set_figures(reason.figures, reason.severity)
        self.basis.setText("\n".join(reason.basis))
        self.sides.setText("\n".join(reason.differ))
        self.differ.setVisible(bool(reason.differ))
        self.terms.setText("\n".join(reason.words))
        self.words.setVisible(bool(reason.words))
        self.setAccessibleName(reason.spoken)
        self.setAccessibleDescription(reason.why)

    def set_options(self, options: Sequence[Option]) -> None:
        """Offer what can be done."""
        self.remedies.set_options(options)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 (Qt's name)
        """A press anywhere on the sheet chooses its part."""
        super().mousePressEvent(event)
        self.pressed.emit(self._reason.part)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 (Qt's name)
        """Enter chooses the part."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space) and self.hasFocus():
            self.pressed.emit(self._reason.part)
        else:
            super().keyPressEvent(event)

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(0)
        head.addWidget(self.badge)
        head.addStretch(1)
        head.addWidget(self.part_link)
        foot = FlowRow(self._look.theme.px(6), self)
        for link in (self.know, self.differ, self.words, self.silence):
            foot.add(link)
        self.column.addLayout(head)
        for widget in (self.headline, self.why, self.figures, self.remedies):
            self.column.addWidget(widget)
        self.column.addWidget(foot)
        self.column.addWidget(self.basis)
        self.column.addWidget(self.sides)
        self.column.addWidget(self.terms)
        self.column.addWidget(self.form)

    def _connect(self) -> None:
        self.part_link.clicked.connect(lambda: self.field_wanted.emit(self._reason.field))
        self.remedies.looked.connect(self.looked)
        self.remedies.taken.connect(self.taken)
        self.silence.clicked.connect(self.form.open)
        self.form.dropped.connect(self._drop_form)
        self.form.written.connect(self.silence_wanted)

    def _drop_form(self) -> None:
        self.form.hide()
        self.silence.setFocus()
