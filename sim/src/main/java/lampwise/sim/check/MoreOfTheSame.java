package lampwise.sim.check;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import lampwise.decode.Decoder;
import lampwise.decode.Reading;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import lampwise.sim.Act;
import lampwise.sim.Labelled;
import lampwise.sim.Person;
import lampwise.sim.Scene;
import lampwise.sim.Simulator;

/**
 * Whether more of the same lamp lowers the expected probability of the truth: a one-sided test of
 * the mean of paired differences, the whole of a recording against its first half.
 */
final class MoreOfTheSame {
  /** How many recordings are read in half and in whole. */
  static final int PAIRS = 400;

  /** One in a thousand of normal numbers lies farther below the mean, in standard deviations. */
  private static final double DEVIATIONS = 3.09;

  private static final double SECONDS = 40;
  private static final long SEED = 1125;

  /** Two cycles in a ratio of two, a look-alike, counts in one cycle. */
  private static final List<CleanSample.Code> CODES =
      List.of(
          new CleanSample.Code(1, 0.4, 3.2),
          new CleanSample.Code(1, 0.4, 6.4),
          new CleanSample.Code(1, 0.4, 3.8),
          new CleanSample.Code(2, 0.4, 9),
          new CleanSample.Code(3, 0.4, 9),
          new CleanSample.Code(3, 0.6, 9));

  private MoreOfTheSame() {}

  private static CodeSheet sheet() {
    List<LampState> states =
        IntStream.range(0, CODES.size())
            .mapToObj(
                i ->
                    SheetArbitraries.state(
                        "s" + (i + 1), CODES.get(i).rhythm(), Condition.OTHER, Seen.ALWAYS, 1))
            .toList();
    return SheetArbitraries.sheet(0.05, OptionalDouble.of(0.1), states);
  }

  static void check(Decoder decoder) {
    CodeSheet sheet = sheet();
    double sum = 0;
    double squares = 0;
    int pairs = 0;
    for (int i = 0; i < PAIRS; i++) {
      LampState state = sheet.states().get(i % sheet.states().size());
      Labelled whole =
          Simulator.record(
              Scene.of(sheet, Act.of(state), SECONDS), Person.careful(), SEED * PAIRS + i);
      BlinkLog log = (BlinkLog) whole.recording();
      Optional<Reading> less = Readings.of(decoder, new Sample(sheet, List.of(half(log))));
      Optional<Reading> more = Readings.of(decoder, new Sample(sheet, List.of(log)));
      if (less.isPresent() && more.isPresent()) {
        double gain =
            Readings.probability(more.get(), state.name())
                - Readings.probability(less.get(), state.name());
        sum += gain;
        squares += gain * gain;
        pairs++;
      }
    }
    if (pairs > 1) {
      double mean = sum / pairs;
      double variance = Math.max(0, squares / pairs - mean * mean);
      double error = Math.sqrt(variance / (pairs - 1));
      if (!(mean + Tolerance.MORE.most() >= -DEVIATIONS * error)) {
        throw Laws.broken(
            "the second half of a recording lowers the probability of the truth by "
                + SampleText.number(-mean)
                + " on average (standard error "
                + SampleText.number(error)
                + ", "
                + pairs
                + " pairs, "
                + Tolerance.MORE
                + ")\n"
                + SampleText.of(sheet));
      }
    }
  }

  private static BlinkLog half(BlinkLog log) {
    double end = SECONDS / 2;
    return new BlinkLog(
        log.origin(),
        Marks.watched(0, end),
        log.blinks().stream().filter(blink -> blink.onSeconds() <= end).toList());
  }
}
