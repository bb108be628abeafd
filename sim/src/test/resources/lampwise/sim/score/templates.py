"""Which template fits blink logs with the fewest misses: /usr/bin/python3 templates.py < logs > answers

What somebody with SciPy and an afternoon would write, to compare Lampwise with. Lines in, cells by
semicolons. Out comes a line for each log: the best template, and how many blinks and pulses it leaves
over for each blink (whoever uses it says from how many on none fits).

    template;NAME;LEAST;MOST;STARTS    a cycle: its shortest and longest length in seconds, and where
                                       in it blinks begin, as fractions of it
    dark;NAME                          the answer to a log without blinks
    log;FROM;TO;STARTS                 a window and the noted blinks

Each template is tried at all phases and clocks. The log is folded by the cycle into bins of a
circle, scipy.ndimage.uniform_filter1d counts the blinks within REACH_SECONDS, and
scipy.ndimage.gaussian_filter1d says how near they are, which decides between equals.
"""

import sys

import numpy
import scipy
from scipy.ndimage import gaussian_filter1d, uniform_filter1d

BIN_SECONDS = 0.02
REACH_SECONDS = 0.2
SD_SECONDS = 0.08


def leftover(template, window, starts):
    """The fewest misses and strays of a template, less how near the others are."""
    least, most, offsets = template
    length = window[1] - window[0]
    steps = max(2, int(numpy.ceil((most / least - 1) * length / REACH_SECONDS)) + 1)
    best = numpy.inf
    for cycle in numpy.geomspace(least, most, steps):
        bins = max(3, round(cycle / BIN_SECONDS))
        width = cycle / bins
        circle = numpy.bincount(((starts / width).round() % bins).astype(int), minlength=bins).astype(float)
        reach = min(bins, 2 * round(REACH_SECONDS / width) + 1)
        sd = SD_SECONDS / width
        near = gaussian_filter1d(circle, sd, mode="wrap") * sd * numpy.sqrt(2 * numpy.pi)
        within = uniform_filter1d(circle, reach, mode="wrap") * reach
        phases = numpy.arange(bins)
        found = numpy.zeros(bins)
        nearness = numpy.zeros(bins)
        pulses = numpy.zeros(bins)
        for offset in offsets:
            at = (phases + round(offset * bins)) % bins
            on = at * width
            last = numpy.floor((window[1] - on) / cycle)
            first = numpy.ceil((window[0] - on) / cycle)
            shown = numpy.maximum(0, last - first + 1)
            found += numpy.minimum(within[at], shown)
            nearness += numpy.minimum(near[at], shown)
            pulses += shown
        found = numpy.minimum(found, starts.size)
        left = pulses + starts.size - 2 * found - nearness / (starts.size + 1)
        best = min(best, left.min())
    return best


def main():
    templates, dark = {}, ""
    print(f"# SciPy {scipy.__version__}, NumPy {numpy.__version__}")
    for line in sys.stdin:
        kind, *cells = line.rstrip("\n").split(";")
        if kind == "template":
            offsets = [float(cell) for cell in cells[3].split()]
            templates[cells[0]] = (float(cells[1]), float(cells[2]), offsets)
        elif kind == "dark":
            dark = cells[0]
        else:
            starts = numpy.array(cells[2].split(), float)
            window = (float(cells[0]), float(cells[1]))
            if starts.size == 0:
                print(f"{dark};0")
                continue
            costs = {name: leftover(t, window, starts) for name, t in templates.items()}
            name = min(costs, key=costs.get)
            print(f"{name};{costs[name] / starts.size:.4f}")


main()
