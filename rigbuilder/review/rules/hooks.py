"""Rules about the hook on the card: its size and its wire."""

import re
from functools import cache

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.hook_wire import bears_like, is_thick
from rigbuilder.review.mends import advice, usual_drag
from rigbuilder.review.rules.common import rests_on_leader
from rigbuilder.review.speak import an
from rigbuilder.review.tackle_mends import usual_hook
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_OUGHT = re.compile(r"(?<![\d/])(\d{1,2})/0")
_NUMBER = re.compile(r"(?<![\d/.,])#?\s?(\d{1,2})(?![\d/.,])")
_FAR = 3  # places along the list of sizes: makers differ by one or two
_DRIVES_THICK_N = 10 * LBF_N  # common practice: line under 10 lb does not drive thick wire


@cache
def hook_place(text: str) -> float | None:
    """Return where a hook's size stands on the list: #1 is 0, 1/0 is 1; small hooks go down by twos."""
    ought = _OUGHT.search(text)
    if ought:
        return float(ought[1])
    number = _NUMBER.search(text)
    return None if number is None else (1 - int(number[1])) / 2


@cache
def _places(sizes: tuple[str, ...]) -> tuple[float, float]:
    found = [place for size in sizes if (place := hook_place(size)) is not None]
    return min(found), max(found)


def _size(case: Case) -> Hit | None:
    text = case.rig.lure.hook
    place = hook_place(text) if text and case.rig.says("lure.hook") else None
    if place is None:
        return None
    sizes = case.reference.hooks[case.hook].usual_sizes
    smallest, biggest = _places(sizes)
    if smallest - _FAR < place < biggest + _FAR:
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: (
            f"hook {text} on {an(case.technique.name)}, usually fished with {sizes[0]} to {sizes[-1]}"
        ),
    )


def _wire(case: Case) -> Hit | None:
    text = case.rig.lure.hook
    worn = bears_like(case.hook, text)
    if worn is not case.hook:
        opens = case.reference.hooks[worn].opens_n
        drag = case.rig.drag_n
        return Hit(
            Severity.RISK if drag is not None and drag > opens.low else Severity.NOTE,
            headline=lambda say: (
                f"thin wire, which opens at {say.forces(opens)}, on {an(case.technique.name)}"
            ),
            numbers=lambda: (Number.of("pull that opens it", opens, Dimension.FORCE, "drag"),),
            rests_on=("drag",),
        )
    weakest = case.weakest_label_n
    if is_thick(text) and weakest < _DRIVES_THICK_N * 0.999:
        return Hit(
            Severity.RISK,
            headline=lambda say: f"thick wire behind {say.test(weakest)} line, too light to drive it",
            numbers=lambda: (Number.of("weakest label", weakest, Dimension.FORCE, "test"),),
            rests_on=rests_on_leader(case),
        )
    return None


RULES = (
    Rule(
        name="hook-size-unusual",
        part=Part.LURE,
        severity=Severity.NOTE,
        what="The hook is three sizes or more from those that the technique is fished with.",
        why="Too small a hook is buried in the bait and finds no mouth; too large a one "
        "weighs the lure down, kills its movement, and needs a harder strike than the line "
        "gives.",
        sources=(Source(Kind.MEMORY, "usual sizes by kind of hook; makers number them differently"),),
        check=_size,
        wrong=(Example("drop shot", {"lure.hook": "6/0"}),),
        right=(Example("drop shot", {"lure.hook": "#2"}),),
        mends=(usual_hook,),
    ),
    Rule(
        name="hook-wire-does-not-fit",
        part=Part.LURE,
        severity=Severity.RISK,
        what="Thin hook wire is fished where strong hooks are usual, or thick wire on line "
        "that cannot drive it.",
        why="Thin wire goes in with a small push and opens under a big one; thick wire holds "
        "anything, but only if rod and line can drive it past the barb.",
        sources=(
            Source(Kind.MEMORY, "what hooks bear is a trade impression: try them on a scale"),
            COMMON_PRACTICE,
        ),
        check=_wire,
        rests_on=("lure.hook",),
        wrong=(
            Example("flipping jig", {"lure.hook": "5/0 light wire"}),
            Example("drop shot", {"lure.hook": "1 heavy wire"}),
        ),
        right=(
            Example("flipping jig", {"lure.hook": "5/0 heavy wire"}),
            Example("drop shot", {"lure.hook": "1 light wire"}),
        ),
        mends=(usual_hook, usual_drag, advice("Choose the hook's wire to go with line and drag")),
        replaces=("drag-opens-hooks",),
    ),
)
