package lampwise.service;

import java.util.List;
import lampwise.sheet.FixtureKind;

/**
 * One line of what ends every visit.
 *
 * @param text what to do or to write down
 * @param kinds the kinds of fixture it is for; empty for all
 * @param opened only after one of these was opened; empty for always
 */
public record ClosingStep(String text, List<FixtureKind> kinds, List<Opening> opened) {
  /** Keeps copies of the lists. */
  public ClosingStep {
    kinds = List.copyOf(kinds);
    opened = List.copyOf(opened);
  }

  /**
   * Whether it is due.
   *
   * @param kind the kind of fixture
   * @param openings what was opened during the visit
   * @return true if neither rules it out
   */
  public boolean isDue(FixtureKind kind, List<Opening> openings) {
    return (kinds.isEmpty() || kinds.contains(kind))
        && (opened.isEmpty() || opened.stream().anyMatch(openings::contains));
  }
}
