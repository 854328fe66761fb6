"""The commands about the rule book: what it covers, and the middle way between two techniques."""

import json

import pytest

from rigbuilder.cli import main
from rigbuilder.reference.load import load
from rigbuilder.review.coverage import coverage


def test_coverage_is_printed_with_its_count(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rules", "--coverage"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert len(lines) == len(coverage(load())) + 1
    assert "left out" in lines[-1]


def test_coverage_as_data(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rules", "--coverage", "--json"]) == 0
    rows = json.loads(capsys.readouterr().out)
    assert {"kind", "entry", "rules", "checks", "left_out"} == set(rows[0])


def test_middle_way_between_two_techniques(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["techniques", "--between", "Flipping Jig", "texas rig"]) == 0
    out = capsys.readouterr().out
    assert out.startswith("One rod for a flipping jig and a Texas rig")
    assert "fluorocarbon" in out


def test_middle_way_as_data(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["techniques", "--between", "flipping jig", "flipping jig", "--json"]) == 0
    ways = json.loads(capsys.readouterr().out)
    (fluorocarbon,) = [way for way in ways if way["type"] == "fluorocarbon"]
    assert (min(fluorocarbon["tests_lb"]), max(fluorocarbon["tests_lb"])) == (16, 18)


def test_unknown_technique_is_refused_with_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["techniques", "--between", "flipping jug", "texas rig"]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert "flipping jig" in said.err
