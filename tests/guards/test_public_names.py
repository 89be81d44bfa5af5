"""What the package offers is said in one place, and what is private stays so."""

import ast

import howto
from tests.support.source import PACKAGE, all_imports


def face_faults(text: str) -> list[str]:
    """Return what stands in the package's face besides its docstring, imports and `__all__`, or does not tally."""
    tree = ast.parse(text)
    imported: set[str] = set()
    listed: set[str] = set()
    faults: list[str] = []
    for at, node in enumerate(tree.body):
        if at == 0 and isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            continue
        if isinstance(node, ast.ImportFrom):
            imported |= {alias.asname or alias.name for alias in node.names}
        elif isinstance(node, ast.Assign) and ast.unparse(node.targets[0]) == "__all__":
            listed = set(ast.literal_eval(node.value))
        else:
            faults.append(f"line {node.lineno}: {ast.unparse(node).splitlines()[0]}")
    faults += [f"{name} is imported and not listed" for name in sorted(imported - listed)]
    return faults + [f"{name} is listed and not imported" for name in sorted(listed - imported)]


def test_the_face_holds_the_public_names_and_nothing_else() -> None:
    assert face_faults((PACKAGE / "__init__.py").read_text(encoding="utf-8")) == []
    assert howto.__doc__


def test_what_does_not_belong_in_the_face() -> None:
    text = '"""Doc."""\nfrom howto.jobs.pipeline import build, check\n__all__ = ["build", "gone"]\nx = 1\n'
    assert face_faults(text) == ["line 4: x = 1", "check is imported and not listed", "gone is listed and not imported"]


def test_nothing_private_is_imported_from_another_module() -> None:
    private = [
        f"{each.module}:{each.line} {each.target}.{each.name}"
        for each in all_imports()
        if each.target.startswith("howto") and each.name.startswith("_")
    ]
    assert private == []
