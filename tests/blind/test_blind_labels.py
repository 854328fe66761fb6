"""The blind labels, and a second set written by hand: none may be read worse than before."""

import json
from pathlib import Path
from typing import Any

import pytest

from tests.blind.labelscoring import cases, differences

# Labels that stay otherwise than expected; each has its reason in changes.md, under "Labels".
ACCEPTED: frozenset[str] = frozenset()
SECOND: list[dict[str, Any]] = json.loads(
    (Path(__file__).parents[1] / "unit" / "model" / "labels" / "corpus_second.json").read_text(
        encoding="utf-8"
    )
)


def _name(case: dict[str, Any]) -> str:
    return f"{case['kind']}: {case['text']}"


@pytest.mark.parametrize("case", cases(), ids=_name)
def test_a_blind_label_is_read_as_its_author_meant(case: dict[str, Any]) -> None:
    words = differences(case)
    assert bool(words) == (case["text"] in ACCEPTED), words


@pytest.mark.parametrize("case", SECOND, ids=_name)
def test_a_label_of_the_second_set_is_read_as_meant(case: dict[str, Any]) -> None:
    assert differences(case) == []


def test_the_sets_are_whole_and_what_is_accepted_is_explained() -> None:
    changes = (Path(__file__).parent / "changes.md").read_text(encoding="utf-8")
    labels = changes.partition("## Labels")[2]
    assert len(cases()) == 354
    assert len(SECOND) >= 400
    assert all(text in labels for text in ACCEPTED)
