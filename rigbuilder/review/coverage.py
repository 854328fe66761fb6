"""What of the trade's knowledge the rule book covers: by a rule, by a bench check, or not, and why."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from rigbuilder.reference.load import Reference
from rigbuilder.review.bench_checks import CHECKS
from rigbuilder.review.rules.book import RULES

_STEPS, _LEADER, _DAY = "test-off-the-aim", "leader-off-the-aim", "day-favours-another-line"
_BY_STATE: Mapping[str, tuple[str, ...]] = {
    "clarity/gin-clear": (
        _STEPS,
        "bare-braid-in-clear-water",
        _DAY,
        _LEADER,
    ),
    "clarity/clear": (_STEPS,),
    "clarity/stained": (_STEPS, _LEADER),
    "clarity/muddy": (_STEPS, "leader-missing"),
    "cover/open": (_STEPS,),
    "cover/scattered-grass": (_STEPS, _DAY, _LEADER),
    "cover/thick-grass": ("line-cannot-cut-grass", "test-below-practice", "leader-knot-in-the-weed"),
    "cover/mats": ("line-cannot-cut-grass", "test-below-practice", "leader-knot-in-the-weed"),
    "cover/wood": (_STEPS, "braid-in-wood", _DAY),
    "cover/rock": (_STEPS, "leader-too-short-for-rock", _DAY),
    "pressure/heavily-fished": (_STEPS, "bare-braid-in-clear-water", _LEADER),
    "pressure/little-fished": (_STEPS,),
    "depth/under-5-ft": (_STEPS,),
    "depth/5-15-ft": (_STEPS,),
    "depth/15-30-ft": (_STEPS, _LEADER),
    "depth/over-30-ft": ("line-stretches-in-deep-water", _DAY, _LEADER),
    "wind/strong": (_STEPS, _DAY),
    "wind/strong-current": (_STEPS, _DAY),
    "wind/braid-into-wind": (_STEPS, _LEADER),
    "temperature/cold-water": (_STEPS, "stiff-line-in-cold-water", _DAY),
    "temperature/freezing-air": ("braid-in-frost", _DAY),
    "temperature/hot": ("spools-in-the-shade",),
    "fish-size/big": (_STEPS, _LEADER),
    "fish-size/small": (_STEPS, _LEADER),
    "teeth/now-and-then": ("no-bite-leader",),
    "teeth/target": ("no-bite-leader",),
    "distance/under-15-yd": (_STEPS, _DAY, _LEADER),
    "distance/15-30-yd": (_STEPS,),
    "distance/30-45-yd": ("line-stretches-too-far-out", _DAY),
    "distance/over-45-yd": (_STEPS, "line-stretches-too-far-out", "leader-too-short-for-rock"),
    "stand/shore": (_STEPS, _LEADER, "fish-too-heavy-to-lift"),
    "stand/boat": (_STEPS,),
    "still/on-top": ("sinking-line-on-surface-lure", "leader-sinks-surface-lure"),
    "still/hangs": ("line-wrong-for-technique", "hanging-at-rest"),
    "still/on-the-bottom": ("line-wrong-for-technique", "leader-material-unusual"),
    "lure-weight/heavy": (_STEPS,),
    "lure-weight/light": (_STEPS,),
}
_STATES_LEFT_OUT: Mapping[str, str] = {
    "light/bright-calm": "a card does not say how bright the day is",
    "light/dim-or-chop": "a card does not say how bright the day is",
    "temperature/through-ice": "fishing through the ice is no technique of this book",
    "stand/kayak": "a card knows shore and boat",
    "angler/first-season": "a card describes a rig and judges no angler; lessons do",
    "angler/practised-junior": "a card describes a rig and judges no angler; lessons do",
    "angler/tournament": "a card describes a rig and judges no angler; lessons do",
}
_BY_KNOT_PLACE: Mapping[str, tuple[str, ...]] = {
    "terminal": ("lure-knot-wrong-for-line",),
    "loop": ("lure-knot-wrong-for-line", "joint-passes-guides"),
    "swivel": ("lure-knot-wrong-for-line",),
    "line to leader": ("joint-wrong-for-lines", "joint-passes-guides"),
    "leader sections": ("joint-wrong-for-lines",),
    "backing": ("backing-joint-wrong",),
    "arbor": ("braid-on-bare-arbor",),
    "wire": ("crimp-and-twist",),
    "stop": ("stop-knot-small",),
    "dropper": ("lure-knot-wrong-for-line",),
    "doubling": (),
}
_KNOTS_LEFT_OUT: Mapping[str, str] = {
    "bimini twist": "a doubled line is no field of a card; the joint that follows is judged as it stands",
    "spider hitch": "a doubled line is no field of a card; the joint that follows is judged as it stands",
}
_BY_PITFALL: Mapping[str, tuple[str, ...]] = {
    "kilograms read as pounds, or the reverse": ("rod-label-odd", "label-does-not-add-up"),
    "a braid's thickness read as its strength": ("label-does-not-add-up",),
    "lure range held against the head alone": ("lure-heavier-than-rod", "weigh-the-whole-lure"),
    "test and class mean different things": ("leaning-on-the-label",),
    "greatest drag read as the biggest fish": ("drag-above-reel", "fish-too-heavy-to-lift"),
    "lines that break far above their label": ("leaning-on-the-label", "label-does-not-add-up"),
    "leaders labelled by tippet size or number": ("joint-wrong-for-lines",),
}
_PITFALLS_LEFT_OUT: Mapping[str, str] = {
    "a label that belongs to one of two tips": "a card describes the rod as it is put together",
}
_SHARES = ("nylon", "fluorocarbon", "braid to leader", "light trebles", "finesse and trout", "heavy cover",
           "catfish", "trolling")  # fmt: skip
_BY_SHARE = dict.fromkeys(_SHARES, ("drag-above-practice", "drag-too-loose"))
_BY_DRAG_RULE: Mapping[str, tuple[str, ...]] = {
    "weakest-label": ("drag-above-weakest-link",),
    "share-by-line": ("drag-above-practice", "drag-too-loose"),
    "measuring": ("drag-by-scale",),
    "straight-pull": ("drag-by-scale",),
    "start-up": ("drag-by-scale",),
    "emptying-spool": ("drag-above-weakest-link", "too-little-line"),
    "braid": ("nothing-gives-on-small-trebles", "drag-above-practice"),
    "locked": ("drag-strains-rod", "drag-above-reel"),
    "without-scale": ("drag-by-scale",),
    "thumb": ("braid-not-round-the-hand",),
    "check-again": ("drag-by-scale",),
}
_BY_FILLING: Mapping[str, tuple[str, ...]] = {
    "level-spinning": ("lip-gap", "line-does-not-fit-spool", "spool-half-empty"),
    "level-casting": ("lip-gap", "line-does-not-fit-spool", "spool-half-empty"),
    "working-line": ("too-little-line",),
    "backing-depth": ("backing-joint-inside-cast",),
    "why-back": ("braid-on-bare-arbor", "spool-half-empty"),
    "backing-line": ("backing-joint-wrong", "lead-core-as-backing"),
    "tape": ("braid-on-bare-arbor",),
    "direction-spinning": ("filler-the-right-way",),
    "direction-casting": ("wound-under-tension",),
    "twist": ("no-swivel-on-spinning-lure", "bail-by-hand", "no-winding-against-the-drag"),
    "tension": ("wound-under-tension",),
    "lay": ("wound-under-tension",),
    "finish": ("soak-and-condition",),
    "reversing": ("line-past-its-time",),
    "top-shot": ("backing-joint-inside-cast",),
}
_BY_CASTING: Mapping[str, tuple[str, ...]] = {
    "thinnest braid": ("line-too-thin-for-casting-reel",),
    "thinnest single strand": ("line-too-thin-for-casting-reel",),
    "braid under big lures": ("thin-braid-under-big-lure",),
    "fluorocarbon that springs": ("springy-line-on-small-casting-reel",),
    "lightest lure": ("lure-too-light-for-casting-reel",),
}


@dataclass(frozen=True, slots=True)
class Covered:
    """One entry of the trade's knowledge, and what covers it; ``left_out`` says why nothing does."""

    kind: str
    entry: str
    rules: tuple[str, ...] = ()
    checks: tuple[str, ...] = ()
    left_out: str = ""


def coverage(reference: Reference) -> tuple[Covered, ...]:
    """Return every entry with what covers it."""
    return tuple(
        _covered(kind, entry, names, left_out) for kind, entry, names, left_out in _entries(reference)
    )


def _covered(kind: str, entry: str, names: Iterable[str], left_out: str) -> Covered:
    rules, checks = {rule.name for rule in RULES}, {check.name for check in CHECKS}
    wanted = tuple(dict.fromkeys(names))
    return Covered(
        kind,
        entry,
        tuple(name for name in wanted if name in rules),
        tuple(name for name in wanted if name in checks),
        left_out,
    )


def _entries(reference: Reference) -> Iterable[tuple[str, str, Iterable[str], str]]:
    for mistake in reference.mistakes.values():
        code = f"M{mistake.number:02d}"
        names = [rule.name for rule in RULES if code in rule.mistakes]
        names += [check.name for check in CHECKS if code in check.mistakes]
        yield "mistake", mistake.title, names, ""
    for adjuster in reference.adjusters:
        for state in adjuster.states:
            key = f"{adjuster.id}/{state.id}"
            entry = f"{adjuster.name}: {state.name}"
            yield "condition", entry, _BY_STATE.get(key, ()), _STATES_LEFT_OUT.get(key, "")
    for knot in reference.knots.values():
        names = [name for place in knot.places for name in _BY_KNOT_PLACE[str(place)]]
        if knot.for_plain_hooks:
            names.append("hook-knot-on-a-lure")
        if not knot.for_large_trebles:
            names.append("loop-knot-over-large-trebles")
        yield "knot", knot.title, names, _KNOTS_LEFT_OUT.get(knot.name, "")
    yield from _limits(reference)


def _limits(reference: Reference) -> Iterable[tuple[str, str, Iterable[str], str]]:
    for entry, names in _BY_PITFALL.items():
        yield "label", entry, names, ""
    for entry, reason in _PITFALLS_LEFT_OUT.items():
        yield "label", entry, (), reason
    for share in reference.drag.shares:
        yield "drag share", share.id, _BY_SHARE.get(share.id, ()), ""
    for row in reference.drag.rules:
        yield "drag", row.name or row.id, _BY_DRAG_RULE.get(row.id, ()), ""
    for row in reference.filling.rules:
        yield "filling", row.name or row.id, _BY_FILLING.get(row.id, ()), ""
    for limit in reference.spinning_limits:
        yield "spinning limit", f"size {limit.label}", ("line-too-stiff-for-spinning-reel",), ""
    for entry, names in _BY_CASTING.items():
        yield "casting limit", entry, names, ""


def coverage_text(reference: Reference) -> str:
    """Return the coverage as a table, with a count at the end."""
    rows = coverage(reference)
    lines = []
    for row in rows:
        by = ", ".join([*row.rules, *(f"by hand: {name}" for name in row.checks)])
        lines.append(f"{row.kind:14}  {row.entry:58}  {by or 'left out: ' + row.left_out}")
    by_rule = sum(bool(row.rules) for row in rows)
    by_hand = sum(bool(row.checks) and not row.rules for row in rows)
    out = len(rows) - by_rule - by_hand
    lines.append(
        f"{len(rows)} entries: {by_rule} by rules, {by_hand} by hand alone, {out} left out with a reason"
    )
    return "\n".join(lines)
