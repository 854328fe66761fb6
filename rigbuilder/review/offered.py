"""The tests that lines are sold in, as the line chart offers them."""

from collections.abc import Mapping

from rigbuilder.reference.words import LineType

_SINGLE_STRAND_LB = (2, 3, 4, 5, 6, 8, 10, 12, 14, 15, 16, 17, 18, 20, 22, 25, 30, 40)
_BRAID_LB = (4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 65, 80, 100)
_TESTS: Mapping[LineType, tuple[int, ...]] = {
    LineType.NYLON: _SINGLE_STRAND_LB,
    LineType.COPOLYMER: _SINGLE_STRAND_LB,
    LineType.FLUOROCARBON: _SINGLE_STRAND_LB,
    LineType.BRAID: _BRAID_LB,
    LineType.FUSED_BRAID: _BRAID_LB,
}


def tests_lb() -> Mapping[LineType, tuple[int, ...]]:
    """Return the tests [lb] per line type (common practice: what shops stock)."""
    return _TESTS
