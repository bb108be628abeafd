package lampwise.sim.check;

import java.util.Locale;

/** How far two figures may be from each other where a law calls them the same. */
public enum Tolerance {
  /** Of the sum of all probabilities from 1. */
  SUM(1e-9, ""),
  /** Of a probability where only the order or the names of the states differ. */
  ORDER(1e-9, ""),
  /** Of a probability where times were shifted, which then keep fewer digits. */
  SHIFT(1e-5, ""),
  /** Of a time in the answer where times were shifted, after shifting it back. */
  SHIFT_SECONDS(1e-6, " s"),
  /** Of a duration in an observed phrase, as a fraction or in seconds, whichever is more. */
  PHRASE(0.02, ""),
  /** Of the expected probability of the truth, which the look at more of the lamp may cost. */
  MORE(0.002, "");

  private final double most;
  private final String unit;

  Tolerance(double most, String unit) {
    this.most = most;
    this.unit = unit;
  }

  /**
   * The tolerance as a number.
   *
   * @return the most that the difference may be
   */
  public double most() {
    return most;
  }

  /**
   * Whether two figures are the same.
   *
   * @param a one
   * @param b the other
   * @return true if they differ by no more than the tolerance; false if one is NaN
   */
  public boolean holds(double a, double b) {
    return a == b || Math.abs(a - b) <= most;
  }

  /** The name and the number: {@code tolerance shift-seconds: 1.0E-6 s}. */
  @Override
  public String toString() {
    String name = name().toLowerCase(Locale.ROOT).replace('_', '-');
    return "tolerance " + name + ": " + most + unit;
  }
}
