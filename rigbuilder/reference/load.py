"""The whole reference as one frozen value, parsed once from ``resources/*.toml``."""

import difflib
import tomllib
from collections.abc import Iterable, Mapping
from functools import cache
from types import MappingProxyType
from typing import Any, TypeVar

from pydantic import BaseModel, ConfigDict, ValidationError

from rigbuilder import resources
from rigbuilder.reference.adjusters import Adjuster, Ladders
from rigbuilder.reference.care import DragTable, FillingTable, Respool, WaterTable
from rigbuilder.reference.knots import Knot
from rigbuilder.reference.lines import LineTypeData
from rigbuilder.reference.tackle import (
    CastingLimits,
    HookData,
    LureData,
    ReelData,
    RodTable,
    SpinningLimit,
    WorkingLine,
)
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.texts import Caution, Disagreement, Mistake, Term
from rigbuilder.reference.words import Action, HookClass, LineType, Rank, ReelKind
from rigbuilder.sources import Kind, Source

_RowT = TypeVar("_RowT", Technique, Knot)


class UnknownName(LookupError):  # noqa: N818 - named for what happened
    """A technique or knot that the reference does not know, with the nearest known names."""

    def __init__(self, what: str, found: str, known: Iterable[str]) -> None:
        self.what = what
        self.found = found
        self.nearest = tuple(
            difflib.get_close_matches(found.casefold().strip(), list(known), n=3, cutoff=0.5)
        )
        hint = " or ".join(f"“{name}”" for name in self.nearest)
        ask = f"did you mean {hint}?" if hint else f"see the list of {what}s."
        super().__init__(f"there is no {what} called “{found}”; {ask}")


class DamagedReference(Exception):  # noqa: N818 - named for what happened
    """A shipped table that cannot be read: the installation is damaged or an edit went wrong."""


class Reference(BaseModel):
    """Everything that ships as data. Mappings are keyed by id (techniques), name (knots) or enum."""

    model_config = ConfigDict(frozen=True, extra="forbid", arbitrary_types_allowed=True)

    techniques: Mapping[str, Technique]
    knots: Mapping[str, Knot]
    line_types: Mapping[LineType, LineTypeData]
    adjusters: tuple[Adjuster, ...]
    ladders: Ladders
    spinning_limits: tuple[SpinningLimit, ...]
    casting_limits: CastingLimits
    reels: tuple[ReelData, ...]
    working_line: Mapping[str, WorkingLine]
    rods: RodTable
    lures: Mapping[str, LureData]
    hooks: Mapping[HookClass, HookData]
    water: WaterTable
    drag: DragTable
    filling: FillingTable
    respool: Mapping[str, Respool]
    mistakes: Mapping[str, Mistake]
    disagreements: Mapping[str, Disagreement]
    glossary: Mapping[str, Term]
    safety: Mapping[str, Caution]
    citations: Mapping[str, Source]

    def technique(self, name: str) -> Technique:
        """Return a technique by id, name or alias, whatever the case.

        Raises:
            UnknownName: with the nearest known names.
        """
        return _named("technique", name, self.techniques, {t.id: t.names for t in self.techniques.values()})

    def knot(self, name: str) -> Knot:
        """Return a knot by name or alias, whatever the case.

        Raises:
            UnknownName: with the nearest known names.
        """
        return _named("knot", name, self.knots, {k.name: k.names for k in self.knots.values()})

    def spinning_limit(self, size: float) -> SpinningLimit:
        """Return the limit row for a spinning reel of this size number (the nearest row's)."""
        return min(self.spinning_limits, key=lambda row: abs(row.size.clamp(size) - size))

    def reel(self, kind: ReelKind, size: float) -> ReelData:
        """Return the typical data for a reel of this kind and size number (the nearest row's)."""
        rows = [row for row in self.reels if row.reel is kind]
        return min(rows, key=lambda row: abs(row.numbers.clamp(size) - size))

    def lure(self, technique: Technique) -> LureData:
        """Return the lure data for a technique's class of lure."""
        return self.lures[technique.lure_class]


def _named(what: str, name: str, rows: Mapping[str, _RowT], names: Mapping[str, tuple[str, ...]]) -> _RowT:
    asked = " ".join(name.casefold().split())
    known = {key.casefold(): key for key in names}
    known |= {call.casefold(): key for key in names for call in names[key]}
    if asked not in known:
        raise UnknownName(what, name, known)
    return rows[known[asked]]


def _table(name: str) -> dict[str, Any]:
    try:
        return tomllib.loads(resources.read_text(name))
    except tomllib.TOMLDecodeError as error:
        raise DamagedReference(
            f"{resources.path(name)} is not valid TOML: {error}. Install it again."
        ) from error


def citations() -> Mapping[str, Source]:
    """Return the published sources by id."""
    return {
        key: Source(Kind.PUBLISHED, row["text"], row.get("where", ""))
        for key, row in _table("sources.toml").items()
    }


def _techniques(table: dict[str, Any]) -> dict[str, Any]:
    """Give every technique a row for every line type, with the default reason where it has none."""
    defaults: dict[str, str] = table["default_reasons"]
    for technique in table["techniques"]:
        lines: dict[str, Any] = technique["lines"]
        for kind in LineType:
            line = lines.setdefault(kind, {"rank": Rank.NEVER, "derived": True})
            line["derived_default"] = line.pop("derived", False)
            fallback = defaults.get(
                f"{kind}, {line['rank']}" if "test_lb" not in line else kind, defaults.get(kind)
            )
            line.setdefault("reason", fallback)
    return {technique["id"]: technique for technique in table["techniques"]}


def _rods(table: dict[str, Any]) -> dict[str, Any]:
    stiffness: dict[str, Any] = table["stiffness"]
    factors = {action: stiffness.pop(action) for action in Action}
    return {**stiffness, "action_factor": factors, "powers": table["powers"]}


def _by(key: str, rows: list[dict[str, Any]]) -> dict[str, dict[str, Any]]:
    return {row[key]: row for row in rows}


def _raw() -> dict[str, Any]:
    reels, lures = _table("reels.toml"), _table("lures.toml")
    return {
        "techniques": _techniques(_table("techniques.toml")),
        "knots": _by("name", _table("knots.toml")["knots"]),
        "line_types": {kind: {**row, "type": kind} for kind, row in _table("lines.toml").items()},
        "adjusters": _table("adjusters.toml")["adjusters"],
        "ladders": _table("ladders.toml")["ladders"],
        "spinning_limits": reels["spinning_limits"],
        "casting_limits": reels["casting_limits"],
        "reels": reels["reels"],
        "working_line": _by("id", reels["working_line"]),
        "rods": _rods(_table("rods.toml")),
        "lures": _by("name", lures["lures"]),
        "hooks": _by("hook_class", lures["hooks"]),
        "water": _table("water.toml"),
        "drag": _table("drag.toml"),
        "filling": _table("filling.toml"),
        "respool": _by("line", _table("respool.toml")["respool"]),
        "mistakes": _by("id", _table("mistakes.toml")["mistakes"]),
        "disagreements": _by("id", _table("disagreements.toml")["disagreements"]),
        "glossary": _by("term", _table("glossary.toml")["glossary"]),
        "safety": _by("id", _table("safety.toml")["safety"]),
    }


@cache
def load() -> Reference:
    """Return the shipped reference; it is read once and then shared.

    Raises:
        DamagedReference: if a shipped table cannot be read; the message names table and place.
    """
    cited = citations()
    try:
        found = Reference.model_validate({**_raw(), "citations": cited}, context={"citations": cited})
    except ValidationError as error:
        first = error.errors()[0]
        place = " / ".join(str(part) for part in first["loc"])
        raise DamagedReference(f"the shipped tables are damaged at {place}: {first['msg']}") from error
    return found.model_copy(update={name: _frozen(getattr(found, name)) for name in Reference.model_fields})


def _frozen(value: Any) -> Any:
    return MappingProxyType(value) if isinstance(value, dict) else value
