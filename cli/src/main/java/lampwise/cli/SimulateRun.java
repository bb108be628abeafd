package lampwise.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import lampwise.file.LampwiseLog;
import lampwise.file.LightCsv;
import lampwise.file.LightShape;
import lampwise.light.LightCurve;
import lampwise.light.Recording;
import lampwise.light.RecordingException;
import lampwise.sheet.CodeSheet;
import lampwise.sim.Chance;
import lampwise.sim.Labelled;
import lampwise.sim.Scene;
import lampwise.sim.SimulationException;
import lampwise.sim.Simulator;

/** One run of the command simulate: makes one recording after another and writes each. */
final class SimulateRun {
  private static final int LEAST_DIGITS = 3;
  private static final String INVENTED = "  [invented sheet]";

  private final Surroundings here;
  private final CodeSheet sheet;
  private final SceneOptions scenes;
  private final ObserverOption observer;
  private final LightShape shape;
  private final long seed;

  SimulateRun(
      Surroundings here,
      CodeSheet sheet,
      SceneOptions scenes,
      ObserverOption observer,
      LightShape shape,
      long seed) {
    this.here = here;
    this.sheet = sheet;
    this.scenes = scenes;
    this.observer = observer;
    this.shape = shape;
    this.seed = seed;
  }

  /** A recording that was made, and as a file. */
  private static final class Made {
    private final String state;
    private final String ending;
    private final byte[] content;
    private final Labelled labelled;

    Made(String state, String ending, byte[] content, Labelled labelled) {
      this.state = state;
      this.ending = ending;
      this.content = content;
      this.labelled = labelled;
    }
  }

  /**
   * Writes recordings and truths into a folder.
   *
   * @param all how many recordings
   * @throws UsageException if the settings cannot be, or files stand in the way; nothing is then
   *     written
   */
  int write(String folder, int all, boolean force) throws UsageException {
    Progress progress = new Progress(here, all, System::nanoTime);
    String first = "";
    String last = "";
    try (MadeUpFiles files = MadeUpFiles.in(here, folder, force)) {
      for (int number = 1; number <= all; number++) {
        Made made = make(number);
        last = fileName(made, number, all);
        first = number == 1 ? last : first;
        files.add(last, made.content, truth(made, number, last));
        progress.done(number);
      }
      files.finish();
    } catch (IOException e) {
      progress.end();
      String why = e.getMessage() == null ? "" : " (" + e.getMessage() + ")";
      here.err().println(Layout.clean(folder + ": cannot be written" + why));
      return Main.REFUSED;
    } finally {
      progress.end();
    }
    say(folder, all, first, last);
    return Main.DONE;
  }

  /**
   * Prints the first recording.
   *
   * @throws UsageException if the settings cannot be
   */
  int print() throws UsageException {
    Made made = make(1);
    String text = new String(made.content, UTF_8);
    if (!Arrays.equals(text.getBytes(UTF_8), made.content) || text.indexOf('\0') >= 0) {
      throw new UsageException("--out - prints UTF-8; a file of this shape needs a folder");
    }
    here.out().print(text);
    if (sheet.isInvented()) {
      here.err().println(made.state + " by " + observer.name() + INVENTED);
    }
    return Main.DONE;
  }

  private Made make(int number) throws UsageException {
    try {
      Chance chance = Chance.of(seed).branch(number);
      Scene scene = scenes.scene(number, chance.branch("scene"));
      Labelled labelled = Simulator.record(scene, observer.observer(), chance);
      String state = scene.acts().get(0).state();
      Recording recording = labelled.recording();
      return recording instanceof LightCurve curve
          ? new Made(state, ".csv", shape.write(curve, decimals()), labelled)
          : new Made(
              state, ".log", LampwiseLog.write(List.of(recording)).getBytes(UTF_8), labelled);
    } catch (SimulationException | RecordingException e) {
      throw new UsageException(Main.oneLine(String.valueOf(e.getMessage())));
    }
  }

  /** The decimals of a light level. */
  private int decimals() {
    return LightCsv.decimalsOf(observer.observer().settings().getOrDefault("step-lux", 0.0));
  }

  private String fileName(Made made, int number, int all) {
    StringBuilder digits = new StringBuilder(Integer.toString(number));
    while (digits.length() < Math.max(LEAST_DIGITS, Integer.toString(all).length())) {
      digits.insert(0, '0');
    }
    return made.state + "-" + observer.name() + "-" + digits + made.ending;
  }

  private String truth(Made made, int number, String file) {
    return TruthJson.line(
        new TruthJson.Source(
            file,
            seed,
            number,
            sheet,
            observer.name(),
            observer.notedAs(),
            observer.observer().settings()),
        made.labelled.truth());
  }

  private void say(String folder, int all, String first, String last) {
    String path = Layout.clean(folder.endsWith("/") ? folder : folder + "/");
    here.out()
        .println(
            Words.count(all, "recording")
                + " of "
                + scenes.said()
                + " by "
                + observer.name()
                + (sheet.isInvented() ? INVENTED : ""));
    here.out().println("  " + path + first + (all > 1 ? " to " + last : ""));
    here.out().println("  " + path + MadeUpFiles.TRUTH);
  }
}
