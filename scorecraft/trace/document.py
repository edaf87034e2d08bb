"""An SVG file read into plain nodes, with everything that is not a plain drawing refused.

Only this file knows the XML parser.
"""

from typing import TYPE_CHECKING
from xml.etree.ElementTree import ParseError

from scorecraft.errors import Place
from scorecraft.frozen import dataclass, field
from scorecraft.trace import telling as say

if TYPE_CHECKING:
    from xml.parsers.expat import XMLParserType

MOST_TRACED_ELEMENTS = 20_000
"""The most elements of a traced file."""
MOST_TRACED_DEPTH = 40
"""The deepest nesting of groups in a traced file."""
SVG = "{http://www.w3.org/2000/svg}"
DRAWN = {"svg", "g", "a", "path", "line", "polyline", "polygon", "rect", "circle", "ellipse"}
SILENT = {
    *("title", "desc", "metadata", "defs", "style", "clipPath", "mask", "marker", "pattern"),
    *("linearGradient", "radialGradient", "filter"),
}
"""Elements that draw nothing themselves."""


@dataclass(frozen=True, slots=True)
class Node:
    """An element: its name without the namespace, what it says, what it holds, where it stands."""

    tag: str
    attributes: dict[str, str]
    place: Place
    children: list["Node"] = field(default_factory=list)


def read(data: bytes, name: str) -> Node:
    """Read an SVG file of a name; raises UsageError, with its line, for anything not plain."""
    # The parser costs 20 ms to load, and few patterns trace a file.
    from defusedxml import DefusedXmlException, DTDForbidden
    from defusedxml.ElementTree import DefusedXMLParser

    builder = _Builder(name)
    parser = DefusedXMLParser(target=builder, forbid_dtd=True)
    builder.expat = parser.parser
    try:
        parser.feed(data)
        parser.close()
    except DTDForbidden as error:
        raise say.NO_DOCTYPE.usage(builder.here()) from error
    except DefusedXmlException as error:
        raise say.NO_ENTITIES.usage(builder.here()) from error
    except ParseError as error:
        line, column = error.position
        raise say.NOT_SVG(why=error).usage(Place(name, line, column + 1)) from error
    except (LookupError, ValueError) as error:
        raise say.NOT_SVG(why=error).usage(builder.here()) from error
    return builder.root()


class _Builder:
    """Target of the XML parser: builds nodes and refuses on the way what must not be there."""

    expat: "XMLParserType"

    def __init__(self, file: str) -> None:
        self.file = file
        self.open: list[Node] = []
        self.top: Node | None = None
        self.count = 0

    def here(self) -> Place:
        return Place(self.file, self.expat.CurrentLineNumber, self.expat.CurrentColumnNumber + 1)

    def start(self, tag: str, attributes: dict[str, str]) -> None:
        # the names of elements that are not of SVG keep their braces
        node = Node(tag.removeprefix(SVG), dict(attributes), self.here())
        self.count += 1
        if self.count > MOST_TRACED_ELEMENTS:
            raise say.MANY_ELEMENTS.usage(node.place)
        if len(self.open) >= MOST_TRACED_DEPTH:
            raise say.NESTED_GROUPS.usage(node.place)
        if not self.open and node.tag != "svg":
            raise say.NOT_SVG(why=f"its root is <{node.tag}>").usage(node.place)
        if not self.open:
            self.top = node
        elif node.tag == "svg":
            raise say.NESTED_DRAWING.usage(node.place)
        else:
            self.open[-1].children.append(node)
        _check_plain(node)
        self.open.append(node)

    def end(self, tag: str) -> None:
        self.open.pop()

    def data(self, text: str) -> None:
        if self.open and self.open[-1].tag == "style" and _refers_out(text):
            raise say.STYLE_OUTSIDE.usage(self.here())

    def pi(self, target: str, text: str | None = None) -> None:
        raise say.NOT_ALLOWED(what=f"<?{target}?>").usage(self.here())

    def close(self) -> None:
        """End of the file: nothing is left to do."""

    def root(self) -> Node:
        assert self.top is not None, "a file without a root does not parse"
        return self.top


def _check_plain(node: Node) -> None:
    """Refuse what could run, load or draw something that is not in the file's own paths."""
    if node.tag not in DRAWN | SILENT and not node.tag.startswith("{"):
        raise say.NOT_READ(tag=node.tag, way_out=say.WAY_OUT.get(node.tag, "")).usage(node.place)
    for key, value in node.attributes.items():
        name = key.rpartition("}")[2].lower()
        if name.startswith("on"):
            raise say.NOT_ALLOWED(what=f"a script ({name})").usage(node.place)
        if name == "href" and not value.strip().startswith("#"):
            raise say.REFERENCE(value=value).usage(node.place)
        if _refers_out(value):
            raise say.STYLE_OUTSIDE.usage(node.place)


def _refers_out(style: str) -> bool:
    """Tell whether a style refers to anything but an element of the same file."""
    _, *named = style.lower().split("url(")
    inner = (text.lstrip().lstrip("'\"").lstrip() for text in named)
    return "@import" in style.lower() or not all(text.startswith("#") for text in inner)
