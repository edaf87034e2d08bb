"""What a PDF page holds, as read by PDFium: a reader that is not ours."""

import ctypes

import numpy as np
import pypdfium2.raw as pdfium

MM = 25.4 / 72


def read_paths(page):
    """Every stroked or filled path of a page: subpaths of points in mm from the upper left."""
    height = page.get_height() * MM
    for found in page.get_objects(filter=[pdfium.FPDF_PAGEOBJ_PATH]):
        m = found.get_matrix()
        subpaths = []
        for index in range(pdfium.FPDFPath_CountSegments(found.raw)):
            segment = pdfium.FPDFPath_GetPathSegment(found.raw, index)
            x, y = ctypes.c_float(), ctypes.c_float()
            pdfium.FPDFPathSegment_GetPoint(segment, x, y)
            if pdfium.FPDFPathSegment_GetType(segment) == pdfium.FPDF_SEGMENT_MOVETO:
                subpaths.append([])
            at = m.a * x.value + m.c * y.value + m.e, m.b * x.value + m.d * y.value + m.f
            subpaths[-1].append((at[0] * MM, height - at[1] * MM))
        yield [np.array(each) for each in subpaths]
