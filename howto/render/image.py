"""A frame → JPEG: only its pixels, its colour space, what it shows in words and whom to thank for the photograph."""

import io
from collections.abc import Mapping, Sequence
from xml.sax.saxutils import escape, quoteattr

from PIL import Image

from howto.colour import mixed
from howto.model.crew import Colours
from howto.model.photo import Photograph
from howto.model.sheet import Frame, Pixels
from howto.render.paint import paint
from howto.render.srgb import SRGB_PROFILE

QUALITY = 90
THUMB, GUTTER, COLUMNS = 360, 24, 5  # px, px, and frames side by side on a contact sheet

SCREEN_PX = 1600
XMP = """<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:Iptc4xmpCore="http://iptc.org/std/Iptc4xmpCore/1.0/xmlns/"
 xmlns:photoshop="http://ns.adobe.com/photoshop/1.0/"{credit}>
<Iptc4xmpCore:AltTextAccessibility><rdf:Alt><rdf:li xml:lang="x-default">{alt}</rdf:li></rdf:Alt>
</Iptc4xmpCore:AltTextAccessibility></rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="r"?>"""


def picture(frame: Frame, photos: Mapping[str, Photograph]) -> Image.Image:
    """Return the painted frame."""
    image = Image.new("RGB", (frame.width, frame.height), frame.ground)
    wanted = {mark.source for mark in frame.marks if isinstance(mark, Pixels)}
    paint(image, frame.marks, {source: opened(photos[source]) for source in sorted(wanted)})
    return image


def opened(photo: Photograph) -> Image.Image:
    """Return a photograph's pixels as a picture."""
    return Image.frombuffer("RGB", (photo.width, photo.height), photo.rgb, "raw", "RGB", 0, 1)


def jpeg(frame: Frame, photos: Mapping[str, Photograph]) -> bytes:
    """Return the frame as JPEG bytes, the same for the same frame.

    Colour is kept at full resolution, since thin coloured lines blur otherwise. No Exif is written: a photograph's
    place, camera, owner and thumbnail stay behind.
    """
    return saved(picture(frame, photos), described(frame.alt, frame.credit))


def saved(image: Image.Image, xmp: bytes) -> bytes:
    """Return a picture as JPEG with its description."""
    stream = io.BytesIO()
    image.save(stream, "JPEG", quality=QUALITY, subsampling=0, icc_profile=SRGB_PROFILE, xmp=xmp)
    return stream.getvalue()


def screen_jpeg(photo: Photograph) -> bytes:
    """Return a photograph as a JPEG no larger than a screen needs, with nothing but its pixels."""
    image = opened(photo).copy()
    image.thumbnail((SCREEN_PX, SCREEN_PX))
    return saved(image, described(photo.file, ""))


def described(alt: str, credit: str) -> bytes:
    """Return the XMP packet with what the picture shows and whom it is credited to (IPTC Photo Metadata 2021)."""
    thanks = f" photoshop:Credit={quoteattr(credit)}" if credit else ""
    return XMP.format(alt=escape(alt), credit=thanks).encode()


def contact_sheet(shots: Sequence[Image.Image], colours: Colours) -> bytes:
    """Return one JPEG with the thumbnails of a carousel in reading order, for a lead to approve at a glance."""
    columns = min(COLUMNS, len(shots))
    rows = -(-len(shots) // columns)
    high = shots[0].height
    size = (GUTTER + columns * (THUMB + GUTTER), GUTTER + rows * (high + GUTTER))
    image = Image.new("RGB", size, mixed(colours.ground, colours.ink, 0.28))
    for number, shot in enumerate(shots):
        row, column = divmod(number, columns)
        image.paste(shot, (GUTTER + column * (THUMB + GUTTER), GUTTER + row * (high + GUTTER)))
    return saved(image, described("", ""))


def thumbnail(image: Image.Image) -> Image.Image:
    """Return a painted frame at a third of its size."""
    high = round(THUMB * image.height / image.width)
    return image.resize((THUMB, high), Image.Resampling.LANCZOS, reducing_gap=2.0)
