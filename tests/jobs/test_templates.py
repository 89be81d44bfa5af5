"""The file a new technique starts as: its cautions and tools are true of the trade, and its blanks are found."""

import pytest

from howto.families import FAMILIES
from howto.jobs.templates import CREW_TEXT, technique_text
from howto.model.family import AnyFamily
from howto.model.prompts import TO_FILL_IN, is_to_fill_in


@pytest.mark.parametrize("family", FAMILIES, ids=lambda family: family.name)
def test_every_blank_of_a_new_file_is_one_that_a_check_finds(family: AnyFamily) -> None:
    body = technique_text("Try it", family).split("---\n", 2)[2]
    blanks = [line.rpartition(":")[2].strip(" -[]") for line in body.splitlines() if "say " in line.casefold()]
    said = [blank.rpartition("** ")[2] for blank in blanks]
    assert len(said) == 11
    assert [blank for blank in said if not is_to_fill_in(blank)] == []
    assert len(TO_FILL_IN) == 11  # ten that the file has, one of them twice, and the description of a picture


def test_only_a_trade_that_cuts_by_hand_is_warned_of_blades() -> None:
    blades = {family.name for family in FAMILIES if "**Blades.**" in technique_text("Try it", family)}
    assert blades == {"clipping", "hedging", "espalier"}
    wiped = {family.name for family in FAMILIES if "Alcohol wipes" in technique_text("Try it", family)}
    assert wiped == blades


def test_a_new_crew_is_told_what_each_line_takes() -> None:
    lines = {line.partition(":")[0]: line for line in CREW_TEXT.splitlines()}
    assert "north or south" in lines["hemisphere"]
    assert "metric, us or uk" in lines["units"]
    assert "N or S" in lines["latitude"]
