package lampwise.service;

import java.util.Locale;
import java.util.Optional;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/**
 * A fixture of a site, as its list has it. Texts that are not known are empty.
 *
 * @param id its id, not blank
 * @param place where it is
 * @param kind the kind of fixture
 * @param power what it runs on; empty if that is not known
 * @param cells its cells: {@code 4 x LR6}
 * @param sheet where its code sheet is, as the list writes it
 * @param valveRating what the valve is rated for: {@code 4.8 L}
 * @param fixtureRating what the bowl, urinal or basin is rated for
 * @param onlyAccessible whether it is the only accessible one
 * @param lastCells the day of its last cells, {@code 2026-03-09}
 * @param riserValve where its riser valve is
 * @param complaint what is said to be wrong with it today; empty if nothing is
 */
public record Fixture(
    String id,
    String place,
    FixtureKind kind,
    Optional<Power> power,
    String cells,
    String sheet,
    String valveRating,
    String fixtureRating,
    boolean onlyAccessible,
    String lastCells,
    String riserValve,
    Optional<Complaint> complaint) {
  /**
   * Trims all texts and checks what every fixture must have.
   *
   * @throws GuideException if the id is blank, a text holds a line end or another control
   *     character, or the day of the cells is no day
   */
  public Fixture {
    id = text(id);
    place = text(place);
    cells = text(cells);
    sheet = text(sheet);
    valveRating = text(valveRating);
    fixtureRating = text(fixtureRating);
    lastCells = text(lastCells);
    riserValve = text(riserValve);
    Rules.that(!id.isEmpty(), "a fixture needs an id");
    Rules.that(
        lastCells.isEmpty() || isDay(lastCells),
        "the day of the last cells must be like 2026-03-09: " + lastCells);
  }

  private static String text(String text) {
    Rules.that(
        text.chars().noneMatch(Character::isISOControl),
        "a text of a fixture must be on one line, without control characters");
    return text.strip();
  }

  /**
   * Whether a text is a day of the calendar.
   *
   * @param text the text
   * @return true for one like {@code 2026-03-09}
   */
  public static boolean isDay(String text) {
    return LocalTime.isOne(text + "T00:00");
  }

  /**
   * The name by which it is found: ids that differ only in case are one.
   *
   * @return the id in lower case
   */
  public String key() {
    return id.toLowerCase(Locale.ROOT);
  }
}
