"""Fixtures that any test may ask for, how many examples a property is tried on, and the option to rewrite goldens.

A run is the same every time, on every machine and in any order: the examples of a property follow from its test alone.
With `--hypothesis-profile volume` they are others each time, and many more.
"""

import os
from collections.abc import Iterator
from importlib import import_module
from pkgutil import walk_packages

import pytest
from hypothesis import HealthCheck, settings
from hypothesis.internal.conjecture import engine

import howto
from howto.guarded import LOUD

SAME = settings(
    deadline=None,  # a busy machine is slow, not wrong
    derandomize=True,
    database=None,
    max_examples=40,
    print_blob=True,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.register_profile("same", SAME)
settings.register_profile("volume", SAME, derandomize=False, max_examples=1000)
settings.load_profile("same")
engine.MAX_SHRINKING_SECONDS = 30  # a failure is told soon, if not in its smallest form

# Hypothesis tries the numbers that stand in the modules imported so far: with all of them, whichever tests are run.
for module in walk_packages(howto.__path__, "howto."):
    if not module.name.endswith("__main__"):
        import_module(module.name)


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
