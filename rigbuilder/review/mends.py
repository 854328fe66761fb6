"""Ways to mend a rig, each a function from a case to candidate remedies.

A mend only proposes; ``proof`` keeps the proposals that silence their reason
and raise none as severe. Proposals come nearest first.
"""

from collections.abc import Iterable

from rigbuilder.model import practice
from rigbuilder.model.rig import Leader, Line
from rigbuilder.reference.ranges import INCH_M, LBF_N
from rigbuilder.reference.words import LineType, Rank
from rigbuilder.review.case import Case
from rigbuilder.review.core import Remedy, Safety
from rigbuilder.review.dressing import (
    Changes,
    backing_changes,
    dressed,
    dressing_changes,
    inches,
    leader_changes,
    line_changes,
    pounds,
    tackle_bears_n,
)
from rigbuilder.review.offered import tests_lb

_MOST = 4
_GOOD = (Rank.FIRST_CHOICE, Rank.WORKS)


def use_line(case: Case, main: Line) -> tuple[Remedy, ...]:
    """Propose ``main`` alone, and with everything that practice would hang on it."""
    say = f"Use {main.type} {pounds(main.test_n or 0.0)}"
    alone = line_changes(case.rig, main)
    whole = alone | dressing_changes(case.rig, dressed(case.rig, main, case.technique, case.reference))
    if whole == alone:
        return (Remedy(say, alone),)
    return Remedy(say, alone), Remedy(f"{say} with {_listed(_hung(alone, whole))} to go with it", whole)


def _hung(alone: Changes, whole: Changes) -> list[str]:
    """Return in words what a whole change hangs on the line beyond the line itself."""
    groups = {path.split(".")[0]: value for path, value in whole.items() if path not in alone}
    return [
        word if groups[group] is not None else f"no {word}"
        for group, word in (("leader", "leader"), ("knots", "knot"), ("backing", "backing"), ("drag", "drag"))
        if group in groups
    ]


def _listed(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _near(values: Iterable[float], wish: float) -> list[float]:
    return sorted(values, key=lambda value: abs(value - wish))


def other_test(case: Case) -> tuple[Remedy, ...]:
    """Propose other tests of the same line type, those in practice's range first, nearest first."""
    tests = _in_practice(case, case.rig.main.type)
    lines = (Line(type=case.rig.main.type, test_n=test * LBF_N) for test in tests[:_MOST])
    return tuple(remedy for line in lines for remedy in use_line(case, line))


def at_aim(case: Case) -> tuple[Remedy, ...]:
    """Propose the test that today's conditions point at, in the line type that is on."""
    aim = case.aim.for_type(case.main.type)
    if aim is None:
        return ()
    return use_line(case, Line(type=case.main.type, test_n=aim.aim_lb * LBF_N))


def other_line(case: Case) -> tuple[Remedy, ...]:
    """Propose the line types that practice prefers for the technique, each at its aim."""
    order = sorted(
        (kind for kind, line in case.technique.lines.items() if line.rank in _GOOD),
        key=lambda kind: (case.technique.lines[kind].rank is not Rank.FIRST_CHOICE, kind is LineType.HYBRID),
    )
    proposals: list[Remedy] = []
    for kind in order:
        if kind is case.rig.main.type or kind not in tests_lb():
            continue
        for test in _in_practice(case, kind)[:2]:
            proposals += use_line(case, Line(type=kind, test_n=test * LBF_N))
    return tuple(proposals)


def _in_practice(case: Case, kind: LineType) -> list[float]:
    line, offered = case.technique.lines.get(kind), tests_lb().get(kind, ())
    aim = case.aim.for_type(kind)
    wish = aim.aim_lb if aim else case.main_n / LBF_N
    if kind is case.rig.main.type:
        wish = min(max(case.main_n / LBF_N, aim.low_lb), aim.high_lb) if aim else wish
    if line is None or line.test_lb is None:
        return _near(offered, wish)
    inside = [test for test in offered if aim is None or aim.low_lb <= test <= aim.high_lb]
    return _near(inside, wish)


def with_leader(case: Case) -> tuple[Remedy, ...]:
    """Propose the leader that practice joins to this line, or a plain one where it names none."""
    leader = practice.leader_for(case.technique, case.main, case.reference)
    if leader is None:
        return ()
    return (Remedy(_leader_words(leader), leader_changes(leader)),)


def _leader_words(leader: Leader) -> str:
    length = inches(leader.length_m or 0.0)
    return f"Add {length} of {leader.type} {pounds(leader.test_n or 0.0)} leader"


def without_leader(case: Case) -> tuple[Remedy, ...]:
    """Propose to tie straight to the lure."""
    if case.leader is None:
        return ()
    changes: Changes = {"leader": None}
    if case.rig.says("knots.lure"):
        changes["knots.lure"] = practice.lure_knot_for(case.technique, case.main)
    return (Remedy("Leave the leader off", changes),)


def other_leader_test(case: Case) -> tuple[Remedy, ...]:
    """Propose other tests for the leader along the trade's ladder, nearest first."""
    leader = case.leader
    if leader is None or leader.test_n is None:
        return ()
    now = leader.test_n / LBF_N
    steps = [step for step in _near(case.reference.ladders.leader_lb, now) if abs(step - now) > 0.05]
    return tuple(
        Remedy(f"Use a {step:g} lb leader", {"leader.test": f"{step:g} lb", "leader.diameter": None})
        for step in steps[: 2 * _MOST]
    )


def other_leader_type(case: Case) -> tuple[Remedy, ...]:
    """Propose the leader materials that practice uses for the technique."""
    if case.leader is None:
        return ()
    kinds = [kind for kind in case.technique.leader.materials if kind is not case.leader.type]
    return tuple(
        Remedy(f"Use a {kind} leader", {"leader.type": str(kind), "leader.diameter": None}) for kind in kinds
    )


def other_leader_length(case: Case) -> tuple[Remedy, ...]:
    """Propose practice's leader lengths, nearest first."""
    leader = case.leader
    if leader is None or leader.length_m is None:
        return ()
    now = leader.length_m / INCH_M
    steps = [step for step in _near(case.reference.ladders.leader_in, now) if abs(step - now) > 0.5]
    return tuple(
        Remedy(f"Make the leader {step:g} in long", {"leader.length": f"{step:g} in"}) for step in steps
    )


def other_lure_knot(case: Case) -> tuple[Remedy, ...]:
    """Propose terminal knots that suit the line which reaches the lure."""
    usual = practice.lure_knot_for(case.technique, case.end)
    others = ("double palomar", "double-loop clinch", "uni", "san diego jam")
    names = [name for name in dict.fromkeys((usual, *others)) if name != case.rig.knots.lure]
    return tuple(Remedy(f"Tie a {name} to the lure", {"knots.lure": name}) for name in names)


def other_joint(case: Case) -> tuple[Remedy, ...]:
    """Propose joints between main line and leader."""
    if case.leader is None:
        return ()
    usual = practice.joint_for(case.leader.type, case.main, case.leader.test_n or 0.0)
    names = dict.fromkeys((usual, "fg", "double uni", "modified albright", "albright", "blood"))
    return tuple(
        Remedy(f"Join the leader with a {name} knot", {"leader.knot": name})
        for name in names
        if name and name != case.leader.knot
    )


def usual_drag(case: Case) -> tuple[Remedy, ...]:
    """Propose the drag that practice sets on this chain."""
    most_n = tackle_bears_n(case.rig, case.technique, case.reference)
    drag = practice.drag_for(case.technique, case.main, case.leader, most_n=most_n)
    if drag is None:
        return ()
    text = pounds(drag)
    return (Remedy(f"Set the drag to {text}", {"drag": text}),)


def with_backing(case: Case) -> tuple[Remedy, ...]:
    """Propose backing under the line."""
    backing = practice.backing_for(case.rig.reel.kind, LineType.BRAID)
    if backing is None:
        return ()
    say = f"Put {backing.type} {pounds(backing.test_n or 0.0)} backing under it"
    return (Remedy(say, backing_changes(backing)),)


def fresh_line(case: Case) -> tuple[Remedy, ...]:
    """Propose to put fresh line on."""
    return (Remedy("Put fresh line on", {"main.condition": "fresh"}),)


def plain_diameter(case: Case) -> tuple[Remedy, ...]:
    """Propose to leave the printed diameter out and go by the test alone."""
    paths = [path for path in ("main.diameter", "leader.diameter") if case.rig.says(path)]
    return (Remedy("Leave the diameter out until it is measured", dict.fromkeys(paths)),) if paths else ()


def fresh_leader(case: Case) -> tuple[Remedy, ...]:
    """Propose to tie a new leader on."""
    return (Remedy("Tie on a new leader", {"leader.condition": "fresh"}),)


def usual_presentation(case: Case) -> tuple[Remedy, ...]:
    """Propose the presentations that fit the technique."""
    return tuple(
        Remedy(f"Call the presentation {word}", {"presentation": str(word)})
        for word in case.technique.presentations
    )


def advice(say: str) -> "_Advice":
    """Make a mend that only says what to do, where no change of the card can do it."""
    return _Advice(say)


class _Advice:
    """A mend that is only said."""

    def __init__(self, say: str) -> None:
        self._say = say

    def __call__(self, case: Case) -> tuple[Remedy, ...]:
        return (Remedy(self._say, {}, Safety.ADVICE),)
