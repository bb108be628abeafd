package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A way of recording: how well blinks are noted, by a person who taps or by a light sensor. Built
 * by {@link #byHand} or {@link #bySensor}.
 *
 * @param timingSdSeconds timing error, standard deviation in seconds, over 0
 * @param missed chance that a blink is not noted, from 0 to below 1
 * @param straysPerSecond noted blinks that the lamp did not make, per second, 0 or more
 * @param firstLateSeconds how much later the first blink of a burst is noted than the others, 0 or
 *     more
 * @param ends whether the end of each blink is noted too
 * @param rateHz samples a second of a light sensor; empty for a person
 */
public record Watching(
    double timingSdSeconds,
    double missed,
    double straysPerSecond,
    double firstLateSeconds,
    boolean ends,
    OptionalDouble rateHz) {
  /** Nobody is without any error; smaller values are taken as these. */
  private static final double LEAST_SD = 0.002;

  /**
   * What part of what a decoder supposes is as the true noise: told from how often it reads pairs
   * of the bench's states right ({@code PlanStudy}).
   */
  private static final double LEARNED = 0.25;

  private static final double LEAST_MISSED = 0.001;
  private static final double LEAST_STRAYS = 0.01 / 60;

  /** Up to this many blinks a second people can tap along: common practice, no source. */
  public static final double FASTEST_TAPS_PER_SECOND = 4;

  /**
   * Checks the values.
   *
   * @throws PlanException if one is outside its range or not a number
   */
  public Watching {
    check("timing error", timingSdSeconds, 0, 5);
    check("chance of a miss", missed, 0, 0.9);
    check("strays a second", straysPerSecond, 0, 10);
    check("late first", firstLateSeconds, 0, 5);
    if (rateHz.isPresent()) {
      check("samples a second", rateHz.getAsDouble(), 0.1, 1e6);
    }
  }

  private static void check(String what, double value, double least, double most) {
    if (!(value >= least && value <= most)) {
      throw new PlanException(what + " is " + value + "; expected " + least + " to " + most);
    }
  }

  /**
   * A person who taps.
   *
   * @param timingSdSeconds timing error, standard deviation in seconds, 0 to 5
   * @param missed chance that a blink is not noted, 0 to 0.9
   * @param straysPerSecond taps without a blink, per second, 0 to 10
   * @param firstLateSeconds how much later the first blink of a burst is noted, 0 to 5
   * @return the way of recording
   * @throws PlanException if a value is outside its range or not a number
   */
  public static Watching byHand(
      double timingSdSeconds, double missed, double straysPerSecond, double firstLateSeconds) {
    return new Watching(
        timingSdSeconds, missed, straysPerSecond, firstLateSeconds, false, OptionalDouble.empty());
  }

  /**
   * A light sensor before a lamp that stands out: an edge lies anywhere between two samples.
   *
   * @param rateHz samples a second, 0.1 to a million
   * @return the way of recording
   * @throws PlanException if the rate is outside its range or not a number
   */
  public static Watching bySensor(double rateHz) {
    check("samples a second", rateHz, 0.1, 1e6);
    double sd = 1 / rateHz / Math.sqrt(12);
    return new Watching(sd, 0.004, 0.05 / 60, 0, true, OptionalDouble.of(rateHz));
  }

  /**
   * The same, the end of each blink noted too.
   *
   * @return the way of recording
   */
  public Watching withEnds() {
    return new Watching(timingSdSeconds, missed, straysPerSecond, firstLateSeconds, true, rateHz);
  }

  /**
   * The settings that a decoder supposes, which is not told how well is watched; the true one among
   * them as often as it gets near it by finer settings.
   */
  List<Noise> supposed() {
    List<Noise> settings =
        new ArrayList<>(
            rateHz.isPresent()
                ? Noise.ofSensor(resolutionSeconds())
                : Noise.ofPeople(resolutionSeconds(), ends));
    double others = settings.stream().mapToDouble(Noise::weight).sum();
    settings.add(noise().times(LEARNED / (1 - LEARNED) * others));
    return settings;
  }

  /** How finely times are noted, seconds: a light sensor's as its samples, a person's chosen. */
  double resolutionSeconds() {
    return rateHz.isPresent() ? 1 / rateHz.getAsDouble() : 0.01;
  }

  /** How well is watched, as a setting of the noise. */
  Noise noise() {
    double sd = Math.max(timingSdSeconds, LEAST_SD);
    double miss = Math.max(missed, LEAST_MISSED);
    double strays = Math.max(straysPerSecond, LEAST_STRAYS);
    double rounding = rateHz.isPresent() ? 0 : resolutionSeconds();
    return Noise.ofPerson(sd, rounding, miss, strays, 0, firstLateSeconds);
  }
}
