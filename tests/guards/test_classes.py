"""A class name means one thing: no two classes of the package share theirs."""

import ast
from collections import Counter

from tests.support.source import modules


def test_no_two_classes_have_one_name() -> None:
    names = Counter(
        node.name
        for path in modules()
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.ClassDef)
    )
    assert [name for name, count in names.items() if count > 1] == []
