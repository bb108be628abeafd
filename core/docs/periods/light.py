"""Periods of light curves by SciPy and Astropy, to compare Lampwise's with: python3 light.py > light.csv

The lamps are published rhythms (testdata/rhythms) before a light sensor: ten samples a second, each the
mean of its tenth of a second, a room of 150 lux, a lamp of 20 lux, Gaussian noise of 1.5 lux, in tenths
of a lux, over at least 40 s and six cycles.

scipy.signal.lombscargle gives the power at each frequency; the powers of a frequency and of all its
multiples that ten samples a second can show are summed, less the noise's share, and of the sums within 5 %
of the highest the one of the highest frequency (those of its halves are as high), or the highest within 2 %
of it, gives the period.
astropy.timeseries.BoxLeastSquares.power looks for a box that repeats, as long as from a cycle's first blink
to the end of its last (below the rest, so it is given the levels with the other sign); the highest power
gives the period.
"""

import csv
import sys

import astropy
import numpy
import scipy
from astropy.timeseries import BoxLeastSquares
from periods import phases
from scipy.signal import lombscargle

SEED = 1125
LEAST_SECONDS = 40
CYCLES = 6
STEP = 0.1
ROOM, LAMP, NOISE = 150, 20, 1.5
LEAST_PERIOD = 0.8
LAMPS = {
    "light-list.csv": [
        "Fl-1p5-200", "Fl-2p6-400", "Fl-4p5-500", "Fl-7p5-1000", "Fl-12-300", "Fl2-5-600",
        "Fl2-13-100", "Fl3-10-200", "Fl4-12-700", "Fl5-20-100",
    ],
    "published-trains.csv": ["E110-Q", "E110-Fl2+1-16", "GB-Fl2+1-9", "GB-Fl2-6", "T3"],
}


def curve(lamp, random):
    """Times of the samples' ends and the levels."""
    cycle = lamp.sum()
    count = int(max(LEAST_SECONDS, CYCLES * cycle) / STEP)
    ends = STEP * numpy.arange(1, count + 1)
    edges = numpy.concatenate([[0], numpy.cumsum(lamp)])
    lit = numpy.concatenate([[0], numpy.cumsum(numpy.where(numpy.arange(lamp.size) % 2, 0, lamp))])
    times = numpy.concatenate([[0], ends]) + random.uniform(0, cycle)
    total = lit[-1] * (times // cycle) + numpy.interp(times % cycle, edges, lit)
    levels = ROOM + LAMP * numpy.diff(total) / STEP + random.normal(0, NOISE, count)
    return ends, numpy.round(levels, 1)


def by_waves(times, levels):
    """The period of the highest summed power."""
    length = times[-1] - times[0]
    step = 0.01 / length
    power = lombscargle(times, levels, 2 * numpy.pi * numpy.arange(1, int(0.5 / STEP / step)) * step, precenter=True)
    power = power - numpy.median(power)
    steps = numpy.arange(int(2 / length / step), int(1 / LEAST_PERIOD / step))
    sums = numpy.array([power[k - 1 :: k].sum() for k in steps])
    last = steps[sums >= 0.95 * sums.max()][-1]
    near = abs(steps / last - 1) < 0.02
    return 1 / (step * steps[near][numpy.argmax(sums[near])])


def by_boxes(times, levels, burst):
    """The period of the likeliest box."""
    length = times[-1] - times[0]
    periods = 1 / numpy.arange(2 / length, 1 / max(LEAST_PERIOD, 1.2 * burst), 0.02 / length)
    found = BoxLeastSquares(times, -levels).power(periods, burst, objective="likelihood", oversample=5)
    return found.period[numpy.argmax(found.power)]


def main():
    print(f"# SciPy {scipy.__version__}, Astropy {astropy.__version__}, NumPy {numpy.__version__}, seed {SEED}")
    print("id;true_s;waves_s;boxes_s;levels_lux")
    out = csv.writer(sys.stdout, delimiter=";", lineterminator="\n")
    for table, names in LAMPS.items():
        for name in names:
            random = numpy.random.default_rng([SEED, *name.encode()])
            lamp = phases(table, name)
            times, levels = curve(lamp, random)
            waves, boxes = by_waves(times, levels), by_boxes(times, levels, lamp[:-1].sum())
            row = " ".join(f"{level:.1f}" for level in levels)
            out.writerow([name, f"{lamp.sum():g}", f"{waves:.3f}", f"{boxes:.3f}", row])


if __name__ == "__main__":
    main()
