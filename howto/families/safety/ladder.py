"""How the ladder of a technique stands: its rule, its foot, its angle, and its rails."""

from math import cos, radians, sqrt
from typing import NamedTuple

from howto.families.safety import height
from howto.families.safety import references as by
from howto.families.safety.countries import LADDERS, Ladder, LadderRule
from howto.families.safety.measures import SafetyMeasures
from howto.model.family import Limit
from howto.quantities.amounts import Name, Word, Words

ANGLE = Limit(low=74, high=77, unit="°", reference=by.ANGLES)


class LadderStance(NamedTuple):
    """A ladder set by a rule: how high it touches, how far out its foot is, how long it is to there, in mm."""

    rule: LadderRule
    contact_mm: float
    foot_mm: float
    length_mm: float

    @property
    def angle_deg(self) -> float:
        """Its angle from the ground."""
        return height.angle_by_height(self.foot_mm, self.contact_mm)


def country_of(m: SafetyMeasures) -> Words:
    """Return the country as it is printed."""
    return str(Word("no country named") if m.place == "elsewhere" else Name(m.place))


def law_of(m: SafetyMeasures) -> Ladder:
    """Return what the author's country asks of a ladder."""
    return LADDERS[m.place]


def rule_of(m: SafetyMeasures) -> LadderRule:
    """Return the rule the foot is set by: the author's, else the country's."""
    return m.ladder_rule or law_of(m).rule


def stance(m: SafetyMeasures, rule: LadderRule | None = None) -> LadderStance | None:
    """Return how the ladder should stand, from its top contact or else its length; None where neither is known."""
    chosen = rule or rule_of(m)
    contact, length = contact_of(m), m.working_length_mm
    if contact is not None:
        foot = _foot_from_contact(chosen, contact)
    elif length is not None:
        foot = _foot_from_length(chosen, length)
        contact = height.contact_of(length, foot)
    else:
        return None
    return LadderStance(chosen, contact, foot, height.length_to(contact, foot))


def contact_of(m: SafetyMeasures) -> float | None:
    """Return how high the ladder touches: as written, or at the landing it leans on where no length is written."""
    if m.top_contact_mm is not None or m.working_length_mm is not None:
        return m.top_contact_mm
    return m.landing_mm


def _foot_from_contact(rule: LadderRule, contact: float) -> float:
    if rule == "by height":
        return height.foot_by_height(contact)
    if rule == "by length":
        return contact / sqrt(height.ONE_IN**2 - 1)  # the length is 4 feet out, so the height is √15 of them
    return height.foot_by_angle(contact)


def _foot_from_length(rule: LadderRule, length: float) -> float:
    if rule == "by height":
        return length / sqrt(height.ONE_IN**2 + 1)
    if rule == "by length":
        return height.foot_by_length(length)
    return length * cos(radians(height.FLAT_DEG))


def measured_angle(m: SafetyMeasures) -> float | None:
    """Return the angle from the ground of the ladder as it stands, or None where it was not measured."""
    foot = m.foot_measured_mm
    if foot is None:
        return None
    contact = contact_of(m)
    if contact is not None:
        return height.angle_by_height(foot, contact)
    if m.working_length_mm is None or foot > m.working_length_mm:
        return None
    return height.angle_by_length(foot, m.working_length_mm)


def rails_to_mm(m: SafetyMeasures) -> float | None:
    """Return how high the rails must end for the landing, or None without one."""
    return None if m.landing_mm is None else m.landing_mm + law_of(m).past_mm
