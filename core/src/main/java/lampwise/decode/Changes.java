package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Window;

/** Whether and where the lamp's state changes in a stretch of a recording without marks. */
final class Changes {
  /** Chance that the state changes during a recording; the moment is even over its window. */
  private static final double CHANCE = 0.02;

  /**
   * From this probability on a cut is proposed: who watches a change and is not told of it is
   * misled about both states. Whether the parts bear an improbable one out is looked at afterwards.
   */
  private static final double LEAST = 0.05;

  /** A part of a change's likelihood this far below what matters is none (natural logarithm). */
  private static final double NEGLIGIBLE = 4;

  /**
   * Settings that differ in misses and strays alone judge a change alike, most to this (natural
   * logarithm): where one does not propose it the next is not asked.
   */
  private static final double ALIKE = 6;

  private Changes() {}

  /**
   * A stretch in parts.
   *
   * @param parts the parts in order, the stretch itself if a change is not probable
   * @param probability the probability of a change
   */
  record Cut(List<Window> parts, double probability) {}

  /**
   * Cuts a stretch.
   *
   * @param ways all that the lamp may show
   * @param settings the noise settings that are looked at, the likeliest first
   * @param logUnchanged logarithm of prior times likelihood of all candidates, summed, if the state
   *     does not change
   * @param tolerance how far the unit's clock may run from the printed times, as a fraction
   */
  static Cut cut(
      List<Way> ways,
      Evidence stretch,
      List<Noise> settings,
      double logUnchanged,
      double tolerance) {
    double seconds = stretch.window().lengthSeconds();
    if (ways.isEmpty() || !(seconds > 0)) {
      return new Cut(List.of(stretch.window()), 0);
    }
    double changed = Double.NEGATIVE_INFINITY;
    double unchanged = Double.NEGATIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    List<Double> changes = List.of();
    Front front = new Front();
    double all = settings.stream().mapToDouble(Noise::weight).sum();
    double proposed = logUnchanged + Math.log(all * LEAST);
    for (Timing timing : Timing.of(settings)) {
      double log = Double.POSITIVE_INFINITY;
      for (int s = 0; s < timing.size() && log > proposed - ALIKE; s++) {
        Noise noise = timing.setting(s);
        double least = proposed - Math.log(noise.weight()) - NEGLIGIBLE;
        Floor floor = new Floor(least, 0, front);
        Switches switches = new Switches(ways, stretch, noise, CHANCE / seconds, tolerance, floor);
        log = Math.log(noise.weight()) + switches.logChanged();
        changed = Gauss.logAdd(changed, log);
        unchanged = Gauss.logAdd(unchanged, Math.log(noise.weight()) + switches.logUnchanged());
        if (log > most) {
          most = log;
          changes = switches.changes();
        }
      }
    }
    double kept = Math.max(logUnchanged, unchanged - Math.log(all));
    double odds = changed - Math.log(all) - kept;
    double probability = 1 / (1 + Math.exp(-odds));
    if (!(probability >= LEAST)) {
      return new Cut(List.of(stretch.window()), 0);
    }
    List<Window> parts = new ArrayList<>();
    double from = stretch.window().fromSeconds();
    for (double at : changes) {
      parts.add(new Window(from, at));
      from = at;
    }
    parts.add(new Window(from, stretch.window().toSeconds()));
    return new Cut(parts, probability);
  }
}
