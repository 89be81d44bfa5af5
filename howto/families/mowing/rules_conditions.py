"""The rules of mowing that look at mower, weather, new turf and what the card says."""

import re
from collections.abc import Iterator

from howto.families.mowing import references as by
from howto.families.mowing.figures import ROOTING_WEEKS
from howto.families.mowing.measures import MowingMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, line_wanted, rule
from howto.model.prose import plain
from howto.model.reference import PRACTICE
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm

T = Work[MowingMeasures]

REEL = Limit(high=38.1, unit="mm", reference=by.ARIZONA)  # 1.5 in
BLADE = Limit(high=25, unit="hours", reference=by.SHARPEN)
REELS = re.compile(r"\b(?:reel|cylinder)\b", re.IGNORECASE)
THIRD_OF_AN_INCH = re.compile(
    r"(?:1/3|⅓|(?:one|a)[\s-]third)(?:\s+of\s+an)?[\s-]?(?:inch(?:es)?\b|[\"″]|in\b(?=[.,;:)]|$))",
    re.IGNORECASE | re.MULTILINE,
)


@rule("mowing.dry-grass", Severity.WARNING, PRACTICE, applies="lawns that say whether they are wet")
def dry_grass(work: T) -> Iterator[Breach]:
    """Grass is mown dry.

    Wet grass tears and clogs, and wheels smear the soil.
    """
    if not work.measures.wet:
        return
    yield Breach(
        field="measures.wet",
        what="the grass or ground is wet",
        why="wet grass tears and clogs, wheels smear the soil, and feet slip beside a turning blade",
        mend="wait until it is dry, and write `wet: no`",
        edit=Edit(key="wet", text="no"),
    )


@rule("mowing.reel-or-rotary", Severity.WARNING, by.ARIZONA, applies="lawns that name a reel mower")
def reel_or_rotary(work: T) -> Iterator[Breach]:
    """A reel mower is for lawns kept at 38 mm or lower.

    Reel mowers cut cleanly up to 38 mm (1.5 in); rotary mowers from there up.
    """
    m = work.measures
    reel = REELS.search(m.mower or "")
    if reel is None or REEL.allows(m.set_height_mm):
        return
    yield Breach(
        field="measures.mower",
        also="measures.set_height_mm",
        what=f"a {reel[0].casefold()} mower set at {mm(m.set_height_mm, 4)}",
        why="reel mowers cut cleanly up to 38 mm (1.5 in); above that a rotary does",
        mend="write `mower: rotary`",
        edit=Edit(key="mower", text="rotary"),
    )


@rule("mowing.sharp-blade", Severity.WARNING, by.SHARPEN, applies="lawns that write the blade's hours")
def sharp_blade(work: T) -> Iterator[Breach]:
    """The blade is sharpened every 20 to 25 hours.

    A blunt blade tears leaf, which browns and lets disease in.
    """
    hours = work.measures.blade_hours
    if hours is None or BLADE.allows(hours):
        return
    yield Breach(
        field="measures.blade_hours",
        what=f"the blade has cut for {bare(hours)} hours",
        why="a blunt blade tears; the trade sharpens every 20 to 25 hours",
        mend="sharpen it, and write `blade: 0 h`",
        edit=Edit(key="blade", text="0 h"),
    )


@rule("mowing.turf-rooted", Severity.ADVICE, by.NEW_TURF, applies="new turf")
def turf_rooted(work: T) -> Iterator[Breach]:
    """New turf has rooted before its first cut.

    Turf not yet rooted lifts under the mower.
    """
    weeks = work.measures.turf_age_weeks
    if weeks is None or weeks >= ROOTING_WEEKS:
        return
    yield Breach(
        field="measures.turf_age_weeks",
        what=f"the turf was laid {bare(weeks)} {'week' if num(weeks) == '1' else 'weeks'} ago",
        why=f"turf is first cut when it no longer lifts, about {bare(ROOTING_WEEKS)} weeks on",
        mend=f"tug a corner first; write `turf age: {num(ROOTING_WEEKS)} weeks` once it holds",
        edit=Edit(key="turf age", text=f"{bare(ROOTING_WEEKS)} weeks"),
    )


@rule("mowing.third-of-the-height", Severity.ERROR, by.UC_AMOUNT, applies="every lawn")
def third_of_the_height(work: T) -> Iterator[Breach]:
    """The third that a cut may take is a third of the height, not of an inch.

    One page printed the rule as a third of an inch: on a lawn of 150 mm that is 6 % of the height, not 33 %.
    """
    for field, text in _passages(work):
        if found := THIRD_OF_AN_INCH.search(text):
            yield Breach(
                field=field,
                what=f"`{found[0].strip()}` is written",
                why="the rule is one third of the standing height; a third of an inch is 8.5 mm on any lawn",
                mend=f"write `a third of the height` in place of `{found[0].strip()}`",
            )


def _passages(work: T) -> Iterator[tuple[str, str]]:
    """Yield what the technique says of the work, with the field each part stands in."""
    yield from ((f"intro[{at}]", plain(part)) for at, part in enumerate(work.technique.intro))
    for at, step in enumerate(work.technique.steps):
        yield f"steps[{at}]", f"{step.title}\n{plain(step.text)}"
        for part in ("key_points", "reasons", "checks"):
            lines = enumerate(getattr(step, part))
            yield from ((f"steps[{at}].{part}[{number}]", plain(line)) for number, line in lines)
    yield from ((f"finish[{at}]", plain(part)) for at, part in enumerate(work.technique.finish))
    yield from ((f"aftercare[{at}]", plain(care.text)) for at, care in enumerate(work.technique.aftercare))


@rule("mowing.clippings-said", Severity.ADVICE, by.CAROLINA, applies="every lawn")
def clippings_said(work: T) -> Iterator[Breach]:
    """The card says what happens to the clippings.

    Clippings returned cut the need for feed by 20 to 30 % (NC Cooperative Extension).
    """
    words = " ".join([*(kit.name for kit in work.technique.tools), *(text for _, text in _passages(work))])
    if "clipping" in words.casefold() or not work.technique.steps:
        return
    line = f"{len(work.technique.steps) + 1}. **Leave or lift the clippings.** Leave short ones; rake off rows."
    yield line_wanted(
        "Steps",
        line,
        field=f"steps[{len(work.technique.steps) - 1}]",
        what="no step says what happens to the clippings",
        why="short clippings left on the lawn save 20 to 30 % of its feed; rows of long ones smother it",
    )


CONDITIONS: tuple[Rule[MowingMeasures], ...] = (
    dry_grass,
    reel_or_rotary,
    sharp_blade,
    turf_rooted,
    third_of_the_height,
    clippings_said,
)
