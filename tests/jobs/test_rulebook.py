"""A rule by its name, its family or what is nearest."""

from howto.jobs.rulebook import rulebook, rules_named


def test_a_rule_by_name_by_family_and_by_a_near_name() -> None:
    assert [rule.name for rule in rules_named("mowing.one-third").found] == ["mowing.one-third"]
    mowing = [rule.name for rule in rules_named("Mowing").found]
    assert mowing == [rule.name for rule in rulebook() if rule.name.startswith("mowing.")]
    near = rules_named("mowing.one-thrid")
    assert not near.found
    assert "mowing.one-third" in near.sentence
    assert "clipping.ruffle" in rules_named("ruffl").sentence
    assert "technique.reason" in rules_named("learner drops").sentence  # by what it says
    assert rules_named("zzz").sentence == "No rule is called `zzz`. Nearest: none. All: howto why"
