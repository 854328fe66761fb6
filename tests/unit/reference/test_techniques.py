"""What holds for every technique. All of it is common practice."""

import pytest

from rigbuilder.reference.load import load
from rigbuilder.reference.techniques import LeaderPractice, Technique
from rigbuilder.reference.words import BraidDirect, LeaderNeed, LineType, Power, Rank, ReelKind

REFERENCE = load()
TECHNIQUES = list(REFERENCE.techniques.values())
each = pytest.mark.parametrize("technique", TECHNIQUES, ids=lambda technique: technique.id)


@each
def test_every_line_type_is_ranked_with_a_reason(technique: Technique) -> None:
    assert set(technique.lines) == set(LineType)
    for kind, line in technique.lines.items():
        assert line.reason[0].isupper(), kind
        assert line.reason.endswith("."), kind
        assert line.test_lb is None or line.rank is not Rank.NEVER, kind
        assert line.test_lb is not None or line.rank in (Rank.NEVER, Rank.POOR), kind
    assert any(line.rank is Rank.FIRST_CHOICE for line in technique.lines.values())


@each
def test_the_line_put_on_first_suits_the_technique(technique: Technique) -> None:
    base = technique.base
    line = technique.lines[base.main]
    assert line.rank in (Rank.FIRST_CHOICE, Rank.WORKS)
    assert line.test_lb is not None
    assert base.main_lb in line.test_lb
    if base.leader_lb is not None and technique.leader.test_lb is not None:
        assert base.leader_lb in technique.leader.test_lb
        assert base.leader in technique.leader.materials


@each
def test_names_in_a_technique_are_known(technique: Technique) -> None:
    assert technique.lure_class in REFERENCE.lures
    assert set(technique.disagreements) <= set(REFERENCE.disagreements)
    REFERENCE.knot(technique.base.lure_knot)
    if technique.base.leader_knot:
        REFERENCE.knot(technique.base.leader_knot)


@each
def test_no_fluorocarbon_main_line_on_the_surface(technique: Technique) -> None:
    if technique.is_surface:
        assert technique.lines[LineType.FLUOROCARBON].rank is Rank.NEVER


@each
def test_rod_and_reel_practice_is_whole(technique: Technique) -> None:
    powers = list(Power)
    assert technique.rod.powers == tuple(sorted(technique.rod.powers, key=powers.index))
    assert technique.reel.kinds
    assert set(technique.reel.sizes) <= set(technique.reel.kinds)
    assert technique.lure_kg.high > 0
    assert technique.drag.locked or technique.drag.drag_lb.high < 25


@each
def test_every_technique_tells_its_mistakes(technique: Technique) -> None:
    assert technique.mistakes
    for text in technique.mistakes:
        assert text[0].isupper()
        assert not text.endswith(".")


@pytest.mark.parametrize(
    ("need", "on_nylon", "on_braid"),
    [
        (LeaderNeed.USUAL_ON_BRAID, LeaderNeed.OPTIONAL, LeaderNeed.USUAL),
        (LeaderNeed.REQUIRED, LeaderNeed.REQUIRED, LeaderNeed.USUAL),
        (LeaderNeed.NONE, LeaderNeed.NONE, LeaderNeed.USUAL),
    ],
)
def test_leader_need_depends_on_the_main_line(
    need: LeaderNeed, on_nylon: LeaderNeed, on_braid: LeaderNeed
) -> None:
    practice = LeaderPractice(need=need, need_on_braid=LeaderNeed.USUAL)
    assert practice.need_on(LineType.NYLON) is on_nylon
    assert practice.need_on(LineType.FUSED_BRAID) is on_braid


# Check values of common practice, no source.
@pytest.mark.parametrize(
    ("name", "kind", "low", "high"),
    [
        ("flipping jig", LineType.FLUOROCARBON, 14, 25),
        ("suspending jerkbait", LineType.FLUOROCARBON, 10, 12),
        ("square-bill crankbait", LineType.FLUOROCARBON, 14, 14),
        ("spinnerbait", LineType.FLUOROCARBON, 18, 20),
        ("drop shot", LineType.FLUOROCARBON, 6, 8),
    ],
)
def test_ranges_hold_what_coaches_put_on(name: str, kind: LineType, low: float, high: float) -> None:
    test_lb = REFERENCE.technique(name).lines[kind].test_lb
    assert test_lb is not None
    assert low in test_lb
    assert high in test_lb


@pytest.mark.parametrize("name", ["drop shot", "shaky head", "suspending jerkbait", "pike spoon"])
def test_bare_braid_is_no_line_for_these(name: str) -> None:
    assert REFERENCE.technique(name).braid_direct is BraidDirect.NO


def test_frog_and_punching_want_braid_and_a_strong_rod() -> None:
    for name in ("frog", "punching"):
        technique = REFERENCE.technique(name)
        assert technique.drag.locked
        assert technique.reel.kinds == (ReelKind.BAITCASTING,)
        firsts = [kind for kind, line in technique.lines.items() if line.rank is Rank.FIRST_CHOICE]
        assert firsts == [LineType.BRAID]
