"""What each field is for, in a sentence or two: shown as a tip, read out, and opened with F1."""

from rigbuilder.model.fields import BY_PATH
from rigbuilder.model.values import expected_words

_LINE = {
    "type": "What the line is made of.",
    "test": "The strength printed on the spool. A size number such as PE 1.5 or No. 3 will do.",
    "diameter": "The thickness printed on the spool. Without it, it is reckoned from the test, as a range.",
    "convention": "What the maker means by the printed test: where it breaks at, above or below.",
    "condition": "Worn and kinked line breaks sooner than its label says.",
    "measured.diameter": "Your own reading with a micrometer; it wins over the label.",
    "measured.strength": "The pull at which the line broke on your own scale; it wins over the label.",
    "length": "How much of it there is.",
    "knot": "The knot that joins it to the main line.",
}

_HELP = {
    "lure.technique": "How the lure is fished. Type any part of the name to find it.",
    "lure.weight": "The weight on the lure's box, without trailer and sinker.",
    "presentation": "Where the lure works: on the surface, below it, lightly, or in heavy cover.",
    "lure.trailer": "The weight of what hangs on the hook behind it. Write none if there is none.",
    "lure.sinker": "The weight of lead or tungsten on the line. Write none if there is none.",
    "lure.hook": "Kind and size of the hook, as printed.",
    "lure.buoyancy": "What the lure does when you stop.",
    "lure.depth": "The depth at which it runs, as the box has it.",
    "rod.label": "Everything printed above the grip, in any order. What is understood of it shows below.",
    "rod.length": "The length of the rod.",
    "rod.power": "How much load it takes to bend the rod.",
    "rod.action": "Where the rod bends first: near the tip is fast.",
    "rod.line": "The line range printed on the rod.",
    "rod.line_for": "Whether that range is meant for nylon-like line or for braid.",
    "rod.lure": "The lure weights printed on the rod.",
    "reel.label": "Everything printed on reel and spool, in any order. What is understood of it shows below.",
    "reel.kind": "The kind of reel.",
    "reel.capacity": "How much line of which test or thickness the spool takes.",
    "reel.ratio": "How often the spool or rotor turns for one turn of the handle.",
    "reel.drag": "The most drag that the maker promises.",
    "reel.retrieve": "How much line comes in with one turn of the handle.",
    "reel.size": "The size number of the reel.",
    "reel.spool.arbor": "The bare spool's diameter, measured across. It makes the filling more certain.",
    "reel.spool.rim": "The diameter over the rims of the spool.",
    "reel.spool.width": "The width between the rims, inside.",
    "fill.lip_gap": "How far below the lip the line should stop.",
    "fill.main": "How much main line you want on the spool.",
    "fill.backing": "How much backing you want under it.",
    "knots.lure": "The knot at the lure. What is made for this place comes first in the list.",
    "knots.arbor": "The knot on the bare spool.",
    "hardware.swivel": "The strength printed for the swivel. Write none if there is none.",
    "hardware.snap": "The strength printed for the snap. Write none if there is none.",
    "drag": "What a scale shows while line runs, with the rod pointed at it.",
    "water.kind": "Fresh, brackish or salt.",
    "water.temperature": "Cold water makes fish slow and line stiff.",
    "water.clarity": "How deep you can still see a pale lure.",
    "water.depth": "How deep the water is where you fish.",
    "water.current": "How fast the water runs. Write none if it stands still.",
    "water.cover": "What stands in the water where the lure goes.",
    "water.pressure": "How often the fish here see lures.",
    "water.wind": "How hard it blows.",
    "water.air": "How warm the air is.",
    "from": "Where you stand.",
    "cast": "How far you usually cast.",
    "fish.weight": "The fish you expect.",
    "fish.teeth": "Whether fish that bite through line may take the lure.",
}


def help_for(path: str) -> str:
    """Return what a field is for."""
    group, _, rest = path.partition(".")
    if group in ("main", "backing", "leader"):
        return _LINE[rest]
    return _HELP[path]


def expects(path: str) -> str:
    """Return what may stand in a field, with an example."""
    return f"Expected: {expected_words(BY_PATH[path])}."
