package lampwise.sheet;

import java.util.Optional;
import lampwise.rhythm.Rhythm;

/**
 * One state of a unit's lamp.
 *
 * @param name the state's name: lower-case letters, digits and hyphens, starting with a letter
 * @param rhythm what the lamp shows
 * @param means what it means, in words
 * @param condition what it says about the unit in general terms
 * @param seen when the lamp can be seen; outside these times it is dark
 * @param weight how common the state is, relative to 1; over zero and finite
 * @param labelSays the label's own words
 * @param clearedBy what clears the state
 * @param lamp the lamp's colour where it differs from the sheet's
 */
public record LampState(
    String name,
    Rhythm rhythm,
    String means,
    Condition condition,
    Seen seen,
    double weight,
    Optional<String> labelSays,
    Optional<String> clearedBy,
    Optional<String> lamp) {
  /**
   * Checks the name and the weight.
   *
   * @throws SheetException if the name has other characters, is reserved, or the weight is not over
   *     zero and finite
   */
  public LampState {
    if (!isName(name)) {
      throw new SheetException(
          "a state's name must be lower-case letters, digits and hyphens, starting with a letter: "
              + name);
    }
    if (CodeSheet.isReserved(name)) {
      throw new SheetException("the name " + name + " is reserved");
    }
    if (!(weight > 0 && weight <= Double.MAX_VALUE)) {
      throw new SheetException("a weight must be a number over 0: " + weight);
    }
  }

  /**
   * A state with nothing optional said: seen always, weight 1.
   *
   * @param name its name
   * @param rhythm what the lamp shows
   * @param means what it means
   * @param condition the condition
   * @return the state
   */
  public static LampState of(String name, Rhythm rhythm, String means, Condition condition) {
    return new LampState(
        name,
        rhythm,
        means,
        condition,
        Seen.ALWAYS,
        1,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /**
   * Whether a text has the letters of a name.
   *
   * @param name the text
   * @return true for lower-case letters, digits and hyphens, starting with a letter
   */
  public static boolean isName(String name) {
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      boolean letter = c >= 'a' && c <= 'z';
      boolean inner = (c >= '0' && c <= '9') || c == '-';
      if (!letter && !(inner && i > 0)) {
        return false;
      }
    }
    return !name.isEmpty();
  }
}
