"""What only happens by hand: checks at the bench and on the water that no field of a card can show.

Each is printed with the cards that it concerns.
"""

from dataclasses import dataclass

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.words import LineType
from rigbuilder.review.case import Case
from rigbuilder.review.concerns import (
    Concerns,
    always,
    braided,
    crimped,
    fishes,
    hard_bottom,
    has_wire,
    hot,
    joined,
    spinning,
    stamped,
    woven,
)
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source

_HARD_LEADER_N = 14 * LBF_N  # common practice


@dataclass(frozen=True, slots=True)
class BenchCheck:
    """One thing to do or to look at by hand, and why; ``mistakes`` are those that it prevents."""

    name: str
    part: Part
    say: str
    why: str
    concerns: Concerns
    mistakes: tuple[str, ...] = ()
    source: Source = COMMON_PRACTICE


CHECKS: tuple[BenchCheck, ...] = (
    BenchCheck(
        "knots-drawn-down-wet", Part.KNOTS,
        "Wet each knot, draw it down slowly, seat it, then pull it by hand to twice the drag",
        "Rubbed dry, line heats and coils cross. A knot that has not moved under a hand's pull will not "
        "move under a fish. Use a glove or a tool, and turn the face away.",
        always, ("M02",),
    ),
    BenchCheck(
        "turns-of-the-knot", Part.KNOTS,
        "Count the turns: five to seven in light line, three or four in heavy, seven to twelve in braid",
        "Too few turns have nothing to hold with; too many jam before they are tight.",
        always, ("M04",),
    ),
    BenchCheck(
        "tag-ends", Part.KNOTS,
        "Trim the ends short, a little longer in braid, and never burn them",
        "Heat weakens what holds; long ends gather weed and catch in the rings.",
        always, ("M43",),
    ),
    BenchCheck(
        "thread-through-every-ring", Part.ROD,
        "Before tying, look along the rod: line through every ring and not round the tip",
        "A missed ring or a turn round the tip lets the line saw; on the first strike it or the tip breaks.",
        always, ("M36",),
    ),
    BenchCheck(
        "rings-whole", Part.ROD,
        "Draw cotton wool through each ring, and feel the tip for grooves",
        "A cracked insert shaves the line on every cast. Whatever catches wool is replaced first.",
        always, ("M37",),
    ),
    BenchCheck(
        "drag-by-scale", Part.DRAG,
        "Set the drag with a scale on the real leader and knot, rod pointed at it; read it while line runs",
        "By hand nobody hits the figure. Over the bent rod the same setting reads a tenth to a third more. A "
        "first jerk a third above the running pull says that the drag sticks. Check again after each fish.",
        always, ("M05",),
    ),
    BenchCheck(
        "last-yards", Part.MAIN,
        "Run the last yards through wet fingers with no pull on them, cut back what is rough, and tie again",
        "The end that meets stones and fish wears first, and the eye misses it.",
        always, ("M01",),
    ),
    BenchCheck(
        "overhand-in-the-line", Part.MAIN,
        "Cut out any plain knot that the wind has tied in the line",
        "With such a knot in it, line holds only about half as much.",
        lambda case: case.rig.water.wind is not None, (),
    ),
    BenchCheck(
        "wound-under-tension", Part.MAIN,
        "Wind braid on firmly through a wet cloth, about a tenth of its test",
        "Loose turns let the ones above bury between them; the next hard pull ends in a dead stop.",
        braided, ("M10",),
    ),
    BenchCheck(
        "filler-the-right-way", Part.REEL,
        "After a dozen turns let the line go slack: if it twists up, lay the filler on its other face",
        "A filler that runs off against the turn of the rotor screws a twist into every yard.",
        spinning, ("M11",),
    ),
    BenchCheck(
        "lip-gap", Part.REEL,
        "Stop filling one and a half to three millimetres below the lip",
        "Too full and loops fall off by the handful; too empty and the line climbs over an edge every cast.",
        always, ("M07", "M08"),
    ),
    BenchCheck(
        "bail-by-hand", Part.REEL,
        "Close the bail by hand after the cast and draw the line snug",
        "Closed with the handle, it leaves the first turn slack, and the next cast ends in a tangle.",
        spinning, ("M13",),
    ),
    BenchCheck(
        "no-winding-against-the-drag", Part.DRAG,
        "Hold the handle still while a fish takes line; gain it back by lifting the rod",
        "Each turn of the handle against a slipping drag puts one twist into the line.",
        spinning, ("M12",),
    ),
    BenchCheck(
        "soak-and-condition", Part.MAIN,
        "Wet stiff line before the first casts, or rub in a line conditioner",
        "Fluorocarbon keeps the shape of the spool; wet or treated it lies down and casts further.",
        lambda case: case.is_type(LineType.FLUOROCARBON), (),
    ),
    BenchCheck(
        "hard-leader-line", Part.LEADER,
        "For leaders of 14 lb and up take the stiffer, harder fluorocarbon",
        "It stands up to stones and teeth longer. In thinner leaders the soft kind lets the lure move.",
        lambda case: case.leader is not None and case.leader.type is LineType.FLUOROCARBON
        and (case.leader.test_n or 0.0) >= _HARD_LEADER_N, (),
    ),
    BenchCheck(
        "weave-under-pull", Part.KNOTS,
        "Weave the joint under steady tension and pull it until the weave darkens",
        "The braid holds by biting into the leader; woven loosely it slides off at the first fish.",
        woven, (),
    ),
    BenchCheck(
        "joint-through-the-tip", Part.KNOTS,
        "Pull the joint through the tip ring by hand, both ways, before the first cast",
        "What catches under your fingers chips the ring and costs yards when it flies.",
        joined, ("M29",),
    ),
    BenchCheck(
        "crimp-and-twist", Part.KNOTS,
        "Use the sleeve and tool made for the leader; rock the waste of twisted wire until it breaks off",
        "A sleeve of the wrong size slips, and a snipped end of wire cuts fingers.",
        crimped, (),
    ),
    BenchCheck(
        "bin-kinked-wire", Part.LEADER,
        "Throw a wire leader away at its first kink or broken strand",
        "Wire that has been bent sharply breaks there next, with a fish on it.",
        has_wire, (),
    ),
    BenchCheck(
        "bead-on-the-sinker", Part.LURE,
        "Put a bead between the sliding sinker and the knot, and look at the knot after each fish",
        "The sinker hammers the knot on every cast and every stone.",
        fishes("carolina", "slip-sinker", "catfish", "texas-open", "texas-cover", "punching"), ("M33",),
    ),
    BenchCheck(
        "drop-shot-hook-up", Part.KNOTS,
        "After tying, lead the end back down through the eye from the side of the point",
        "Then the hook stands out from the line, point up. The other way it hangs down and the bait spins.",
        fishes("drop-shot", "power-drop-shot"), ("M34",),
    ),
    BenchCheck(
        "shot-pressed-gently", Part.LURE,
        "Press soft shot on with thumb and finger, on the leader, never with the teeth",
        "A shot crushed on nicks the line, and lead belongs in no mouth.",
        fishes("split-shot", "float-rig", "bait-bottom"), ("M35",),
    ),
    BenchCheck(
        "stop-knot-small", Part.KNOTS,
        "Tie the stop knot small enough for the rings, leave short ends, and slide it wet",
        "A large one stops at the tip ring; a dry one frays the line that it slides on.",
        fishes("float-rig", "popping-cork"), (),
    ),
    BenchCheck(
        "ring-not-bare-metal", Part.LURE,
        "Put a split ring or a snap into a stamped hole before tying on",
        "Sheet metal has an edge that cuts the knot.",
        stamped, (),
    ),
    BenchCheck(
        "closed-eye-for-braid", Part.LURE,
        "Tie braid to a closed eye or to the doubled part of a split ring",
        "Thin braid finds the gap of an open eye and slides out of it.",
        lambda case: case.end.type.is_braided, (),
    ),
    BenchCheck(
        "hanging-at-rest", Part.LURE,
        "Look in a bucket, with the line tied on, how the lure hangs",
        "A gram decides whether it rises, hangs or sinks, and line and knot weigh something too.",
        lambda case: str(case.technique.rest) == "suspends", (),
    ),
    BenchCheck(
        "weigh-the-whole-lure", Part.LURE,
        "Weigh the lure with trailer, hooks and sinker on a kitchen scale",
        "The number on the head is the head alone; a trailer adds a quarter ounce and more.",
        lambda case: "jig" in case.technique.name or bool(case.rig.lure.trailer_kg), ("M40",),
    ),
    BenchCheck(
        "retie-after-stones", Part.KNOTS,
        "Round stones and timber cut back and tie again every hour, and after each good fish",
        "The first yard is what rubs; the rest of the line is as good as new.",
        hard_bottom, ("M01",),
    ),
    BenchCheck(
        "rod-at-the-fish", Part.ROD,
        "At the bank keep the tip in front of your head, and take the fish with a net or by hand",
        "Steeper than about 75 degrees only the thin tip bears the load, and it breaks.",
        always, ("M39",),
    ),
    BenchCheck(
        "snag-with-a-straight-rod", Part.ROD,
        "Free a snag with the rod pointed at it, the spool held, the face turned away: then walk backwards",
        "A bent rod and a stretched line throw hooks and lead at the eyes.",
        always, ("M38",),
    ),
    BenchCheck(
        "hooks-covered", Part.LURE,
        "Walk with hooks covered or in the keeper, butt of the rod first",
        "A swinging treble finds whoever stands nearest.",
        always, ("M46",),
    ),
    BenchCheck(
        "braid-not-round-the-hand", Part.MAIN,
        "Pull snagged braid with a stick or a peg, never wound round the hand",
        "Under load it cuts to the bone, through gloves as well.",
        braided, ("M42",),
    ),
    BenchCheck(
        "line-taken-home", Part.MAIN,
        "Take every cut end of line and every bit of lead home",
        "Birds and other animals tangle in line and do not get free; lead poisons them.",
        always, ("M47",),
    ),
    BenchCheck(
        "rules-of-the-water", Part.LURE,
        "Look up how many hooks, rods and barbs the water allows on the day",
        "Rules differ from water to water, and change.",
        always, ("M48",),
    ),
    BenchCheck(
        "spools-in-the-shade", Part.MAIN,
        "Keep spools covered in hot sun, and renew nylon sooner",
        "Heat and sun make nylon brittle.",
        hot, (),
    ),
    BenchCheck(
        "leaning-on-the-label", Part.MAIN,
        "Pull a piece of the line on a scale once, and write down what it bore",
        "Labels lie both ways: some lines hold far more than printed, some less.",
        lambda case: case.main.measured_strength_n is None, (),
        Source(Kind.PRACTICE, "a figure of one's own beats any label"),
    ),
)  # fmt: skip


def checks_for(case: Case) -> tuple[BenchCheck, ...]:
    """Return the checks that concern a rig, by part of the rig."""
    order = list(Part)
    found = [check for check in CHECKS if check.concerns(case)]
    return tuple(sorted(found, key=lambda check: order.index(check.part)))
