package lampwise.sim.score;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import lampwise.decode.LampDecoder;
import lampwise.decode.Verdict;
import lampwise.file.FileException;
import lampwise.file.SheetReader;
import lampwise.light.Recording;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Seen;
import lampwise.sim.Act;
import lampwise.sim.LightSensor;
import lampwise.sim.Scene;
import lampwise.sim.Show;
import lampwise.sim.Simulator;

/**
 * Fast blinks before a sensor of five samples a second, at regular and uneven times, with and
 * without averaging: what they are decoded as. Each sheet has slow states that their samples show.
 *
 * <p>Run it as a program: {@code AliasStudy [count [seed]]}, so many recordings a kind and sensor.
 */
final class AliasStudy {
  private static final double SECONDS = 40;
  private static final double NO_AVERAGING = 0.0001;

  /** Jitter of the sample times, and what the sensor averages over, seconds. */
  private static final double[][] SENSORS = {
    {0, NO_AVERAGING},
    {0.02, NO_AVERAGING},
    {0, 0.02},
    {0.005, 0.05},
    {0, 0.15},
    {0.08, 0.15},
    {0, 0.2},
  };

  /** A lamp and the sheet that it is read with. */
  enum Kind {
    /** 4.9 a second is lit for 3 s of 10 s, as another state of the sheet. */
    LONG("rapid", "4.9 blinks per second", "slow", "1 blink of 3 s every 10 s", 0.06, 0.2041),
    /** 4 a second shows once a second. */
    SHORT("rapid", "1 blink every 0.25 s", "slow", "1 blink every 1 s", 0.03, 0.25),
    /** 6 a second shows once a second, too. */
    ABOVE("rapid", "6 blinks per second", "slow", "1 blink every 1 s", 0.03, 1 / 6.0),
    /** As LONG, but the sheet does not have it. */
    UNLISTED_LONG("", "", "slow", "1 blink of 3 s every 10 s", 0.06, 0.2041),
    /** As SHORT, but the sheet does not have it. */
    UNLISTED_SHORT("", "", "slow", "1 blink every 1 s", 0.03, 0.25),
    /** 16 a second, which the sheet does not have. */
    UNLISTED_FASTEST("", "", "slow", "1 blink every 1 s", 0.02, 1 / 16.0);

    private final String fast;
    private final String fastPhrase;
    private final String slow;
    private final String slowPhrase;
    private final double blink;
    private final double cycle;

    Kind(
        String fast,
        String fastPhrase,
        String slow,
        String slowPhrase,
        double blink,
        double cycle) {
      this.fast = fast;
      this.fastPhrase = fastPhrase;
      this.slow = slow;
      this.slowPhrase = slowPhrase;
      this.blink = blink;
      this.cycle = cycle;
    }

    boolean isListed() {
      return !fast.isEmpty();
    }

    private CodeSheet sheet() throws FileException {
      StringBuilder text = new StringBuilder("lampwise-sheet: 1\ntitle: Aliases\n");
      text.append("basis: invented\nclock: 5 %\nblink: ").append(blink).append(" s\nstates:\n");
      String[] states = {fast, fastPhrase, slow, slowPhrase, "dark", "dark"};
      for (int i = 0; i < states.length; i += 2) {
        if (!states[i].isEmpty()) {
          text.append("  ").append(states[i]).append(":\n    rhythm: ").append(states[i + 1]);
          text.append("\n    means: ").append(states[i]).append("\n    condition: other\n");
        }
      }
      return SheetReader.read("aliases", text.toString().getBytes(StandardCharsets.UTF_8));
    }
  }

  private AliasStudy() {}

  /** How often each verdict came, over all sensors; a state that was decoded by its name. */
  static Map<String, Integer> verdicts(Kind kind, int count, long seed)
      throws FileException, PhraseException {
    CodeSheet sheet = kind.sheet();
    String phrase = "1 blink every " + kind.cycle + " s";
    Act act =
        new Act(
            Double.NEGATIVE_INFINITY,
            kind.fast,
            new Show.Rhythmic(Phrase.parse(phrase)),
            Seen.ALWAYS);
    Scene scene =
        new Scene(
            new Window(0, SECONDS),
            List.of(act),
            List.of(),
            List.of(),
            false,
            new Scene.Clock(0, 0),
            OptionalDouble.of(kind.blink));
    Map<String, Integer> verdicts = new TreeMap<>();
    for (double[] each : SENSORS) {
      LightSensor sensor =
          LightSensor.fast()
              .with("rate-hz", 5)
              .with("jitter", each[0])
              .with("averaging-s", each[1])
              .with("lamp-lux", 40)
              .with("drift-lux", 0);
      for (int i = 0; i < count; i++) {
        Recording recording = Simulator.record(scene, sensor, seed + i).recording();
        Verdict verdict = new LampDecoder().decode(sheet, List.of(recording)).verdict();
        String word = verdict instanceof Verdict.Decoded state ? state.state() : verdict.word();
        verdicts.merge(word, 1, Integer::sum);
      }
    }
    return verdicts;
  }

  public static void main(String[] args) throws FileException, PhraseException {
    int count = args.length > 0 ? Integer.parseInt(args[0]) : 20;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1125;
    for (Kind kind : Kind.values()) {
      System.out.println(kind + " " + verdicts(kind, count, seed));
    }
  }
}
