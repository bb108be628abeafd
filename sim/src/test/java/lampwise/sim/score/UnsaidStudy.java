package lampwise.sim.score;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.light.BlinkLog;
import lampwise.sheet.LampState;
import lampwise.sim.Labelled;
import lampwise.sim.Observer;
import lampwise.sim.Person;
import lampwise.sim.Presets;

/**
 * How well counted codes are read whose durations nobody says. Arguments: observer, recordings,
 * seed, cycles, and {@code reference} to ask the reference decoder, too.
 */
final class UnsaidStudy {
  private UnsaidStudy() {}

  /**
   * What was counted.
   *
   * @param right how many likeliest candidates are the truth
   * @param decoded how many are decoded
   * @param misread how many of those are wrong
   * @param wrong truth and likeliest candidate of the others, with how many
   * @param seconds how long decoding took
   */
  record Count(int right, int decoded, int misread, Map<String, Integer> wrong, double seconds) {}

  static Count count(Observer observer, int recordings, long seed, double cycles, boolean print) {
    int right = 0;
    int decoded = 0;
    int misread = 0;
    Map<String, Integer> wrong = new TreeMap<>();
    long nanos = 0;
    for (int i = 0; i < recordings; i++) {
      Labelled labelled = UnsaidSheet.recording(observer, cycles, seed, i);
      long start = System.nanoTime();
      Reading reading = new LampDecoder().decode(UnsaidSheet.SHEET, List.of(labelled.recording()));
      nanos += System.nanoTime() - start;
      Outcome outcome = Outcome.of(labelled.truth().state(), reading);
      right += outcome.isRight() ? 1 : 0;
      decoded += outcome.answer().isPresent() ? 1 : 0;
      misread += outcome.isMisread() ? 1 : 0;
      if (!outcome.isRight()) {
        wrong.merge(outcome.truth() + " as " + outcome.top(), 1, Integer::sum);
        if (print) {
          System.out.printf(Locale.ROOT, "%d %s: %s%n", i, outcome, times(labelled));
        }
      }
    }
    return new Count(right, decoded, misread, wrong, nanos / 1e9);
  }

  private static String times(Labelled labelled) {
    StringBuilder text = new StringBuilder();
    BlinkLog log = (BlinkLog) labelled.recording();
    log.blinks().forEach(b -> text.append(String.format(Locale.ROOT, " %.2f", b.onSeconds())));
    return text + " of " + log.window().orElseThrow().lengthSeconds();
  }

  private static int referenceRight(Person person, int recordings, long seed, double cycles) {
    Reference reference = new Reference(UnsaidSheet.mix(), person);
    List<LampState> states = UnsaidSheet.SHEET.states();
    int right = 0;
    for (int i = 0; i < recordings; i++) {
      Labelled labelled = UnsaidSheet.recording(person, cycles, seed, i);
      double[] chances = reference.probabilities((BlinkLog) labelled.recording()).told();
      int top = 0;
      for (int k = 1; k < states.size(); k++) {
        top = chances[k] > chances[top] ? k : top;
      }
      right += states.get(top).name().equals(labelled.truth().state()) ? 1 : 0;
    }
    return right;
  }

  public static void main(String[] arguments) {
    Observer observer = Presets.named(arguments[0]);
    int recordings = Integer.parseInt(arguments[1]);
    long seed = Long.parseLong(arguments[2]);
    double cycles = Double.parseDouble(arguments[3]);
    Count count = count(observer, recordings, seed, cycles, true);
    count.wrong().forEach((what, many) -> System.out.println(many + " " + what));
    System.out.printf(
        Locale.ROOT,
        "%s, %d recordings of %s cycles, seed %d: %d right, %d decoded, %d misread; %.1f ms each%n",
        arguments[0],
        recordings,
        arguments[3],
        seed,
        count.right(),
        count.decoded(),
        count.misread(),
        1000 * count.seconds() / recordings);
    if (arguments.length > 4 && observer instanceof Person person) {
      System.out.println("reference: " + referenceRight(person, recordings, seed, cycles));
    }
  }
}
