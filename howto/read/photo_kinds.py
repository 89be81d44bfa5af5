"""What kind of file some first bytes begin, and how to turn the wrong kinds into the right ones."""

ACCEPTED = ("JPEG", "PNG", "WEBP")

SAVE = "open `{file}` and save or export it as JPEG, then write the new name"
PHONE = (
    'on the phone, share `{file}` as "most compatible" or JPEG (in the camera\'s settings choose the most compatible '
    "format for next time), then write the new name"
)
THREE = "pictures are JPEG, PNG or WebP, which every phone and computer can show"

# Kind → why it cannot be used, and the mend; `{file}` is the picture's name.
EXPORT: dict[str, tuple[str, str]] = {
    "HEIC": ("it is how some phones store photographs, and many programs cannot open it; " + THREE, PHONE),
    "AVIF": (THREE, SAVE),
    "GIF": (THREE, SAVE),
    "TIFF": (THREE, SAVE),
    "BMP": (THREE, SAVE),
    "PDF": (THREE, "take a picture out of `{file}`, save it as JPEG, then write the new name"),
    "SVG": (THREE, SAVE),
    "raw camera": (THREE, SAVE),
    "video": (THREE, "take a still from `{file}`, save it as JPEG, then write the new name"),
    "": (THREE, "put a photograph in place of `{file}`, saved as JPEG"),
}

# First bytes as each format's own specification fixes them.
STARTS: tuple[tuple[bytes, str], ...] = (
    (b"\xff\xd8\xff", "JPEG"),
    (b"\x89PNG\r\n\x1a\n", "PNG"),
    (b"GIF8", "GIF"),
    (b"II*\0\x10\0\0\0CR", "raw camera"),
    (b"II*\0", "TIFF"),
    (b"MM\0*", "TIFF"),
    (b"BM", "BMP"),
    (b"%PDF", "PDF"),
    (b"FUJIFILM", "raw camera"),
    (b"<svg", "SVG"),
    (b"<?xml", "SVG"),
)

# Brands of the ISO base media container, ISO/IEC 14496-12 and 23008-12.
HEIC_BRANDS = (b"heic", b"heix", b"hevc", b"hevx", b"heim", b"heis", b"mif1", b"msf1")
AVIF_BRANDS = (b"avif", b"avis")


def kind_of(start: bytes) -> str:
    """Return the kind of file that begins with these bytes (32 are enough), "" where it is none we know."""
    if start[:4] == b"RIFF":
        return "WEBP" if start[8:12] == b"WEBP" else "video"
    if start[4:8] == b"ftyp":
        return _container(start)
    return next((kind for magic, kind in STARTS if start.startswith(magic)), "")


def _container(start: bytes) -> str:
    """Return what a media container holds, by its first and its compatible brands."""
    brands = {start[at : at + 4] for at in (8, *range(16, len(start) - 3, 4))}
    if not brands.isdisjoint(AVIF_BRANDS):
        return "AVIF"
    if not brands.isdisjoint(HEIC_BRANDS):
        return "HEIC"
    return "raw camera" if start[8:12] == b"crx " else "video"
