"""The rule book: every rule there is. Registering a rule is one entry in its part's tuple."""

from rigbuilder.review.core import Rule
from rigbuilder.review.rules import drag, knots, leader, line, lure, presentation, reel, strength

RULES: tuple[Rule, ...] = (
    *lure.RULES,
    *line.RULES,
    *strength.RULES,
    *leader.RULES,
    *knots.RULES,
    *reel.RULES,
    *drag.RULES,
    *presentation.RULES,
)
