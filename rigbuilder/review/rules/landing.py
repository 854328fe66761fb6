"""Rules about getting the fish out."""

from rigbuilder.mechanics.arrays import STANDARD_GRAVITY_M_S2
from rigbuilder.model.fields import Part
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_SWING = 1.5  # from memory: a fish that is swung and kicks pulls half as much again as it weighs


def _too_heavy_to_lift(case: Case) -> Hit | None:
    mass = case.rig.fish.mass_kg
    if not case.rig.from_shore or mass is None:
        return None
    chain = case.facts.chain_n
    load = _SWING * mass * STANDARD_GRAVITY_M_S2
    if load <= chain.low:
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: (
            f"a {say.fish(mass)} fish swung ashore pulls {say.force(load)}; the rig bears {say.forces(chain)}"
        ),
        numbers=lambda: (
            Number.of("pull of the swung fish", load, Dimension.FORCE, "drag"),
            Number.of("what the whole rig bears", chain, Dimension.FORCE, "drag"),
        ),
    )


RULES = (
    Rule(
        name="fish-too-heavy-to-lift",
        part=Part.WATER,
        severity=Severity.NOTE,
        what="From the shore, a fish of the size meant weighs more in the air than the rig surely bears.",
        why="In the water a fish weighs next to nothing; lifted up a bank it hangs with all "
        "its weight on the knot and on the thin end of the rod. Both are meant to bend "
        "towards a fish, not to carry it.",
        sources=(
            Source(Kind.COMPUTED, "weight of the fish, half as much again for its kicks"),
            COMMON_PRACTICE,
        ),
        check=_too_heavy_to_lift,
        wrong=(Example("drop shot", {"from": "shore", "fish.weight": "3 kg"}),),
        right=(Example("drop shot", {"from": "shore", "fish.weight": "0.5 kg"}),),
        mends=(advice("Have a net, or lead the fish to where a hand can take it"),),
        mistakes=("M39",),
    ),
)
