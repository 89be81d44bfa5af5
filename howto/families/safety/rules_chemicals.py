"""Rules over the measures of safety: bleach, disinfecting, spraying and going in again."""

from collections.abc import Iterator
from math import ceil

from howto.families.safety import chemicals
from howto.families.safety import figures_chemicals as mix
from howto.families.safety import references as by
from howto.families.safety.measures import SafetyMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Rule, outside, rule, typed
from howto.model.reference import CEILING
from howto.model.work import Work
from howto.quantities.amounts import bare, qty

T = Work[SafetyMeasures]


@rule(
    "safety.bleach-share",
    Severity.ERROR,
    by.PRUNERS,
    by.PRUNERS_MINNESOTA,
    applies="techniques with `bleach mix:`, or `disinfectant: bleach`",
    nine=mix.WATER_TO_ONE.least,
)
def bleach_share(work: T) -> Iterator[Breach]:
    """Bleach for blades is mixed one part to {nine} parts of water.

    1 part of household bleach to {nine} parts of water; Minnesota says the same in other words, 1:10
    """
    m = work.measures
    one, nine = m.parts
    found = nine / one
    if (m.bleach_mix_l is None and m.disinfectant != "bleach") or mix.WATER_TO_ONE.allows(found):
        return
    text = typed((mix.WATER_TO_ONE.low or 0) * one, "")
    off = "weaker, it leaves disease alive" if found > (mix.WATER_TO_ONE.low or 0) else "stronger, it eats the steel"
    yield Breach(
        field="measures.water_parts",
        what=f"{bare(found)} parts of water to one of bleach",
        why=f"{bare(nine)} / {bare(one)} = {bare(found)}; {off}, and 1 + {mix.WATER_TO_ONE.least} was tested",
        mend=f"write `water parts: {text}`",
        edit=Edit(key="water parts", text=text),
    )


@rule(
    "safety.bleach-soak",
    Severity.ERROR,
    by.PRUNERS,
    by.PRUNERS_ARIZONA,
    applies="techniques with `soak:`, alcohol left out",
    least=mix.SOAK.least,
    shorter=f"{mix.SHORTER}",
)
def soak_long_enough(work: T) -> Iterator[Breach]:
    """Blades stay in the bleach mix for {least} at least.

    advice runs from a wipe through {shorter} to {least} or more; the longer is kept
    """
    if work.measures.disinfectant != "alcohol":
        yield from outside(mix.SOAK, work, "soak_minutes", what="a soak of {found}", why="")


@rule("safety.bleach-age", Severity.ERROR, by.PRUNERS, applies="techniques with `mix age:`", most=mix.LASTS.most)
def fresh_mix(work: T) -> Iterator[Breach]:
    """A bleach mix is used within {most}.

    {most} after mixing it has lost its strength
    """
    age = work.measures.mix_age_hours
    if age is not None and not mix.LASTS.allows(age):
        yield Breach(
            field="measures.mix_age_hours",
            what=f"a mix {qty(age, 'h', 3)} old",
            why="",
            mend="pour it away, mix again, and write `mix age: 0 h`",
            edit=Edit(key="mix age", text="0 h"),
        )


@rule(
    "safety.fire-blight",
    Severity.ERROR,
    by.PRUNERS,
    by.PRUNERS_MINNESOTA,
    applies="techniques with `disease: fire blight`",
    alcohol=mix.ALCOHOL,
)
def by_disease(work: T) -> Iterator[Breach]:
    """Where fire blight is about, blades are cleaned with bleach mix and not with alcohol.

    {alcohol} does for routine work, and kills some of fire blight and not all; bleach mix does
    """
    m = work.measures
    if m.disease == "fire blight" and m.disinfectant == "alcohol":
        yield Breach(
            field="measures.disinfectant",
            what="alcohol against fire blight",
            why="",
            mend=f"write `disinfectant: bleach`, {mix.ONE_TO_NINE}, {mix.SOAK.least} or more",
            edit=Edit(key="disinfectant", text="bleach"),
            also="measures.disease",
        )


@rule(
    "safety.re-entry",
    Severity.ERROR,
    by.LABEL_TRAINING,
    by.ENTRY,
    by.CATEGORIES,
    by.LABEL,
    applies="techniques with `entry after:` and a `toxicity:` or a `label wait:`",
    third=f"{qty(chemicals.ENTRY_HOURS['III'], 'h')}",
)
def re_entry(work: T) -> Iterator[Breach]:
    """Nobody goes in before the label's time, or that of the worst toxicity category, is over.

    category III asks for {third}; the label prints its own time, and the label is the law
    """
    m = work.measures
    wait = mix.wait_hours(m)
    if wait is None or m.entry_after_hours is None or m.entry_after_hours >= wait - 1e-9:
        return
    text = typed(ceil(wait * 100 - 1e-9) / 100, "h")
    firm = m.label_wait_hours is not None and m.label_wait_hours >= wait - 1e-9
    asks = "the label" if firm else f"category {chemicals.worst(m.toxicity or ('III',))}"
    source = by.LABEL if firm else mix.wait_sources(m)[0]
    yield Breach(
        field="measures.entry_after_hours",
        what=f"people go in again after {qty(m.entry_after_hours, 'h', 3)}",
        why=f"{asks} asks for {qty(wait, 'h', 3)}; the label outranks this",
        mend=f"write `entry after: {text}` or more",
        edit=Edit(key="entry after", text=text),
        severity=None if firm else CEILING[source.grade],
        reference=source,
    )


@rule("safety.clock", Severity.ERROR, by.ENTRY, applies="techniques with `sprayed at:`")
def readable_clock(work: T) -> Iterator[Breach]:
    """A time of day is written as a clock shows it.

    the time of entry is worked out from it
    """
    text = work.measures.sprayed_at
    if text is not None and chemicals.clock_minutes(text) is None:
        yield Breach(
            field="measures.sprayed_at",
            what=f"`{text}` is no time of day that can be read",
            why="",
            mend="write it as `sprayed at: 14:00` or `2 pm`",
            edit=Edit(key="sprayed at", text="14:00"),
        )


CHEMICALS: tuple[Rule[SafetyMeasures], ...] = (
    bleach_share, soak_long_enough, fresh_mix, by_disease, re_entry, readable_clock,
)  # fmt: skip
