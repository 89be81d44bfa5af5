"""Fixtures that any test may ask for, and the option that rewrites what tests compare with."""

import os

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--accept",
        action="store_true",
        help="rewrite case findings and golden files with what is produced now; look at each before committing",
    )


def pytest_configure(config: pytest.Config) -> None:
    if config.getoption("--accept") and os.environ.get("CI"):
        raise pytest.UsageError("--accept rewrites what tests compare with; where CI is set nobody would look at it")


@pytest.fixture
def accept(request: pytest.FixtureRequest) -> bool:
    """Whether to rewrite what a test compares with."""
    return bool(request.config.getoption("--accept"))
