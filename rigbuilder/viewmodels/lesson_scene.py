"""The drawing of a lesson's rig, with its reasons or without a trace of them."""

from rigbuilder.review.engine import Report
from rigbuilder.review.speak import Speaker
from rigbuilder.viewmodels.scene import RigScene, scene_of


def lesson_scene(report: Report, speaker: Speaker, *, with_reasons: bool) -> RigScene:
    """Return the drawn rig; without reasons nothing in the picture or its words tells of them."""
    return scene_of(report if with_reasons else Report(report.case, ()), speaker)
