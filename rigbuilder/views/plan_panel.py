"""The plans for one rig in one place: the reel, the chain, care; a tab each."""

from PySide6.QtWidgets import QTabWidget, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.pullshelf import PullShelf
from rigbuilder.views.controls.ask import Ask
from rigbuilder.views.plan_care import CarePanel
from rigbuilder.views.plan_chain import ChainPanel
from rigbuilder.views.plan_fill import FillPanel
from rigbuilder.views.theme_look import Look


class PlansPanel(QTabWidget):
    """Fill, chain and care of the rig on the bench; only the tab in sight is worked out."""

    def __init__(
        self,
        bench: Bench,
        look: Look,
        parent: QWidget | None = None,
        *,
        shelf: PullShelf | None = None,
        ask: Ask | None = None,
    ) -> None:
        super().__init__(parent)
        self.setDocumentMode(True)
        self.setAccessibleName("Plans for this rig")
        self.fill = FillPanel(bench, look, ask=ask)
        self.chain = ChainPanel(bench, look, shelf=shelf)
        self.care = CarePanel(bench, look)
        self.addTab(self.fill, "Reel and cost")
        self.addTab(self.chain, "Chain and knots")
        self.addTab(self.care, "Care and log")
