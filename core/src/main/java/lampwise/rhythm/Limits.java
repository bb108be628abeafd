package lampwise.rhythm;

/**
 * What eyes and lamps allow where a phrase does not say it. All values are chosen, none is from a
 * standard. Times are seconds; every border is included.
 */
public final class Limits {
  /** The shortest blink of unsaid length, seconds (chosen). */
  public static final double BLINK_LEAST_SECONDS = 0.03;

  /** The longest blink of unsaid length, seconds (chosen). */
  public static final double BLINK_MOST_SECONDS = 2;

  /** The least unsaid time from the start of one blink of a group to the next, seconds (chosen). */
  public static final double APART_LEAST_SECONDS = 0.12;

  /** The most unsaid time from the start of one blink of a group to the next, seconds (chosen). */
  public static final double APART_MOST_SECONDS = 3;

  /** The longest cycle of unsaid length, seconds (chosen). */
  public static final double CYCLE_MOST_SECONDS = 60;

  /** A long blink lasts at least this many times as long as a short one (chosen). */
  public static final double LONG_TO_SHORT_LEAST = 2;

  /**
   * An unsaid pause between groups lasts at least this many times the largest {@code apart} inside
   * them, and an unsaid pause that closes the cycle at least this many times any pause between
   * groups (chosen).
   */
  public static final double PAUSE_RATIO_LEAST = 1.5;

  private Limits() {}
}
