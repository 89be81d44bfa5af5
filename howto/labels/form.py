"""Which labels there are: every language fills this form."""

from typing import TypedDict


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
    todo_first: str
    todo_later: str
    no_tasks: str
    never: str
    call: str
    call_if: str
    call_signs: str
    call_whom: str
    your_numbers: str
    year: str
    pictures: str
    before: str
    after: str
    visit_over: str
    next_visit: str
    by: str
    from_: str
    between: str
    each_days: str
    each_day: str
    each_week: str
    each_from: str
    each_until: str
    at_visit: str
    for_what: str
    and_: str
    added: str
    count: str
    strip_alt: str
    strip_task: str
    always: str
    footer: str
    leaflet_footer: str
    more_on_page: str
