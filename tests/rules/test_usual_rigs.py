"""The usual rig of every technique reviews without fault or risk."""

import pytest

from rigbuilder.model.usual import usual_document
from rigbuilder.reference.load import load
from rigbuilder.review.core import Severity
from rigbuilder.review.speak import Speaker
from tests.rules.examples import reviewed

TECHNIQUES = sorted(load().techniques)


def test_there_are_59_of_them() -> None:
    assert len(TECHNIQUES) == 59


@pytest.mark.parametrize("technique", TECHNIQUES)
def test_usual_rig_is_right(technique: str) -> None:
    _, report = reviewed(usual_document(technique))
    grave = [f.headline(Speaker()) for f in report.findings if f.severity >= Severity.RISK]
    assert not grave
