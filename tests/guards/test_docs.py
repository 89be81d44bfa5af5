"""The tree and the table of rules in DEVELOPERS.md are true."""

from pathlib import Path

from howto.families import FAMILIES
from tests.support.docs import column_of, listed_and_gone, there_and_unlisted, tree_of, untrue_counts
from tests.support.source import ROOT

SMALL = """# Small

## The tree

    README.md                   what it makes
    techniques/<family>/*.md    what an author writes
    howto/__init__.py           the public names
    -- words --
    howto/span.py               Span                       ✗ all of howto
    howto/fonts/                the faces
    howto/families/__init__.py  the table
      clipping/ mowing/
        __init__.py             FAMILY: ties the files
        rules.py                limits and rules
    howto/gone.py               not there any more

Then words about howto/other.py.

| Family | Rules | Figures |
| --- | --- | --- |
| clipping | 2 | 3 |
| Mowing | 4 | 5 |

After it.
"""


def small(root: Path) -> Path:
    """Make the small project that the text above is about, one module more and two fewer than it says."""
    for file in (
        "README.md",
        "techniques/clipping/ball.md",
        "howto/span.py",
        "howto/other.py",
        "howto/fonts/inner.py",
        "howto/families/clipping/rules.py",
        "howto/families/clipping/formulae.py",
    ):
        path = root / file
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text('"""A module."""\n\nX = 1\n')
    for package in ("howto", "howto/fonts", "howto/families", "howto/families/clipping"):
        (root / package / "__init__.py").write_text('"""A folder."""\n')
    return root


def test_the_tree_is_read() -> None:
    assert tree_of(SMALL) == [
        "README.md",
        "techniques/<family>/*.md",
        "howto/__init__.py",
        "howto/span.py",
        "howto/fonts/",
        "howto/families/__init__.py",
        "howto/families/clipping/",
        "howto/families/mowing/",
        "howto/families/clipping/__init__.py",
        "howto/families/mowing/__init__.py",
        "howto/families/clipping/rules.py",
        "howto/families/mowing/rules.py",
        "howto/gone.py",
    ]


def test_a_fenced_tree_is_read_alike() -> None:
    inner = "\n".join(line.removeprefix("    ") for line in SMALL.split("\n")[4:15])
    assert tree_of(f"# Small\n\n```text\n{inner}\n```\nhowto/other.py\n") == tree_of(SMALL)
    assert tree_of("no tree here") == []


def test_a_tree_is_held_to_what_is_there(tmp_path: Path) -> None:
    root, listed = small(tmp_path), tree_of(SMALL)
    assert listed_and_gone(listed, root) == [
        "howto/families/mowing/",
        "howto/families/mowing/__init__.py",
        "howto/families/mowing/rules.py",
        "howto/gone.py",
    ]
    assert there_and_unlisted(listed, root) == ["howto/other.py"]


def test_a_table_is_read_and_held_to_the_counts() -> None:
    said = column_of(SMALL, "Family", "Rules")
    assert said == {"clipping": "2", "mowing": "4"}
    assert untrue_counts(said, {"clipping": 2, "mowing": 3, "soil": 1}) == [
        "mowing: 4 is written, 3 is true",
        "soil: nothing is written, 1 is true",
    ]
    assert column_of(SMALL, "Family", "Sources") == {}


def developers() -> str:
    return (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def test_the_tree_in_developers_is_true() -> None:
    listed = tree_of(developers())
    assert listed
    assert listed_and_gone(listed, ROOT) == []
    assert there_and_unlisted(listed, ROOT) == []


def test_the_table_of_rules_in_developers_is_true() -> None:
    said = column_of(developers(), "Family", "Rules")
    assert untrue_counts(said, {family.name: len({*family.rules, *family.every}) for family in FAMILIES}) == []
