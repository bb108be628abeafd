package lampwise.cli;

import java.util.function.LongSupplier;

/**
 * Says on standard error how far a long run is: nothing in its first two seconds, nothing where
 * nobody looks, and the line is gone when it ends.
 */
final class Progress {
  private static final long FIRST_NANOS = 2_000_000_000L;
  private static final long NEXT_NANOS = 500_000_000L;

  private final Surroundings here;
  private final int all;
  private final LongSupplier nanos;
  private long due;
  private int width;

  /**
   * Starts to wait.
   *
   * @param all how many steps the run has
   * @param nanos a clock
   */
  Progress(Surroundings here, int all, LongSupplier nanos) {
    this.here = here;
    this.all = all;
    this.nanos = nanos;
    due = nanos.getAsLong() + FIRST_NANOS;
  }

  /** Says how many steps are done, if it is time to. */
  void done(int steps) {
    if (here.terminal() && nanos.getAsLong() - due >= 0) {
      due = nanos.getAsLong() + NEXT_NANOS;
      show(steps + " of " + all);
    }
  }

  /** Takes the line away. */
  void end() {
    if (width > 0) {
      show("");
      here.err().print('\r');
      here.err().flush();
    }
  }

  private void show(String text) {
    here.err().print('\r' + Layout.padded(text, width));
    here.err().flush();
    width = Math.max(width, text.length());
  }
}
