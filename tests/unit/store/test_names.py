import unicodedata

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rigbuilder.store.names import LONGEST_SLUG, beside, clash_key, file_name, short_id, slug

RESERVED = {
    "con",
    "prn",
    "aux",
    "nul",
    *(f"{port}{digit}" for port in ("com", "lpt") for digit in "0123456789¹²³"),
}


@pytest.mark.parametrize(
    ("title", "expected"),
    [
        ("Pad frog, rod 3", "pad-frog-rod-3"),
        ("Élise’s über-rod", "élise-s-über-rod"),
        ("e\u0301lan", "\u00e9lan"),
        ("カエル 3", "カエル-3"),
        ("صنارة", "صنارة"),
        ("", "card"),
        ("...", "card"),
        ("🎣🐟", "card"),
        ("CON", "card-con"),
        ("com1", "card-com1"),
        ("LPT²", "card-lpt²"),
        ("con.rigcard", "con-rigcard"),
        ("../../etc/passwd", "etc-passwd"),
        ("C:\\temp\\x", "c-temp-x"),
        ("~root", "root"),
        ("%2e%2e%2f", "2e-2e-2f"),
        ("a\0b\nc\td", "a-b-c-d"),
        ("tail \u202egpj.exe", "tail-gpj-exe"),
        ("dots. ", "dots"),
        ("\u0301mark first", "mark-first"),
        ("-rf *", "rf"),
    ],
)
def test_slug(title, expected) -> None:
    assert slug(title) == expected


@given(st.text(max_size=400))
@settings(max_examples=200, deadline=None)
def test_any_title_gives_a_safe_name(title) -> None:
    name = file_name(title, "6f0c2d1e-0000")
    assert 0 < len(slug(title).encode()) <= LONGEST_SLUG + len("card-")
    assert len(name.encode()) < 120
    assert name.endswith("-6f0c2d.rigcard")
    stem = name.removesuffix(".rigcard")
    assert not stem.startswith("-")
    assert stem.partition(".")[0] not in RESERVED
    assert slug(title) not in RESERVED
    assert not set('/\\<>:"|?*.') & set(stem)
    assert all(unicodedata.category(letter)[0] in "LNM" or letter == "-" for letter in stem)
    assert unicodedata.is_normalized("NFC", name)
    assert slug(slug(title)) == slug(title)


@given(st.lists(st.text(max_size=12), max_size=12))
@settings(max_examples=100, deadline=None)
def test_names_never_clash_on_any_file_system(titles) -> None:
    taken: list[str] = []
    for title in titles:
        taken.append(file_name(title, "6f0c2d", taken))
    assert len({clash_key(name) for name in taken}) == len(titles)


def test_names_that_some_system_takes_for_one() -> None:
    for one, other in [("Frog", "fROG"), ("\u00e9lan", "E\u0301LAN"), ("straße", "STRASSE"), ("ﬁn", "FIN")]:
        assert clash_key(one) == clash_key(other)
    assert clash_key("frog-1") != clash_key("frog-2")


def test_short_identity() -> None:
    assert short_id("6F0C2D1E-0000") == "6f0c2d"
    assert len(short_id("../..")) == 6
    assert short_id("") != short_id("x")


def test_a_name_beside_another() -> None:
    assert beside("frog.rigcard", "mine", []) == "frog-mine.rigcard"
    assert beside("frog.rigcard", "mine", ["FROG-MINE.rigcard"]) == "frog-mine-2.rigcard"
    assert len(beside("é" * 120 + ".rigcard", "mine", []).encode()) <= 220
