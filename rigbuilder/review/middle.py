"""The middle way: one rod for two jobs, and what the compromise costs at either end.

The two ends are the tests that practice aims at for each job; with one technique
given twice, the lightest and the heaviest that it is fished with. The middle is
the rung half-way between them on the trade's ladder, with the tests sold round
it. All of it is common practice.
"""

from dataclasses import dataclass
from typing import Any

from rigbuilder.model.rig import Line
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.words import LineType, Rank
from rigbuilder.review.conditions import aims_for, steps_between
from rigbuilder.review.core import Severity
from rigbuilder.review.dressing import dressed
from rigbuilder.review.engine import Report, lay_out, report
from rigbuilder.review.figuring.usual import usual_rig
from rigbuilder.review.offered import tests_lb
from rigbuilder.review.speak import an

_GOOD = (Rank.FIRST_CHOICE, Rank.WORKS)


@dataclass(frozen=True, slots=True)
class End:
    """One of the two jobs: the test it asks for, and what the middle costs there."""

    technique: Technique
    wish_lb: float
    steps: int
    report: Report

    @property
    def cost(self) -> str:
        """Return in plain words what the middle costs here."""
        if self.steps == 0:
            return "costs nothing here"
        far = "a step" if abs(self.steps) == 1 else f"{abs(self.steps)} steps"
        if self.steps > 0:
            return (
                f"{far} heavier than the {self.wish_lb:g} lb wanted: thicker, so it falls slower, casts "
                "shorter and shows more, and small or wary fish bite less"
            )
        return (
            f"{far} lighter than the {self.wish_lb:g} lb wanted: less in hand for big fish, cover and heavy "
            "lures, so set the drag for it and tie again sooner"
        )

    @property
    def grave(self) -> tuple[str, ...]:
        """Return the names of faults and risks that the middle brings here."""
        return tuple(found.rule.name for found in self.report.findings if found.severity >= Severity.RISK)


@dataclass(frozen=True, slots=True)
class Middle:
    """The compromise in one type of line: tests that will do for both [lb], the best of them, both ends."""

    type: LineType
    tests_lb: tuple[float, ...]
    best_lb: float
    ends: tuple[End, End]

    @property
    def stretch(self) -> int:
        """Return how far the compromise is from both ends together, in steps."""
        return sum(abs(end.steps) for end in self.ends)

    @property
    def grave(self) -> int:
        """Return how many faults and risks the compromise brings."""
        return sum(len(end.grave) for end in self.ends)


def middle_ways(one: Technique, other: Technique, reference: Reference, house: House) -> tuple[Middle, ...]:
    """Return the compromises between two techniques, best first; none if no type of line suits both."""
    found = [way for kind in LineType if (way := _middle_way(kind, one, other, reference, house)) is not None]
    return tuple(sorted(found, key=lambda way: (way.grave, _second_choices(way), way.stretch)))


def _second_choices(way: Middle) -> int:
    return sum(end.technique.lines[way.type].rank is not Rank.FIRST_CHOICE for end in way.ends)


def _middle_way(
    kind: LineType, one: Technique, other: Technique, reference: Reference, house: House
) -> Middle | None:
    if any(_no_good(technique, kind) for technique in (one, other)) or kind not in tests_lb():
        return None
    ladder = tuple(map(float, reference.ladders.for_line(kind)))
    wishes = _wishes(kind, one, other, reference)
    places = sorted(min(range(len(ladder)), key=lambda i: abs(ladder[i] - wish)) for wish in wishes)
    best = ladder[sum(places) // 2]
    tests = _round_about(best, ladder, kind, apart=places[1] - places[0] > 1)
    ends = [
        End(
            technique,
            wish,
            steps_between(ladder, best, wish),
            _tried(technique, kind, best, reference, house),
        )
        for technique, wish in zip((one, other), wishes, strict=True)
    ]
    return Middle(kind, tests, best, (ends[0], ends[1]))


def _no_good(technique: Technique, kind: LineType) -> bool:
    line = technique.lines[kind]
    return line.rank not in _GOOD or line.test_lb is None


def _wishes(kind: LineType, one: Technique, other: Technique, reference: Reference) -> tuple[float, float]:
    if one.id == other.id:
        span = one.lines[kind].test_lb
        assert span is not None  # noqa: S101 - types without a range were left out before
        return span.low, span.high
    techniques = (one, other)
    aims = aims_for([usual_rig(row.id, reference) for row in techniques], techniques, reference)
    wished = [_sold(kind, bounds.aim_lb) for aim in aims if (bounds := aim.for_type(kind)) is not None]
    return wished[0], wished[1]


def _sold(kind: LineType, test_lb: float) -> float:
    """Return the nearest test that is sold; an aim may lie between two."""
    return float(min(tests_lb()[kind], key=lambda test: abs(test - test_lb)))


def _round_about(best: float, ladder: tuple[float, ...], kind: LineType, *, apart: bool) -> tuple[float, ...]:
    """Return the tests sold between the rungs on either side of the middle one."""
    if not apart:
        return (best,)
    place = ladder.index(best)
    low = ladder[place - 1] if place else 0.0
    high = ladder[place + 1] if place + 1 < len(ladder) else float("inf")
    return tuple(float(test) for test in tests_lb()[kind] if low < test < high) or (best,)


def _tried(
    technique: Technique, kind: LineType, test_lb: float, reference: Reference, house: House
) -> Report:
    """Review the technique's usual rig with the compromise on it, and what practice hangs on that."""
    rig = usual_rig(technique.id, reference)
    main = Line(type=kind, test_n=test_lb * LBF_N, length_m=rig.main.length_m)
    return report(lay_out([dressed(rig, main, technique, reference)], reference, house)[0])


def middle_data(ways: tuple[Middle, ...]) -> list[dict[str, Any]]:
    """Return the compromises as plain data, best first."""
    return [
        {
            "type": str(way.type),
            "tests_lb": list(way.tests_lb),
            "best_lb": way.best_lb,
            "ends": [_end_data(end) for end in way.ends],
        }
        for way in ways
    ]


def _end_data(end: End) -> dict[str, Any]:
    return {
        "technique": end.technique.name,
        "wish_lb": end.wish_lb,
        "steps": end.steps,
        "cost": end.cost,
        "reasons_against": list(end.grave),
    }


def middle_text(ways: tuple[Middle, ...], one: Technique, other: Technique) -> str:
    """Return the compromises as text, best first."""
    same = one.id == other.id
    if not ways:
        return f"No one line does for {an(one.name)} and {an(other.name)}: practice uses different types."
    lines = [
        f"One rod for {an(one.name)}, light and heavy"
        if same
        else f"One rod for {an(one.name)} and {an(other.name)}"
    ]
    for way in ways:
        tests = f"{way.tests_lb[0]:g}-{way.tests_lb[-1]:g}" if len(way.tests_lb) > 1 else f"{way.best_lb:g}"
        lines.append(f"  {way.type} {tests} lb, best {way.best_lb:g} lb")
        for name, end in zip(("light end", "heavy end") if same else (one.name, other.name), way.ends,
                             strict=True):  # fmt: skip
            said = f"; reasons against it: {', '.join(end.grave)}" if end.grave else ""
            lines.append(f"    {name}: {end.cost}{said}")
    return "\n".join(lines)
