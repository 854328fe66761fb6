"""The rule book: every rule there is. Registering a rule is one entry in its part's tuple."""

from rigbuilder.review.core import Rule
from rigbuilder.review.rules import (
    drag,
    give,
    hardware,
    joints,
    knots,
    leader,
    leaderkind,
    lure,
    material,
    presentation,
    reel,
    rodlabel,
    spool,
    strength,
    wear,
)

_PARTS = (lure, material, wear, strength, rodlabel, give, leader, leaderkind, knots, joints, hardware, reel,
          spool, drag, presentation)  # fmt: skip

RULES: tuple[Rule, ...] = tuple(rule for part in _PARTS for rule in part.RULES)
