"""Whatever a card says, the plans say something finite about it."""

import json
from datetime import date
from typing import Any

from hypothesis import example, given, settings
from hypothesis import strategies as st

from rigbuilder.model.document import put_all
from rigbuilder.model.reading import read
from rigbuilder.model.usual import usual_document
from rigbuilder.plans.data import plans_data
from rigbuilder.plans.fill import fill_plan
from rigbuilder.plans.printed import plans_text
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.engine import lay_out
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import UnitSystem

TODAY = date(2026, 8, 1)
LENGTHS = st.sampled_from(["1 m", "30 m", "80 m", "2000 m"])
SIZES = st.sampled_from(["9 mm", "12 mm", "30 mm", "60 mm", "150 mm"])
CHANGES: dict[str, st.SearchStrategy[Any]] = {
    "main.type": st.sampled_from(["nylon", "braid", "fluorocarbon", "lead-core", "hybrid"]),
    "main.test": st.sampled_from(["1 lb", "10 lb", "PE 1.5", "200 lb"]),
    "main.length": LENGTHS,
    "backing": st.sampled_from([None, {"type": "braid", "test": "2 lb"}, {"type": "nylon", "test": "20 lb"}]),
    "fill.main": LENGTHS,
    "fill.backing": LENGTHS,
    "fill.lip_gap": st.sampled_from(["0.5 mm", "2 mm", "9 mm", "40 mm"]),
    "reel.spool.arbor": SIZES,
    "reel.spool.rim": SIZES,
    "reel.spool.width": SIZES,
    "reel.capacity": st.sampled_from(
        [["0.10 mm/10 m"], ["PE 1/200 m", "0.4 mm/90 m"], ["50 lb/30 yd"], ["No. 3/100 m"]]
    ),
    "cast": st.sampled_from(["1 m", "20 m", "250 m"]),
    "leader": st.none(),
    "hardware.swivel": st.just("40 lb"),
}


@settings(max_examples=20)
@example(technique="blade-bait", changes={"main.test": "1 lb"})  # its chain may bear nothing at all
@given(
    technique=st.sampled_from(sorted(load().techniques)), changes=st.fixed_dictionaries({}, optional=CHANGES)
)
def test_plans_of_any_card(technique: str, changes: dict[str, Any]) -> None:
    rig = read(put_all(usual_document(technique), changes), load()).rig
    assert rig is not None
    (case,) = lay_out([rig], load(), House.shipped())
    json.dumps(plans_data(case, Speaker(), today=TODAY), allow_nan=False)
    assert plans_text(case, Speaker(UnitSystem.METRIC), today=TODAY)
    shown = fill_plan(case).feasible
    assert shown.lip_gap_m.typical >= -1e-9
    assert shown.main.length_m.typical >= 0.0
