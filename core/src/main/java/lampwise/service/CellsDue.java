package lampwise.service;

import java.util.List;

/**
 * A fixture whose cells are due.
 *
 * @param fixture the fixture
 * @param since the day of its last cells; empty if that is not known
 * @param days how many days ago that was; -1 if that is not known
 */
public record CellsDue(Fixture fixture, String since, long days) {
  /** Whether parts are cells, other than back-up cells. */
  static boolean areCells(List<String> parts) {
    return parts.contains("cell set");
  }
}
