"""What is begun passes its check and builds; what cannot be begun says why."""

from datetime import date
from pathlib import Path

import pytest

import howto
from howto.jobs import new as plans
from howto.jobs.check import BY_NAME
from tests.support.source import bytes_of
from tests.support.untold import untold, untold_in

TODAY = date(2026, 10, 14)


@pytest.mark.parametrize("family", list(BY_NAME))
def test_a_new_technique_of_each_family_builds(family: str, tmp_path: Path) -> None:
    root = tmp_path / "mine"
    for path, text in (*plans.new_shelf(root).files, *plans.new_technique(root, "Try: it & see", family).files):
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    built = howto.build_shelf(root, tmp_path / "out", TODAY)
    assert not built.stopped, [(f.rule, f.what) for f in built.findings]
    assert "cards/try-it-see.pdf" in built.written
    assert untold(bytes_of(tmp_path / "out").items()) == untold_in(built.findings) == []
    again = plans.new_technique(root, "Try: it & see", family)
    assert "is there already" in again.problem


def test_plans_say_why_nothing_can_be_written(shelf: Path) -> None:
    assert "Nearest: mowing" in plans.new_technique(shelf, "Cut", "mowin").problem
    assert "no letters" in plans.new_technique(shelf, "???", "mowing").problem
    assert "There is: clip-a-ball" in plans.new_visit(shelf, "Gate", TODAY, ["clip-a-bal"], "").problem
    assert "--done" in plans.new_visit(shelf, "Gate", TODAY, [], "").problem
    assert "is not a date" in plans.new_visit(shelf, "Gate", TODAY, ["clip-a-ball"], "soon").problem
    assert "is not after this one" in plans.new_visit(shelf, "Gate", TODAY, ["clip-a-ball"], "2026-10-14").problem
    assert "gives the client away" in plans.new_visit(shelf, "12 Elm Street", TODAY, ["clip-a-ball"]).problem
    assert "gives the client away" in plans.new_visit(shelf, "Mill Lane", TODAY, ["clip-a-ball"]).problem
    assert "is a shelf" in plans.new_shelf(shelf).problem


def test_a_planned_visit_builds(shelf: Path, tmp_path: Path) -> None:
    done = ["Clip a ball: the ball: gate side, by the path, 3 m2", "clip-a-ball", "clip-a-ball: 2 m2"]
    plan = plans.new_visit(shelf, "Gate: north", TODAY, done, "2026-11-25")
    ((_, written),) = plan.files
    assert (
        written.split("---")[1]
        == """
site: "Gate: north"   # a label, never an address
date: 2026-10-14
next visit: 2026-11-25
done:
  - technique: clip-a-ball
    what: "the ball: gate side, by the path"
    area: 3 m2
  - technique: clip-a-ball
    # what: the pair by the front step
    # area: 95 m2
  - technique: clip-a-ball
    # what: the pair by the front step
    area: 2 m2
# before: old.jpg             # photographs in the shelf's `pictures` folder
# after: new.jpg
# print: large                # for a client who reads large print
"""
    )
    for path, text in plan.files:
        path.write_text(text)
    built = howto.build_shelf(shelf, tmp_path / "out", TODAY, kinds=["leaflets"])
    assert "leaflets/2026-10-14-gate-north.pdf" in built.written
    assert "is there already" in plans.new_visit(shelf, "Gate: north", TODAY, ["clip-a-ball"], "").problem
