"""``rigbuilder plan``: fill and cost of the reel, joints, where it breaks, what drag, what is due."""

import argparse
from datetime import date
from pathlib import Path

from rigbuilder.commands.exits import NO_FAULT
from rigbuilder.commands.house import practice
from rigbuilder.commands.plain import print_json, speaker
from rigbuilder.model.reading import read_rig
from rigbuilder.plans.data import plans_data
from rigbuilder.plans.printed import plans_text
from rigbuilder.review.engine import lay_out
from rigbuilder.store.cardfile import parse_card
from rigbuilder.store.codec import CARD_LIMITS
from rigbuilder.store.reading import read_file


def plan_card(options: argparse.Namespace) -> int:
    """Print the plans of a card as of today; return the exit code."""
    path = Path(options.card)
    reference, house = practice()
    data, _ = read_file(path, limit=CARD_LIMITS.size)
    reading = read_rig(parse_card(data, path), reference, file=str(path))
    assert reading.rig is not None  # noqa: S101 - read_rig raises otherwise
    (case,) = lay_out([reading.rig], reference, house)
    today = date.today()
    if options.json:
        print_json(plans_data(case, speaker(options), today=today))
    else:
        print(plans_text(case, speaker(options), today=today))
    return NO_FAULT
