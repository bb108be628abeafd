package lampwise.sim.score;

import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.RecordingException;
import lampwise.light.Window;
import lampwise.sim.Mix;
import lampwise.sim.Person;
import lampwise.sim.SimulationException;

/**
 * The best answer that taps allow, for recordings whose making is known: the person's settings and
 * the mix of what is shown. The density of the taps is summed over phase and clock on a fine grid,
 * and at each point over all ways to give taps to blinks. Slow, simple, and the yardstick for
 * decoders that know none of this.
 *
 * <p>It covers dark and steady lamps and rhythms that repeat; durations that a phrase gives as a
 * range, other than a rate, or not at all are drawn 256 times and averaged.
 */
public final class Reference {
  private final Mix mix;
  private final Candidates candidates;
  private final double sd;
  private final double missed;
  private final double strays;
  private final double late;
  private final double burstGap;

  /**
   * Prepares the answers for one person and one mix.
   *
   * @param mix what may be shown
   * @param person who watches
   * @throws SimulationException if the mix holds what the reference does not cover
   */
  public Reference(Mix mix, Person person) {
    this.mix = mix;
    // A person notes when a blink begins: how long it is lit does not matter.
    this.candidates = new Candidates(mix, 1);
    double rounding = person.roundingSeconds();
    this.sd = Math.sqrt(person.timingSd() * person.timingSd() + rounding * rounding / 12);
    this.missed = person.missed();
    this.strays = person.straysPerMinute() / 60;
    this.late = person.firstLateSeconds();
    this.burstGap = person.burstGapSeconds();
  }

  /**
   * The probability of each candidate.
   *
   * @param log the taps, with a window
   * @return probabilities of the sheet's states in its order, then {@code unlisted}, then {@code
   *     no-rhythm}; they sum to 1
   * @throws RecordingException if the log has no window
   */
  public double[] probabilities(BlinkLog log) {
    Window window = log.window().orElseThrow(() -> new RecordingException("the log has no window"));
    double[] taps = log.blinks().stream().mapToDouble(Blink::onSeconds).toArray();
    Sighting sighting =
        new Sighting(taps, window.fromSeconds(), window.toSeconds(), sd, missed, strays);
    double random = Double.NEGATIVE_INFINITY;
    for (double rate : mix.randomPerSecond()) {
      double density = sighting.logRandom(rate) - StrictMath.log(mix.randomPerSecond().size());
      random = Logs.add(random, density);
    }
    double unlit = sighting.logAllStrays();
    return candidates.probabilities(
        new Taps(sighting, late, burstGap), new Candidates.Plain(unlit, unlit, random));
  }
}
