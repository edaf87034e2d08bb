"""How many threads the linear algebra has changes no figure by more than rounding."""

import json
import os
import subprocess
import sys

import numpy as np

RUN = """
import json, scorecraft
opened = scorecraft.design("swirl").opening
print(json.dumps([opened.widest_mm.tolist(), opened.tension_left.ravel().tolist()]))
"""


def told(threads):
    alone = {name: str(threads) for name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS")}
    path = {"PYTHONPATH": os.pathsep.join(sys.path)}
    command = [sys.executable, "-c", RUN]
    done = subprocess.run(command, env=os.environ | alone | path, capture_output=True, check=True)
    return json.loads(done.stdout)


def test_any_number_of_threads():
    for one, other in zip(told(1), told(4), strict=True):
        np.testing.assert_allclose(other, one, rtol=2e-5)
