from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rigbuilder.store.listing import Entry
from rigbuilder.store.rows import Row, Sorting, fold, natural, row_of, sort_rows
from rigbuilder.store.search import parse_query, search


def row(name: str, number: int, **document) -> Row:
    entry = Entry(Path(f"/cards/{number}.rigcard"), None, {"name": name, **document})
    plain = row_of(entry, (1, number, 1, number))
    return Row(**{field: getattr(plain, field) for field in Row.__slots__} | {"sha256": str(number)})


ROWS = {
    card.file_name: card
    for card in [
        row(
            "Pad frog, rod 10",
            1,
            main={"type": "braid", "test": "50 lb"},
            tags=["Larkmere"],
            lure={"technique": "hollow-body frog"},
        ),
        row(
            "Élan jig, rod 2",
            2,
            main={"type": "fluorocarbon", "test": "16 lb"},
            tags=["loan", "Łódź"],
            lure={"technique": "flipping jig"},
            notes="Retie after every fish",
        ),
        row(
            "Strasse",
            3,
            main={"type": "nylon", "test": "6 lb"},
            leader={"type": "fluorocarbon", "test": "8 lb"},
        ),
        row("Lead-core troll", 4, main={"type": "lead-core", "test": "18 lb"}, notes="ｗｉｄｅ"),
    ]
}
VERDICTS = {"1": "fault", "2": "right"}


@pytest.mark.parametrize(
    ("query", "numbers"),
    [
        ("", "1234"),
        ("   ", "1234"),
        ("frog", "1"),
        ("FROG rod", "1"),
        ("elan", "2"),
        ("ÉLAN", "2"),
        ("lodz", "2"),
        ("straße", "3"),
        ("wide", "4"),
        ("rod", "12"),
        ("every fish", "2"),
        ('"fish every"', ""),
        ('"after every fish"', "2"),
        ('"after every', "2"),
        ("line:braid", "1"),
        ("line:fluoro", "23"),
        ("line:fc", "23"),
        ("line:mono", "3"),
        ("line:pe", "1"),
        ("line:leadcore", "4"),
        ("line:6", "3"),
        ("line:16", "2"),
        ('line:"16 lb"', "2"),
        ("line:fc line:8", "3"),
        ("technique:frog", "1"),
        ("tag:lark", "1"),
        ("tag:mere", ""),
        ("tag:lodz", "2"),
        ("verdict:fault", "1"),
        ("verdict:r", "2"),
        ("-frog", "234"),
        ("-line:braid rod", "2"),
        ("-verdict:fault", "234"),
        ("line:", ""),
        ("colour:red", ""),
        ("-", "1234"),
        ("%n {0} <b>", ""),
    ],
)
def test_what_a_query_finds(query, numbers) -> None:
    assert "".join(found.sha256 for found in search(ROWS, query, VERDICTS)) == numbers


@given(st.text(max_size=40))
@settings(max_examples=200, deadline=None)
def test_any_text_is_a_query(text) -> None:
    for length in range(len(text) + 1):
        assert set(search(ROWS, text[:length], VERDICTS)) <= set(ROWS.values())


@given(st.text(max_size=30))
@settings(max_examples=150, deadline=None)
def test_folding_twice_changes_nothing(text) -> None:
    assert fold(fold(text)) == fold(text)
    assert fold(text.upper()) == fold(text) or not text.isascii()


def test_terms() -> None:
    terms = parse_query('line:Braid -"Pad Frog" x')
    assert [(term.field.value, term.text, term.wanted) for term in terms] == [
        ("line", "braid", True),
        ("", "pad frog", False),
        ("", "x", True),
    ]


@pytest.mark.parametrize(
    ("by", "descending", "numbers"),
    [
        (Sorting.NAME, False, "2413"),
        (Sorting.NAME, True, "3142"),
        (Sorting.CHANGED, True, "4321"),
        (Sorting.TECHNIQUE, False, "4321"),
        (Sorting.LINE, False, "1243"),
        (Sorting.VERDICT, False, "1243"),
    ],
)
def test_sorting(by, descending, numbers) -> None:
    ordered = sort_rows(list(ROWS.values()), by, VERDICTS, descending=descending)
    assert "".join(card.sha256 for card in ordered) == numbers


def test_numbers_are_sorted_by_value() -> None:
    assert sorted(["rod 10", "rod 2", "Rod 1", "10", ""], key=natural) == [
        "",
        "10",
        "Rod 1",
        "rod 2",
        "rod 10",
    ]
    assert natural("²") == [(1, 0, "2")] or natural("²") == [(0, 2, "")]


@pytest.mark.parametrize(
    "document",
    [
        {},
        {"name": None, "main": 7, "lure": [], "tags": "x"},
        {"name": ["x"], "main": {"type": 5}, "tags": [1, "a"]},
    ],
)
def test_half_finished_cards_have_rows(document) -> None:
    made = row_of(Entry(Path("/cards/my file.rigcard"), None, document), (1, 1, 1, 1))
    assert made.name == "my file"
    assert made.line == ""
