"""The rules of new plants, and what every watering says in words."""

from collections.abc import Iterator

from howto.families.watering import plan, tables
from howto.families.watering import references as by
from howto.families.watering.figures_young import asked, every
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.mends import rewritten
from howto.families.watering.needs import between
from howto.findings import Severity
from howto.model.family import Breach, Rule, line_wanted, rule, typed
from howto.model.reference import PRACTICE
from howto.model.wording import says
from howto.model.work import Work
from howto.quantities import round_down, round_up
from howto.quantities.amounts import Word, Words, bare, qty

T = Work[WateringMeasures]
GALLONS = {summer: between(rates, "US gal") for summer, rates in tables.US_GAL_PER_IN.items()}
POT_SHARE = between(tables.POT_SHARE.times(100), "%")


def _year(summer: str) -> Words:
    return ", ".join(f"{stage.name} {every(stage)}" for stage in tables.FIRST_YEAR[summer])


@rule(
    "watering.tree-litres",
    Severity.WARNING,
    by.NEW_TREES,
    by.NEW_TREES_WARM,
    by.BIG_TREES_WARM,
    applies="new trees that write a calliper and their water",
    **GALLONS,
)
def tree_litres(work: T) -> Iterator[Breach]:
    """A new tree gets at each watering what its stem calls for: no less, and no more that drowns it.

    {cool} an inch of calliper where summers are cool, {warm} where they are warm. Advice for small trees runs from
    2 gal a time to 10 gal a week, so feel the soil.
    """
    if work.measures.calliper_mm is not None:
        yield from _litres(work, "tree", f"{Word(plan.summer(work))} summers: ")


@rule(
    "watering.shrub-litres",
    Severity.WARNING,
    by.NEW_TREES,
    applies="new shrubs that write their pot and their water",
    share=POT_SHARE,
)
def shrub_litres(work: T) -> Iterator[Breach]:
    """A new shrub gets at each watering {share} of the pot it came in.

    The root ball is still the pot: that much of its volume refills it.
    """
    if work.measures.calliper_mm is None:
        yield from _litres(work, "shrub")


def _litres(work: T, plant: str, where: Words = "") -> Iterator[Breach]:
    given, span = work.measures.water_each_l, plan.plant_litres(work)
    if given is None or span is None or span.low * (1 - 1e-9) <= given <= span.high * (1 + 1e-9):
        return
    wanted, step = between(span, "L"), 0.1 if span.high - span.low > 0.2 else 0.001
    harm, bound = "less leaves the root ball dry", round_up(span.low, step)
    if given > span.high:
        harm, bound = "more fills the pores and drowns roots", round_down(span.high, step)
    what = f"each new {Word(plant)} gets {qty(given, 'L', 3)} at a time"
    why = f"{where}{asked(work)} = {wanted}; {harm}"
    yield rewritten("water_each_l", typed(bound, "L"), what, why, f"write {{}}, within {wanted}")


@rule(
    "watering.first-year",
    Severity.WARNING,
    by.NEW_TREES,
    by.NEW_TREES_WARM,
    by.BIG_TREES_WARM,
    applies="new plants that write an interval",
    cool=_year("cool"),
    warm=_year("warm"),
)
def first_year(work: T) -> Iterator[Breach]:
    """New plants are watered as often as their weeks since planting ask for.

    Where summers are cool: {cool}. Where they are warm: {warm}, and larger trees daily for longer.
    """
    m, stage = work.measures, plan.stage_now(work)
    own = m.interval_days
    if not m.is_new or own is None or stage.every_low <= own <= stage.every_high:
        return
    bound, weeks = max(stage.every_low, min(own, stage.every_high)), m.planted_weeks or 0.0
    after = "1 week" if weeks == 1 else f"{bare(weeks)} weeks"
    what = f"new plants are watered every {'day' if own == 1 else f'{bare(own)} days'}"
    why = f"{after} after planting is in {Word(stage.name)}: {Word(every(stage))}"
    text, also = f"{bound} {'day' if bound == 1 else 'days'}", "" if m.planted_weeks is None else "planted_weeks"
    yield rewritten("interval_days", text, what, why, also=also)


def _told(work: T, what: Words, line: str, *said: str) -> Iterator[Breach]:
    """Yield the breach of a caution that nothing on the card gives."""
    if not says(work, *said):
        yield line_wanted("Cautions", line, what=what, why="")


@rule("watering.feel-first", Severity.WARNING, by.CHECK_FIRST, applies="new plants")
def feel_first(work: T) -> Iterator[Breach]:
    """New plants are watered only after the soil has been felt, and the card says so.

    The table is a start: rain, clay and shade all slow a new plant's use, and too much water drowns more new trees
    than too little dries.
    """
    what = "nothing tells the reader to feel the soil before watering new plants"
    line = "- **Drowning.** Feel the soil a finger deep beside the root ball first, and leave it when it is damp."
    said = "feel the soil", "check the soil", "soil is damp", "soil is dry", "finger", "still moist"
    if work.measures.is_new:
        yield from _told(work, what, line, *said)


@rule("watering.backflow", Severity.ADVICE, by.BACKFLOW, applies="sprinklers, drip lines and hoses")
def backflow(work: T) -> Iterator[Breach]:
    """A line joined to the drinking-water tap has a backflow preventer, and the card says so.

    When pressure falls, a hose end in a pond or tank sucks back into the pipes people drink from; local rules differ.
    """
    what = "nothing keeps garden water from running back into the drinking water"
    line = "- **Drinking water.** Join hose or line to the tap through a backflow preventer."
    if work.measures.method != "can":
        yield from _told(work, what, line, "backflow", "back-flow", "check valve", "non-return")


@rule("watering.cool-hours", Severity.ADVICE, by.COOL_HOURS, applies="every watering")
def cool_hours(work: T) -> Iterator[Breach]:
    """Water is given in the cool of the day, early for choice.

    At midday more is lost to sun and wind; early water has the day to sink in, and leaves wet at night stay wet.
    """
    line = "- **Midday.** Water early in the morning: less is lost, and leaves are dry by night."
    said = "morning", "early in the day", "sunrise", "dawn", "cool of the day", "before breakfast"
    yield from _told(work, "nothing says at what time of day to water", line, *said)


@rule("watering.hot-hose", Severity.ADVICE, PRACTICE, applies="hoses")
def hot_hose(work: T) -> Iterator[Breach]:
    """A hose that lay in the sun is run until it is cool before it is turned on plants.

    The first litres from a hose in the sun scald.
    """
    line = "- **Hot hose.** A hose that lay in the sun scalds hands and leaves: let it run until it runs cool."
    said = "runs cool", "run cool", "hot water", "until it is cool"
    if work.measures.method == "hose":
        yield from _told(work, "nothing warns of hot water standing in the hose", line, *said)


YOUNG_RULES: tuple[Rule[WateringMeasures], ...] = (
    tree_litres,
    shrub_litres,
    first_year,
    feel_first,
    backflow,
    cool_hours,
    hot_hose,
)
