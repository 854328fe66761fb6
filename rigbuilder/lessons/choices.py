"""The mechanisms a junior may choose among: the right one between others that could well be true."""

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from rigbuilder.model.fields import Part
from rigbuilder.review.case import Case
from rigbuilder.review.core import Rule
from rigbuilder.review.engine import Report
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.speak import Speaker

OFFERED = 4
"""How many mechanisms are offered for a part; more where the part itself is wrong for more reasons."""

_OTHERS = 2  # the least number of those that are not true

NEIGHBOURS: Mapping[Part, tuple[Part, ...]] = {
    Part.LURE: (Part.KNOTS, Part.LEADER, Part.ROD),
    Part.ROD: (Part.LURE, Part.DRAG, Part.MAIN),
    Part.REEL: (Part.MAIN, Part.BACKING, Part.DRAG),
    Part.MAIN: (Part.LEADER, Part.REEL, Part.KNOTS),
    Part.BACKING: (Part.REEL, Part.MAIN, Part.KNOTS),
    Part.LEADER: (Part.MAIN, Part.KNOTS, Part.LURE),
    Part.KNOTS: (Part.LEADER, Part.MAIN, Part.LURE),
    Part.DRAG: (Part.ROD, Part.REEL, Part.KNOTS),
    Part.WATER: (Part.LURE, Part.LEADER, Part.MAIN),
}
"""Parts that touch each other on a rig, nearest first."""

_ABOUT_THE_CARD = frozenset({"silencing-without-effect"})
_SPEAKER = Speaker()


@dataclass(frozen=True, slots=True)
class Choice:
    """One mechanism on offer: the rule it belongs to, and its *why* as people read it."""

    rule: str
    why: str


def choices(report: Report, part: Part, *, seed: int, meant: Iterable[str] = ()) -> tuple[Choice, ...]:
    """Return the mechanisms offered for a marked part: always the same for the same seed.

    Every reason that is pinned to the part is among them, and as there is room those of parts that
    touch it. The others are rules that looked at this very rig and found it in order, of the same
    part first: plausible, and not true here. None is one that another reason has made superfluous.
    """
    near = (part, *NEIGHBOURS[part])
    own = [found.rule for found in report.findings if found.part is part]
    touching = [found for found in report.findings if found.part in near[1:]]
    wanted = set(meant)
    touching.sort(key=lambda found: (found.rule.name not in wanted, near.index(found.part)))
    room = max(0, OFFERED - _OTHERS - len(own))
    chosen = [*own, *(found.rule for found in touching[:room])]
    offered = max(OFFERED, len(chosen) + _OTHERS)
    for rule in sorted(_plausible(report, near), key=lambda rule: _rank(rule, near, report.case, seed)):
        if len(chosen) == offered:
            break
        if rule not in chosen:
            chosen.append(rule)
    chosen.sort(key=lambda rule: _shuffled(seed, f"{part}/{rule.name}"))
    return tuple(Choice(rule.name, rule.why) for rule in chosen)


def _plausible(report: Report, near: tuple[Part, ...]) -> Iterable[Rule]:
    """Yield the rules about these parts that are not true of this rig, nor a consequence of what is."""
    spoken = {found.rule.name for found in (*report.findings, *report.silenced)}
    covered = {name for found in report.findings for name in found.rule.replaces}
    for rule in RULES:
        if rule.part not in near or rule.name in spoken | covered | _ABOUT_THE_CARD or rule.after is not None:
            continue
        if _is_there(rule, report.case) and rule.check(report.case) is None:
            yield rule


def _is_there(rule: Rule, case: Case) -> bool:
    """Tell whether the rig has what the rule is about; the absence of a leader is about a leader, too."""
    if rule.part is Part.LEADER and case.leader is None:
        return rule.name in ("leader-missing", "no-bite-leader")
    if rule.part is Part.BACKING:
        return case.rig.backing is not None or rule.name == "braid-on-bare-arbor"
    return True


def _rank(rule: Rule, near: tuple[Part, ...], case: Case, seed: int) -> tuple[int, int, str]:
    """Return the order of the others: what looked at this rig, near parts, then the seed's own order."""
    looked = rule.settled is not None and bool(rule.settled(case, _SPEAKER))
    return (0 if looked else 1, min(near.index(rule.part), 1), _shuffled(seed, rule.name))


def _shuffled(seed: int, text: str) -> str:
    return hashlib.sha256(f"{seed}/{text}".encode()).hexdigest()
