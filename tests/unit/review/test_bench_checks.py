"""Checks by hand come with the rigs that they concern, and cautions with those that raise them."""

from typing import Any

import pytest

from rigbuilder.model.document import put_all
from rigbuilder.model.reading import read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.bench_checks import CHECKS, checks_for
from rigbuilder.review.case import Case
from rigbuilder.review.cautions import cautions_for
from rigbuilder.review.engine import review


def case_of(technique: str, changes: dict[str, Any] | None = None) -> Case:
    """Lay out the usual rig of a technique with changes."""
    rig = read(put_all(usual_document(technique), changes or {}), load()).rig
    assert rig is not None
    return review(rig, load(), House.shipped()).case


@pytest.mark.parametrize(
    ("technique", "changes", "there", "absent"),
    [
        ("drop-shot", {}, "drop-shot-hook-up", "bead-on-the-sinker"),
        ("carolina", {}, "bead-on-the-sinker", "drop-shot-hook-up"),
        ("drop-shot", {}, "bail-by-hand", "stop-knot-small"),
        ("flip-jig", {}, "retie-after-stones", "bail-by-hand"),
        ("frog", {}, "braid-not-round-the-hand", "soak-and-condition"),
        ("flip-jig", {}, "soak-and-condition", "braid-not-round-the-hand"),
        ("float-rig", {}, "shot-pressed-gently", "weave-under-pull"),
        ("jerkbait", {}, "hanging-at-rest", "ring-not-bare-metal"),
        ("jigging-spoon", {}, "ring-not-bare-metal", "hanging-at-rest"),
        ("pike", {}, "bin-kinked-wire", "bead-on-the-sinker"),
        ("spinnerbait", {"water.air": "35 C"}, "spools-in-the-shade", "bin-kinked-wire"),
        ("drop-shot", {"leader.test": "15 lb"}, "hard-leader-line", "bin-kinked-wire"),
        ("drop-shot", {"leader.knot": "double uni"}, "joint-through-the-tip", "weave-under-pull"),
        ("drop-shot", {"leader.knot": "fg"}, "weave-under-pull", "crimp-and-twist"),
    ],
)
def test_checks_concern_their_rigs(technique: str, changes: dict[str, Any], there: str, absent: str) -> None:
    names = [check.name for check in checks_for(case_of(technique, changes))]
    assert there in names
    assert absent not in names


def test_every_check_concerns_some_usual_rig_or_a_hot_day() -> None:
    found = {check.name for name in load().techniques for check in checks_for(case_of(name))}
    assert {check.name for check in CHECKS} - found <= {"spools-in-the-shade", "crimp-and-twist"}


def test_checks_are_told_apart_and_read_as_sentences() -> None:
    assert len({check.name for check in CHECKS}) == len(CHECKS)
    for check in CHECKS:
        assert check.say[0].isupper()
        assert not check.say.endswith(".")
        assert check.why.endswith(".")


@pytest.mark.parametrize(
    ("technique", "changes", "there", "absent"),
    [
        ("frog", {}, "braid", "lead"),
        ("carolina", {}, "lead", "no-such-thing"),
        ("flip-jig", {}, "recoil", "braid"),
        ("glide", {}, "recoil", "braid"),
        ("popper", {"from": "shore"}, "boat-and-bank", "recoil"),
        ("spinnerbait", {"from": "shore"}, "lightning", "boat-and-bank"),
        ("spinnerbait", {"water.temperature": "25 C"}, "fish-welfare", "braid"),
    ],
)
def test_cautions_follow_the_rig(technique: str, changes: dict[str, Any], there: str, absent: str) -> None:
    reference = load()
    topics = [row.id for row in cautions_for(case_of(technique, changes))]
    assert there in topics
    assert absent not in topics
    assert set(topics) <= set(reference.safety)


def test_local_rules_power_lines_and_lightning_are_on_every_card() -> None:
    for technique in load().techniques:
        assert {"local-rules", "power-lines", "lightning"} <= {
            row.id for row in cautions_for(case_of(technique))
        }
