"""What every row of the shipped tables has: a frozen shape and a word on how it is known."""

from typing import Any

from pydantic import BaseModel, ConfigDict, ValidationInfo, model_validator

from rigbuilder.sources import Kind, Source


class Frozen(BaseModel):
    """A part of a row: frozen, and strict about names so that a typing slip in a table is found."""

    model_config = ConfigDict(frozen=True, extra="forbid", arbitrary_types_allowed=True)


class Row(Frozen):
    """A row that says how it is known; ``cite`` names entries of ``sources.toml``."""

    kind: Kind
    cite: tuple[str, ...] = ()
    sources: tuple[Source, ...] = ()

    @model_validator(mode="before")
    @classmethod
    def _resolve_citations(cls, found: Any, info: ValidationInfo) -> Any:
        if not isinstance(found, dict) or "sources" in found or found.get("kind") not in set(Kind):
            return found
        citations: dict[str, Source] = (info.context or {}).get("citations", {})
        unknown = [key for key in found.get("cite", ()) if key not in citations]
        if unknown:
            raise ValueError(f"cites {', '.join(unknown)}, which sources.toml does not list")
        cited = tuple(citations[key] for key in found.get("cite", ()))
        own = () if found["kind"] == Kind.PUBLISHED else (Source(Kind(found["kind"])),)
        return {**found, "sources": own + cited}

    @model_validator(mode="after")
    def _published_means_cited(self) -> "Row":
        if self.kind is Kind.PUBLISHED and not self.cite:
            raise ValueError("is marked published but cites no source")
        return self
