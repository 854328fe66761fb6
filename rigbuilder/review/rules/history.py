"""Rules about what the card's log tells of the line: its age, damage left on it, knots tied again.

A log has no today: its last entry stands for it, so that a review of a card never changes by itself.
"""

from datetime import date

from rigbuilder.model.fields import Part
from rigbuilder.model.rig import LogEntry
from rigbuilder.reference.words import LineType, LogEvent
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice
from rigbuilder.review.tackle_mends import longer_leader
from rigbuilder.sources import COMMON_PRACTICE
from rigbuilder.units.dimensions import Dimension

_MONTH_DAYS = 30.4
_TIE_M = 0.15  # common practice: a knot tied again takes about a hand's length of leader
_HALF = 0.5  # common practice: a leader under half its length is renewed
_DAMAGE = (LogEvent.BROKE, LogEvent.KINK_FOUND)
_CURES = (LogEvent.CUT_BACK, LogEvent.RETIED, LogEvent.FILLED)  # a knot is tied again above the place


def _entries(case: Case) -> list[LogEntry]:
    return sorted(case.rig.log, key=lambda entry: entry.on)


def _filled_on(case: Case) -> date | None:
    renewing = (LogEvent.FILLED, LogEvent.REVERSED) if case.is_braided() else (LogEvent.FILLED,)
    return next((entry.on for entry in reversed(_entries(case)) if entry.what in renewing), None)


def _old(case: Case) -> Hit | None:
    if not case.rig.log:
        return None
    filled, row = _filled_on(case), case.reference.respool.get(str(case.main.type))
    if filled is None or row is None:
        return None
    months = (_entries(case)[-1].on - filled).days / _MONTH_DAYS
    outings = len({entry.on for entry in case.rig.log if entry.on > filled})
    if months <= row.max_months and outings <= row.max_outings:
        return None
    age = f"{months:.0f} months" if months > row.max_months else f"{outings} outings"
    most = f"{row.max_months} months" if months > row.max_months else f"{row.max_outings} outings"
    far = months > 1.5 * row.max_months or outings > 1.5 * row.max_outings
    return Hit(
        Severity.RISK if far else Severity.NOTE,
        headline=lambda say: f"{case.main.type} with {age} behind it by the log, where {most} is the limit",
        detail=lambda say: f"Signs of it: {row.signs[:1].lower()}{row.signs[1:].rstrip('.')}.",
    )


def _damage_left(case: Case) -> Hit | None:
    entries = _entries(case)
    places = [place for place, entry in enumerate(entries) if entry.what in _DAMAGE]
    if not places or any(entry.what in _CURES for entry in entries[places[-1] + 1 :]):
        return None
    damage = entries[places[-1]]
    words = "a kink found" if damage.what is LogEvent.KINK_FOUND else "a break"
    return Hit(
        Severity.RISK,
        headline=lambda say: f"{words} on {damage.on.isoformat()}, and nothing cut back since",
    )


def _leader_used_up(case: Case) -> Hit | None:
    leader = case.leader
    if leader is None or leader.length_m is None or leader.type is LineType.WIRE or not case.rig.log:
        return None
    last = _entries(case)[-1].on
    ties = sum(1 for entry in case.rig.log if entry.on == last and entry.what is LogEvent.RETIED)
    left = leader.length_m - ties * _TIE_M
    if ties == 0 or left >= _HALF * leader.length_m:
        return None
    length = leader.length_m
    return Hit(
        Severity.NOTE,
        headline=lambda say: (
            f"{say.leader(length)} leader tied again {ties} times in a day: about "
            f"{say.leader(max(left, 0.0))} left"
        ),
        numbers=lambda: (
            Number.of("leader as it was", length, Dimension.LENGTH, "leader"),
            Number.of("leader left", max(left, 0.0), Dimension.LENGTH, "leader"),
        ),
    )


def _day(on: str, what: str) -> dict[str, str]:
    return {"on": on, "what": what}


RULES = (
    Rule(
        name="line-past-its-time",
        part=Part.MAIN,
        severity=Severity.RISK,
        what="By the card's log the line has been on longer, or fished more often, than such line lasts.",
        why="Sun, grit and knots take a little off it every day. The loss cannot be seen, "
        "and it shows first when a good fish pulls. Renew it while nothing has happened yet.",
        sources=(COMMON_PRACTICE,),
        check=_old,
        wrong=(
            Example(
                "spinnerbait",
                {"log": [_day("2025-03-01", "filled"), _day("2026-10-01", "retied")]},
                says="the usual rig for spinnerbait, filled nineteen months before its last outing",
            ),
        ),
        right=(
            Example(
                "spinnerbait",
                {"log": [_day("2026-03-01", "filled"), _day("2026-10-01", "retied")]},
                says="the usual rig for spinnerbait, filled seven months before its last outing",
            ),
        ),
        mends=(advice("Strip it off and fill with fresh line; turn braid round end for end once"),),
        mistakes=("M01",),
    ),
    Rule(
        name="damage-not-cut-back",
        part=Part.MAIN,
        severity=Severity.RISK,
        what="The log notes a kink or a break, and nothing after it says that the line was cut "
        "back or tied again.",
        why="Where line has broken or kinked once, what lies next to that spot has been "
        "overstretched too. It holds for a while and then goes with far less than its label.",
        sources=(COMMON_PRACTICE,),
        check=_damage_left,
        wrong=(
            Example(
                "Texas rig",
                {"log": [_day("2026-05-02", "filled"), _day("2026-06-01", "kink found")]},
                says="the usual rig for texas rig with a kink found as the last entry of its log",
            ),
        ),
        right=(
            Example(
                "Texas rig",
                {
                    "log": [
                        _day("2026-05-02", "filled"),
                        _day("2026-06-01", "kink found"),
                        _day("2026-06-01", "cut back"),
                    ]
                },
                says="the usual rig for texas rig with a kink found, then cut back",
            ),
        ),
        mends=(advice("Cut back above the place, tie again, and note it in the log"),),
        mistakes=("M01",),
    ),
    Rule(
        name="leader-used-up",
        part=Part.LEADER,
        severity=Severity.NOTE,
        what="The leader has been tied again so often in a day that less than half of it is left.",
        why="Every knot tied again takes a hand's length. What is left no longer does what "
        "the leader was put on for, and it is the end that has seen all the stones.",
        sources=(COMMON_PRACTICE,),
        check=_leader_used_up,
        wrong=(
            Example(
                "walking bait",
                {
                    "log": [
                        _day("2026-06-01", "filled"),
                        _day("2026-06-02", "retied"),
                        _day("2026-06-02", "retied"),
                    ]
                },
                says="the usual rig for walking bait, tied again twice in a day",
            ),
        ),
        right=(
            Example(
                "walking bait",
                {"log": [_day("2026-06-01", "filled"), _day("2026-06-02", "retied")]},
                says="the usual rig for walking bait, tied again once in a day",
            ),
        ),
        mends=(longer_leader, advice("Tie on a new leader of full length")),
    ),
)
