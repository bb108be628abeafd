package lampwise.decode;

import java.util.OptionalDouble;

/** What to do next: record once more, or check something. */
public sealed interface Next permits Next.Watch, Next.Check {
  /**
   * Record once more.
   *
   * @param seconds how long, over zero
   * @param rateHz how many samples a second at least; empty where it does not matter
   * @param target whether somebody should stand before it: {@code none}, {@code all} or {@code any}
   * @param how one sentence on how to do it
   */
  record Watch(double seconds, OptionalDouble rateHz, String target, String how) implements Next {}

  /**
   * Check something.
   *
   * @param ask what to do and look for, one sentence
   * @param minutes about how long it takes
   */
  record Check(String ask, double minutes) implements Next {}
}
