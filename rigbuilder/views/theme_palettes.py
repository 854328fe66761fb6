"""The four themes: paper by day, paper by lamplight, a sheet for print, a screen for the club.

The day theme is a field book: warm paper, brown-black ink, a blue pen, and the
red, ochre and green pencils of someone who corrects in the margin.
"""

from dataclasses import replace
from types import MappingProxyType

from rigbuilder.views.theme import Scene, Surfaces, Theme, Tone, TypeScale
from rigbuilder.views.theme_strokes import strokes

LIGHT = Theme(
    name="light",
    dark=False,
    surfaces=Surfaces(
        page="#F1EADC",
        card="#FBF8F1",
        field="#FFFDF8",
        sunken="#EAE2D2",
        hover="#E7E3D8",
        ink="#2B261F",
        soft="#5A5144",
        faint="#7A6F60",
        placeholder="#6B6153",
        edge="#827664",
        rule="#DDD3C0",
        accent="#274B7A",
        on_accent="#FFFDF8",
        accent_wash="#DFE5EA",
        focus="#1F57B0",
        selection="#274B7A",
        on_selection="#FFFDF8",
        visited="#5B3F77",
        tip="#2F2A23",
        on_tip="#F7F1E4",
    ),
    scene=Scene(
        sky="#F8F4EA",
        water_top="#DCE6E8",
        water_deep="#BCCED6",
        surface="#4A6C80",
        bottom="#CDBD9D",
        bottom_edge="#6F5D3C",
        clarity="#8FA6B0",
        weed="#4C6635",
        pad="#44663F",
        wood="#6B4A2C",
        rock="#625E58",
        dock="#6E5230",
        angler="#4B443A",
        rod="#2B261F",
        grip="#8A5F34",
        reel="#3D3A36",
        spool="#C9B48A",
        backing="#7A6237",
        knot="#8E2A12",
        lure="#A4471B",
        lure_accent="#F2D391",
        measure="#4A4438",
        chosen="#1F57B0",
        lens="#4A4438",
    ),
    severities=MappingProxyType(
        {
            "fault": Tone("#8A160D", "#F5DDD3", "#FFFDF8"),
            "risk": Tone("#985604", "#F9EACD", "#FFFDF8"),
            "note": Tone("#5063A2", "#E6E9F1", "#FFFDF8"),
            "right": Tone("#1F5444", "#DCE8DA", "#FFFDF8"),
        }
    ),
    grades=MappingProxyType(
        {
            "first choice": Tone("#1D4B42", "#23603F", "#FFFDF8"),
            "works": Tone("#4A7050", "#A3C9A4", "#1D4B42"),
            "poor": Tone("#895301", "#F7E0A0", "#7A4500"),
            "never": Tone("#521411", "#F6F0EA", "#8C5B56"),
        }
    ),
    strokes=strokes(
        {
            "present": "#1A4A9C",
            "usual": "#403C38",
            "candidate": "#7A280C",
            "other a": "#237762",
            "other b": "#836409",
            "other c": "#4A0F48",
            "nylon": "#6E3F0C",
            "copolymer": "#6D7219",
            "fluorocarbon": "#A3265E",
            "braid": "#0B4A3B",
            "fused braid": "#2F6F96",
            "hybrid": "#503B94",
            "lead-core": "#55504A",
            "wire": "#2B2722",
        }
    ),
)

DARK = Theme(
    name="dark",
    dark=True,
    surfaces=Surfaces(
        page="#1A1917",
        card="#24221F",
        field="#2D2A26",
        sunken="#201E1B",
        hover="#35322D",
        ink="#EFE8DA",
        soft="#C0B6A4",
        faint="#948A7A",
        placeholder="#A79D8C",
        edge="#8C8272",
        rule="#3C3832",
        accent="#9CBDEB",
        on_accent="#14202F",
        accent_wash="#2B3645",
        focus="#A9C9FF",
        selection="#9CBDEB",
        on_selection="#14202F",
        visited="#CBB2E8",
        tip="#F1EADC",
        on_tip="#2B261F",
    ),
    scene=Scene(
        sky="#26241F",
        water_top="#22313A",
        water_deep="#1A2730",
        surface="#8FB2C6",
        bottom="#3A3226",
        bottom_edge="#A8946C",
        clarity="#0F171C",
        weed="#8FAE72",
        pad="#86B07F",
        wood="#B98F66",
        rock="#A7A29A",
        dock="#B8976A",
        angler="#C0B6A4",
        rod="#EFE8DA",
        grip="#C99A66",
        reel="#D5CDBF",
        spool="#8A774E",
        backing="#CBB380",
        knot="#F0A08A",
        lure="#E8915F",
        lure_accent="#5A3A1C",
        measure="#CFC6B6",
        chosen="#A9C9FF",
        lens="#CFC6B6",
    ),
    severities=MappingProxyType(
        {
            "fault": Tone("#F08573", "#43282A", "#2A0F0A"),
            "risk": Tone("#FFD469", "#40361F", "#2E2200"),
            "note": Tone("#93A9DA", "#2A3040", "#101828"),
            "right": Tone("#93DDBE", "#233A31", "#08261A"),
        }
    ),
    grades=MappingProxyType(
        {
            "first choice": Tone("#A4F2CD", "#8FD6B6", "#0B2A1D"),
            "works": Tone("#8AAEA2", "#2F5744", "#BDEBD6"),
            "poor": Tone("#F4D561", "#6E5519", "#FFE3A0"),
            "never": Tone("#DA7763", "#2B2825", "#AB8880"),
        }
    ),
    strokes=strokes(
        {
            "present": "#A3CBFE",
            "usual": "#FCE9D1",
            "candidate": "#B8897A",
            "other a": "#52C0A8",
            "other b": "#DEB359",
            "other c": "#E361CA",
            "nylon": "#C99A4A",
            "copolymer": "#D6E188",
            "fluorocarbon": "#F98EC0",
            "braid": "#6FB592",
            "fused braid": "#74DDF8",
            "hybrid": "#A98AF3",
            "lead-core": "#A8A096",
            "wire": "#EDE6D8",
        }
    ),
)

# Ink on white: nothing is filled that a pencil would not fill.
PRINT = replace(
    LIGHT,
    name="print",
    surfaces=replace(
        LIGHT.surfaces,
        page="#FFFFFF",
        card="#FFFFFF",
        field="#FFFFFF",
        sunken="#F7F7F5",
        hover="#FFFFFF",
        ink="#161412",
        soft="#413C35",
        rule="#CFCBC4",
        accent_wash="#F1F3F5",
    ),
    scene=replace(
        LIGHT.scene,
        sky="#FFFFFF",
        water_top="#F5F8F9",
        water_deep="#EAF0F2",
        bottom="#EFEAE0",
        clarity="#C9D2D6",
    ),
    severities=MappingProxyType(
        {name: replace(tone, wash="#FFFFFF", on="#FFFFFF") for name, tone in LIGHT.severities.items()}
    ),
    grades=MappingProxyType(
        {
            "first choice": Tone("#1D4B42", "#2A5C44", "#FFFFFF"),
            "works": Tone("#4A7050", "#A3C9A4", "#1D4B42"),
            "poor": Tone("#895301", "#F7E0A0", "#7A4500"),
            "never": Tone("#521411", "#FFFFFF", "#8A5A55"),
        }
    ),
)

# For a screen at the far end of a club room: larger type, plain white, the strongest inks.
SHOW = replace(
    LIGHT,
    name="show",
    type=TypeScale(small=12.0, caption=14.0, body=16.0, strong=16.0, heading=22.0, title=30.0, figure=36.0),
    surfaces=replace(
        LIGHT.surfaces,
        page="#FFFFFF",
        card="#FFFFFF",
        field="#FFFFFF",
        ink="#14110D",
        soft="#3A342B",
        faint="#5E564A",
        placeholder="#5E564A",
        edge="#5E564A",
        rule="#BDB4A4",
        accent="#163B6B",
    ),
)

THEMES = (LIGHT, DARK, PRINT, SHOW)
