"""Photographs as files: JPEG, WebP and PNG; the only file that knows Pillow's formats."""

import io

import numpy as np

from scorecraft.arrays import Pixels
from scorecraft.errors import UsageError

JPEG_QUALITY = 86
WEBP_QUALITY = 84


def encoded_photo(photo: Pixels, form: str) -> bytes:
    """Write a photograph as `png`, `jpg` or `webp`; a see-through one is no JPEG.

    Raises UsageError for another form.
    """
    from PIL import Image

    image, out = Image.fromarray(photo), io.BytesIO()
    if form == "jpg":
        image.save(out, "JPEG", quality=JPEG_QUALITY, optimize=True)
    elif form == "webp":
        image.save(out, "WEBP", quality=WEBP_QUALITY, method=2)
    elif form == "png":
        image.save(out, "PNG")
    else:
        raise UsageError(f'"{form}" is an unsupported file type', None, "use .png, .jpg or .webp")
    return out.getvalue()


def resized(photo: Pixels, width: int, height: int) -> Pixels:
    """Give a photograph another number of pixels."""
    from PIL import Image

    if photo.shape[:2] == (height, width):
        return photo
    return np.asarray(Image.fromarray(photo).resize((width, height), Image.Resampling.LANCZOS))


def overlaid(photo: Pixels, drawing: bytes) -> Pixels:
    """Lay a see-through drawing, a PNG of the same size, over a photograph."""
    from PIL import Image

    over = Image.open(io.BytesIO(drawing)).convert("RGBA")
    whole = Image.alpha_composite(Image.fromarray(photo).convert("RGBA"), over)
    return np.asarray(whole.convert("RGB"))
