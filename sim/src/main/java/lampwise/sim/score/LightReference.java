package lampwise.sim.score;

import java.util.Objects;
import lampwise.sim.LightSensor;
import lampwise.sim.Measured;
import lampwise.sim.Mix;
import lampwise.sim.SimulationException;

/**
 * The best answer that a light sensor's values allow to whoever knows all but the lamp: the light
 * of the room under every value (drift, flicker and shadows included), the true times of every
 * value, the lamp's brightness, the spread of the noise, and the mix of what is shown. The exact
 * Gaussian density of the values is summed over phase and clock on a fine grid, and for blinks in
 * no order over all ways to lay them. No decoder of files can know the room so well: the answer is
 * a bound.
 *
 * <p>It covers what {@link Reference} does, on sheets that say how long a blink is. Rounding counts
 * as noise of a twelfth of the squared step. Times of blinks are told apart to 0.3 ms, no finer.
 */
public final class LightReference {
  private static final double LEAST_SD_SECONDS = 0.0003;
  private static final double MOST_SD_SECONDS = 0.03;

  /** Parts of the clock's range within which a blink's length counts as one, with a rate. */
  private static final int CLOCK_PARTS = 7;

  /** The least dark after a blink in no order, as {@link lampwise.sim.Lamp} shows them. */
  private static final double RANDOM_DARK_SECONDS = 0.05;

  /** A room nearer to 0 lux than this many deviations would have its noise cut off there. */
  private static final double DARK_ROOM = 5;

  private final Mix mix;
  private final Candidates candidates;
  private final double blink;
  private final double lampLux;
  private final double noiseLux;
  private final double spread;
  private final double sd;

  /**
   * Prepares the answers for one sensor and one mix.
   *
   * @param mix what may be shown
   * @param sensor what watches
   * @throws SimulationException if the mix or the sensor holds what the reference does not cover: a
   *     sheet that does not say how long a blink is, or blinks that fill their spacing at a range
   *     of rates; a sensor with a full scale or ranges
   */
  public LightReference(Mix mix, LightSensor sensor) {
    this.mix = mix;
    this.blink =
        mix.sheet()
            .blinkSeconds()
            .orElseThrow(
                () ->
                    new SimulationException(
                        "the reference for light sensors needs a sheet that says how long a blink"
                            + " is"));
    for (String setting : new String[] {"full-scale-lux", "auto-range-lux"}) {
      if (setting(sensor, setting) > 0) {
        throw new SimulationException(
            "the reference for light sensors does not cover " + setting + " over 0");
      }
    }
    this.candidates = new Candidates(mix, CLOCK_PARTS);
    this.lampLux = setting(sensor, "lamp-lux");
    this.noiseLux = setting(sensor, "noise-lux");
    double step = setting(sensor, "step-lux");
    this.spread = Math.sqrt(noiseLux * noiseLux + step * step / 12);
    double averaging = setting(sensor, "averaging-s");
    // Both borders of a blink move the mean of a value, where they lie in an averaging.
    double share = Math.min(1, averaging * setting(sensor, "rate-hz"));
    double best = averaging * spread / lampLux / Math.sqrt(2 * share);
    this.sd = Math.max(LEAST_SD_SECONDS, Math.min(MOST_SD_SECONDS, best));
  }

  private static double setting(LightSensor sensor, String name) {
    return Objects.requireNonNull(sensor.settings().get(name), name);
  }

  /**
   * The probability of each candidate.
   *
   * @param measured what the sensor measured
   * @return probabilities of the sheet's states in its order, then {@code unlisted}, then {@code
   *     no-rhythm}; they sum to 1
   * @throws SimulationException if the room is so dark that its noise is cut off at 0 lux
   */
  public double[] probabilities(Measured measured) {
    for (Measured.Value value : measured.values()) {
      if (value.roomLux() < DARK_ROOM * noiseLux) {
        throw new SimulationException(
            "the reference for light sensors does not cover a room below 5 deviations of the noise");
      }
    }
    LightValues values = new LightValues(measured.values(), lampLux, spread);
    double lit = 0;
    for (int i = 0; i < values.size(); i++) {
      lit += values.worth(i, values.end(i) - values.begin(i));
    }
    RandomLight light =
        new RandomLight(
            values,
            measured.window().fromSeconds(),
            measured.window().toSeconds(),
            sd,
            blink,
            RANDOM_DARK_SECONDS);
    double random = Double.NEGATIVE_INFINITY;
    for (double rate : mix.randomPerSecond()) {
      random = Logs.add(random, light.log(rate) - StrictMath.log(mix.randomPerSecond().size()));
    }
    LightEvidence evidence = new LightEvidence(values, measured.window(), sd);
    Candidates.Plain plain = new Candidates.Plain(0, lit, random);
    double[] listed = candidates.listed(evidence, plain);
    double unlisted = candidates.unlisted(evidence, plain, Logs.most(random, listed));
    return candidates.probabilities(listed, unlisted, random);
  }
}
