"""Lists what a language has no words for: `python -m tests.languages es`; without one, what share each covers."""

import sys

from howto.languages import LANGUAGES
from howto.languages.tags import is_english
from tests.support.said import missing, share, templates

if __name__ == "__main__":
    for language in sys.argv[1:]:
        print(*sorted(missing(language)), sep="\n")  # noqa: T201 - a command for whoever adds words
    for language in sys.argv[1:] or [each for each in LANGUAGES if not is_english(each)]:
        told = len(templates()) - len(missing(language))
        print(f"{language}: {told} of {len(templates())} templates, {share(language):.1%}")  # noqa: T201
