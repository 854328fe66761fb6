"""What a line wants next: from the events on its card, its age and its outings, by practice's table."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from rigbuilder.model.rig import LogEntry, Rig
from rigbuilder.reference.care import Respool
from rigbuilder.reference.load import Reference
from rigbuilder.reference.words import LogEvent
from rigbuilder.sources import COMMON_PRACTICE, Source

MONTH_DAYS = 30.4  # mean length of a month [d]
SOON = 0.8  # from this share of its time on, a thing is due soon [1], from memory
_CURES = (LogEvent.CUT_BACK, LogEvent.FILLED)
_FRESH_KNOT = (LogEvent.RETIED, LogEvent.CUT_BACK, LogEvent.FILLED)


@dataclass(frozen=True, slots=True)
class Due:
    """One thing to do: how urgent (now, soon, later), why, and on what that rests."""

    action: str
    urgency: str
    why: str
    sources: tuple[Source, ...]


@dataclass(frozen=True, slots=True)
class Advice:
    """What a type of line likes and dislikes, in store and before use."""

    line: str
    text: str
    sources: tuple[Source, ...]


def care_due(rig: Rig, today: date, reference: Reference) -> tuple[Due, ...]:
    """Return what is due for the lines of a rig on a day, the most urgent first."""
    log = sorted((entry for entry in rig.log if entry.on <= today), key=lambda entry: entry.on)
    found = [*_damage(log), *_age(rig, log, today, reference), *_leader(rig, log, reference)]
    order = ("now", "soon", "later")
    return tuple(sorted(found, key=lambda due: order.index(due.urgency)))


def advice(rig: Rig, reference: Reference) -> tuple[Advice, ...]:
    """Return how to treat and store each type of line that the rig carries."""
    lines = [rig.main, *([rig.leader] if rig.leader else []), *([rig.backing] if rig.backing else [])]
    kinds = dict.fromkeys(line.type for line in lines)
    rows = [reference.line_types[kind] for kind in kinds]
    return tuple(Advice(str(row.type), row.care, row.sources) for row in rows if row.care)


def outings_since(log: Iterable[LogEntry], day: date) -> int:
    """Return on how many days after ``day`` something was noted: each counts as an outing."""
    return len({entry.on for entry in log if entry.on > day})


def _last(log: list[LogEntry], *events: LogEvent) -> int:
    """Return the place of the last of these events, -1 if there is none."""
    return max((place for place, entry in enumerate(log) if entry.what in events), default=-1)


def _damage(log: list[LogEntry]) -> list[Due]:
    found = []
    kink, broke = _last(log, LogEvent.KINK_FOUND), _last(log, LogEvent.BROKE)
    if kink > _last(log, *_CURES):
        why = (
            f"A kink was found on {log[kink].on.isoformat()} and nothing has been cut since. A fold "
            "overstretches the outside of the line for good."
        )
        found.append(Due("cut back above the kink", "now", why, (COMMON_PRACTICE,)))
    if broke > _last(log, *_FRESH_KNOT):
        why = (
            f"It broke on {log[broke].on.isoformat()}. What lies next to a break was pulled nearly as "
            "hard: take the last yards off before a new knot."
        )
        found.append(Due("cut back and tie again", "now", why, (COMMON_PRACTICE,)))
    return found


def _age(rig: Rig, log: list[LogEntry], today: date, reference: Reference) -> list[Due]:
    row = reference.respool[str(rig.main.type)]
    filled = _last(log, LogEvent.FILLED)
    if filled < 0:
        why = "The card's log does not say when the line went on, so nobody can tell its age."
        return [Due("note when the reel was filled", "later", why, (COMMON_PRACTICE,))]
    since = log[filled].on
    turned = rig.main.type.is_braided and _last(log, LogEvent.REVERSED) > filled
    months, outings = (today - since).days / MONTH_DAYS, outings_since(log, since)
    share = max(months / row.max_months, outings / row.max_outings)
    found = [_respool(row, rig, share, months, outings)]
    if rig.main.type.is_braided and not turned and 0.5 <= share < 1.0:
        why = (
            f"Half of its time is over ({_spent(months, outings)}), and only the part that is cast has worn: "
            "the unused end may come up, once."
        )
        found.append(Due("turn the braid end for end", "soon", why, row.sources))
    return found


def _respool(row: Respool, rig: Rig, share: float, months: float, outings: int) -> Due:
    limit = f"{row.max_months} months or {row.max_outings} outings"
    spent = _spent(months, outings)
    if share >= 1.0:
        why = f"It has {spent} behind it; {limit} is what practice gives {rig.main.type}."
        return Due(f"fill with fresh {rig.main.type}", "now", why, row.sources)
    urgency = "soon" if share >= SOON else "later"
    signs = f"{row.signs[:1].lower()}{row.signs[1:].rstrip('.')}"
    why = f"{spent[:1].upper()}{spent[1:]} of {limit}; sooner where it shows: {signs}."
    return Due(f"fill with fresh {rig.main.type}", urgency, why, row.sources)


def _spent(months: float, outings: int) -> str:
    one = "outing" if outings == 1 else "outings"
    return f"{months:.0f} months and {outings} {one}"


def _leader(rig: Rig, log: list[LogEntry], reference: Reference) -> list[Due]:
    """Return what is due after each outing at the end that does the work."""
    tied, outing = _last(log, *_FRESH_KNOT), _last(log, LogEvent.OUTING)
    if outing < 0 or tied > outing:
        return []
    row = reference.respool["leader" if rig.leader is not None else "first yards"]
    what = "tie on a fresh leader" if rig.leader is not None else "cut back the first yards and tie again"
    why = f"Last fished on {log[outing].on.isoformat()} and not tied since; practice: {row.weekend}."
    return [Due(what, "soon", why, row.sources)]
