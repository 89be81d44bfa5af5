"""The rules of lawns and of time: single doses, the year, the first day, the last day and the gap."""

from collections.abc import Iterator
from dataclasses import replace
from typing import get_args

from howto.families.feeding import plan, season, tables
from howto.families.feeding import references as by
from howto.families.feeding.label import label_of
from howto.families.feeding.measures import Month
from howto.families.feeding.parts import anew, doses, to_write
from howto.families.feeding.plan import T
from howto.families.feeding.rules_label import rate_edit
from howto.families.feeding.season import day_of_year
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, outside, rule
from howto.model.reference import CEILING, FORMAT
from howto.quantities.amounts import Name, Range, Word, Words, bare, mm, month_named, qty
from howto.seasons import months_of

ONE_DOSE = Limit(high=tables.POUND_PER_1000_SQ_FT, unit="g/m²", of="N", reference=by.SINGLE_DOSE)
LIGHT_DOSE = Limit(high=tables.CENTIPEDE_DOSE, unit="g/m²", of="N", reference=by.CENTIPEDE)
LIGHT_FEEDERS = frozenset({"eremochloa ophiuroides"})
WARM_SOIL = Limit(low=tables.WARM_SOIL_C, unit="°C", reference=by.WARM_TURF)
GAP = Limit(low=6, unit="weeks", reference=by.MATURE)
MONTH_NAMES: tuple[Month, ...] = get_args(Month)
Unknown = tuple[Words, str, str]  # what is not known, and the key and the text of the measure that would tell
ANY_YEAR = 2025  # dates are weighed in a year without a leap day


@rule("feeding.dose-known", Severity.WARNING, FORMAT, applies="every feeding but liquid feed")
def dose_known(work: T) -> Iterator[Breach]:
    """The measures tell how much one dose is.

    without it there is no dose to write on the card; a handful is no measure
    """
    if label_of(work.measures) is None or work.measures.in_water:
        return
    for what, key, text in _unknown(work):
        mend = f"measure it or read it off the label, and write it, such as `{key}: {text}`"
        yield Breach("measures.kind", f"nothing tells {what}", "", mend, Edit(text, key))


def _unknown(work: T) -> Iterator[Unknown]:
    """Yield what is not known of a dose, and the measure that would tell."""
    m, label = work.measures, label_of(work.measures)
    if m.kind == "fruit tree" and m.product_each_g is None:
        yield from _unknown_of_tree(work)
    elif m.kind == "pots":
        yield "how strong the feed is", "feed strength", "200 ppm"
    elif m.kind != "fruit tree" and m.product_rate_g_per_m2 is None and m.nutrient_rate_g_per_m2 is None:
        held = label is not None and label.of(m.wanted) > 0
        key, text = ("nutrient rate", "3 g/m2") if held else ("product rate", "35 g/m2")
        yield "how much goes on a square metre", key, text


def _unknown_of_tree(work: T) -> Iterator[Unknown]:
    m, how, fruit, label = work.measures, plan.basis(work), plan.fruit_of(work), label_of(work.measures)
    if label is None or label.nitrogen <= 0:
        yield "what one tree gets of a feed without nitrogen", "product each", "100 g"
        return
    if fruit is None and how != "mature tree":
        yield "what kind of fruit it is", "crop", "apple"
    rates = {"area": fruit.bare_g_per_m2, "age": fruit.full_g} if fruit else {}
    if rates.get(how or "", 1.0) is None:
        told = f"what {Word(plan.crop_of(work) or '')} gets by {Word(how or '')}: no source has a rate"
        yield told, "product each", "100 g"
    elif how == "area" and plan.fed_m2(m) is None:
        yield "how much soil is fed round it", "rooting area", "3 m2"
    elif how == "age" and m.tree_age_years is None:
        yield "how old it is", "tree age", "4 years"
    elif how is None or (how == "trunk" and plan.trunk_cm(m) is None):
        yield "how big the tree is", "trunk", "60 mm"


@rule(
    "feeding.single-dose",
    Severity.ERROR,
    by.SINGLE_DOSE,
    by.GROWING_MONTH,
    by.CENTIPEDE,
    applies="lawns that write a rate",
    most=ONE_DOSE.most,
    light=LIGHT_DOSE.most,
)
def single_dose(work: T) -> Iterator[Breach]:
    """A lawn gets at most {most} of nitrogen at one time, centipede {light}.

    that is the most a lawn uses at once; more burns it or washes away
    """
    m, label, found, grass = work.measures, label_of(work.measures), plan.rate(work.measures), plan.grass_of(work)
    if m.kind != "lawn" or label is None or found is None:
        return
    light = grass is not None and grass.botanical.casefold() in LIGHT_FEEDERS
    limit = LIGHT_DOSE if light else ONE_DOSE
    if limit.allows(found.nitrogen):
        return
    given = f"{qty(found.nitrogen, 'g/m²', 3)}"
    yield to_write(
        "product_rate_g_per_m2" if m.product_rate_g_per_m2 is not None else "nutrient_rate_g_per_m2",
        rate_edit(m, label, limit.nearest(found.nitrogen) * 100 / label.nitrogen),
        f"{given} of nitrogen at one time",
        f"{qty(found.product, 'g/m²', 3)} x {bare(label.nitrogen)} / 100 = {given} N; the most is {limit.most}",
        then=f", and give the rest {GAP.least} later",
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

    more than the range is mown off and thatch; published ranges differ by State, so the book's is used; from memory
    it only advises
    """
    m, label, found, grass = work.measures, label_of(work.measures), plan.rate(work.measures), plan.grass_of(work)
    fact = grass.nitrogen_g_per_m2_year if grass else None
    if m.kind != "lawn" or label is None or found is None or grass is None or fact is None or fact.high <= 0:
        return
    total = found.nitrogen * m.doses
    if total <= fact.high * (1 + 1e-9):
        return
    fits = int(fact.high / found.nitrogen + 1e-9)
    less = Edit(str(fits), "doses") if fits else rate_edit(m, label, fact.high / m.doses * 100 / label.nitrogen)
    year = qty(total, "g/m²", 3)
    yield to_write(
        "doses",
        less,
        f"{Name(grass.botanical)} gets {year} of nitrogen in a year",
        f"{qty(found.nitrogen, 'g/m²', 3)} x {doses(m.doses)} = {year}; its range is "
        f"{Range(fact.low, fact.high, 'g/m²')}",
        then=", or a lower rate",
        severity=Severity.ADVICE if CEILING[fact.grade] is Severity.ADVICE else None,
        reference=fact.reference(f"nitrogen of {grass.botanical}"),
    )


@rule("feeding.grass-known", Severity.ADVICE, FORMAT, applies="lawns that write their grass")
def grass_known(work: T) -> Iterator[Breach]:
    """The lawn's grass is one that the plant book knows.

    the year's nitrogen, and whether warm or cool dates hold, are taken from the book; buffalo, couch and bent are
    names for different grasses in different countries
    """
    m = work.measures
    if m.kind != "lawn" or not m.grass or plan.grass_of(work) is not None or not work.book.grasses:
        return
    best = next(iter(work.book.nearest(m.grass, "grass")), work.book.grasses[0].names[0])
    what = f"the plant book has no grass called {Name(m.grass)}"
    mend = f"write one that it has, such as `grass: {best}`, or add yours to grasses.yaml"
    yield Breach("measures.grass", what, "", mend, Edit(best, "grass"))


@rule(
    "feeding.warm-start",
    Severity.WARNING,
    by.WARM_TURF,
    applies="warm-season lawns that write the soil's temperature",
    least=WARM_SOIL.least,
    deep=f"{mm(tables.SOIL_DEPTH_MM)}",
)
def warm_start(work: T) -> Iterator[Breach]:
    """A warm-season lawn is first fed when the soil {deep} down has reached {least}.

    below {least} at {deep} a warm-season grass hardly takes it up; rain and weeds do
    """
    m, grass = work.measures, plan.grass_of(work)
    if m.kind != "lawn" or grass is None or grass.season != "warm" or m.soil_temperature_c is None:
        return
    if not WARM_SOIL.allows(m.soil_temperature_c):
        what = f"{Name(grass.botanical)} is fed in soil of {qty(m.soil_temperature_c, '°C', 3)}"
        text = f"{tables.WARM_SOIL_C:g} °C"
        yield anew("soil_temperature_c", text, what, first="wait until the soil is warm, and ")


@rule("feeding.tree-cut-off", Severity.WARNING, by.TREE_CUT_OFF, applies="fruit trees fed with nitrogen")
def tree_cut_off(work: T) -> Iterator[Breach]:
    """A fruit tree gets no nitrogen from July to autumn in the north, from January in the south.

    the last feed is due about 21 June to 1 July in the north; an autumn dose is written as a share
    """
    if work.measures.kind == "fruit tree":
        yield from _late(work, "shoots made late do not ripen before frost")


@rule("feeding.turf-cut-off", Severity.WARNING, by.WARM_TURF, applies="warm-season lawns fed with nitrogen")
def turf_cut_off(work: T) -> Iterator[Breach]:
    """A warm-season lawn gets no nitrogen after mid-August in the north, mid-February in the south.

    nitrogen stops in mid-August, and none is given in autumn
    """
    if work.measures.kind == "lawn":
        yield from _late(work, "a warm-season lawn fed in autumn goes soft into winter")


def _late(work: T, why: Words) -> Iterator[Breach]:
    m, label, first = work.measures, label_of(work.measures), season.first_day(work, ANY_YEAR)
    last = season.cut_off(work, first)
    if label is None or label.nitrogen <= 0 or last is None or plan.spring_part(m) <= 0:
        return
    if first > last:
        work, month = _usual_start(work)
        what = f"the first dose falls in {month_named(first.month)}"
        yield anew("start_month", month, what, f"the last day for nitrogen is {day_of_year(last)}: {why}")
        first = season.first_day(work, ANY_YEAR)
        last = season.cut_off(work, first) or last
    days = season.spring_days(work, season.season_days(work, first))
    in_time = sum(day <= last for day in days)
    if in_time < len(days):
        apart = f"{bare(season.gap_weeks(work))} weeks apart from {day_of_year(first)}"
        yield anew(
            "doses",
            str(in_time),
            f"dose {bare(in_time + 1)} of {bare(m.doses)} falls on {day_of_year(days[in_time])}",
            f"{apart}; the last day for nitrogen is {day_of_year(last)}: {why}",
            then=", or start earlier",
        )


def _usual_start(work: T) -> tuple[T, Month]:
    """Return the technique begun in the usual month, and that month."""
    usual = work.measures.model_copy(update={"start_month": None})
    month = MONTH_NAMES[season.first_day(work.having(measures=usual), ANY_YEAR).month - 1]
    return work.having(measures=work.measures.model_copy(update={"start_month": month})), month


@rule(
    "feeding.dose-gap",
    Severity.WARNING,
    by.MATURE,
    by.WARM_TURF,
    applies="fruit trees and warm-season lawns that write a gap, but liquid feed",
    gap=GAP.least,
)
def dose_gap(work: T) -> Iterator[Breach]:
    """Doses of a fruit tree or a warm-season lawn stand {gap} apart or more.

    a dose lasts about {gap}; a second one on top of it is a double dose
    """
    m = work.measures
    if m.doses > 1 and not m.in_water and season.ways(work) in {"fruit tree", "warm"}:
        said = by.MATURE if m.kind == "fruit tree" else by.WARM_TURF
        for each in outside(GAP, work, "dose_gap_weeks", what="doses stand {found} apart", why=""):
            yield replace(each, reference=said)


@rule("feeding.season-start", Severity.WARNING, FORMAT, applies="techniques that write a season")
def season_start(work: T) -> Iterator[Breach]:
    """The season written holds the month of the first dose.

    the card would send the apprentice out in one month and the dates in another
    """
    written, start = work.technique.season, work.measures.start_month
    months = months_of(written, work.crew.hemisphere) if written else None
    first = season.first_day(work, ANY_YEAR)
    if not months or first.month in months:
        return
    due = month_named(first.month)
    breach = anew(
        "start_month",
        MONTH_NAMES[months[0] - 1],
        f"the first dose falls in {due}, and the season is {Name(written)}",
        then=f", or the season that holds {due}",
        also="season" if start else "",
    )
    yield breach if start else replace(breach, field="season")


RULES = (dose_known, single_dose, year_cap, grass_known, warm_start, tree_cut_off, turf_cut_off, dose_gap, season_start)
