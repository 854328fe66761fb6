"""One rod for two jobs: the compromises between two techniques in words."""

from dataclasses import dataclass

from rigbuilder.reference.ranges import LBF_N, Span
from rigbuilder.review.middle import End, Middle, middle_ways
from rigbuilder.viewmodels.bench import Bench


@dataclass(frozen=True, slots=True)
class Job:
    """One of the two jobs: its name, what the compromise costs there, and the reasons against it."""

    name: str
    cost: str
    against: str


@dataclass(frozen=True, slots=True)
class Way:
    """One compromise: the line in words, both jobs, and what puts it on the card."""

    line: str
    jobs: tuple[Job, Job]
    changes: dict[str, str]


def ways(bench: Bench, one: str, other: str) -> tuple[Way, ...]:
    """Return the compromises between two techniques (ids or names), best first."""
    first, second = bench.reference.technique(one), bench.reference.technique(other)
    same = first.id == second.id
    names = ("Light end", "Heavy end") if same else (first.title, second.title)
    return tuple(_way(way, names, bench) for way in middle_ways(first, second, bench.reference, bench.house))


def _way(way: Middle, names: tuple[str, str], bench: Bench) -> Way:
    speaker = bench.speaker
    best = speaker.test(way.best_lb * LBF_N)
    tests = speaker.tests(Span(way.tests_lb[0] * LBF_N, way.tests_lb[-1] * LBF_N))
    line = f"{str(way.type).capitalize()} {best}"
    if tests != best:
        line = f"{line}; {tests} will do"
    jobs = [_job(name, end) for name, end in zip(names, way.ends, strict=True)]
    changes = {"main.type": str(way.type), "main.test": f"{way.best_lb:g} lb"}
    return Way(line, (jobs[0], jobs[1]), changes)


def _job(name: str, end: End) -> Job:
    against = ", ".join(rule.replace("-", " ") for rule in end.grave)
    cost = end.cost[0].upper() + end.cost[1:]
    return Job(name, f"{cost}.", f"Against it: {against}." if against else "")
