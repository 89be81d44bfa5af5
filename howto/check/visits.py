"""Rules over what clients are given: who it gives away, whose pictures it shows, and whether they can read it."""

from howto.check.client_words import CLIENT_RULES, client_findings
from howto.check.privacy import PRIVACY_RULES, privacy_findings
from howto.findings import Finding, in_order
from howto.model.shelf import Shelf

VISIT_RULES = (*PRIVACY_RULES, *CLIENT_RULES)


def check_visits(shelf: Shelf) -> tuple[Finding, ...]:
    """Return what is wrong with the visits of a shelf, and with the aftercare that its techniques give clients."""
    return in_order([*privacy_findings(shelf, shelf.sources), *client_findings(shelf, shelf.sources)])
