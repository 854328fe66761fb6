"""Every rule speaks on its wrong rigs and is silent on its right ones; its remedies do what they say."""

import pytest

from rigbuilder.model.document import put_all
from rigbuilder.review.core import Example, Rule, Safety, Severity
from rigbuilder.review.proof import proven
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import UnitSystem
from tests.rules.examples import all_examples, document_of, example_id, reviewed


@pytest.mark.parametrize(("rule", "example"), all_examples("wrong"), ids=example_id)
def test_wrong_rig_makes_its_rule_speak(rule: Rule, example: Example) -> None:
    _, report = reviewed(document_of(example))
    assert rule.name in [finding.rule.name for finding in report.findings]


@pytest.mark.parametrize(("rule", "example"), all_examples("right"), ids=example_id)
def test_right_rig_keeps_its_rule_silent(rule: Rule, example: Example) -> None:
    _, report = reviewed(document_of(example))
    assert rule.name not in [finding.rule.name for finding in report.findings]


@pytest.mark.parametrize(("rule", "example"), all_examples("right"), ids=example_id)
def test_right_rig_is_free_of_faults_and_risks(rule: Rule, example: Example) -> None:
    _, report = reviewed(document_of(example))
    grave = [(found.rule.name, found.headline(Speaker())) for found in report.findings if found.severity >= 2]
    assert not grave


@pytest.mark.parametrize(("rule", "example"), all_examples("wrong"), ids=example_id)
def test_every_remedy_silences_its_reason_and_settles(rule: Rule, example: Example) -> None:
    document = document_of(example)
    reading, report = reviewed(document)
    finding = next(found for found in report.findings if found.rule is rule)
    remedies = proven(document, report, finding)
    assert remedies or not rule.mends, "a rule with mends offers none for its own wrong rig"
    assert len({remedy.say for remedy in remedies}) == len(remedies), "two remedies read the same"
    for remedy in remedies:
        if remedy.safety is Safety.ADVICE:
            continue
        changed, after = reviewed(put_all(document, remedy.set))
        assert changed.rig != reading.rig
        names = {found.rule.name: found.severity for found in after.findings}
        assert rule.name not in names
        before = {found.rule.name: found.severity for found in report.findings}
        worse = [n for n, s in names.items() if s >= finding.severity and s > before.get(n, Severity.RIGHT)]
        assert not worse


def test_names_are_unique_and_what_is_replaced_exists() -> None:
    names = [rule.name for rule in RULES]
    assert len(names) == len(set(names))
    for rule in RULES:
        assert set(rule.replaces) <= set(names), rule.name
        assert rule.wrong, rule.name
        assert rule.right, rule.name


@pytest.mark.parametrize("system", list(UnitSystem))
@pytest.mark.parametrize(("rule", "example"), all_examples("wrong"), ids=example_id)
def test_message_convention(rule: Rule, example: Example, system: UnitSystem) -> None:
    """A headline is short, plain, without full stop or blame; the why is whole sentences."""
    _, report = reviewed(document_of(example))
    speaker = Speaker(system)
    for finding in report.findings:
        headline, why = finding.headline(speaker), finding.why(speaker)
        assert 8 <= len(headline) <= 90, headline
        assert not headline.endswith("."), headline
        assert headline[0].islower() or not headline[0].isalpha(), headline
        assert why.endswith("."), why
        assert "you" not in why.lower().split(), why
        assert finding.sources
