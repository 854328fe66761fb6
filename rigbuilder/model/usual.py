"""The usual rig of each technique: the complete card that practice would put on first."""

import json
from functools import cache
from typing import Any

from rigbuilder import resources
from rigbuilder.model.document import Document


@cache
def _text(technique: str) -> str:
    return resources.read_text("usual", f"{technique}.rigcard")


def usual_document(technique: str) -> Document:
    """Return a fresh copy of the usual rig's card for a technique id."""
    document: dict[str, Any] = json.loads(_text(technique))
    return document
