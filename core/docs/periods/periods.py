"""Periods of blink logs by SciPy, to compare Lampwise's with: python3 periods.py > periods.csv

The lamps are published rhythms (testdata/rhythms) as a person taps them: the starts with a Gaussian
error of 0.04 s, 3 % missed, 0.3 strays a minute, in hundredths of a second.

The first high peak of the autocorrelation gives the period roughly: scipy.ndimage.gaussian_filter1d of
the starts in bins, scipy.signal.correlate(method="fft"), scipy.signal.find_peaks. Around it the
powers of the first ten harmonics are summed (Buccheri et al., Astronomy and Astrophysics 128, 245,
1983), that of one being the square of scipy.signal.vectorstrength(starts, period / harmonic), and
scipy.optimize.minimize_scalar(method="bounded") finds the period of the highest sum.
"""

import csv
import pathlib
import sys

import numpy
import scipy
from scipy.ndimage import gaussian_filter1d
from scipy.optimize import minimize_scalar
from scipy.signal import correlate, find_peaks, vectorstrength

SEED = 1125
CYCLES = 8
LEAST_SECONDS = 30
SD = 0.04
MISSED = 0.03
STRAYS_PER_SECOND = 0.3 / 60
HARMONICS = numpy.arange(1, 11)
BIN_SECONDS = 0.01
LEAST_PERIOD = 0.3
HIGH = 0.9
LAMPS = {
    "light-list.csv": [
        "Fl-1p5-200", "Fl-2p6-400", "Fl-4p5-500", "Fl-7p5-1000", "Fl-12-300", "Fl2-5-600",
        "Fl2-13-100", "Fl2-20-300", "Fl3-10-200", "Fl3-25-100", "Fl4-12-700", "Fl4-30-500",
        "Fl5-20-100", "Q2-5-200",
    ],
    "published-trains.csv": [
        "E110-Q", "E110-Fl2+1-16", "GB-Fl2+1-9", "GB-Fl2-6", "T3", "P1621-HB", "FHWA-4(09)-64",
        "NHTSA-burst",
    ],
}


def phases(table, name):
    """Light and dark in turn, seconds."""
    folder = pathlib.Path(__file__).resolve().parents[3] / "testdata" / "rhythms"
    with open(folder / table, newline="") as rows:
        for row in csv.DictReader(rows, delimiter=";"):
            if row["id"] == name:
                return numpy.array(row["on_off_ms_starting_with_light"].split(","), float) / 1000
    raise SystemExit(f"{table}: no row {name}")


def tapped(lamp, random):
    """The window and the starts that were noted."""
    cycle = lamp.sum()
    window = round(max(LEAST_SECONDS, CYCLES * cycle), 2)
    first = numpy.concatenate([[0], numpy.cumsum(lamp)])[:-1:2]
    begun = cycle * numpy.arange(-1, window / cycle + 1) + random.uniform(0, cycle)
    starts = (begun[:, None] + first).ravel()
    starts = starts[random.uniform(size=starts.size) >= MISSED]
    starts = starts + random.normal(0, SD, starts.size)
    strays = random.uniform(0, window, random.poisson(STRAYS_PER_SECOND * window))
    starts = numpy.unique(numpy.round(numpy.concatenate([starts, strays]), 2))
    return window, starts[(starts >= 0) & (starts <= window)]


def power(starts, period):
    """The summed powers of the harmonics of one period."""
    return float(numpy.sum(vectorstrength(starts, period / HARMONICS)[0] ** 2))


def period(window, starts):
    """The period of the log."""
    bins = numpy.zeros(int(window / BIN_SECONDS) + 2)
    bins[numpy.rint(starts / BIN_SECONDS).astype(int)] = 1
    smooth = gaussian_filter1d(bins, 2 * SD / BIN_SECONDS, mode="constant")
    like = correlate(smooth, smooth, mode="full", method="fft")[bins.size - 1 :][: bins.size // 2]
    like = like / (bins.size - numpy.arange(like.size))
    peaks = find_peaks(like)[0]
    peaks = peaks[peaks * BIN_SECONDS >= LEAST_PERIOD]
    high = like[peaks] >= HIGH * like[peaks].max()
    rough = BIN_SECONDS * peaks[high][0]
    grid = numpy.linspace(0.98 * rough, 1.02 * rough, 401)
    best = grid[numpy.argmax([power(starts, p) for p in grid])]
    step = grid[1] - grid[0]
    found = minimize_scalar(
        lambda p: -power(starts, p), bounds=(best - step, best + step), method="bounded",
        options={"xatol": 1e-6},
    )
    return found.x


def main():
    print(f"# SciPy {scipy.__version__}, NumPy {numpy.__version__}, seed {SEED}")
    print("id;true_s;scipy_s;window_s;starts_s")
    out = csv.writer(sys.stdout, delimiter=";", lineterminator="\n")
    for table, names in LAMPS.items():
        for name in names:
            random = numpy.random.default_rng([SEED, *name.encode()])
            lamp = phases(table, name)
            window, starts = tapped(lamp, random)
            times = " ".join(f"{t:.2f}" for t in starts)
            out.writerow([name, f"{lamp.sum():g}", f"{period(window, starts):.4f}", f"{window:g}", times])


if __name__ == "__main__":
    main()
