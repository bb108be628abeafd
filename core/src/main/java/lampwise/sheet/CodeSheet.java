package lampwise.sheet;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The table of one kind of unit.
 *
 * @param title what the unit is
 * @param basis where the entries come from
 * @param note anything worth knowing about the sheet; may be empty
 * @param kinds what the unit works; may be empty
 * @param power what it runs on; may be empty
 * @param cells the cells it takes, for the kit list
 * @param lamp the lamp's colour
 * @param clockTolerance how far a unit's clock may run from the printed times, as a fraction from 0
 *     to below 0.5
 * @param blinkSeconds the length of a blink where a phrase gives none, over zero; empty if unknown
 * @param states the states in the sheet's order, at least one, no name twice
 */
public record CodeSheet(
    String title,
    Basis basis,
    Optional<String> note,
    List<FixtureKind> kinds,
    List<Power> power,
    Optional<String> cells,
    Optional<String> lamp,
    double clockTolerance,
    OptionalDouble blinkSeconds,
    List<LampState> states) {
  /** The name under which a rhythm that no state has is answered. */
  public static final String UNLISTED = "unlisted";

  /** The name under which blinks in no order are answered. */
  public static final String NO_RHYTHM = "no-rhythm";

  /** The clock tolerance of a sheet that says none. */
  public static final double DEFAULT_CLOCK = 0.10;

  /**
   * Keeps copies of the lists and checks the values.
   *
   * @throws SheetException if there is no state, a name stands twice, or a number is out of range
   */
  public CodeSheet {
    kinds = List.copyOf(kinds);
    power = List.copyOf(power);
    states = List.copyOf(states);
    if (!(clockTolerance >= 0 && clockTolerance < 0.5)) {
      throw new SheetException(
          "the clock tolerance must be 0 % to below 50 %: " + clockTolerance * 100 + " %");
    }
    if (blinkSeconds.isPresent()
        && !(blinkSeconds.getAsDouble() > 0 && blinkSeconds.getAsDouble() <= 60)) {
      throw new SheetException(
          "the length of a blink must be over 0 s and at most 60 s: " + blinkSeconds.getAsDouble());
    }
    if (states.isEmpty()) {
      throw new SheetException("a code sheet needs at least one state");
    }
    Set<String> names = new HashSet<>();
    for (LampState state : states) {
      if (!names.add(state.name())) {
        throw new SheetException("the state " + state.name() + " stands twice");
      }
    }
  }

  /**
   * A sheet with nothing optional said and the default clock tolerance.
   *
   * @param title what the unit is
   * @param basis where the entries come from
   * @param states the states
   * @return the sheet
   */
  public static CodeSheet of(String title, Basis basis, List<LampState> states) {
    return new CodeSheet(
        title,
        basis,
        Optional.empty(),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        DEFAULT_CLOCK,
        OptionalDouble.empty(),
        states);
  }

  /**
   * Whether a name is kept for answers, so that no state may have it.
   *
   * @param name a name
   * @return true for {@link #UNLISTED} and {@link #NO_RHYTHM}
   */
  public static boolean isReserved(String name) {
    return name.equals(UNLISTED) || name.equals(NO_RHYTHM);
  }

  /**
   * Finds a state.
   *
   * @param name its name
   * @return the state, or empty if the sheet has none of that name
   */
  public Optional<LampState> state(String name) {
    return states.stream().filter(state -> state.name().equals(name)).findFirst();
  }

  /**
   * Whether the sheet is made up, so that nothing read against it says anything about a real unit.
   *
   * @return true for an invented sheet
   */
  public boolean isInvented() {
    return basis == Basis.INVENTED;
  }
}
