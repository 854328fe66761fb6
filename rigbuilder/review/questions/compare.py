"""The lines that a rig is compared with: a previewed one, the usual one, practice's of other types."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from rigbuilder.model.rig import Line, Rig
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.words import LineType
from rigbuilder.review.case import Case
from rigbuilder.review.dressing import dressed
from rigbuilder.review.facts import Facts
from rigbuilder.review.figures import figures
from rigbuilder.review.figuring.usual import usual_rig
from rigbuilder.review.questions.answer import Words
from rigbuilder.review.speak import Speaker

_OTHERS = (LineType.BRAID, LineType.FLUOROCARBON, LineType.NYLON)
_MOST = 3  # other lines beside the present one
_SAME = 0.04  # tests that differ by less are one line, share of the test


@dataclass(frozen=True, slots=True)
class Rival:
    """One rig of the comparison: its stroke, its words, whether it is the one on the bench."""

    rig: Rig
    role: str
    label: Words
    strong: bool = False


def rivals(case: Case, preview: Case | None = None) -> tuple[Rival, ...]:
    """Return the present rig first, then the previewed one, the usual line, and lines of other types."""
    found = [Rival(case.rig, "present", line_label(case.rig), strong=True)]
    if preview is not None and preview.rig.main != case.rig.main:
        found.append(Rival(preview.rig, "candidate", _named("looked at", preview.rig)))
    usual = _on_this_rig(case, usual_rig(case.technique.id, case.reference).main)
    roles = iter(("other a", "other b", "other c"))
    for kind in (None, *_OTHERS):
        if len(found) > _MOST:
            break
        rig = usual if kind is None else _by_aim(case, kind)
        if rig is None or any(
            _alike(rig, known.rig) or (kind and kind is known.rig.main.type) for known in found
        ):
            continue
        found.append(
            Rival(rig, "usual", _named("usual", rig))
            if kind is None
            else Rival(rig, next(roles), line_label(rig))
        )
    return tuple(found)


def swept(
    case: Case, chosen: Sequence[Rival], xs: Sequence[float], at: Callable[[Rig, float], Rig]
) -> list[list[Facts]]:
    """Return the review's own figures of every rival at every x, from one pass."""
    rigs = [at(rival.rig, x) for rival in chosen for x in xs]
    found = figures(rigs, [case.technique] * len(rigs), case.reference)
    return [found[start : start + len(xs)] for start in range(0, len(found), len(xs))]


def each(case: Case, chosen: Sequence[Rival]) -> list[Facts]:
    """Return the review's own figures of every rival."""
    return figures([rival.rig for rival in chosen], [case.technique] * len(chosen), case.reference)


def line_label(rig: Rig) -> Words:
    """Return the words of a rig's main line, such as ``braid 50 lb``."""

    def words(speaker: Speaker) -> str:
        test = rig.main.test_n
        return str(rig.main.type) if test is None else f"{rig.main.type} {speaker.test(test)}"

    return words


def _named(name: str, rig: Rig) -> Words:
    line = line_label(rig)
    return lambda speaker: f"{name}: {line(speaker)}"


def _on_this_rig(case: Case, line: Line) -> Rig:
    main = Line(type=line.type, test_n=line.test_n, length_m=case.rig.main.length_m)
    return dressed(case.rig, main, case.technique, case.reference)


def _by_aim(case: Case, kind: LineType) -> Rig | None:
    bounds = case.aim.for_type(kind)
    if bounds is None:
        return None
    return _on_this_rig(case, Line(type=kind, test_n=bounds.aim_lb * LBF_N))


def _alike(one: Rig, other: Rig) -> bool:
    first, second = one.main.test_n or 0.0, other.main.test_n or 0.0
    return one.main.type is other.main.type and abs(first - second) <= _SAME * max(first, second)
