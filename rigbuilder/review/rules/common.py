"""What several rules ask of a case."""

import re

from rigbuilder.reference.knots import Knot
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.words import LineType, Rank
from rigbuilder.review.case import Case
from rigbuilder.review.speak import Speaker

_BITE_FLUOROCARBON_N = 60 * LBF_N  # common practice: below it fluorocarbon is bitten through too often
_SIZE = re.compile(r"\d{2,5}")
# Common practice: a label that counts in line this light or thin, and not much of it, is a shallow spool's.
_SHALLOW_TEST_N, _SHALLOW_LENGTH_M, _SHALLOW_DIAMETER_M = 9 * LBF_N, 110.0, 0.00026


def line_words(case: Case, say: Speaker) -> str:
    """Return type and test of the main line."""
    return f"{case.main.type} {say.test(case.main_n)}"


def leader_n(case: Case) -> float:
    """Return the printed strength of the leader [N], 0 without one."""
    return (case.leader.test_n or 0.0) if case.leader else 0.0


def is_of_practice(case: Case) -> bool:
    """Tell whether practice fishes the technique with this type of line in this test."""
    line = case.practice
    if line is None or line.rank not in (Rank.FIRST_CHOICE, Rank.WORKS) or line.test_n is None:
        return False
    return line.test_n.low * 0.999 <= case.main_n <= line.test_n.high * 1.001


def rests_on_leader(case: Case) -> tuple[str, ...]:
    """Return the card path on which a reason rests where the leader is the weakest line of the rig."""
    return ("leader.test",) if case.leader is not None and leader_n(case) < case.main_n * 0.999 else ()


def resists_teeth(case: Case) -> bool:
    """Tell whether the leader is of wire, or of fluorocarbon too thick to be bitten through."""
    leader = case.leader
    if leader is None:
        return False
    heavy = leader.type is LineType.FLUOROCARBON and leader_n(case) >= _BITE_FLUOROCARBON_N * 0.999
    return leader.type is LineType.WIRE or heavy


def knot_called(case: Case, name: str | None) -> Knot | None:
    """Return a knot by the name on the card."""
    return case.reference.knots.get(name) if name else None


def reel_size(case: Case) -> float | None:
    """Return the reel's size number, where the card gives one."""
    match = _SIZE.search(case.rig.reel.size or "")
    return float(match[0]) if match else None


def is_shallow(case: Case) -> bool:
    """Tell whether the reel has a shallow spool for light line, by what its label holds."""
    return any(
        (held.test_n is not None and held.test_n <= _SHALLOW_TEST_N and held.length_m <= _SHALLOW_LENGTH_M)
        or (held.diameter_m is not None and held.diameter_m <= _SHALLOW_DIAMETER_M)
        for held in case.rig.reel.capacity
    )
