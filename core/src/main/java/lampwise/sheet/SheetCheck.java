package lampwise.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Rhythms;

/** Looks for states of a sheet that cannot be told apart by the lamp. */
public final class SheetCheck {
  private SheetCheck() {}

  /**
   * The warnings about a sheet. Two rhythms are one if {@link Rhythms#sameLamp} says so, or if they
   * differ by no more than two ways of rounding: 0.02 s or 1 % of a time, whichever is less. Lit
   * states with lamps of different colours are told apart by the colour and give none. A sheet with
   * warnings is still a good sheet: the answer then names both states.
   *
   * @param sheet the sheet
   * @return the warnings, in the order of the first and then of the second state; often none
   */
  public static List<SheetWarning> warnings(CodeSheet sheet) {
    List<SheetWarning> warnings = new ArrayList<>();
    List<Optional<BlinkRing>> rings =
        sheet.states().stream()
            .map(state -> BlinkRing.of(state.rhythm(), sheet.blinkSeconds()))
            .toList();
    for (int i = 0; i < rings.size(); i++) {
      LampState first = sheet.states().get(i);
      for (int j = i + 1; j < rings.size(); j++) {
        LampState second = sheet.states().get(j);
        if (differInColour(first, second, sheet.lamp())) {
          continue;
        }
        OptionalInt start = startIn(rings.get(i), rings.get(j));
        if (start.orElse(0) > 0) {
          warnings.add(new SheetWarning.Rotation(first.name(), second.name()));
        } else if (start.isPresent() || Rhythms.sameLamp(first.rhythm(), second.rhythm())) {
          warnings.add(new SheetWarning.SameRhythm(first.name(), second.name()));
        }
      }
    }
    return List.copyOf(warnings);
  }

  private static boolean differInColour(
      LampState first, LampState second, Optional<String> sheetLamp) {
    Optional<String> one = first.lamp().or(() -> sheetLamp);
    Optional<String> other = second.lamp().or(() -> sheetLamp);
    boolean lit =
        !(first.rhythm() instanceof Rhythm.Dark) && !(second.rhythm() instanceof Rhythm.Dark);
    return lit && one.isPresent() && other.isPresent() && !one.equals(other);
  }

  private static OptionalInt startIn(Optional<BlinkRing> first, Optional<BlinkRing> second) {
    return first.isPresent() && second.isPresent()
        ? first.get().startIn(second.get())
        : OptionalInt.empty();
  }
}
