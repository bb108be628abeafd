package lampwise.service;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.LampState;
import lampwise.sheet.Power;

/** What the parts of a guide have in common: how they are checked and kept. */
final class Rules {
  /** How far chances may be from summing to 1, for decimals that do not. */
  static final double SLACK = 1e-6;

  private Rules() {}

  static void that(boolean holds, String message) {
    if (!holds) {
      throw new GuideException(message);
    }
  }

  static void id(String what, String id) {
    that(
        LampState.isName(id),
        what
            + "'s id must be lower-case letters, digits and hyphens, starting with a letter: "
            + id);
  }

  static void minutes(String id, double minutes) {
    that(
        minutes > 0 && minutes <= Double.MAX_VALUE,
        "the minutes of " + id + " must be over 0: " + minutes);
  }

  static double sum(Collection<Double> chances) {
    double sum = 0;
    for (double chance : chances) {
      sum += chance;
    }
    return sum;
  }

  static boolean isChance(double value) {
    return value >= 0 && value <= 1;
  }

  /** A copy that keeps the order, so that output is the same every time. */
  static <K, V> Map<K, V> copy(Map<K, V> map) {
    return Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }

  static boolean fits(
      List<FixtureKind> kinds, List<Power> powers, FixtureKind kind, Optional<Power> power) {
    return (kinds.isEmpty() || kinds.contains(kind))
        && (powers.isEmpty() || power.isEmpty() || powers.contains(power.get()));
  }
}
