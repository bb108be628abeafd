package lampwise.decode;

import java.util.Optional;

/**
 * One way in which a candidate may show itself, with what its runs need under one noise setting.
 */
final class Shown {
  private final Way way;
  private final Optional<Noted> noted;
  private final Optional<Density> density;
  private final double sd;
  private final boolean timed;

  /**
   * Prepares.
   *
   * @param tolerance how far the unit's clock may run from the printed times, as a fraction
   */
  Shown(Way way, Evidence evidence, Noise noise, double tolerance) {
    this.way = way;
    this.noted = way.train().map(train -> new Noted(train, evidence, noise));
    this.density = way.train().map(train -> new Density(train, noise.sd()));
    this.sd = noise.sd();
    this.timed =
        way.train().map(train -> train.high() - train.low() <= 2 * tolerance + 1e-9).orElse(false);
  }

  Way way() {
    return way;
  }

  /** Whether it is a pulse train. */
  boolean isTrain() {
    return way.train().isPresent();
  }

  Train train() {
    return way.train().orElseThrow();
  }

  Noted noted() {
    return noted.orElseThrow();
  }

  Density density() {
    return density.orElseThrow();
  }

  /** Timing error, seconds. */
  double sd() {
    return sd;
  }

  /** Whether nothing but the clock changes the times of its train. */
  boolean timed() {
    return timed;
  }
}
