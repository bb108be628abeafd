package lampwise.sim.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.light.Window;
import lampwise.rhythm.Count;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sim.Act;
import lampwise.sim.Chance;
import lampwise.sim.DrawnRhythm;
import lampwise.sim.Labelled;
import lampwise.sim.Mix;
import lampwise.sim.Observer;
import lampwise.sim.PlainSheet;
import lampwise.sim.Scene;
import lampwise.sim.Show;
import lampwise.sim.Simulator;

/**
 * A sheet that counts blinks and says no duration: one group of two to six, and two groups of which
 * each has its turn on the sheet, too, so that only the pauses tell which comes first. Recordings
 * of it have every duration drawn as {@link DrawnRhythm} draws what is unsaid, and last a number of
 * cycles from any phase.
 */
final class UnsaidSheet {
  private static final List<String> PHRASES =
      List.of(
          "2 blinks repeating",
          "3 blinks repeating",
          "4 blinks repeating",
          "5 blinks repeating",
          "6 blinks repeating",
          "3 blinks then 2 blinks repeating",
          "2 blinks then 3 blinks repeating",
          "1 blink then 3 blinks repeating",
          "3 blinks then 1 blink repeating",
          "4 blinks then 2 blinks repeating",
          "2 blinks then 4 blinks repeating");

  static final CodeSheet SHEET = sheet();

  private UnsaidSheet() {}

  private static CodeSheet sheet() {
    List<LampState> states = new ArrayList<>();
    for (String phrase : PHRASES) {
      String name = "code-" + phrase.replaceAll("[^0-9]+", "-").replaceAll("-$", "");
      states.add(PlainSheet.state(name, phrase, Seen.ALWAYS, 1));
    }
    return PlainSheet.of(0.1, OptionalDouble.empty(), states);
  }

  /** The states alone, each as likely: nothing unlisted, no blinks in no order. */
  static Mix mix() {
    return new Mix(SHEET, List.of(), List.of(), 0, 0);
  }

  /**
   * A recording; the state goes round with the number.
   *
   * @param cycles how many cycles are watched
   */
  static Labelled recording(Observer observer, double cycles, long seed, int number) {
    Chance chance = Chance.of(seed).branch("unsaid").branch(number);
    LampState state = SHEET.states().get(number % SHEET.states().size());
    DrawnRhythm drawn =
        DrawnRhythm.of(state.rhythm(), OptionalDouble.empty(), chance.branch("values"));
    Act act =
        new Act(
            Double.NEGATIVE_INFINITY, state.name(), new Show.Rhythmic(said(drawn)), Seen.ALWAYS);
    Scene scene = Scene.of(SHEET, act, cycles * drawn.cycleSeconds());
    Scene exact =
        new Scene(
            new Window(0, scene.window().toSeconds()),
            scene.acts(),
            List.of(),
            List.of(),
            false,
            new Scene.Clock(0, 0),
            OptionalDouble.empty());
    return Simulator.record(exact, observer, chance);
  }

  /** The rhythm whose phrase says every duration that was drawn. */
  private static Rhythm said(DrawnRhythm drawn) {
    List<Part> parts = new ArrayList<>();
    List<DrawnRhythm.Pulse> cycle = drawn.cycle();
    for (int i = 0; i < cycle.size(); i++) {
      DrawnRhythm.Pulse pulse = cycle.get(i);
      double next = i + 1 < cycle.size() ? cycle.get(i + 1).onSeconds() : drawn.cycleSeconds();
      Length lit = Length.exactly(pulse.lengthSeconds());
      Length dark = Length.exactly(next - pulse.onSeconds() - pulse.lengthSeconds());
      parts.add(new Part.Blinks(Count.of(1), Size.UNSAID, Optional.of(lit), Optional.empty()));
      parts.add(new Part.Unlit(Optional.of(dark)));
    }
    return new Rhythm.Blinking(List.of(), new Cycle.Parts(parts, new Ending.Repeating()));
  }
}
