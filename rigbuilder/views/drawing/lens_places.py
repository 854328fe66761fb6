"""Where the lenses stand: side by side over the water, clear of the line, their words below them."""

from dataclasses import dataclass, replace

from PySide6.QtCore import QPointF, QRectF

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.scene import RigScene
from rigbuilder.views.drawing.angler import reel_point
from rigbuilder.views.drawing.frame import Frame
from rigbuilder.views.drawing.lenses import Lens
from rigbuilder.views.drawing.lines import split_at_leader
from rigbuilder.views.paint.pencil import Pencil

_LARGEST = 58.0  # radius in logical pixels
_LEAST = 18.0  # a smaller lens would show nothing
_OF_WIDTH = 0.072  # radius as a share of the sheet's width, at most
_CLEAR = 8.0  # logical pixels between the line in air and words under a lens
_MOST_LINES = 2  # of a title under a lens


@dataclass(frozen=True, slots=True)
class _Subject:
    """What one lens shows, where it is, its title, and what else is said of it."""

    part: Part
    place: QPointF
    title: str
    note: str


def lenses_for(pencil: Pencil, frame: Frame, scene: RigScene) -> list[Lens]:
    """Return the lenses over reel, joint and lure, none where the sheet is too small for any."""
    u, subjects = frame.u, _subjects(frame, scene)
    line = pencil.line_height("small")
    rows = 2
    for _ in range(2):  # a title that needs two lines takes them from the glass
        room = frame.surface_y - frame.rect.top() - rows * line - 14 * u
        radius = min(room / 2, _OF_WIDTH * frame.rect.width(), _LARGEST * u)
        if radius < _LEAST * u:
            return []
        lenses = _placed(pencil, frame, scene, subjects, radius, rows)
        rows = max(len(lens.words) for lens in lenses)
    return lenses


def around(lens: Lens, pencil: Pencil) -> QRectF:
    """Return the room of a lens with its words."""
    words = max((pencil.text_width(text, "small") for text in lens.words), default=0.0)
    grow = max(0.0, words / 2 - lens.radius)
    return lens.rect.adjusted(-grow, 0, grow, 4 * pencil.u + pencil.line_height("small") * len(lens.words))


def _subjects(frame: Frame, scene: RigScene) -> list[_Subject]:
    labels = scene.labels
    drag = f"{labels[Part.DRAG]}; spool enlarged"
    found = [_Subject(Part.REEL, reel_point(frame, scene), labels[Part.REEL], drag)]
    if scene.leader is not None:
        joint = frame.at(*split_at_leader(scene)[0][-1])
        found.append(_Subject(Part.KNOTS, joint, labels[Part.KNOTS], "joint, enlarged"))
    found.append(_Subject(Part.LURE, frame.at(*scene.typical[-1]), labels[Part.LURE], "lure, enlarged"))
    return found


def _placed(
    pencil: Pencil, frame: Frame, scene: RigScene, subjects: list[_Subject], radius: float, rows: int
) -> list[Lens]:
    u, rect, others = frame.u, frame.rect, len(subjects) - 1
    y = rect.top() + 6 * u + radius
    below = y + radius + 3 * u + rows * pencil.line_height("small")
    # The line in air passes to the left of the glasses.
    clear = next((at.x() for at in frame.path_points(scene.typical) if at.y() >= below), frame.tip_x)
    aside = max(1.2 * radius, min(_half(pencil, subjects[0]), 1.7 * radius) + _CLEAR * u)
    first = max(clear + aside, rect.left() + 0.42 * rect.width())
    furthest = rect.right() - radius - max(14 * u, 0.05 * rect.width())
    # The last lens stands over the lure where there is room for the others beside it.
    end = min(max(frame.lure_x, first + others * 3.2 * radius), furthest)
    start = min(first, end - others * (2 * radius + 14 * u))
    step = (end - start) / max(others, 1)
    lenses = []
    for k, subject in enumerate(subjects):
        x = start + k * step
        width = min(step - 6 * u, 2 * (rect.right() - x) - 6 * u, 2 * (x - clear - _CLEAR * u))
        bare = Lens(subject.part, QPointF(x, y), radius, subject.place, ())
        lenses.append(replace(bare, words=_words(pencil, subject, width)))
    return lenses


def _half(pencil: Pencil, subject: _Subject) -> float:
    return max(pencil.text_width(text, "small") for text in (subject.title, subject.note)) / 2


def _words(pencil: Pencil, subject: _Subject, width: float) -> tuple[str, ...]:
    """Return the title in as many lines as it may take, then the note or what of it fits."""
    title = pencil.wrapped(subject.title, "small", width)[:_MOST_LINES]
    fits = pencil.text_width(subject.note, "small") <= width
    return (*title, subject.note if fits else "enlarged")
