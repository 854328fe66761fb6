"""The reasons: what the review found on the bench, worst first, with what can be done about it."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.prospects import Option, Prospect, gaps, options, verdict
from rigbuilder.viewmodels.reasons import Reason, reasons, right_points, silenced
from rigbuilder.viewmodels.takes import hear_again, silence, take
from rigbuilder.views.controls.badge import SeverityBadge
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.preview import Previewer
from rigbuilder.views.preview_toast import tell_taken
from rigbuilder.views.reason_card import ReasonCard
from rigbuilder.views.reasons_flow import FlowRow
from rigbuilder.views.reasons_mend import MendCard
from rigbuilder.views.reasons_missing import MissingCard
from rigbuilder.views.reasons_proving import Announcer, Prover
from rigbuilder.views.right import RightCard
from rigbuilder.views.silence import SilencedList
from rigbuilder.views.theme_look import Look


class ReasonsPanel(QWidget):
    """A head with the verdict, and below it the sheets, which scroll."""

    field_wanted = Signal(str)
    part_chosen = Signal(object)

    def __init__(self, bench: Bench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._look = bench, look
        self._cards: dict[str, ReasonCard] = {}
        self._chosen: Part | None = None
        self.setAccessibleName("Reasons")
        self.badge = SeverityBadge(look, "right", "", filled=True, parent=self)
        self.mend_button = ActionButton(
            "Make it right", weight="first", tip="Shows first what would change.", parent=self
        )
        self.mend = MendCard(bench, look, self)
        self.missing = MissingCard(look, self)
        self.right = RightCard(look, self)
        self.silenced = SilencedList(look, self)
        self.sheets = QScrollArea(self)
        self._stack = QVBoxLayout()
        self._lay_out()
        self._previewer = Previewer(bench, look, self)
        self._prover = Prover(bench, self)
        self._announcer = Announcer(bench, self, lambda now: f"Review: {now}")
        self._connect()
        self._render()

    def cards(self) -> tuple[ReasonCard, ...]:
        """Return the sheets of the reasons, as they stand one below the other."""
        return tuple(self._cards.values())

    def choose_part(self, part: Part | None) -> None:
        """Frame the reasons of a part and bring the first of them into sight; tells nobody."""
        self._chosen = part
        first: ReasonCard | None = None
        for card in self._cards.values():
            card.set_chosen(part is not None and card.reason.part is part)
            if first is None and part is not None and card.reason.part is part:
                first = card
        if first is not None:
            self.sheets.ensureWidgetVisible(first, 0, self._look.theme.px(12))

    def focus_first(self) -> None:
        """Put the focus on the worst reason, or on the first gap, or on what is right."""
        if self.missing.links and self._bench.report is None:
            self.missing.links[0].setFocus()
        elif self._cards:
            next(iter(self._cards.values())).setFocus()
        else:
            self.sheets.setFocus()

    def _lay_out(self) -> None:
        theme = self._look.theme
        head = FlowRow(theme.px(8), self)
        for widget in (text_label("Reasons", "heading", parent=self), self.badge, self.mend_button):
            head.add(widget)
        inner = QWidget()
        inner.setProperty("plain", True)
        column = QVBoxLayout(inner)
        column.setContentsMargins(0, 0, theme.px(4), theme.px(8))
        column.setSpacing(theme.px(8))
        self._stack.setSpacing(theme.px(8))
        column.addWidget(self.mend)
        column.addWidget(self.missing)
        column.addLayout(self._stack)
        column.addWidget(self.right)
        column.addWidget(self.silenced)
        column.addStretch(1)
        self.sheets.setWidget(inner)
        self.sheets.setWidgetResizable(True)
        self.sheets.setFrameShape(QFrame.Shape.NoFrame)
        self.sheets.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.sheets.setAccessibleName("Reasons, worst first")
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.setSpacing(theme.px(6))
        outer.addWidget(head)
        outer.addWidget(self.sheets, 1)

    def _connect(self) -> None:
        self._bench.report_changed.connect(self._render)
        self._bench.units_changed.connect(self._render)
        self._prover.proved.connect(self._offer)
        self.missing.field_wanted.connect(self.field_wanted)
        self.mend_button.clicked.connect(self.mend.propose)
        self.mend_button.clicked.connect(lambda: self.sheets.verticalScrollBar().setValue(0))
        self.mend.taken.connect(self._make_right)
        self.mend.dropped.connect(self.mend_button.setFocus)
        self.silenced.wanted_again.connect(
            lambda rule: tell_taken(self, "The reason is heard again.", hear_again(self._bench, rule))
        )

    def _render(self, *_: object) -> None:
        report, speaker = self._bench.report, self._bench.speaker
        now = verdict(report)
        self.badge.set_kind(now.severity, now.text)
        self.mend.hide()
        self.mend_button.setVisible(now.severity in ("fault", "risk"))
        self.missing.set_gaps(gaps(self._bench.reading) if report is None else ())
        found = () if report is None else reasons(report, speaker)
        self._show_cards(found)
        self.right.set_points(() if report is None else right_points(report, speaker))
        self.silenced.set_entries(() if report is None else silenced(report, speaker))
        self._prover.start(found)

    def _show_cards(self, found: tuple[Reason, ...]) -> None:
        kept = {reason.rule: self._cards.get(reason.rule) for reason in found}
        for rule, card in self._cards.items():
            if rule not in kept:
                self._stack.removeWidget(card)
                card.hide()
                card.deleteLater()
        cards: dict[str, ReasonCard] = {}
        for index, reason in enumerate(found):
            card = kept[reason.rule] or self._new_card(reason)
            card.set_reason(reason)
            if self._stack.indexOf(card) != index:
                self._stack.removeWidget(card)
                self._stack.insertWidget(index, card)
            card.show()
            cards[reason.rule] = card
        self._cards = cards
        self.choose_part(self._chosen)

    def _new_card(self, reason: Reason) -> ReasonCard:
        card = ReasonCard(self._look, reason, self.sheets.widget())
        card.field_wanted.connect(self.field_wanted)
        card.pressed.connect(self.part_chosen)
        card.looked.connect(self._look_ahead)
        card.taken.connect(lambda option: self._take(card, option))
        card.silence_wanted.connect(
            lambda why: tell_taken(self, "The reason is silenced.", silence(self._bench, reason.rule, why))
        )
        return card

    def _offer(self, rule: str, offered: tuple[Option, ...]) -> None:
        card = self._cards.get(rule)
        if card is not None:
            card.set_options(offered)

    def _look_ahead(self, option: Option | None, button: QWidget | None) -> None:
        if option is None or button is None:
            self._previewer.stop()
        else:
            self._previewer.look(option, button)

    def _take(self, card: ReasonCard, option: Option) -> None:
        """Take a remedy as it is proven for the card of this moment."""
        fresh = options(self._bench, card.reason.finding)
        chosen = next((each for each in fresh if each.say == option.say), None)
        if chosen is None:
            card.set_options(fresh)
        else:
            self._done(chosen.say, take(self._bench, chosen.changes, chosen.say))

    def _make_right(self, proposal: Prospect) -> None:
        self._done(proposal.title, take(self._bench, proposal.sets, "make it right"))

    def _done(self, what: str, undo: Callable[[], None] | None) -> None:
        """Say what was done; the focus stays here although its button went with the reason."""
        tell_taken(self, f"Done: {what}", undo)
        focus = self.window().focusWidget()
        if focus is None or not self.isAncestorOf(focus):
            self.focus_first()
