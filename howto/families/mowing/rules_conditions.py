"""The rules of mowing that look at mower, weather, new turf and what the card says."""

import re
from collections.abc import Iterator

from howto.families.mowing import references as by
from howto.families.mowing.figures import ROOTING_WEEKS
from howto.families.mowing.lawn import THIRD, T
from howto.families.mowing.measures import MowingMeasures
from howto.families.mowing.mends import rewritten
from howto.findings import Severity
from howto.model.family import Breach, Limit, Rule, line_wanted, rule, typed
from howto.model.passages import written
from howto.model.reference import PRACTICE
from howto.quantities.amounts import Range, mm, percent, qty

REEL = Limit(unit="mm", high=38.1, reference=by.ARIZONA)  # 1.5 in
SHARPENED = Range(20, 25, "h")  # see references.SHARPEN
FEED_SAVED = Range(20, 30, "%")  # by clippings left: NC Cooperative Extension
INCH_THIRD_MM, A_LAWN_MM = 25.4 / 3, 150
REELS = re.compile(r"\b(?:reel|cylinder)\b", re.IGNORECASE)
THIRD_OF_AN_INCH = re.compile(
    r"(?:1/3|⅓|(?:one|a)[\s-]third)(?:\s+of\s+an)?[\s-]?(?:inch(?:es)?\b|[\"″]|in\b(?=[.,;:)]|$))",
    re.IGNORECASE | re.MULTILINE,
)


@rule("mowing.dry-grass", Severity.WARNING, PRACTICE, applies="lawns that say whether they are wet")
def dry_grass(work: T) -> Iterator[Breach]:
    """Grass is mown dry.

    Wet grass tears and clogs, wheels smear the soil, and feet slip beside a turning blade.
    """
    if work.measures.wet:
        yield rewritten("wet", "no", "the grass or ground is wet", first="wait until it is dry, and ")


@rule("mowing.reel-or-rotary", Severity.WARNING, by.ARIZONA, applies="lawns that name a reel mower", most=REEL.most)
def reel_or_rotary(work: T) -> Iterator[Breach]:
    """A reel mower is for lawns kept at {most} or lower.

    Reel mowers cut cleanly up to {most}; above that a rotary does.
    """
    m = work.measures
    reel = REELS.search(m.mower or "")
    if reel and not REEL.allows(m.set_height_mm):
        what = f"a {reel[0].casefold()} mower set at {mm(m.set_height_mm, 4)}"
        yield rewritten("mower", "rotary", what, also="measures.set_height_mm")


@rule(
    "mowing.sharp-blade",
    Severity.WARNING,
    by.SHARPEN,
    applies="lawns that write the blade's hours",
    hours=f"{SHARPENED}",
)
def sharp_blade(work: T) -> Iterator[Breach]:
    """The blade is sharpened every {hours}.

    A blunt blade tears leaf, which browns and lets disease in; the trade sharpens every {hours}.
    """
    hours = work.measures.blade_hours
    if hours is not None and hours > SHARPENED.high:
        yield rewritten("blade_hours", "0 h", f"the blade has cut for {qty(hours, 'h', 3)}", first="sharpen it, and ")


@rule("mowing.turf-rooted", Severity.ADVICE, by.NEW_TURF, applies="new turf", weeks=f"{qty(ROOTING_WEEKS, 'weeks', 3)}")
def turf_rooted(work: T) -> Iterator[Breach]:
    """New turf has rooted before its first cut.

    Turf is first cut when it no longer lifts under the mower, about {weeks} on.
    """
    weeks = work.measures.turf_age_weeks
    if weeks is None or weeks >= ROOTING_WEEKS:
        return
    what = f"the turf was laid {qty(weeks, 'weeks', 3)} ago"
    text = typed(ROOTING_WEEKS, "weeks")
    yield rewritten("turf_age_weeks", text, what, first="tug a corner first; ", then=" once it holds")


@rule(
    "mowing.third-of-the-height",
    Severity.ERROR,
    by.UC_AMOUNT,
    applies="every lawn",
    lawn=f"{mm(A_LAWN_MM)}",
    part=f"{percent(INCH_THIRD_MM / A_LAWN_MM * 100, 1)}",
    third=THIRD.most,
)
def third_of_the_height(work: T) -> Iterator[Breach]:
    """The part that a cut may take is {third} of the height, not of an inch.

    One page printed the rule as {third} of an inch: on a lawn of {lawn} that is {part} of the height.
    """
    for each in written(work.technique):
        if found := THIRD_OF_AN_INCH.search(each.text):
            said, inch = found[0].strip(), f"{THIRD.most} of an inch is {mm(INCH_THIRD_MM, 2)} on any lawn"
            why = f"the rule is {THIRD.most} of the standing height; {inch}"
            yield Breach(each.field, f"`{said}` is written", why, f"write `a third of the height` in place of `{said}`")


@rule("mowing.clippings-said", Severity.ADVICE, by.CAROLINA, applies="every lawn", saved=f"{FEED_SAVED}")
def clippings_said(work: T) -> Iterator[Breach]:
    """The card says what happens to the clippings.

    Short clippings left on the lawn save {saved} of its feed; rows of long ones smother it.
    """
    steps = len(work.technique.steps)
    if not steps or any("clipping" in each.text.casefold() for each in written(work.technique)):
        return
    line = f"{steps + 1}. **Leave or lift the clippings.** Leave short ones; rake off rows."
    what = "no step says what happens to the clippings"
    yield line_wanted("Steps", line, field=f"steps[{steps - 1}]", what=what, why="")


CONDITIONS: tuple[Rule[MowingMeasures], ...] = (
    dry_grass,
    reel_or_rotary,
    sharp_blade,
    turf_rooted,
    third_of_the_height,
    clippings_said,
)
