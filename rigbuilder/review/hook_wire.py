"""What a hook's words say of its wire, and which class of hook it bears like."""

import re

from rigbuilder.reference.words import HookClass

_THIN_WIRE = re.compile(r"\b(?:light|fine|thin)[\s-]*wire\b", re.IGNORECASE)
_THICK_WIRE = re.compile(r"\b(?:heavy|strong|thick)[\s-]*(?:wire|duty)\b", re.IGNORECASE)
_THIN = (HookClass.LIGHT_WIRE_SINGLE, HookClass.LIGHT_TREBLE)


def is_thick(text: str | None) -> bool:
    """Tell whether a hook's words say that its wire is thick."""
    return bool(text and _THICK_WIRE.search(text))


def bears_like(usual: HookClass, text: str | None) -> HookClass:
    """Return the class that a hook bears like: the technique's, unless its words call the wire thin.

    What thin wire bears is known, from memory, for two classes only. Other words, and the
    size alone, say too little about the wire to move the range of a class.
    """
    if usual in _THIN or not (text and _THIN_WIRE.search(text)):
        return usual
    return HookClass.LIGHT_TREBLE if usual.is_treble else HookClass.LIGHT_WIRE_SINGLE
