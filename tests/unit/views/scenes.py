"""Scenes of rigs and painted sheets for the tests of the drawing."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QImage, QPainter

from rigbuilder.review.speak import Speaker
from rigbuilder.viewmodels.scene import RigScene, scene_of
from rigbuilder.views.drawing.rig import Drawn, paint_rig
from rigbuilder.views.paint.export import to_image
from rigbuilder.views.theme import Theme
from tests.unit.review.questions.cases import report_of, usual_report

FAULTY = {"main.type": "fluorocarbon", "main.test": "16 lb", "drag": "14 lb"}


def usual_scene(technique: str) -> RigScene:
    """Return the scene of a technique's usual rig."""
    return scene_of(usual_report(technique), Speaker())


def faulty_scene() -> RigScene:
    """Return a frog on sinking line."""
    return scene_of(report_of("frog", FAULTY), Speaker())


def painted(scene: RigScene, theme: Theme, width: int = 700, height: int = 330) -> tuple[Drawn, QImage]:
    """Paint a scene and return where things lie, and the picture."""
    found: list[Drawn] = []

    def paint(painter: QPainter, rect: QRectF) -> None:
        found.append(paint_rig(painter, rect, scene, theme))

    image = to_image(paint, QSize(width, height), scale=1.0)
    return found[0], image
