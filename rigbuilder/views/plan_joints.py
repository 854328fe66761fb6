"""The joints of a rig: for each a choice of knots with reason and strength, and how to tie the one chosen."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from rigbuilder.viewmodels.chainview import JointShown, KnotShown
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.choice_field import ChoiceField
from rigbuilder.views.controls.foldable import Foldable
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.plan_parts import StepList, TextList
from rigbuilder.views.theme_look import Look


class JointBox(QWidget):
    """One joint. Choosing a knot shows it; ``tied`` asks to put it on the card."""

    tied = Signal(str, str)  # path, knot

    def __init__(self, look: Look, joint: JointShown, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.joint = joint
        self._looked_at = ""
        self.title = text_label("", "strong", wrap=True, parent=self)
        self.choice = ChoiceField(f"Knot {joint.title}", parent=self)
        self.reason = text_label("", wrap=True, parent=self)
        self.tie = ActionButton("", weight="remedy", parent=self)
        self.steps = StepList(f"How to tie the knot {joint.title}", self)
        self.sources = TextList("How we know", self)
        fold = Foldable(look, "How to tie it", key=joint.title, open_at_first=False, parent=self)
        fold.column.addWidget(self.steps)
        fold.column.addWidget(self.sources)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, look.theme.px(6))
        column.setSpacing(look.theme.px(4))
        for widget in (self.title, self.choice, self.reason, self.tie, fold):
            column.addWidget(widget)
        self.choice.chosen.connect(self._look_at)
        self.tie.clicked.connect(self._tie)
        self.set_joint(joint)

    def set_joint(self, joint: JointShown) -> None:
        """Show the joint as it stands now; a knot that is only looked at stays in sight."""
        self.joint = joint
        now = joint.present or "not said"
        ratio = f" · {joint.ratio}" if joint.ratio else ""
        self.title.setText(f"{joint.title}: {now}{ratio}" if joint.path else f"{joint.title}{ratio}")
        self.choice.set_options([(knot.name, knot.text) for knot in joint.knots])
        known = {knot.name for knot in joint.knots}
        wanted = (self._looked_at, joint.present, joint.proposed)
        self._show(next((name for name in wanted if name in known), ""))

    def knot(self) -> KnotShown | None:
        """Return the knot that is shown."""
        return next((knot for knot in self.joint.knots if knot.name == self.choice.value()), None)

    def _look_at(self, name: str) -> None:
        self._looked_at = name
        self._show(name)

    def _show(self, name: str) -> None:
        self.choice.set_value(name)
        knot = self.knot()
        proposed = self.joint.proposed
        hint = f" Proposed here: {proposed}." if proposed and proposed != name else ""
        self.reason.setText("" if knot is None else f"{knot.reason}{hint}")
        self.steps.set_steps(() if knot is None else knot.steps)
        self.sources.set_texts(() if knot is None else knot.sources)
        self.tie.setText(f"Use the {name}")
        self.tie.setVisible(bool(self.joint.path) and knot is not None and name != self.joint.present)

    def _tie(self) -> None:
        name, self._looked_at = self.choice.value(), ""
        self.tied.emit(self.joint.path, name)


class JointList(QWidget):
    """All joints of a rig, from the spool to the lure."""

    tied = Signal(str, str)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.boxes: dict[str, JointBox] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)

    def set_joints(self, joints: tuple[JointShown, ...]) -> None:
        """Show these joints; boxes of joints that stay are kept."""
        kept = {joint.title: self.boxes.pop(joint.title, None) for joint in joints}
        for box in self.boxes.values():
            self._column.removeWidget(box)
            box.hide()
            box.deleteLater()
        self.boxes = {}
        for place, joint in enumerate(joints):
            box = kept[joint.title] or self._new(joint)
            box.set_joint(joint)
            if self._column.indexOf(box) != place:
                self._column.insertWidget(place, box)
            self.boxes[joint.title] = box

    def _new(self, joint: JointShown) -> JointBox:
        box = JointBox(self._look, joint, self)
        box.tied.connect(self.tied)
        return box
