"""What the choosers of the form offer: techniques, knots by place, and the fixed word lists."""

from collections.abc import Mapping, Sequence

from rigbuilder.model.fields import BY_PATH, Holds
from rigbuilder.reference.knots import Knot
from rigbuilder.reference.load import Reference, UnknownName
from rigbuilder.reference.words import JointPlace

Options = Sequence[tuple[str, str]]

_PLACES: Mapping[str, frozenset[JointPlace]] = {
    "knots.lure": frozenset({JointPlace.TERMINAL, JointPlace.LOOP, JointPlace.WIRE}),
    "knots.arbor": frozenset({JointPlace.ARBOR}),
    "leader.knot": frozenset({JointPlace.LINE_TO_LEADER, JointPlace.LEADER_SECTIONS}),
    "backing.knot": frozenset({JointPlace.BACKING, JointPlace.LINE_TO_LEADER}),
}


def options(path: str, reference: Reference) -> Options:
    """Return the (value, text) pairs offered at ``path``, what is made for the place first."""
    field = BY_PATH[path]
    if field.holds is Holds.TECHNIQUE:
        return techniques(reference)
    if field.holds is Holds.KNOT:
        return _knots(_PLACES.get(path, frozenset()), reference)
    return [(choice, choice) for choice in field.choices]


def techniques(reference: Reference) -> Options:
    """Return every technique as (card name, title), by title."""
    rows = sorted(reference.techniques.values(), key=lambda row: row.title.casefold())
    return [(row.name, row.title) for row in rows]


def technique_ids(reference: Reference) -> Options:
    """Return every technique as (id, title), by title."""
    rows = sorted(reference.techniques.values(), key=lambda row: row.title.casefold())
    return [(row.id, row.title) for row in rows]


def option_of(path: str, text: str, reference: Reference) -> str:
    """Return the option that a card's text means, whatever its case or alias; empty if none."""
    field = BY_PATH[path]
    try:
        if field.holds is Holds.TECHNIQUE:
            return reference.technique(text).name
        if field.holds is Holds.KNOT:
            return reference.knot(text).name
    except UnknownName:
        return ""
    word = " ".join(text.split()).casefold()
    return next((choice for choice in field.choices if choice.casefold() == word), "")


def _knots(places: frozenset[JointPlace], reference: Reference) -> Options:
    def fits(knot: Knot) -> bool:
        return bool(places & set(knot.places))

    rows = sorted(reference.knots.values(), key=lambda knot: (not fits(knot), knot.name))
    return [(knot.name, knot.name if fits(knot) else f"{knot.name} · for {_use(knot)}") for knot in rows]


def _use(knot: Knot) -> str:
    return str(knot.places[0])
