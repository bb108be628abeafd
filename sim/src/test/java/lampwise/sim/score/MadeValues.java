package lampwise.sim.score;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Blink;
import lampwise.sim.Chance;
import lampwise.sim.Measured;

/** Values of a sensor made by the plain formula, apart from the simulator. */
final class MadeValues {
  static final double ROOM = 100;

  private MadeValues() {}

  /** The mean of the light over each averaging, and noise; averagings may overlap. */
  static List<Measured.Value> of(
      List<Blink> blinks, double to, double every, double averaging, double lamp, double noise) {
    Chance chance = Chance.of(3).branch(blinks.size());
    List<Measured.Value> values = new ArrayList<>();
    for (double end = averaging; end <= to; end += every * chance.uniform(0.8, 1.2)) {
      double share = lit(blinks, end - averaging, end) / averaging;
      double level = ROOM + lamp * share + noise * chance.normal();
      values.add(new Measured.Value(end - averaging, end, level, ROOM));
    }
    return values;
  }

  static double lit(List<Blink> blinks, double from, double to) {
    double sum = 0;
    for (Blink blink : blinks) {
      sum += Math.max(0, Math.min(to, blink.offSeconds()) - Math.max(from, blink.onSeconds()));
    }
    return sum;
  }

  /** The logarithm of the ratio of two products of Gaussian densities: as lit, and as dark. */
  static double plain(List<Measured.Value> values, List<Blink> blinks, double lamp, double sd) {
    double log = 0;
    for (Measured.Value value : values) {
      double averaging = value.toSeconds() - value.fromSeconds();
      double share = lit(blinks, value.fromSeconds(), value.toSeconds()) / averaging;
      double above = value.level() - value.roomLux();
      double off = (above - lamp * share) / sd;
      log += (above / sd * (above / sd) - off * off) / 2;
    }
    return log;
  }

  /** Blinks of a fold that light a window from 0 s on, one by one. */
  static List<Blink> blinks(Fold fold, double phase, double stretch, double to) {
    double cycle = fold.cycle() * stretch;
    double first = to / 2 - phase * cycle;
    while (first > -cycle) {
      first -= cycle;
    }
    List<Blink> blinks = new ArrayList<>();
    for (double start = first; start < to; start += cycle) {
      for (int k = 0; k < fold.blinks(); k++) {
        double on = start + fold.on(k) * stretch;
        blinks.add(new Blink(on, on + fold.lit(k, stretch)));
      }
    }
    return blinks;
  }
}
