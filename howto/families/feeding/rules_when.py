"""The rules of lawns and of time: single doses, the year, the first day, the last day and the gap."""

from collections.abc import Iterator
from datetime import date
from typing import get_args

from howto.families.feeding import plan, season, tables
from howto.families.feeding import references as by
from howto.families.feeding.label import label_of
from howto.families.feeding.measures import FeedingMeasures, Month
from howto.families.feeding.plan import T
from howto.families.feeding.rules_label import rate_edit
from howto.findings import Severity
from howto.languages.form import MONTHS
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.model.reference import CEILING, FORMAT
from howto.quantities.amounts import bare, month_named, qty
from howto.seasons import months_of

ONE_DOSE = Limit(high=tables.POUND_PER_1000_SQ_FT, unit="g/m²", of="N", reference=by.SINGLE_DOSE)
LIGHT_DOSE = Limit(high=tables.CENTIPEDE_DOSE, unit="g/m²", of="N", reference=by.CENTIPEDE)
LIGHT_FEEDERS = frozenset({"eremochloa ophiuroides"})
WARM_SOIL = Limit(low=18, unit="°C", reference=by.WARM_TURF)
GAP = Limit(low=6, unit="weeks", reference=by.MATURE)
MONTH_NAMES: tuple[Month, ...] = get_args(Month)
ANY_YEAR = 2025  # dates are weighed in a year without a leap day


@rule("feeding.dose-known", Severity.WARNING, FORMAT, applies="every feeding but liquid feed")
def dose_known(work: T) -> Iterator[Breach]:
    """The measures tell how much one dose is.

    A handful is no measure.
    """
    m, label = work.measures, label_of(work.measures)
    if label is None or m.in_water:
        return
    if m.kind == "fruit tree":
        yield from _tree_dose_known(work, has_nitrogen=label.nitrogen > 0)
    elif m.kind == "pots":
        yield _unknown("how strong the feed is", Edit(key="feed strength", text="200 ppm"))
    elif m.product_rate_g_per_m2 is None and m.nutrient_rate_g_per_m2 is None:
        held = label.of(m.wanted) > 0
        edit = Edit(key="nutrient rate", text="3 g/m2") if held else Edit(key="product rate", text="35 g/m2")
        yield _unknown("how much goes on a square metre", edit)


def _tree_dose_known(work: T, *, has_nitrogen: bool) -> Iterator[Breach]:
    m, by, fruit = work.measures, plan.basis(work), plan.fruit_of(work)
    if m.product_each_g is not None:
        return
    by_label = Edit(key="product each", text="100 g")
    if not has_nitrogen:
        yield _unknown("what one tree gets of a feed without nitrogen", by_label)
        return
    if fruit is None and by != "mature tree":
        yield _unknown("what kind of fruit it is", Edit(key="crop", text="apple"))
    no_rate = fruit is not None and {"area": fruit.bare_g_per_m2, "age": fruit.full_g}.get(by or "", 1.0) is None
    if no_rate:
        yield _unknown(f"what {plan.crop_of(work)} gets by {by}: no source has a rate", by_label)
    elif by == "area" and plan.fed_m2(m) is None:
        yield _unknown("how much soil is fed round it", Edit(key="rooting area", text="3 m2"))
    elif by == "age" and m.tree_age_years is None:
        yield _unknown("how old it is", Edit(key="tree age", text="4 years"))
    elif (by == "trunk" and plan.trunk_cm(m) is None) or by is None:
        yield _unknown("how big the tree is", Edit(key="trunk", text="60 mm"))


def _unknown(what: str, edit: Edit) -> Breach:
    return Breach(
        field="measures.kind",
        what=f"nothing tells {what}",
        why="without it there is no dose to write on the card",
        mend=f"measure it or read it off the label, and write it, such as `{edit.key}: {edit.text}`",
        edit=edit,
    )


@rule(
    "feeding.single-dose",
    Severity.ERROR,
    by.SINGLE_DOSE,
    by.GROWING_MONTH,
    by.CENTIPEDE,
    applies="lawns that write a rate",
)
def single_dose(work: T) -> Iterator[Breach]:
    """A lawn gets at most 4.9 g/m² of nitrogen at one time, centipede half of it.

    1 lb of N on 1,000 sq ft is the most a lawn uses at once; more burns it or washes away. Centipede takes
    half.
    """
    m, label, found = work.measures, label_of(work.measures), plan.rate(work.measures)
    if m.kind != "lawn" or label is None or found is None:
        return
    grass = plan.grass_of(work)
    light = grass is not None and grass.botanical.casefold() in LIGHT_FEEDERS
    limit = LIGHT_DOSE if light else ONE_DOSE
    if limit.allows(found.nitrogen):
        return
    most = limit.high or 0.0
    edit = rate_edit(m, label, most * 100 / label.nitrogen)
    yield Breach(
        field="measures.product_rate_g_per_m2"
        if m.product_rate_g_per_m2 is not None
        else "measures.nutrient_rate_g_per_m2",
        what=f"{qty(found.nitrogen, 'g/m²', 3)} of nitrogen at one time",
        why=f"{qty(found.product, 'g/m²', 3)} x {bare(label.nitrogen)} / 100 = {bare(found.nitrogen)} g/m² N; the most is "
        f"{bare(most)}",
        mend=f"write `{edit.key}: {edit.text}`, and give the rest six weeks later",
        edit=edit,
        reference=limit.reference,
    )


@rule(
    "feeding.year-cap",
    Severity.WARNING,
    by.PRODUCT_RATE,
    by.GROWING_MONTH,
    applies="lawns whose grass the plant book knows",
)
def year_cap(work: T) -> Iterator[Breach]:
    """A lawn's doses together stay within its grass's nitrogen for a year.

    More than the range is mown off and thatch; published ranges differ by State, so the book's is used. From
    memory it only advises.
    """
    m, label, found, grass = (work.measures, label_of(work.measures), plan.rate(work.measures), plan.grass_of(work))
    fact = grass.nitrogen_g_per_m2_year if grass else None
    if m.kind != "lawn" or label is None or found is None or grass is None or fact is None or fact.high <= 0:
        return
    total = found.nitrogen * m.doses
    if total <= fact.high * (1 + 1e-9):
        return
    fits = int(fact.high / found.nitrogen + 1e-9)
    edit = Edit(key="doses", text=str(fits))
    if fits < 1:
        edit = rate_edit(m, label, fact.high / m.doses * 100 / label.nitrogen)
    yield Breach(
        field="measures.doses",
        what=f"{grass.botanical} gets {qty(total, 'g/m²', 3)} of nitrogen in a year",
        why=f"{qty(found.nitrogen, 'g/m²', 3)} x {m.doses} doses = {qty(total, 'g/m²', 3)}; its range is {bare(fact.low)} to "
        f"{bare(fact.high)}",
        mend=f"write `{edit.key}: {edit.text}`, or a lower rate",
        edit=edit,
        severity=Severity.ADVICE if CEILING[fact.grade] is Severity.ADVICE else None,
        reference=fact.reference(f"nitrogen of {grass.botanical}"),
    )


@rule("feeding.grass-known", Severity.ADVICE, FORMAT, applies="lawns that write their grass")
def grass_known(work: T) -> Iterator[Breach]:
    """The lawn's grass is one that the plant book knows.

    Buffalo, couch and bent are names for different grasses in different countries.
    """
    m = work.measures
    if m.kind != "lawn" or not m.grass or plan.grass_of(work) is not None or not work.book.grasses:
        return
    near = work.book.nearest(m.grass, "grass")
    best = near[0] if near else work.book.grasses[0].names[0]
    yield Breach(
        field="measures.grass",
        what=f"the plant book has no grass called {m.grass}",
        why="the year's nitrogen, and whether warm or cool dates hold, are taken from the book",
        mend=f"write one that it has, such as `grass: {best}`, or add yours to grasses.yaml",
        edit=Edit(key="grass", text=best),
    )


@rule(
    "feeding.warm-start", Severity.WARNING, by.WARM_TURF, applies="warm-season lawns that write the soil's temperature"
)
def warm_start(work: T) -> Iterator[Breach]:
    """A warm-season lawn is first fed when the soil 100 mm down has reached 18 °C.

    Feeding starts when the soil 4 in down reaches 65 °F.
    """
    m, grass = work.measures, plan.grass_of(work)
    if m.kind != "lawn" or grass is None or grass.season != "warm" or m.soil_temperature_c is None:
        return
    if WARM_SOIL.allows(m.soil_temperature_c):
        return
    yield Breach(
        field="measures.soil_temperature_c",
        what=f"{grass.botanical} is fed in soil of {qty(m.soil_temperature_c, '°C', 3)}",
        why="below 18 °C (65 °F) at 100 mm a warm-season grass hardly takes it up; rain and weeds do",
        mend="wait until the soil is warm, and write `soil temperature: 18 °C`",
        edit=Edit(key="soil temperature", text="18 °C"),
    )


@rule("feeding.tree-cut-off", Severity.WARNING, by.TREE_CUT_OFF, applies="fruit trees fed with nitrogen")
def tree_cut_off(work: T) -> Iterator[Breach]:
    """A fruit tree gets no nitrogen from July to autumn in the north, from January in the south.

    The last feed is due about 21 June to 1 July in the north; an autumn dose is written as a share.
    """
    if work.measures.kind == "fruit tree":
        yield from _late(work, "shoots made late do not ripen before frost")


@rule("feeding.turf-cut-off", Severity.WARNING, by.WARM_TURF, applies="warm-season lawns fed with nitrogen")
def turf_cut_off(work: T) -> Iterator[Breach]:
    """A warm-season lawn gets no nitrogen after mid-August in the north, mid-February in the south.

    Nitrogen stops in mid-August, and none is given in autumn.
    """
    if work.measures.kind == "lawn":
        yield from _late(work, "a warm-season lawn fed in autumn goes soft into winter")


def _late(work: T, why: str) -> Iterator[Breach]:
    m, label, first = work.measures, label_of(work.measures), season.first_day(work, ANY_YEAR)
    last = season.cut_off(work, first)
    if label is None or label.nitrogen <= 0 or last is None or plan.spring_part(m) <= 0:
        return
    if first > last:
        work, month = _usual_start(work)
        yield Breach(
            field="measures.start_month",
            what=f"the first dose falls in {month_named(first.month)}",
            why=f"the last day for nitrogen is {_day(last)}: {why}",
            mend=f"write `start month: {month}`",
            edit=Edit(key="start month", text=month),
        )
        first = season.first_day(work, ANY_YEAR)
        last = season.cut_off(work, first) or last
    days = season.spring_days(work, season.season_days(work, first))
    in_time = sum(day <= last for day in days)
    if in_time == len(days):
        return
    yield Breach(
        field="measures.doses",
        what=f"dose {in_time + 1} of {m.doses} falls on {_day(days[in_time])}",
        why=f"{bare(season.gap_weeks(work))} weeks apart from {_day(first)}; the last day for nitrogen is "
        f"{_day(last)}: {why}",
        mend=f"write `doses: {in_time}`, or start earlier",
        edit=Edit(key="doses", text=str(in_time)),
    )


def _usual_start(work: T) -> tuple[T, Month]:
    """Return the technique begun in the usual month, and that month."""
    usual = work.measures.model_copy(update={"start_month": None})
    month = MONTH_NAMES[season.first_day(work.having(measures=usual), ANY_YEAR).month - 1]
    begun = work.measures.model_copy(update={"start_month": month})
    return work.having(measures=begun), month


def _day(day: date) -> str:
    return f"{day.day} {month_named(day.month)}"


@rule(
    "feeding.dose-gap",
    Severity.WARNING,
    by.MATURE,
    by.WARM_TURF,
    applies="fruit trees and warm-season lawns that write a gap, but liquid feed",
)
def dose_gap(work: T) -> Iterator[Breach]:
    """Doses of a fruit tree or a warm-season lawn stand six weeks apart or more.

    Equal lots of a tree's feed stand 6 weeks apart; couch is fed again after 6 to 8 weeks, zoysia after 7 to 8.
    """
    m = work.measures
    if m.doses < 2 or m.dose_gap_weeks is None or season.ways(work) not in {"fruit tree", "warm"}:
        return
    if m.in_water or GAP.allows(m.dose_gap_weeks):
        return
    yield Breach(
        field="measures.dose_gap_weeks",
        what=f"doses stand {bare(m.dose_gap_weeks)} weeks apart",
        why="a dose lasts about 6 weeks; a second one on top of it is a double dose",
        mend="write `dose gap: 6 weeks` or more",
        edit=Edit(key="dose gap", text="6 weeks"),
        reference=by.MATURE if m.kind == "fruit tree" else by.WARM_TURF,
    )


@rule("feeding.season-start", Severity.WARNING, FORMAT, applies="techniques that write a season")
def season_start(work: T) -> Iterator[Breach]:
    """The season written holds the month of the first dose.

    Two dates for one job: one of them is wrong.
    """
    months = months_of(work.technique.season, work.crew.hemisphere) if work.technique.season else None
    first = season.first_day(work, ANY_YEAR)
    if not months or first.month in months:
        return
    month = MONTHS[months[0] - 1]
    yield Breach(
        field="measures.start_month" if work.measures.start_month else "season",
        also="season" if work.measures.start_month else "",
        what=f"the first dose falls in {month_named(first.month)}, and the season is {work.technique.season}",
        why="the card would send the apprentice out in one month and the dates in another",
        mend=f"write `start month: {month}`, or the season that holds {month_named(first.month)}",
        edit=Edit(key="start month", text=month),
    )


WHEN_RULES: tuple[Rule[FeedingMeasures], ...] = (
    dose_known,
    single_dose,
    year_cap,
    grass_known,
    warm_start,
    tree_cut_off,
    turf_cut_off,
    dose_gap,
    season_start,
)
