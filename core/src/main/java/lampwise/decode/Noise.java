package lampwise.decode;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * How blinks are noted: one setting of the noise, which is unknown and summed over.
 *
 * @param sd timing error, standard deviation in seconds
 * @param miss chance that a blink of the lamp is not noted
 * @param strays noted blinks that the lamp did not make, per second
 * @param late how much later than the lamp's going out the end of a blink is noted, seconds
 * @param lengthSd error of the noted length, standard deviation in seconds, for a blink of no
 *     length
 * @param firstLate how much later the first blink of a burst is noted than the others, which
 *     somebody waits for, seconds
 * @param weight how common it is, relative to the other settings
 */
record Noise(
    double sd,
    double miss,
    double strays,
    double late,
    double lengthSd,
    double firstLate,
    double weight) {
  /** Part of a blink's length that is added to the error of its noted length. */
  static final double LENGTH_FRACTION = 0.1;

  // Timing errors and the pairs of misses and strays that go with them: from people who watch well
  // to people who do not. Chosen around what is known of people who tap (a button pressed at an
  // anticipated sight has a spread of 0.07 s: Am. J. Phys. 87, 110, 2019).
  private static final double[] SD = {0.012, 0.04, 0.08};
  private static final double[] FIRST_LATE = {0, 0, 0.12};
  private static final double[] MISS = {0.004, 0.03, 0.1, 0.2};
  private static final double[] STRAYS = {0.1 / 60, 0.3 / 60, 1 / 60.0, 3 / 60.0};

  /** How common each pair is with each timing error; the usual pair six times the next ones. */
  private static final double[][] WEIGHTS = {{6, 1, 0, 0}, {1, 6, 1, 0}, {0, 1, 7, 7}};

  /** How common it is that somebody lets go late, relative to letting go in time. */
  private static final double RELEASED_LATE = 0.2;

  /** The settings for blinks noted by people. */
  static List<Noise> ofPeople(double resolutionSeconds, boolean lengths) {
    List<Noise> settings = new ArrayList<>();
    for (double delay : ends(lengths)) {
      for (int i = 0; i < SD.length; i++) {
        for (int j = 0; j < MISS.length; j++) {
          if (WEIGHTS[i][j] > 0) {
            settings.add(
                ofPerson(SD[i], resolutionSeconds, MISS[j], STRAYS[j], delay, FIRST_LATE[i])
                    .times(WEIGHTS[i][j]));
          }
        }
      }
    }
    return settings;
  }

  /** How late the end of a blink may be noted, seconds; 0 where no ends are. */
  static double[] ends(boolean lengths) {
    return lengths ? new double[] {0, 0.12} : new double[] {0};
  }

  /** A person who makes such errors, noting times with a resolution. */
  static Noise ofPerson(
      double error,
      double resolutionSeconds,
      double miss,
      double strays,
      double late,
      double firstLate) {
    double sd = Math.sqrt(error * error + resolutionSeconds * resolutionSeconds / 12);
    double weight = late > 0 ? RELEASED_LATE : 1;
    return new Noise(sd, miss, strays, late, 0.03 + sd, firstLate, weight);
  }

  /** The same setting, so many times as common. */
  Noise times(double factor) {
    return new Noise(sd, miss, strays, late, lengthSd, firstLate, weight * factor);
  }

  /** The order of settings by how like one they are: in the timing error, then in the strays. */
  static Comparator<Noise> likeFirst(Noise one) {
    return Comparator.<Noise>comparingDouble(noise -> Math.abs(Math.log(noise.sd() / one.sd())))
        .thenComparingDouble(noise -> Math.abs(Math.log(noise.strays() / one.strays())));
  }

  /** The settings for blinks found in a light curve with this time between samples. */
  static List<Noise> ofSensor(double periodSeconds) {
    double grid = Math.max(periodSeconds / Math.sqrt(12), 0.002);
    List<Noise> settings = new ArrayList<>();
    for (double sd : new double[] {grid, 2.5 * grid}) {
      settings.add(new Noise(sd, 0.004, 0.05 / 60, 0, 2 * sd, 0, 1));
      settings.add(new Noise(sd, 0.06, 1 / 60.0, 0, 2 * sd, 0, 1));
    }
    return settings;
  }

  /** Logarithm of a noted pulse's chance over the rate of strays. */
  double logMatch() {
    return Math.log((1 - miss) / strays);
  }

  /** Logarithm of the chance that a pulse that was watched left no blink. */
  double logMissed() {
    return Math.log(miss);
  }

  /**
   * The same for a pulse that was watched with a chance only.
   *
   * @param watched the chance
   * @param logMissed the answer for a chance of 1, which is taken so often that it is kept
   */
  double logMissed(double watched, double logMissed) {
    if (watched >= 1) {
      return logMissed;
    }
    return watched <= 0 ? 0 : Math.log(1 - watched * (1 - miss));
  }

  /** Standard deviation of the noted length of a blink that lasts this long. */
  double lengthSd(double seconds) {
    double part = LENGTH_FRACTION * seconds;
    return Math.sqrt(lengthSd * lengthSd + part * part);
  }
}
