package lampwise.service;

import java.util.Optional;

/**
 * The units in which a site wants figures printed.
 *
 * @param pressure one of {@code psi}, {@code kPa}, {@code bar}; empty if not said
 * @param volume one of {@code gal}, {@code L}; empty if not said
 * @param flow one of {@code gpm}, {@code L/min}, {@code L/s}; empty if not said
 * @param temperature one of {@code F}, {@code C}; empty if not said
 */
public record SiteUnits(
    Optional<String> pressure,
    Optional<String> volume,
    Optional<String> flow,
    Optional<String> temperature) {
  /**
   * Nothing said.
   *
   * @return units that leave every choice open
   */
  public static SiteUnits unsaid() {
    return new SiteUnits(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }
}
