package lampwise.sheet;

import java.util.Optional;

/** What to do at the unit to tell two states apart that the lamp alone cannot. */
public final class TellApart {
  /** What tells apart whether a unit's power is at fault. */
  public static final String MEASURE_POWER =
      "measure the cells or the supply under load at the unit's connector";

  private TellApart() {}

  /**
   * The check that tells two states apart, by when they are seen; where that is the same and one of
   * them is about power, by measuring it. Common practice, no source.
   *
   * @param first one state
   * @param second the other
   * @return one line; empty if neither the times at which they are seen nor their conditions lead
   *     to a check
   */
  public static Optional<String> check(LampState first, LampState second) {
    if (first.seen() != second.seen()) {
      LampState narrow = first.seen() == Seen.ALWAYS ? second : first;
      return provoke(narrow.seen())
          .map(what -> what + ": " + narrow.name() + " is seen only " + when(narrow.seen()));
    }
    boolean power = isPower(first) != isPower(second);
    return power ? Optional.of(MEASURE_POWER) : Optional.empty();
  }

  private static boolean isPower(LampState state) {
    return state.condition() == Condition.POWER_LOW || state.condition() == Condition.POWER_MISSING;
  }

  /**
   * What brings about the time at which a state is seen.
   *
   * @param seen the time
   * @return what to do, one line; empty for {@code ALWAYS}
   */
  public static Optional<String> provoke(Seen seen) {
    return switch (seen) {
      case ALWAYS -> Optional.empty();
      case IDLE, TARGET, AFTER_TARGET ->
          Optional.of("hold a hand before the sensor for 5 s, then stay away for 15 s");
      case AFTER_FLUSH, WHILE_RUNNING ->
          Optional.of("look into the bowl or basin, then let it flush once");
      case AFTER_POWER_UP ->
          Optional.of("take the power off for 60 s, stand clear, and put it on again");
      case AFTER_BUTTON -> Optional.of("look into the bowl, then press the button once");
      case SET_UP -> Optional.of("start the setting as the unit's own papers say");
    };
  }

  /**
   * When a state is seen, in words.
   *
   * @param seen the time
   * @return for example {@code while a hand is there}
   */
  public static String when(Seen seen) {
    return switch (seen) {
      case ALWAYS -> "at any time";
      case IDLE -> "while nobody is there";
      case TARGET -> "while a hand is there";
      case AFTER_TARGET -> "after a hand has left";
      case AFTER_FLUSH -> "after a flush";
      case WHILE_RUNNING -> "while water runs";
      case AFTER_POWER_UP -> "after power comes back";
      case AFTER_BUTTON -> "after the button";
      case SET_UP -> "during set-up";
    };
  }
}
