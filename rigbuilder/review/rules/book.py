"""The rule book: every rule there is. Registering a rule is one entry in its part's tuple."""

from rigbuilder.review.core import Rule
from rigbuilder.review.rules import lure

RULES: tuple[Rule, ...] = (*lure.RULES,)
