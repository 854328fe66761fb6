"""Making the rigs of a lesson: from a card as it is, or by spoiling a right rig."""

import uuid
from dataclasses import dataclass

from rigbuilder.lessons.check import RigCheck, check_rigs
from rigbuilder.lessons.document import LessonRig
from rigbuilder.model.document import Document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.review.core import Rule, Severity
from rigbuilder.review.many import review_documents
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.spoil import spoil

QUESTION = "Is anything wrong with this rig? If so, what, and why?"

_TRIES = 12  # seeds tried for a spoilt rig with nothing else to say about it
_FAMILY = uuid.UUID("3b0e4c6e-7a0b-4f35-9d0c-6d0a1f9f4b55")


@dataclass(frozen=True, slots=True)
class SpoiltRig:
    """A spoilt rig for a lesson, and the check that shows that exactly the wished rule speaks."""

    rig: LessonRig
    check: RigCheck
    changes: tuple[str, ...]


def from_card(card: Document, reference: Reference, house: House) -> LessonRig | None:
    """Return a rig that means whatever the review says of a card now; ``None`` if the card makes no rig."""
    _, found = review_documents([card], reference, house)[0]
    if found is None:
        return None
    return LessonRig(
        card=card, question=QUESTION, meant=tuple(finding.rule.name for finding in found.findings)
    )


def spoilt(
    technique: str, rule: str, seed: int, reference: Reference, house: House, *, name: str = ""
) -> SpoiltRig | None:
    """Return the usual rig of a technique spoilt so that ``rule`` is the only fault or risk.

    Always the same for the same seed. ``None`` where no change of the card does it.
    """
    best: SpoiltRig | None = None
    for step in range(_TRIES):
        found = spoil(technique, rule, seed + step * 1000, reference, house)
        if found is None:
            return None
        identity = str(uuid.uuid5(_FAMILY, f"{technique}/{rule}/{seed}"))
        title = name or _title(reference, technique, seed)
        card = found.document | {"id": identity, "name": title, "tags": ["larkmere", "lesson"]}
        rig = LessonRig(card=card, question=QUESTION, meant=(rule,))
        check = check_rigs([rig], reference, house)[0]
        made = SpoiltRig(rig, check, tuple(found.changes))
        if check.is_as_meant and not check.beside:
            return made
        if check.is_as_meant and best is None:
            best = made
    return best


def rules_for(technique: str, reference: Reference, house: House, seed: int) -> tuple[Rule, ...]:
    """Return the kinds of mistake that can be made on the usual rig of a technique."""
    return tuple(
        rule
        for rule in RULES
        if rule.severity >= Severity.RISK and spoil(technique, rule.name, seed, reference, house) is not None
    )


def _title(reference: Reference, technique: str, seed: int) -> str:
    return f"{reference.techniques[technique].title}, rod {1 + seed % 9}"
