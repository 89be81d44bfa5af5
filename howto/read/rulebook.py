"""The rules of reading: what a file must be for the rest of the work to understand it."""

from typing import Final

from howto.findings import Severity
from howto.model.family import Rule
from howto.model.measures import Measures
from howto.model.reference import FORMAT

_ANY: Final = "every file of the shelf"
_KEYED: Final = "`crew.yaml` and the front matter of every file"
_TECHNIQUE: Final = "technique files"
_CREW: Final = "`crew.yaml`"


def _rule(name: str, applies: str, statement: str, why: str, severity: Severity = Severity.ERROR) -> Rule[Measures]:
    """Return a rule that is looked for while reading."""
    return Rule(f"file.{name}", severity, why, (FORMAT,), applies, statement=statement)


_TEXT: Final = (
    _rule(
        "not-readable",
        _ANY,
        "Every file of the shelf can be opened.",
        "what cannot be opened cannot be checked, and would be missing from the cards without a word",
    ),
    _rule(
        "not-utf8",
        _ANY,
        "Files are saved as UTF-8.",
        "in other encodings letters such as é and signs such as ± turn into others",
    ),
    _rule(
        "odd-character",
        _ANY,
        "A file holds letters and signs, and no control characters.",
        "printers and phones choke on them, and a file with NUL bytes is no text",
    ),
    _rule(
        "letter",
        _ANY,
        "Words that are printed are in letters that the typefaces have.",
        "a letter they do not have would come out as an empty box",
    ),
    _rule(
        "braces",
        _ANY,
        "Words in braces stand in sentences, and not in names, labels and lists.",
        "a name has no measures of its own to fill them from, so they would be printed with their braces",
    ),
    _rule(
        "our-fault",
        _ANY,
        "Every file is read, checked and laid out to the end.",
        "what breaks off half-way is a mistake in `howto`, and a card may only be printed when all of it was checked",
    ),
    _rule("empty", _ANY, "Every file says something.", "an empty file is a forgotten one"),
    _rule(
        "too-big",
        _ANY,
        "A technique or visit is at most 64 KiB and 1,000 lines, any other file 128 KiB and 8,000 lines.",
        "a technique is a page or two; anything larger is a picture or a slip",
    ),
    _rule(
        "name",
        "technique and visit files",
        "A file's name is small letters, digits and dashes, and ends in `.md`.",
        "the name is what other files, cards and web addresses call it, on every computer alike",
    ),
    _rule(
        "folder",
        "technique and visit files",
        "A technique stands in the folder of its family, and a visit in `visits`.",
        "it is looked for there, and one of the two names must be wrong",
    ),
)
_FRONT: Final = (
    _rule(
        "front-matter-start",
        "technique and visit files",
        "A file starts with a line `---`.",
        "what the arithmetic needs stands between it and the next such line",
    ),
    _rule(
        "front-matter-end",
        "technique and visit files",
        "The front matter ends with a second line `---`.",
        "without it nobody can tell where the words for people begin",
    ),
    _rule(
        "front-matter",
        _KEYED,
        "Each line is a `key: value`, and lines that belong together line up.",
        "spaces at the start of a line say what it stands under",
    ),
    _rule(
        "quotes",
        _KEYED,
        "A text with a colon in it, or a sign at its start, stands in quotes.",
        "without quotes the sign starts something new, and the rest of the text is lost",
    ),
    _rule(
        "tab",
        _KEYED,
        "Lines are set in with spaces, never with tabs.",
        "each program gives a tab another width, so it cannot say what a line stands under",
    ),
    _rule(
        "repeated-key",
        _KEYED,
        "A key stands once.",
        "two values for one key cannot both hold, and taking the last one hides the slip",
    ),
    _rule(
        "shorthand",
        _KEYED,
        "No value is fetched from another line with `&`, `*`, `!` or `<<`.",
        "each line says its own value, so that what is read on paper is all there is",
    ),
    _rule("two-documents", _KEYED, "One file holds one set of keys.", "what follows a second `---` would not be read"),
    _rule(
        "unknown-key",
        _KEYED,
        "Every key is one that is known.",
        "a key with a slip of the pen would be left out without a word, and its number with it",
    ),
    _rule(
        "unknown-word",
        _KEYED,
        "Where a few words are known, one of them is written.",
        "the arithmetic and the words on the page hang on it",
    ),
    _rule("missing-key", _KEYED, "The keys that must be there are there.", "nothing can be made without them"),
    _rule("value", _KEYED, "A value is of the kind its key wants.", "a list is no text and a word is no number"),
    _rule(
        "too-long",
        _ANY,
        "Words are short enough for the line, the step or the paragraph that they are printed in.",
        "a name or a contact that runs on pushes what matters off the page, and nobody reads on through one paragraph",
    ),
    _rule(
        "date",
        "visits and `people.yaml`",
        "A date is year, month, day.",
        "3/4 is April to one reader and March to the next",
    ),
)
_MEASURES: Final = (
    _rule(
        "missing-measure",
        _TECHNIQUE,
        "The measures that a family is worked out from are there.",
        "no figure can be worked out from nothing",
    ),
    _rule(
        "quantity",
        _KEYED,
        "A measure is a number with its unit, of the kind its key wants.",
        "900 is not 900 mm, and a length is not a weight",
    ),
    _rule("bound", _KEYED, "A number lies where numbers of its kind can lie.", "a hedge of 900 m was meant as 900 mm"),
    _rule(
        "measures",
        _TECHNIQUE,
        "Measures that hang together agree.",
        "two measures that cannot both be true give no figure that can",
    ),
    _rule("waive", _TECHNIQUE, "A waiver says why.", "whoever reads the card later must see why a rule was broken"),
)
_BODY: Final = (
    _rule(
        "intro",
        _TECHNIQUE,
        "A technique opens with a paragraph.",
        "it says what good looks like, and why it is worth the trouble",
    ),
    _rule(
        "missing-section",
        _TECHNIQUE,
        "Tools, Steps, Cautions and Finish are there; Aftercare too, for the leaflet.",
        "a card without cautions sends someone to work without them; without Aftercare this only warns",
    ),
    _rule(
        "unknown-section",
        _TECHNIQUE,
        "Sections are Tools, Materials, Steps, Cautions, Finish and Aftercare.",
        "a section by another name would reach no output",
    ),
    _rule("repeated-section", _TECHNIQUE, "A section starts once.", "half of it would be overlooked"),
    _rule("empty-section", _TECHNIQUE, "Something stands under each heading.", "an empty section was forgotten"),
    _rule(
        "heading",
        "technique and visit files",
        "Headings are sections, each with two `#` in front, and no others.",
        "the title stands in the front matter, and a card has no room for headings within sections",
    ),
    _rule(
        "block",
        "technique and visit files",
        "The body is paragraphs and lists, in plain words, bold and italics.",
        "code, quotations, page tags, links and pictures among the words cannot be carried to paper",
    ),
    _rule("list", _TECHNIQUE, "Tools, cautions, finish and aftercare are lists.", "each line is read or ticked"),
    _rule("table", _TECHNIQUE, "No table stands where a list should.", "a card and a frame have one column"),
    _rule(
        "steps-numbered",
        _TECHNIQUE,
        "Steps are a numbered list.",
        "a step is called by its number, on the card and in the pictures",
    ),
    _rule("step", _TECHNIQUE, "Every step says something.", "a number without words leaves a gap on the card"),
    _rule(
        "too-many",
        _TECHNIQUE,
        "A technique has at most 99 steps.",
        "its discs and pictures have room for two digits, and nobody learns a hundred steps from one card",
    ),
    _rule(
        "step-note",
        _TECHNIQUE,
        "A line under a step starts with `Key point:`, `Reason:`, `Check:` or `Picture:`.",
        "the label says where on the card the line goes",
    ),
    _rule(
        "picture",
        "technique and visit files",
        "A picture is named by its file in the folder `pictures`.",
        "a shelf that is copied keeps its pictures",
    ),
    _rule(
        "mark",
        _TECHNIQUE,
        "A mark is two numbers from 0 to 100, a colon and a word or two.",
        "percent from the left and from the top point at the same spot on every size of the picture",
    ),
    _rule(
        "focus",
        "technique and visit files",
        "The point a crop keeps is two numbers from 0 to 100.",
        "percent from the left and from the top hold for every size of the picture",
    ),
    _rule(
        "caution",
        _TECHNIQUE,
        "A caution starts with what can hurt, and after an arrow says what to wear.",
        "it is found by its first word or two",
    ),
    _rule(
        "when",
        _TECHNIQUE,
        "A task of aftercare starts with its time, in a form that is understood.",
        "the leaflet and the calendar give each task its date",
    ),
)
_SHELF: Final = (
    _rule(
        "no-crew",
        "the shelf",
        "A shelf has a `crew.yaml`.",
        "season, units and the name on every page come from it",
        Severity.WARNING,
    ),
    _rule(
        "hemisphere",
        _CREW,
        "Latitude and hemisphere say the same.",
        "seasons and months are six months apart between the two",
    ),
    _rule("twelve-months", _CREW, "Climate numbers come in twelves.", "they are monthly means, January first"),
    _rule(
        "climate",
        _CREW,
        "A month's mean maximum is over its mean minimum.",
        "water need is worked out from the difference",
    ),
    _rule(
        "unknown-technique",
        "visits",
        "A visit names techniques of the shelf.",
        "the leaflet takes its aftercare from them",
    ),
)
FILE_RULES: Final[tuple[Rule[Measures], ...]] = (*_TEXT, *_FRONT, *_MEASURES, *_BODY, *_SHELF)
