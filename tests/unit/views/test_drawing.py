"""The painted rig: true to its computed points, every part to be touched, no pin over another."""

from itertools import combinations, pairwise
from math import hypot

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtWidgets import QApplication

from rigbuilder.model.fields import Part
from rigbuilder.reference.load import load
from rigbuilder.review.speak import Speaker
from rigbuilder.viewmodels.scene import scene_of
from rigbuilder.views.drawing.angler import rod_points
from rigbuilder.views.drawing.frame import frame_for
from rigbuilder.views.drawing.lines import shape_path, split_at_leader
from rigbuilder.views.drawing.lures import silhouette_names
from rigbuilder.views.theme import Theme
from rigbuilder.views.theme_palettes import DARK, LIGHT, PRINT
from tests.unit.review.questions.cases import report_of
from tests.unit.views.scenes import faulty_scene, painted, usual_scene

TECHNIQUES = ("frog", "deep-diver", "drop-shot", "punching", "float-rig", "carolina", "wacky", "flip-jig")


@pytest.mark.parametrize("technique", TECHNIQUES)
def test_the_drawn_line_passes_through_every_computed_point(technique: str, qapp: QApplication) -> None:
    scene = usual_scene(technique)
    frame = frame_for(QRectF(0, 0, 700, 330), scene, 1.0)
    path = shape_path(frame, list(scene.typical))
    drawn = [(path.elementAt(k).x, path.elementAt(k).y) for k in range(path.elementCount())]
    for (x, z), place in zip(scene.typical, drawn, strict=True):
        assert (
            frame.tip_x + x * frame.along,
            frame.surface_y - z * (frame.over if z > 0 else frame.under),
        ) == (pytest.approx(place, abs=1e-6))


def test_the_leader_is_as_long_as_the_card_says() -> None:
    scene = usual_scene("drop-shot")
    _, leader = split_at_leader(scene)
    length = sum(((x1 - x0) ** 2 + (z1 - z0) ** 2) ** 0.5 for (x0, z0), (x1, z1) in pairwise(leader))
    assert length == pytest.approx(scene.leader_m, rel=1e-6)


@pytest.mark.parametrize("technique", TECHNIQUES)
@pytest.mark.parametrize("size", [(420, 230), (700, 330), (1400, 560)])
def test_all_parts_lie_on_the_sheet_and_the_scale_is_told(
    technique: str, size: tuple[int, int], qapp: QApplication
) -> None:
    scene = usual_scene(technique)
    drawn, _ = painted(scene, LIGHT, *size)
    assert set(drawn.parts) >= set(Part) - {Part.LEADER, Part.BACKING}
    sheet = QRectF(0, 0, *size)
    for part, path in drawn.parts.items():
        assert sheet.intersects(path.boundingRect()), part
    frame = drawn.frame
    assert frame.bottom_y < size[1]
    assert frame.tip_x < frame.lure_x < size[0]
    heights = frame.over / frame.along
    assert ("heights" in frame.scale_words) == (heights >= 1.2)


@pytest.mark.parametrize("size", [(420, 230), (700, 330), (1400, 560)])
def test_pins_stand_apart_and_on_the_sheet(size: tuple[int, int], qapp: QApplication) -> None:
    scene = faulty_scene()
    drawn, _ = painted(scene, LIGHT, *size)
    assert sorted(drawn.pins) == [pin.number for pin in scene.pins]
    assert len(drawn.pins) >= 2
    for one, other in combinations(drawn.pins.values(), 2):
        assert not one.intersects(other)
    for square in drawn.pins.values():
        assert QRectF(0, 0, *size).contains(square)


def test_a_fault_glows_in_its_colour(qapp: QApplication) -> None:
    def reddish(scene_name: str) -> int:
        scene = faulty_scene() if scene_name == "faulty" else usual_scene("frog")
        _, image = painted(scene, LIGHT)
        fault = LIGHT.colour("fault")
        return sum(
            image.pixelColor(x, y) == fault
            for x in range(0, image.width(), 2)
            for y in range(0, image.height(), 2)
        )

    assert reddish("faulty") > 20
    assert reddish("right") == 0


@pytest.mark.parametrize("theme", [LIGHT, DARK, PRINT], ids=lambda theme: theme.name)
def test_the_sheet_is_painted_to_its_edges(theme: Theme, qapp: QApplication) -> None:
    _, image = painted(usual_scene("deep-diver"), theme)
    corners = [
        (0, 0),
        (image.width() - 1, 0),
        (0, image.height() - 1),
        (image.width() - 1, image.height() - 1),
    ]
    assert all(image.pixelColor(x, y).alpha() == 255 for x, y in corners)


def test_every_class_of_lure_has_a_silhouette() -> None:
    classes = {technique.lure_class for technique in load().techniques.values()}
    assert classes <= set(silhouette_names())


def test_a_missing_leader_can_still_be_pinned(qapp: QApplication) -> None:
    scene = scene_of(report_of("frog", {"fish.teeth": "present", "leader": None}), Speaker())
    drawn, _ = painted(scene, LIGHT)
    assert sorted(drawn.pins) == [pin.number for pin in scene.pins]


def test_the_rod_keeps_its_length_when_it_is_drawn_down(qapp: QApplication) -> None:
    scene = usual_scene("texas-open")
    further = scene.rod.drag_bend_m - scene.rod.bend_m
    assert further > 0.0
    frame = frame_for(QRectF(0, 0, 700, 330), scene, 1.0)

    def length(further_m: float) -> float:
        points = rod_points(frame, scene, further_m=further_m)
        return sum(hypot(b.x() - a.x(), b.y() - a.y()) for a, b in pairwise(points))

    assert length(further) == pytest.approx(length(0.0), rel=0.08)
    assert rod_points(frame, scene, further_m=further)[-1].y() > rod_points(frame, scene)[-1].y()
