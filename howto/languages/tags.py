"""Language tags such as `en-NZ`: which language they name."""


def base(tag: str) -> str:
    """Return a language without its region: `es` for `es-MX`."""
    return tag.partition("-")[0].casefold()


def is_english(tag: str) -> bool:
    """Tell whether a tag names English, of any region."""
    return base(tag) == "en"
