"""Fixtures that any test may ask for, and the option that rewrites what tests compare with."""

import os
from collections.abc import Iterator

import pytest
from hypothesis import settings

from howto.guarded import LOUD

# A busy machine is slow, not wrong; and CI tries the same examples each time, so that a failure can be repeated.
settings.register_profile("howto", deadline=None, derandomize=bool(os.environ.get("CI")))
settings.load_profile("howto")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--accept",
        action="store_true",
        help="rewrite case findings and golden files with what is produced now; look at each before committing",
    )


def pytest_configure(config: pytest.Config) -> None:
    if config.getoption("--accept") and os.environ.get("CI"):
        raise pytest.UsageError("--accept rewrites what tests compare with; where CI is set nobody would look at it")


@pytest.fixture(scope="session", autouse=True)
def _loud() -> Iterator[None]:
    """Let every exception of ours fail the test that met it, where an author would get a finding."""
    token = LOUD.set(True)
    yield
    LOUD.reset(token)


@pytest.fixture
def as_an_author() -> Iterator[None]:
    """Catch what breaks off, as outside of tests."""
    token = LOUD.set(False)
    yield
    LOUD.reset(token)


@pytest.fixture
def accept(request: pytest.FixtureRequest) -> bool:
    """Whether to rewrite what a test compares with."""
    return bool(request.config.getoption("--accept"))
