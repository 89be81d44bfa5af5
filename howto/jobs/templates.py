"""Texts of files to fill in: a technique, a visit, a shelf."""

import re
import types
from collections.abc import Iterator, Sequence
from datetime import date
from typing import Any, Literal, NamedTuple, Union, get_args, get_origin

from howto.model import prompts as fill_in
from howto.model.family import AnyFamily
from howto.quantities import field_unit

NOT_MEASURES = {"tolerances", "written"}


def technique_text(title: str, family: AnyFamily) -> str:
    """Return a technique file of a family that passes a check, with its other measures explained in comments."""
    starter = dict(family.starter)
    measures = [f"  {key}: {text}" for key, text in starter.items()]
    more = [line for key, line in _measure_lines(family) if key not in starter]
    comment = "\n".join(["  # More measures this family takes; drop the # to use one:", *more]) if more else ""
    return f"""---
title: {_quoted(title)}
family: {family.name}
level: 1                      # 1 first season, 2 second, 3 third
minutes: 30
season: any time
measures:                     # in the units you measure in, such as 700 mm or 2 ft 4 in
{chr(10).join(measures)}
{comment}
---

{fill_in.GOOD}

## Tools
{family.tools}

## Steps
1. **Look first.** Walk round the work and picture it done.
   - Key point: {fill_in.KEY_POINT}
   - Reason: {fill_in.WHY}
2. **Do the work.** {fill_in.WORK}
   - Key point: {fill_in.HOW}
   - Reason: {fill_in.WHY}
   - Check: {fill_in.CHECK}
3. **Clear and look again.** {fill_in.PLACE}

## Cautions
{family.caution}

## Finish
- [ ] {fill_in.DONE}
- [ ] Tools cleaned and put away

## Aftercare
- Within 2 days: {fill_in.CLIENT_DOES}
- After 6 weeks: {fill_in.CLIENT_LOOKS}
"""


def _measure_lines(family: AnyFamily) -> list[tuple[str, str]]:
    """Return each measure's key with a commented line that shows its form and says what it is."""
    lines = []
    for name, info in family.measures.model_fields.items():
        if name in NOT_MEASURES:
            continue
        key, unit = field_unit(name)
        lines.append((key, f"  # {key}: {_example(info.annotation, unit)}   # {info.description or key}"))
    return lines


def _example(annotation: Any, unit: str | None) -> str:
    """Return an example of how a field is written."""
    choices = [each for each in _parts(annotation) if get_origin(each) is Literal]
    if choices:
        return " or ".join(map(str, get_args(choices[0])))
    if bool in _parts(annotation):
        return "yes or no"
    if unit in {None, "1"}:
        return "1" if {int, float} & set(_parts(annotation)) else "..."
    return f"0 {unit}"


def _parts(annotation: Any) -> tuple[Any, ...]:
    """Return the members of a union, or the annotation alone."""
    return get_args(annotation) if get_origin(annotation) in {Union, types.UnionType} else (annotation,)


class JobText(NamedTuple):
    """A job of a visit as it is typed: the technique, what it was done to, and how large that is."""

    technique: str
    what: str = ""
    area: str = ""


def visit_text(site: str, on: date, jobs: Sequence[JobText], next_visit: str, words: str = "") -> str:
    """Return a visit file."""
    done = "\n".join(line for job in jobs for line in _job_lines(job))
    following = f"next visit: {next_visit}\n" if next_visit else "# next visit: 2026-11-25\n"
    return f"""---
site: {_quoted(site)}   # a label, never an address
date: {on.isoformat()}
{following}done:
{done}
# before: old.jpg             # photographs in the shelf's `pictures` folder
# after: new.jpg
# print: large                # for a client who reads large print
---
{words}
"""


def _job_lines(job: JobText) -> Iterator[str]:
    """Yield the lines of one job; what was not said stands as a comment to fill in."""
    yield f"  - technique: {job.technique}"
    yield f"    what: {_quoted(job.what)}" if job.what else "    # what: the pair by the front step"
    yield f"    area: {job.area}" if job.area else "    # area: 95 m2"


CREW_TEXT = """# The crew. Everything here may be left out; what is written is used on every page.
name: The crew
place: Our valley             # a label, printed on pages
hemisphere: north             # north or south: seasons and months follow it
latitude: 45 N                # degrees from the equator, N or S
units: metric                 # metric, us or uk: how numbers are printed; write yours in any
soil: loam                    # sandy loam, loam, clay loam …
contact: Ask for the lead at the next visit.   # clients read it under When to call us
# web: https://example.org/t  # cards then carry a code that opens this address
# colours:                    # each in quotes
#   ink: "#1d2a26"
#   ground: "#f6f3ea"
#   accent: "#9a3a1c"
# climate:                    # twelve monthly means, January first; for watering figures
#   max: [5, 7, 12, 16, 20, 24, 27, 26, 22, 16, 10, 6]
#   min: [-2, -1, 2, 5, 9, 13, 15, 14, 11, 7, 2, -1]
#   humidity: [82, 78, 72, 68, 68, 66, 64, 66, 72, 78, 82, 84]
#   wind: [2.4, 2.4, 2.5, 2.3, 2.0, 1.9, 1.8, 1.7, 1.8, 2.0, 2.2, 2.3]
#   sunshine: [2.2, 3.4, 5.0, 6.2, 7.2, 8.4, 9.0, 8.2, 6.4, 4.4, 2.6, 1.9]
"""


def _quoted(text: str) -> str:
    """Return text as a YAML scalar, in quotes where YAML would misread it."""
    plain = re.fullmatch(r"[A-Za-zÀ-ž][\w À-ž'’.,()-]*", text) is not None and not text.endswith((" ", ":"))
    return text if plain else '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'
