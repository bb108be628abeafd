package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Settings of the noise that differ in misses and strays alone. They give the same errors to times
 * and lengths, so that one fold serves them all: each of its chains carries a weight for each.
 */
final class Timing {
  private final List<Noise> settings;

  private Timing(List<Noise> settings) {
    this.settings = List.copyOf(settings);
  }

  /** One setting alone. */
  static Timing of(Noise noise) {
    return new Timing(List.of(noise));
  }

  /** The settings in groups, in the order in which the first of each comes. */
  static List<Timing> of(List<Noise> settings) {
    List<List<Noise>> groups = new ArrayList<>();
    for (Noise noise : settings) {
      groups.stream()
          .filter(group -> isLike(group.get(0), noise))
          .findFirst()
          .orElseGet(
              () -> {
                List<Noise> group = new ArrayList<>();
                groups.add(group);
                return group;
              })
          .add(noise);
    }
    return groups.stream().map(Timing::new).toList();
  }

  private static boolean isLike(Noise a, Noise b) {
    return a.sd() == b.sd()
        && a.late() == b.late()
        && a.lengthSd() == b.lengthSd()
        && a.firstLate() == b.firstLate();
  }

  /** How many settings there are, at least one. */
  int size() {
    return settings.size();
  }

  /** One of them. */
  Noise setting(int number) {
    return settings.get(number);
  }

  /** How common they are together. */
  double weight() {
    return settings.stream().mapToDouble(Noise::weight).sum();
  }

  /** The setting that stands for all where only times and lengths count. */
  Noise any() {
    return settings.get(0);
  }

  /** For each setting the logarithm of the likelihood of blinks that are all strays. */
  double[] strays(Evidence evidence) {
    double[] logs = new double[settings.size()];
    double lengths = Strays.logLengths(evidence);
    for (int s = 0; s < logs.length; s++) {
      logs[s] = Strays.log(evidence, settings.get(s), lengths);
    }
    return logs;
  }

  /** As many numbers as there are settings, all the same. */
  double[] all(double value) {
    double[] all = new double[settings.size()];
    Arrays.fill(all, value);
    return all;
  }
}
