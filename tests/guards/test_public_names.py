"""What the package offers is said in one place, and what is private stays so."""

import pytest

import howto
from tests.support.source import all_imports


def test_the_face_offers_what_it_lists_and_each_is_documented() -> None:
    assert sorted(howto.__all__) == sorted(howto.FACE)
    for name in howto.__all__:
        assert callable(getattr(howto, name))
        assert getattr(howto, name).__doc__
    assert howto.__doc__
    assert all(f"`{name}(" in howto.__doc__ for name in howto.__all__)


def test_the_face_has_no_other_name() -> None:
    with pytest.raises(AttributeError, match="no attribute 'gone'"):
        _ = howto.gone


def test_nothing_private_is_imported_from_another_module() -> None:
    private = [
        f"{each.module}:{each.line} {each.target}.{each.name}"
        for each in all_imports()
        if each.target.startswith("howto") and each.name.startswith("_")
    ]
    assert private == []
