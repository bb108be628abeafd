package lampwise.sim;

import java.util.List;
import java.util.OptionalDouble;
import lampwise.rhythm.Rhythm;

/**
 * A rhythm all of whose durations have a value. Times are printed ones: a unit whose clock runs
 * slow takes longer.
 *
 * @param prelude what comes once before the cycle, in order of time
 * @param preludeSeconds from the start of the prelude to the start of the cycle; 0 without one
 * @param cycle the pulses of one cycle, in order of time; empty for a dark lamp
 * @param cycleSeconds from the start of one cycle to the start of the next; positive infinity if
 *     the lamp then stays as it is
 * @param repeats whether the cycle comes again; if not ({@code once}), the lamp is dark after it
 *     until the next trigger
 */
public record DrawnRhythm(
    List<Pulse> prelude,
    double preludeSeconds,
    List<Pulse> cycle,
    double cycleSeconds,
    boolean repeats) {
  /**
   * The lamp on once.
   *
   * @param onSeconds from the start of the prelude or cycle, zero or more
   * @param lengthSeconds over zero; positive infinity for a lamp that stays on
   */
  public record Pulse(double onSeconds, double lengthSeconds) {}

  /** Keeps copies of the lists. */
  public DrawnRhythm {
    prelude = List.copyOf(prelude);
    cycle = List.copyOf(cycle);
  }

  /**
   * Draws what a rhythm leaves open, within its limits.
   *
   * @param rhythm any rhythm
   * @param blinkSeconds the length of a blink where the rhythm gives none; drawn too if empty
   * @param chance where numbers come from
   * @return the rhythm with a value for every duration and count
   */
  public static DrawnRhythm of(Rhythm rhythm, OptionalDouble blinkSeconds, Chance chance) {
    return RhythmDraw.of(rhythm, blinkSeconds, chance);
  }
}
