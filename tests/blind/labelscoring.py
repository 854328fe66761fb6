"""Comparing what is understood of the blind labels with what they say, the way their README says."""

import json
import math
import sys
from pathlib import Path
from typing import Any

from rigbuilder.model.labels.understand import understand

LABELS = Path(__file__).parent / "labels.json"
_TOLERANCE = 0.002


def cases(path: Path = LABELS) -> list[dict[str, Any]]:
    """Return the blind labels of one file."""
    found: list[dict[str, Any]] = json.loads(path.read_text(encoding="utf-8"))
    return found


def differences(case: dict[str, Any]) -> list[str]:
    """Return in words what differs for one label; an empty list is a pass."""
    found = understand(case["kind"], case["text"]).as_dict()
    either = case.get("either") or []
    expected, understood = case.get("understood", {}), found["understood"]
    words = []
    for key, value in expected.items():
        others = [case["or_understood"][key]] if key in case.get("or_understood", {}) else []
        if not any(_same(key, wanted, understood.get(key)) for wanted in (value, *others)):
            words.append(f"{key}: expected {value}, found {understood.get(key)}")
    if either is not True:
        extra = set(understood) - set(expected) - set(either)
        words += [f"{key}: not expected, found {understood[key]}" for key in sorted(extra)]
        words += _missing(case, "not_understood", found["not_understood"])
    return words + _missing(case, "doubtful", [entry["text"] for entry in found["doubtful"]])


def _missing(case: dict[str, Any], key: str, found: list[str]) -> list[str]:
    flat = [_flat(text) for text in found]
    return [
        f"{key}: expected {text!r} among {found}"
        for text in case.get(key) or ()
        if not any(_flat(text) in one or one in _flat(text) for one in flat)
    ]


def _flat(text: str) -> str:
    return " ".join(text.casefold().split())


def _same(key: str, wanted: Any, found: Any) -> bool:
    if key == "capacity" and isinstance(wanted, list) and isinstance(found, list):
        return len(wanted) == len(found) and all(any(_entry(w, f) for f in found) for w in wanted)
    if isinstance(wanted, dict) and isinstance(found, dict):
        return wanted["unit"] == found["unit"] and _near(wanted["low"], found["low"]) and _near(
            wanted["high"], found["high"]
        )  # fmt: skip
    if isinstance(wanted, int | float) and isinstance(found, int | float):
        return _near(wanted, found)
    return bool(wanted == found)


def _entry(wanted: dict[str, Any], found: dict[str, Any]) -> bool:
    keys = ("test", "diameter", "size", "length")
    return all(
        (key in wanted) == (key in found) and (key not in wanted or _same(key, wanted[key], found[key]))
        for key in keys
    )


def _near(one: float, other: float) -> bool:
    return math.isclose(one, other, rel_tol=_TOLERANCE)


if __name__ == "__main__":
    labels = cases(*map(Path, sys.argv[1:2]))
    wrong = [(case, differences(case)) for case in labels if differences(case)]
    print(f"{len(labels)} labels, {len(wrong)} not as expected")
    for case, words in wrong:
        print(f"{case['kind']:5} {case['text']!r}\n    " + "\n    ".join(words))
