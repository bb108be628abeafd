package lampwise.rhythm;

/** Questions about rhythms as a whole. */
public final class Rhythms {
  private Rhythms() {}

  /**
   * Whether two rhythms describe the same light, however they are written. Both are turned into a
   * row of lights (blinks and steadies), each with its length and with what follows until the next
   * one, and the rows are compared:
   *
   * <ul>
   *   <li>A counted blink, a blink of a rate, and {@code steady} of the same length are the same
   *       light. A blink of unsaid length equals only another one of unsaid length and of the same
   *       word ({@code short}, {@code long}); those words say nothing where every blink that has
   *       one also has a length.
   *   <li>What follows is known as a time from start to start where it was said ({@code apart}, a
   *       rate), where it is a {@code dark} after a light of one known length, or where it is the
   *       only thing in the cycle that {@code every} leaves open; the length of a light, too, may
   *       be what {@code every} leaves open. Else the time that {@code every} gives stays a
   *       property of its own.
   *   <li>A rate for a time is the blinks that begin within that time, the first at once, where
   *       rate and time are single values and there are at most {@value Count#MOST} of them.
   *   <li>A cycle of known times that repeats a smaller one is the smaller one, and the end of a
   *       prelude that already is the cycle belongs to the cycle.
   *   <li>Without a prelude it makes no difference where the cycle begins; the order of unsaid
   *       pauses does, since the one that closes the cycle is the longest.
   *   <li>{@code once}, and a prelude after which the lamp stays dark, run from the first to the
   *       last light; dark before and after does not count.
   * </ul>
   *
   * <p>Numbers are the same within a fraction of 1e-9; ranges only if both borders are, where
   * {@code about} is the range that it means. A count in a range equals only the same range. The
   * answer is the same both ways round, and true for a rhythm and itself.
   *
   * @param a one rhythm
   * @param b the other
   * @return true if they describe the same light
   */
  public static boolean sameLamp(Rhythm a, Rhythm b) {
    return LampForm.of(a).same(LampForm.of(b));
  }
}
