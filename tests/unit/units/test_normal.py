"""Typographic characters become plain ones and keep their place."""

import pytest

from rigbuilder.units.normal import normalise


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("7′3″", "7'3\""),
        ("7’3”", "7'3\""),
        ("½–1¼ oz", "1/2-1 1/4 oz"),
        ("１２ｌｂ", "12lb"),
        ("0.28㎜", "0.28mm"),
        ("12\u2009lb", "12 lb"),
        ("10～30g", "10~30g"),
        ("PE１．５", "PE1.5"),
        ("7：1", "7:1"),
        ("①", "①"),
        ("٣ kg", "3 kg"),
    ],
)
def test_plain_text(text: str, plain: str) -> None:
    assert normalise(text).text == plain


def test_spans_lead_back_to_the_source() -> None:
    source = "a 1¼ oz b"
    normal = normalise(source)
    start = normal.text.index("1 1/4")
    first, last = normal.span(start, start + len("1 1/4 oz"))
    assert source[first:last] == "1¼ oz"
