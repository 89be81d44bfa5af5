"""The words a page prints of its own accord: headings, short labels, and the caution at its foot."""

from typing import Final, TypedDict


class Labels(TypedDict):
    """Every label, in one language; braces are filled by the layout."""

    level: str
    minutes: str
    numbers: str
    setting_out: str
    more: str
    spare: str
    tools: str
    materials: str
    needs: str
    plants: str
    season: str
    cautions: str
    steps: str
    step: str
    key_point: str
    reason: str
    check: str
    wear: str
    scale: str
    side: str
    page: str
    tick: str
    opens: str
    all_cards: str
    shelf_title: str
    shelf_find: str
    shelf_one: str
    shelf_many: str
    shelf_empty: str
    finish: str
    aftercare: str
    newest: str
    newest_label: str
    version: str
    done: str
    todo: str
    no_tasks: str
    never: str
    call: str
    call_signs: str
    your_numbers: str
    year: str
    pictures: str
    visit_over: str
    next_visit: str
    by: str
    from_: str
    between: str
    each_days: str
    each_until: str
    at_visit: str
    for_what: str
    count: str
    strip_alt: str
    strip_task: str
    always: str
    footer: str
    leaflet_footer: str


ENGLISH: Final[Labels] = {
    "level": "Level {level}",
    "minutes": "{minutes} minutes",
    "numbers": "Numbers",
    "setting_out": "Setting out",
    "more": "More numbers",
    "spare": "More worked numbers stand on the card's page.",
    "tools": "Tools",
    "materials": "Materials",
    "needs": "Know first",
    "plants": "Plants",
    "season": "When",
    "cautions": "Caution",
    "steps": "Steps",
    "step": "Step",
    "key_point": "Key point",
    "reason": "Reason",
    "check": "Check",
    "wear": "Wear",
    "scale": "Scale {scale} on this sheet",
    "side": "Side {page} of {pages}",
    "page": "Page {page} of {pages}",
    "tick": "Tick off: {what}",
    "opens": "Opens {url}",
    "all_cards": "All cards",
    "shelf_title": "All our cards",
    "shelf_find": "Find a card by task, plant or trade",
    "shelf_one": "1 card",
    "shelf_many": "{count} cards",
    "shelf_empty": "No cards yet.",
    "finish": "Finish standard",
    "aftercare": "Aftercare",
    "newest": "Newest card",
    "newest_label": "The code opens the newest version of this card; where the two differ, use that one.",
    "version": "Version {version}",
    "done": "What we did",
    "todo": "What to do, and by when",
    "no_tasks": "Nothing needs doing before our next visit.",
    "never": "Please do not",
    "call": "When to call us",
    "call_signs": "Call if leaves turn brown or yellow within two weeks, if a plant wilts and does not recover "
    "by morning, or if you are not sure what to do.",
    "your_numbers": "Numbers for your garden",
    "year": "Your dates on a line. The triangle is our visit.",
    "pictures": "Before and after",
    "visit_over": "Care leaflet · our visit of {date}",
    "next_visit": "Our next visit: {date}",
    "by": "by {date}",
    "from_": "from {date}",
    "between": "{start} to {end}",
    "each_days": "every {days} days",
    "each_until": "every {days} days until {date}",
    "at_visit": "at our next visit, {date}",
    "for_what": "for {what}",
    "count": "{count} ×",
    "strip_alt": "A line of twelve months from {date} with each dated task on its day: {tasks}.",
    "strip_task": "{number}, {when}",
    "always": "always",
    "footer": "Follow local codes and the product label. Electrical work, tree climbing, chainsaw work and "
    "chemicals that need a licence are for people who hold one: leave those jobs to them.",
    "leaflet_footer": "Follow local codes and the product label. Leave electrical work, tree climbing, "
    "chainsaws and chemicals that need a licence to people who hold one.",
}

LANGUAGES: Final[dict[str, Labels]] = {"en": ENGLISH}


def labels(language: str) -> Labels:
    """Return the labels of a language tag such as `en-NZ`; English where we have none of its own."""
    return LANGUAGES.get(language.partition("-")[0].casefold(), ENGLISH)
