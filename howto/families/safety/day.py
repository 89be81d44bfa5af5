"""The tools of one day: each with its name, its level or its shake, and its time."""

from collections.abc import Sequence
from typing import NamedTuple

from howto.families.safety.measures import SafetyMeasures
from howto.quantities.amounts import Name, Words, bare


class Spell(NamedTuple):
    """A tool in use: its name, how loud or how hard it shakes, and the minutes; None where no time is written."""

    name: Words
    amount: float
    minutes: float | None

    @property
    def spent(self) -> float:
        """The minutes, none where no time is written."""
        return self.minutes or 0.0


def noises(m: SafetyMeasures) -> tuple[Spell, ...]:
    """Return the tools by level in dB(A), in the author's order."""
    return _paired(m, m.noise_db, m.noise_time_minutes)


def shakes(m: SafetyMeasures) -> tuple[Spell, ...]:
    """Return the tools by vibration in m/s², in the author's order."""
    return _paired(m, m.vibration_m_per_s2, m.trigger_time_minutes)


def timed(spells: Sequence[Spell]) -> tuple[list[float], list[float]] | None:
    """Return the amounts and their minutes, or None where there are no tools or a time is missing."""
    if not spells or any(spell.minutes is None for spell in spells):
        return None
    return [spell.amount for spell in spells], [spell.spent for spell in spells]


def hardest(spells: Sequence[Spell]) -> Spell:
    """Return the loudest tool, or the one that shakes most."""
    return max(spells, key=lambda spell: spell.amount)


def _paired(
    m: SafetyMeasures, amounts: tuple[float, ...] | None, minutes: tuple[float, ...] | None
) -> tuple[Spell, ...]:
    names, times = m.machines or (), minutes or ()
    if times and len(times) != len(amounts or ()):
        times = ()  # which time is whose cannot be told; the rule on pairs says so
    return tuple(
        Spell(
            str(Name(names[at])) if at < len(names) else f"tool {bare(at + 1)}",
            amount,
            times[at] if at < len(times) else None,
        )
        for at, amount in enumerate(amounts or ())
    )
