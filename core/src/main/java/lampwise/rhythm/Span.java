package lampwise.rhythm;

import java.util.Optional;

/**
 * What is known of a time: the borders between which it lies, or nothing.
 *
 * @param from seconds; NaN if nothing is known
 * @param to seconds; NaN if nothing is known
 */
record Span(double from, double to) {
  /** Within this fraction two times are the same. */
  private static final double SAME = 1e-9;

  static final Span UNSAID = new Span(Double.NaN, Double.NaN);
  static final Span ZERO = new Span(0, 0);

  static Span of(Length length) {
    return new Span(length.leastSeconds(), length.mostSeconds());
  }

  static Span of(Optional<Length> length) {
    return length.map(Span::of).orElse(UNSAID);
  }

  boolean isKnown() {
    return !Double.isNaN(from);
  }

  boolean isPoint() {
    return from == to;
  }

  boolean same(Span other) {
    return isKnown() == other.isKnown()
        && (!isKnown() || (near(from, other.from) && near(to, other.to)));
  }

  private static boolean near(double a, double b) {
    return a == b || Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b));
  }

  /** Both borders later by a known point. */
  Span plus(Span point) {
    return new Span(sum(from, point.from), sum(to, point.from));
  }

  /** Both borders earlier by a known point. */
  Span minus(Span point) {
    return new Span(sum(from, -point.from), sum(to, -point.from));
  }

  private static double sum(double a, double b) {
    return Double.isInfinite(a) ? a : Decimals.sum(a, b);
  }
}
