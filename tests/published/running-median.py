"""Numbers for running-median.test.ts: scipy.ndimage.median_filter (SciPy 1.10, Debian python3-scipy).

Remake: python3 tests/published/running-median.py > tests/published/running-median.json
"""

import json

import numpy as np
import scipy
from scipy.ndimage import median_filter

rng = np.random.default_rng(20260514)
values = np.round(rng.normal(40, 8, 60), 3)
values[20:30] = np.round(rng.normal(6, 1, 10), 3)
out = {"scipy": scipy.__version__, "values": values.tolist(), "filtered": {}}
for reach in (1, 2, 5, 8):
    # Only the inside is compared: the ends are treated differently (window cut here, reflected there).
    out["filtered"][str(reach)] = median_filter(values, size=2 * reach + 1)[reach:-reach].tolist()
print(json.dumps(out))
