"""A body that is right, and ways to change one section of it."""

from howto.findings import Finding
from howto.read.body import Body, read_body
from howto.span import SourceText

RIGHT = """A ball that reads as round.

## Tools
- Hand shears: sharp
## Steps
1. **Look.** Stand over it.
## Cautions
- **Blades.** Mind them. → gloves
## Finish
- [ ] Round
## Aftercare
- Always: water.
"""


def body(text: str, language: str = "en") -> tuple[Body, tuple[Finding, ...]]:
    return read_body(SourceText("a.md", text), 1, language)


def within(section: str, text: str) -> tuple[Body, tuple[Finding, ...]]:
    """Return the right body with other lines in one section."""
    head, _, rest = RIGHT.partition(f"## {section}\n")
    after = rest.partition("\n## ")[2]
    return body(f"{head}## {section}\n{text}\n" + (f"## {after}" if after else ""))


def steps(text: str) -> tuple[Body, tuple[Finding, ...]]:
    return within("Steps", text)


def rules(findings: tuple[Finding, ...]) -> list[str]:
    return [finding.rule.removeprefix("file.") for finding in findings]
