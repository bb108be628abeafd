package lampwise.sheet;

/** Something about two states of a sheet that makes them hard or impossible to tell apart. */
public sealed interface SheetWarning permits SheetWarning.SameRhythm, SheetWarning.Rotation {
  /**
   * The state that stands first in the sheet.
   *
   * @return its name
   */
  String first();

  /**
   * The other state.
   *
   * @return its name
   */
  String second();

  /**
   * The warning in words.
   *
   * @return one line
   */
  String message();

  /**
   * Two states show the same light.
   *
   * @param first the state that stands first in the sheet
   * @param second the other state
   */
  record SameRhythm(String first, String second) implements SheetWarning {
    @Override
    public String message() {
      return first + " and " + second + " have one rhythm; the lamp alone cannot tell them apart";
    }
  }

  /**
   * Two states show the same cycle from another start, so that only its first blink could tell them
   * apart.
   *
   * @param first the state that stands first in the sheet
   * @param second the other state
   */
  record Rotation(String first, String second) implements SheetWarning {
    @Override
    public String message() {
      return first
          + " and "
          + second
          + " have one cycle with another start; once it repeats the lamp cannot tell them apart";
    }
  }
}
