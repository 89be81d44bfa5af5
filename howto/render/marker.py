"""The page on which a lead marks a photograph: one file, no network, by touch or by keyboard."""

from base64 import b64encode
from hashlib import sha256

from markupsafe import Markup

from howto.model.crew import Colours
from howto.model.photo import Photograph
from howto.render.html import A4_MM, LISTED_PT, POLICY, environment, frame, template_text
from howto.render.image import screen_jpeg


def marker_page(photo: Photograph, colours: Colours) -> str:
    """Return the page for one photograph; what it holds of the picture is pixels alone."""
    script = template_text("mark.js")
    digest = b64encode(sha256(script.encode()).digest()).decode()
    shared = frame("en", (colours.ink, colours.ground, colours.accent), italic=False)
    return environment().get_template("mark.html.jinja").render(
        **{**shared, "policy": f"{POLICY}; script-src 'sha256-{digest}'"},
        width_mm=A4_MM[0],
        height_mm=A4_MM[1],
        print_pt=LISTED_PT,
        file=photo.file,
        picture=f"data:image/jpeg;base64,{b64encode(screen_jpeg(photo)).decode()}",
        script=Markup(script),  # noqa: S704 - our own file
    )  # fmt: skip
