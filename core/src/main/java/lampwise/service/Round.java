package lampwise.service;

import java.util.List;
import java.util.Map;

/**
 * A day's round: the worklist, the readings it rests on, and the recordings that it could not use.
 *
 * @param title the site; empty where nobody has named it
 * @param day the day, such as {@code 2026-11-25}
 * @param invented whether a sheet that was read against is an invented one, so that all this is for
 *     trying only
 * @param fixtures the fixtures of the site, in the list's order
 * @param readings the day's readings, by the ids of the fixtures, each fixture's in order
 * @param worklist the worklist
 * @param strays recordings that belong to no fixture of the list
 * @param refused recordings that could not be read
 */
public record Round(
    String title,
    String day,
    boolean invented,
    List<Fixture> fixtures,
    Map<String, List<LampRead>> readings,
    Worklist worklist,
    List<Unused> strays,
    List<Unused> refused) {
  /** Keeps copies. */
  public Round {
    fixtures = List.copyOf(fixtures);
    readings = Rules.copy(readings);
    strays = List.copyOf(strays);
    refused = List.copyOf(refused);
  }

  /**
   * A recording that was not used.
   *
   * @param recording the file's name
   * @param why what is wrong with it, one sentence
   */
  public record Unused(String recording, String why) {}
}
