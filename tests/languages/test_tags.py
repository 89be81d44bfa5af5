from howto.languages.tags import base, is_english


def test_a_language_is_told_without_its_region() -> None:
    assert [base(tag) for tag in ("es", "es-MX", "MI-nz", "")] == ["es", "es", "mi", ""]


def test_english_of_any_region_is_english() -> None:
    assert [is_english(tag) for tag in ("en", "en-NZ", "EN", "es")] == [True, True, True, False]
