"""The page on which a lead marks a photograph: one file, no network, by touch or by keyboard."""

from base64 import b64encode

from howto.model.crew import Colours
from howto.model.photo import Photograph
from howto.render.html import environment, scripted
from howto.render.image import screen_jpeg


def marker_page(photo: Photograph, colours: Colours) -> str:
    """Return the page for one photograph; what it holds of the picture is pixels alone."""
    return environment().get_template("mark.html.jinja").render(
        **scripted("en", colours, "mark.js"),
        file=photo.file,
        picture=f"data:image/jpeg;base64,{b64encode(screen_jpeg(photo)).decode()}",
    )  # fmt: skip
