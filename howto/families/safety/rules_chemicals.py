"""Rules over the measures of safety: bleach, disinfecting, spraying and going in again."""

from collections.abc import Iterator
from math import ceil

from howto.families.safety import chemicals
from howto.families.safety.figures_chemicals import MIX_LASTS_H, SOAK_MIN, wait_hours, wait_sources
from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.references import (
    CATEGORIES,
    ENTRY,
    LABEL,
    LABEL_TRAINING,
    PRUNERS,
    PRUNERS_ARIZONA,
    PRUNERS_MINNESOTA,
)
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.model.reference import CEILING
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, qty

T = Work[SafetyMeasures]
WATER_TO_ONE = Limit(low=9, high=9, unit="", of="parts of water to one of bleach", reference=PRUNERS)
SOAK = Limit(low=SOAK_MIN, unit="min", reference=PRUNERS)
LASTS = Limit(high=MIX_LASTS_H, unit="h", reference=PRUNERS)


@rule(
    "safety.bleach-share",
    Severity.ERROR,
    PRUNERS,
    PRUNERS_MINNESOTA,
    applies="techniques with `bleach mix:`, or `disinfectant: bleach`",
)
def bleach_share(work: T) -> Iterator[Breach]:
    """Bleach for blades is mixed one part to nine parts of water.

    1 part of household bleach to 9 parts of water; Minnesota says the same in other words, 1:10.
    """
    m = work.measures
    if m.bleach_mix_l is None and m.disinfectant != "bleach":
        return
    one, nine = m.parts
    found = nine / one
    if WATER_TO_ONE.allows(found):
        return
    wanted = num(9 * one, 6)
    yield Breach(
        field="measures.water_parts",
        what=f"{bare(found)} parts of water to one of bleach",
        why=f"{bare(nine)} / {bare(one)} = {bare(found)}; "
        + ("weaker, it leaves disease alive" if found > 9 else "stronger, it eats the steel")
        + ", and 1 + 9 was tested",
        mend=f"write `water parts: {wanted}`",
        edit=Edit(key="water parts", text=wanted),
    )


@rule(
    "safety.bleach-soak", Severity.ERROR, PRUNERS, PRUNERS_ARIZONA, applies="techniques with `soak:`, alcohol left out"
)
def soak_long_enough(work: T) -> Iterator[Breach]:
    """Blades stay in the bleach mix for ten minutes at least.

    Contact times in print run from a wipe to 10 min; the longer one is kept.
    """
    m = work.measures
    if m.soak_minutes is None or m.disinfectant == "alcohol" or SOAK.allows(m.soak_minutes):
        return
    yield Breach(
        field="measures.soak_minutes",
        what=f"a soak of {qty(m.soak_minutes, 'min', 3)}",
        why="advice runs from 2 to 5 min to 10 min or more; the longer is kept",
        mend="write `soak: 10 min` or more",
        edit=Edit(key="soak", text="10 min"),
    )


@rule("safety.bleach-age", Severity.ERROR, PRUNERS, applies="techniques with `mix age:`")
def fresh_mix(work: T) -> Iterator[Breach]:
    """A bleach mix is used within two hours.

    Diluted bleach loses its strength within hours.
    """
    age = work.measures.mix_age_hours
    if age is None or LASTS.allows(age):
        return
    yield Breach(
        field="measures.mix_age_hours",
        what=f"a mix {qty(age, 'h', 3)} old",
        why=f"{LASTS} after mixing it has lost its strength",
        mend="pour it away, mix again, and write `mix age: 0 h`",
        edit=Edit(key="mix age", text="0 h"),
    )


@rule(
    "safety.fire-blight", Severity.ERROR, PRUNERS, PRUNERS_MINNESOTA, applies="techniques with `disease: fire blight`"
)
def by_disease(work: T) -> Iterator[Breach]:
    """Where fire blight is about, blades are cleaned with bleach mix and not with alcohol.

    Alcohol kills some fire blight but not all; bleach mix does.
    """
    m = work.measures
    if m.disease != "fire blight" or m.disinfectant != "alcohol":
        return
    yield Breach(
        field="measures.disinfectant",
        what="alcohol against fire blight",
        why="70 % alcohol does for routine work, and kills some of fire blight and not all",
        mend="write `disinfectant: bleach`, 1 part to 9 of water, 10 min or more",
        edit=Edit(key="disinfectant", text="bleach"),
        also="measures.disease",
    )


@rule(
    "safety.re-entry",
    Severity.ERROR,
    LABEL_TRAINING,
    ENTRY,
    CATEGORIES,
    LABEL,
    applies="techniques with `entry after:` and a `toxicity:` or a `label wait:`",
)
def re_entry(work: T) -> Iterator[Breach]:
    """Nobody goes in before the label's time, or that of the worst toxicity category, is over.

    Category III: 12 h. The label prints its own time, and the label is the law.
    """
    m = work.measures
    wait = wait_hours(m)
    if wait is None or m.entry_after_hours is None or m.entry_after_hours >= wait - 1e-9:
        return
    text = f"{num(ceil(wait * 100 - 1e-9) / 100)} h"
    firm = m.label_wait_hours is not None and m.label_wait_hours >= wait - 1e-9
    by = "the label" if firm else f"category {chemicals.worst(m.toxicity or ('III',))}"
    source = LABEL if firm else wait_sources(m)[0]
    yield Breach(
        field="measures.entry_after_hours",
        what=f"people go in again after {qty(m.entry_after_hours, 'h', 3)}",
        why=f"{by} asks for {qty(wait, 'h', 3)}; the label outranks this",
        mend=f"write `entry after: {text}` or more",
        edit=Edit(key="entry after", text=text),
        severity=None if firm else CEILING[source.grade],
        reference=source,
    )


@rule("safety.clock", Severity.ERROR, ENTRY, applies="techniques with `sprayed at:`")
def readable_clock(work: T) -> Iterator[Breach]:
    """A time of day is written as a clock shows it.

    A time of day is added to the waiting time.
    """
    text = work.measures.sprayed_at
    if text is None or chemicals.clock_minutes(text) is not None:
        return
    yield Breach(
        field="measures.sprayed_at",
        what=f"`{text}` is no time of day that can be read",
        why="the time of entry is worked out from it",
        mend="write it as `sprayed at: 14:00` or `2 pm`",
        edit=Edit(key="sprayed at", text="14:00"),
    )


CHEMICALS: tuple[Rule[SafetyMeasures], ...] = (
    bleach_share,
    soak_long_enough,
    fresh_mix,
    by_disease,
    re_entry,
    readable_clock,
)
