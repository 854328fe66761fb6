"""The JSON Schema of a card, made from the table of fields."""

from typing import Any

from rigbuilder.model.document import FORMAT, VERSION
from rigbuilder.model.fields import FIELDS, Field, Holds
from rigbuilder.model.lists import PINNABLE
from rigbuilder.model.values import expected_words
from rigbuilder.reference.words import LogEvent

Schema = dict[str, Any]

_PRICE: Schema = {
    "type": ["object", "null"],
    "properties": {
        "amount": {"type": "number", "minimum": 0},
        "currency": {"type": "string"},
        "length": {"type": "string", "description": "the length that the price buys, such as 200 yd"},
    },
    "required": ["amount", "length"],
}


def _field_schema(field: Field) -> Schema:
    text: Schema = {"type": ["string"] if field.required else ["string", "null"]}
    if field.holds is Holds.CHOICE:
        text["enum"] = [*field.choices] if field.required else [*field.choices, None]
    if field.holds is Holds.CAPACITY:
        text = {"type": ["array", "string", "null"], "items": {"type": "string"}}
    unit = f" Units: {', '.join(dict.fromkeys(field.units))}." if field.units[0] else ""
    return text | {"title": field.label, "description": f"{expected_words(field)}.{unit}"}


def _group() -> Schema:
    return {"type": ["object", "null"], "properties": {}, "additionalProperties": True}


def card_schema() -> Schema:
    """Return the JSON Schema (draft 2020-12) of a card as it is saved, with its texts as typed."""
    root: Schema = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Rig card",
        "type": "object",
        "properties": {
            "format": {"const": FORMAT},
            "version": {"const": VERSION},
            "id": {"type": "string"},
            "notes": {"type": "string"},
            "tags": {"type": "array", "items": {"type": "string"}},
        },
        "required": ["format", "version", "name", "lure", "rod", "main"],
        "additionalProperties": True,
    }
    for field in FIELDS:
        _place(root, field)
    for group in ("main", "leader", "backing"):
        root["properties"][group]["properties"]["price"] = _PRICE
    root["properties"]["fill"]["properties"] |= {
        "taped": {"type": ["boolean", "null"], "description": "whether tape on the spool grips the line"},
        "season_refills": {"type": ["number", "null"], "exclusiveMinimum": 0, "maximum": 100},
    }
    root["properties"] |= _lists()
    return root


def _place(root: Schema, field: Field) -> None:
    here = root
    *groups, key = field.path.split(".")
    for name in groups:
        here = here["properties"].setdefault(name, _group())
        if field.required:
            here["type"] = "object"
    here["properties"][key] = _field_schema(field)
    if field.required and groups:
        here.setdefault("required", []).append(key)


def _lists() -> Schema:
    silenced = {
        "type": "object",
        "properties": {"rule": {"type": "string"}, "why": {"type": "string", "minLength": 1}},
        "required": ["rule", "why"],
    }
    entry = {
        "type": "object",
        "properties": {
            "on": {"type": "string", "format": "date"},
            "what": {"enum": [str(event) for event in LogEvent]},
        },
        "required": ["on", "what"],
    }
    return {
        "silenced": {"type": "array", "items": silenced},
        "log": {"type": "array", "items": entry},
        "pinned": {"type": "array", "items": {"enum": list(PINNABLE)}},
    }
