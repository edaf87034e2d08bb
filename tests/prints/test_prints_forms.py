"""Forms of prints by a file's suffix, or as asked for."""

import pytest

from scorecraft.errors import UsageError
from scorecraft.prints.forms import file_form


@pytest.mark.parametrize(
    ("target", "asked", "known", "form"),
    [
        ("a.PDF", None, ("svg", "pdf"), "pdf"),
        ("-", None, ("txt", "svg"), "txt"),
        ("-", "svg", ("txt", "svg"), "svg"),
        ("a.b.svg", None, ("svg", "pdf"), "svg"),
    ],
)
def test_the_suffix_says_the_form(target, asked, known, form):
    assert file_form(target, asked, known) == form


@pytest.mark.parametrize("target", ["a.docx", "a", "pdf", ""])
def test_other_files_are_refused_with_the_forms_there_are(target):
    with pytest.raises(UsageError) as refused:
        file_form(target, None, ("svg", "pdf"))
    assert "end it in one of .svg, .pdf" in str(refused.value)
