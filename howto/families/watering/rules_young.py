"""The rules of new plants, and what every watering says in words."""

from collections.abc import Iterator

from howto.families.watering import plan, tables
from howto.families.watering import references as by
from howto.families.watering.figures_young import every_words
from howto.families.watering.formulae import Span
from howto.families.watering.measures import WateringMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Rule, line_wanted, rule
from howto.model.reference import PRACTICE
from howto.model.wording import says
from howto.model.work import Work
from howto.quantities import round_down, round_up
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, qty

T = Work[WateringMeasures]


@rule(
    "watering.tree-litres",
    Severity.WARNING,
    by.NEW_TREES,
    by.NEW_TREES_WARM,
    by.BIG_TREES_WARM,
    applies="new trees that write a calliper and their water",
)
def tree_litres(work: T) -> Iterator[Breach]:
    """A new tree gets at each watering what its stem calls for: no less, and no more that drowns it.

    1 to 1.5 US gal an inch of calliper where summers are cool, 2 to 3 where they are warm. Advice for small
    trees runs from 2 gal a time to 10 gal a week, so feel the soil.
    """
    m, span = work.measures, plan.plant_litres(work)
    if m.calliper_mm is None or m.water_each_l is None or span is None:
        return
    cm = m.calliper_mm / 10
    rates = tables.LITRES_PER_CM[plan.summer(work)]
    why = f"{plan.summer(work)} summers: stem {qty(cm, 'cm', 3)} x {bare(rates.low)} to {qty(rates.high, 'L', 3)} a cm"
    yield from _litres(m.water_each_l, span, why, "tree")


@rule(
    "watering.shrub-litres", Severity.WARNING, by.NEW_TREES, applies="new shrubs that write their pot and their water"
)
def shrub_litres(work: T) -> Iterator[Breach]:
    """A new shrub gets at each watering 25 to 30 % of the pot it came in.

    The root ball is still the pot: a quarter to a third of its volume refills it.
    """
    m, span = work.measures, plan.plant_litres(work)
    if m.pot_l is None or m.calliper_mm is not None or m.water_each_l is None or span is None:
        return
    yield from _litres(m.water_each_l, span, f"25 to 30 % of its {qty(m.pot_l, 'L', 3)} pot", "shrub")


def _litres(given: float, span: Span, why: str, plant: str) -> Iterator[Breach]:
    if span.low * (1 - 1e-9) <= given <= span.high * (1 + 1e-9):
        return
    step = 0.1 if span.high - span.low > 0.2 else 0.001
    bound = round_up(span.low, step) if given < span.low else round_down(span.high, step)
    text = f"{num(bound, 6)} L"
    yield Breach(
        field="measures.water_each_l",
        what=f"each new {plant} gets {qty(given, 'L', 3)} at a time",
        why=f"{why} = {bare(span.low)} to {qty(span.high, 'L', 3)}; "
        + ("less leaves the root ball dry" if given < span.low else "more fills the pores and drowns roots"),
        mend=f"write `water each: {text}`, within {bare(span.low)} to {qty(span.high, 'L', 3)}",
        edit=Edit(key="water each", text=text),
    )


@rule(
    "watering.first-year",
    Severity.WARNING,
    by.NEW_TREES,
    by.NEW_TREES_WARM,
    by.BIG_TREES_WARM,
    applies="new plants that write an interval",
)
def first_year(work: T) -> Iterator[Breach]:
    """New plants are watered as often as their weeks since planting ask for.

    Daily for two weeks, every 2 to 3 days to week 12, then weekly until rooted; where summers are warm, every
    other day for two months.
    """
    m = work.measures
    if not m.is_new or m.interval_days is None:
        return
    stage = plan.stage_now(work)
    if stage.every_low <= m.interval_days <= stage.every_high:
        return
    bound = stage.every_high if m.interval_days > stage.every_high else stage.every_low
    text = f"{bound} day" if bound == 1 else f"{bound} days"
    yield Breach(
        field="measures.interval_days",
        also="measures.planted_weeks" if m.planted_weeks is not None else "",
        what=f"new plants are watered every {'day' if m.interval_days == 1 else num(m.interval_days) + ' days'}",
        why=f"{_weeks(m.planted_weeks or 0)} after planting is in {stage.name}: every {every_words(stage)}",
        mend=f"write `interval: {text}`",
        edit=Edit(key="interval", text=text),
    )


def _weeks(count: float) -> str:
    return "1 week" if count == 1 else f"{bare(count)} weeks"


@rule("watering.feel-first", Severity.WARNING, by.CHECK_FIRST, applies="new plants")
def feel_first(work: T) -> Iterator[Breach]:
    """New plants are watered only after the soil has been felt, and the card says so.

    Too much water drowns more new trees than too little dries.
    """
    if not work.measures.is_new:
        return
    if says(work, "feel the soil", "check the soil", "soil is damp", "soil is dry", "finger", "still moist"):
        return
    line = "- **Drowning.** Feel the soil a finger deep beside the root ball first, and leave it when it is damp."
    yield line_wanted(
        "Cautions",
        line,
        what="nothing tells the reader to feel the soil before watering new plants",
        why="the table is a start: rain, clay and shade all slow a new plant's use, and too much drowns it",
    )


@rule("watering.backflow", Severity.ADVICE, by.BACKFLOW, applies="sprinklers, drip lines and hoses")
def backflow(work: T) -> Iterator[Breach]:
    """A line joined to the drinking-water tap has a backflow preventer, and the card says so.

    Garden water must not be drawn back into the pipes people drink from.
    """
    if work.measures.method == "can" or says(work, "backflow", "back-flow", "check valve", "non-return"):
        return
    line = "- **Drinking water.** Join hose or line to the tap through a backflow preventer."
    yield line_wanted(
        "Cautions",
        line,
        what="nothing keeps garden water from running back into the drinking water",
        why="when pressure falls, a hose end in a pond or tank sucks back; local rules differ",
    )


@rule("watering.cool-hours", Severity.ADVICE, by.COOL_HOURS, applies="every watering")
def cool_hours(work: T) -> Iterator[Breach]:
    """Water is given in the cool of the day, early for choice.

    Early water has the day to sink in, and leaves dry soon after.
    """
    if says(work, "morning", "early in the day", "sunrise", "dawn", "cool of the day", "before breakfast"):
        return
    line = "- **Midday.** Water early in the morning: less is lost, and leaves are dry by night."
    yield line_wanted(
        "Cautions",
        line,
        what="nothing says at what time of day to water",
        why="at midday more is lost to sun and wind, and leaves wet at night stay wet",
    )


@rule("watering.hot-hose", Severity.ADVICE, PRACTICE, applies="hoses")
def hot_hose(work: T) -> Iterator[Breach]:
    """A hose that lay in the sun is run until it is cool before it is turned on plants.

    The first litres from a hose in the sun scald.
    """
    if work.measures.method != "hose" or says(work, "runs cool", "run cool", "hot water", "until it is cool"):
        return
    line = "- **Hot hose.** A hose that lay in the sun scalds hands and leaves: let it run until it runs cool."
    yield line_wanted(
        "Cautions",
        line,
        what="nothing warns of hot water standing in the hose",
        why="water in a hose in the sun gets hot enough to scald",
    )


YOUNG_RULES: tuple[Rule[WateringMeasures], ...] = (
    tree_litres,
    shrub_litres,
    first_year,
    feel_first,
    backflow,
    cool_hours,
    hot_hose,
)
