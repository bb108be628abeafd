package lampwise.sim.score;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import lampwise.decode.Candidate;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.decode.RecordingPlan;
import lampwise.decode.Watching;
import lampwise.file.FileException;
import lampwise.file.SheetReader;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sim.Chance;
import lampwise.sim.Person;
import lampwise.sim.Presets;
import lampwise.sim.Scenes;
import lampwise.sim.Simulator;

/**
 * Whether a plan keeps its promise: recordings as long as it names tell a pair apart in 99 % of all
 * cases, recordings of 70 % of that do not. The decoder, which does not know the noise, judges.
 */
final class PlanStudy {
  /** Of the length that a plan names, a recording of this part is too short. */
  static final double SHORT = 0.7;

  private final CodeSheet sheet;
  private final Person person;
  private final long seed;

  PlanStudy(CodeSheet sheet, Person person, long seed) {
    this.sheet = sheet;
    this.person = person;
    this.seed = seed;
  }

  RecordingPlan plan() {
    return new RecordingPlan(
        sheet,
        Watching.byHand(
            person.timingSd(),
            person.missed(),
            person.straysPerMinute() / 60,
            person.firstLateSeconds()));
  }

  /** The share of recordings, half of them of each state, in which the truth is the likelier. */
  double told(LampState first, LampState second, double seconds, int count) {
    long right =
        IntStream.range(0, count)
            .parallel()
            .filter(
                i ->
                    i % 2 == 0
                        ? isTold(first, second, seconds, i)
                        : isTold(second, first, seconds, i))
            .count();
    return right / (double) count;
  }

  private boolean isTold(LampState truth, LampState other, double seconds, int number) {
    Chance chance = Chance.of(seed).branch(truth.name()).branch(other.name()).branch(number);
    Reading reading =
        new LampDecoder()
            .decode(
                sheet,
                List.of(
                    Simulator.record(
                            Scenes.showing(sheet, truth, seconds, chance.branch("scene")),
                            person,
                            chance)
                        .recording()));
    return probability(reading, truth) > probability(reading, other);
  }

  private static double probability(Reading reading, LampState state) {
    return reading.candidates().stream()
        .filter(c -> c.state().equals(state.name()))
        .mapToDouble(Candidate::probability)
        .sum();
  }

  /**
   * Prints a line for each pair of states that are always seen.
   *
   * @param args an observer's name, how many recordings a pair and length, a seed, and the file of
   *     a sheet if it is not the bench's
   */
  public static void main(String[] args) throws IOException, FileException {
    CodeSheet sheet =
        args.length > 3
            ? SheetReader.read(args[3], Files.readAllBytes(Path.of(args[3])))
            : Bench.sheet();
    Person person = (Person) Presets.named(args[0]);
    int count = Integer.parseInt(args[1]);
    PlanStudy study = new PlanStudy(sheet, person, Long.parseLong(args[2]));
    RecordingPlan plan = study.plan();
    int kept = 0;
    int needed = 0;
    int pairs = 0;
    for (RecordingPlan.Pair pair : plan.pairs(() -> {})) {
      LampState first = sheet.state(pair.first()).orElseThrow();
      LampState second = sheet.state(pair.second()).orElseThrow();
      if (pair.seconds().isEmpty() || first.seen() != Seen.ALWAYS || second.seen() != Seen.ALWAYS) {
        continue;
      }
      double seconds = pair.seconds().getAsDouble();
      double whole = study.told(first, second, seconds, count);
      double part = study.told(first, second, SHORT * seconds, count);
      pairs++;
      kept += whole >= RecordingPlan.SURE ? 1 : 0;
      needed += part < RecordingPlan.SURE ? 1 : 0;
      System.out.printf(
          Locale.ROOT,
          "%s - %s: %.1f s, told %.2f %%; %.1f s, told %.2f %%%n",
          pair.first(),
          pair.second(),
          seconds,
          100 * whole,
          SHORT * seconds,
          100 * part);
    }
    System.out.printf(
        Locale.ROOT, "%d pairs: %d told, %d not told by 70 %%%n", pairs, kept, needed);
  }
}
