"""The usual cautions that a rig raises; their words stand in the table, and they defer to local rules."""

from rigbuilder.reference.ranges import LBF_N, OZ_KG
from rigbuilder.reference.texts import Caution
from rigbuilder.reference.words import LineType
from rigbuilder.review.case import Case
from rigbuilder.review.concerns import Concerns, always, braided, drags, hard_bottom, has_sinker, trebles

_HEAVY_KG = 1.5 * OZ_KG  # common practice: from an ounce and a half a lure that flies free is dangerous
_FIRM_N = 8 * LBF_N  # common practice: what a hand-tightened casting reel gives at
_WARM_C = 20.0  # common practice: from about there a long fight kills fish
_FINE_N = 6 * LBF_N


def _locked_braid(case: Case) -> bool:
    drag = case.rig.drag_n
    return case.is_braided() and drag is not None and drag > _FIRM_N


_CAUTIONS: tuple[tuple[str, Concerns], ...] = (
    ("hooks", always),
    ("recoil", lambda case: hard_bottom(case) or has_sinker(case) or _locked_braid(case)
     or case.rig.lure.total_kg >= _HEAVY_KG),
    ("braid", braided),
    ("power-lines", always),
    ("lightning", always),
    ("boat-and-bank", lambda case: case.rig.from_shore is False or trebles(case)),
    ("lead", lambda case: has_sinker(case) or drags(case) or case.is_type(LineType.LEAD_CORE)),
    ("discarded-line", always),
    ("local-rules", always),
    ("fish-welfare", lambda case: (case.rig.water.temperature_c or 0.0) > _WARM_C
     or case.weakest_label_n < _FINE_N),
)  # fmt: skip
"""Which caution of the table concerns which rigs; the others belong to other pages."""


def cautions_for(case: Case) -> tuple[Caution, ...]:
    """Return the usual cautions that a rig raises."""
    return tuple(case.reference.safety[name] for name, concerns in _CAUTIONS if concerns(case))
