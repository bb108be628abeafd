package lampwise.sim.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;

/**
 * Recordings of all three kinds for laws, of no lamp in particular. They are built from the gaps
 * between blinks and from runs of samples, so that taking one away shortens the recording: they
 * shrink to few blinks in a short window, in round numbers, with nothing noted beside.
 */
public final class RecordingArbitraries {
  private static final int MOST_BLINKS = 15;
  private static final int MOST_WILD = 8;
  private static final int MOST_RUNS = 15;
  private static final double MILLI = 1000.0;

  private RecordingArbitraries() {}

  /**
   * Recordings such as occur: logs of up to 15 blinks, light curves of up to some hundred samples,
   * descriptions in words.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Recording> plausible() {
    return Arbitraries.frequencyOf(
        Tuple.of(4, blinkLogs()), Tuple.of(2, lightCurves()), Tuple.of(1, descriptions()));
  }

  /**
   * Any recordings: besides those that occur, also such as no watch or sensor gives, with times of
   * up to 10<sup>15</sup> s, blinks on top of each other, windows elsewhere, levels that are
   * missing or huge, and words that are no phrase.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Recording> any() {
    return Arbitraries.frequencyOf(
        Tuple.of(3, plausible()),
        Tuple.of(3, wildLogs()),
        Tuple.of(2, wildCurves()),
        Tuple.of(1, wildWords()));
  }

  /**
   * Logs of up to 15 blinks, 0.1 to 12 s from start to start, to the millisecond; of half of them
   * the ends are known. Most have a stated window, which ends up to 12 s after the last blink.
   *
   * @return the arbitrary
   */
  public static Arbitrary<BlinkLog> blinkLogs() {
    Arbitrary<Integer> gaps =
        Arbitraries.frequencyOf(
            Tuple.of(1, Arbitraries.integers().between(1, 12).map(n -> 1000 * n)),
            Tuple.of(2, Arbitraries.integers().between(100, 12_000)));
    return Combinators.combine(
            gaps.list().ofMaxSize(MOST_BLINKS),
            Arbitraries.integers().between(30, 90).optional(0.5),
            gaps.optional(0.7),
            MarksArbitraries.plausible())
        .as(RecordingArbitraries::log);
  }

  private static BlinkLog log(
      List<Integer> gaps, Optional<Integer> length, Optional<Integer> tail, Marks marks) {
    List<Blink> blinks = new ArrayList<>();
    long at = 0;
    for (int gap : gaps) {
      at += gap;
      double on = at / MILLI;
      blinks.add(
          length.isPresent() ? new Blink(on, (at + length.get()) / MILLI) : Blink.startingAt(on));
    }
    long end = at + tail.orElse(0);
    Marks all = tail.isPresent() ? marks.withWindow(new Window(0, end / MILLI)) : marks;
    return new BlinkLog(Origin.named("log"), all, blinks);
  }

  /**
   * Light curves of up to 15 runs of lit and unlit samples in turn, 5 to 50 samples a second, the
   * lamp 5 to 50 lux over a room of 100, with a noise of 1 lux.
   *
   * @return the arbitrary
   */
  public static Arbitrary<LightCurve> lightCurves() {
    Arbitrary<Integer> runs =
        Arbitraries.frequencyOf(
            Tuple.of(1, Arbitraries.integers().between(1, 5)),
            Tuple.of(1, Arbitraries.integers().between(5, 40)));
    return Combinators.combine(
            runs.list().ofMaxSize(MOST_RUNS),
            Arbitraries.of(100, 20, 33, 200),
            Arbitraries.integers().between(5, 50),
            MarksArbitraries.plausible())
        .as(RecordingArbitraries::curve);
  }

  private static LightCurve curve(List<Integer> runs, int millis, int lamp, Marks marks) {
    int size = runs.stream().mapToInt(n -> n).sum();
    double[] seconds = new double[size];
    double[] levels = new double[size];
    int i = 0;
    for (int run = 0; run < runs.size(); run++) {
      for (int k = 0; k < runs.get(run); k++) {
        seconds[i] = i * millis / MILLI;
        levels[i] = 100 + (run % 2 == 0 ? 0 : lamp) + noise(i);
        i++;
      }
    }
    return LightCurve.of(Origin.named("light"), marks, LightCurve.Lit.BRIGHTER, seconds, levels);
  }

  /** A scatter of ten values from -0.9 to 0.9, in no order that an eye would see. */
  static double noise(int i) {
    return ((i * 7 + i / 10 * 3) % 10 - 4.5) / 5;
  }

  /**
   * Descriptions: a plausible rhythm in words, or nothing seen; mostly with how long was watched,
   * from 1 to 120 s.
   *
   * @return the arbitrary
   */
  public static Arbitrary<Description> descriptions() {
    Arbitrary<String> said =
        Arbitraries.frequencyOf(
            Tuple.of(1, Arbitraries.just(Description.NOTHING)),
            Tuple.of(6, RhythmArbitraries.plausible().map(Phrase::print)));
    return Combinators.combine(
            said,
            Arbitraries.integers().between(1, 120).optional(0.8),
            MarksArbitraries.plausible())
        .as(
            (words, watched, marks) ->
                new Description(
                    Origin.named("words"),
                    watched.isPresent() ? marks.withWindow(new Window(0, watched.get())) : marks,
                    words));
  }

  private static Arbitrary<BlinkLog> wildLogs() {
    Arbitrary<Blink> blinks =
        Combinators.combine(
                MarksArbitraries.times(), Arbitraries.integers().between(1, 20_000).optional(0.5))
            .as((on, millis) -> blink(on, millis));
    return Combinators.combine(MarksArbitraries.any(), blinks.list().ofMaxSize(MOST_WILD))
        .as((marks, all) -> new BlinkLog(Origin.named("log"), marks, all));
  }

  /** At 10^15 s a short blink has no length: only its start is kept. */
  private static Blink blink(double on, Optional<Integer> millis) {
    double off = on + millis.orElse(0) / MILLI;
    return off > on ? new Blink(on, off) : Blink.startingAt(on);
  }

  private static Arbitrary<LightCurve> wildCurves() {
    Arbitrary<Double> steps =
        Arbitraries.frequencyOf(
            Tuple.of(8, Arbitraries.of(0.1, 0.02, 0.2)),
            Tuple.of(1, Arbitraries.of(1e-6, 30.0, 1e6)));
    Arbitrary<Double> levels =
        Arbitraries.frequencyOf(
            Tuple.of(8, Arbitraries.of(0.0, 100.0, 101.0, 130.0)),
            Tuple.of(1, Arbitraries.of(Double.NaN, -1.0, 1e300, -1e300, Double.MIN_VALUE)));
    Arbitrary<Row> samples = Combinators.combine(steps, levels).as(Row::new);
    return Combinators.combine(
            MarksArbitraries.any(),
            Arbitraries.of(LightCurve.Lit.values()),
            samples.list().ofMaxSize(60))
        .as(RecordingArbitraries::wild);
  }

  private record Row(double step, double level) {}

  private static LightCurve wild(Marks marks, LightCurve.Lit lit, List<Row> samples) {
    double[] seconds = new double[samples.size()];
    double[] levels = new double[samples.size()];
    double at = 0;
    for (int i = 0; i < seconds.length; i++) {
      at += samples.get(i).step();
      seconds[i] = at;
      levels[i] = samples.get(i).level();
    }
    return LightCurve.of(Origin.named("light"), marks, lit, seconds, levels);
  }

  private static Arbitrary<Description> wildWords() {
    Arbitrary<String> phrases = RhythmArbitraries.any().map(Phrase::print);
    Arbitrary<String> others =
        Arbitraries.of("", Description.NOTHING, "0 blinks", "3 blnks", "every", "\u00a0", "x");
    return Combinators.combine(MarksArbitraries.any(), Arbitraries.oneOf(phrases, others))
        .as((marks, said) -> new Description(Origin.named("words"), marks, said));
  }
}
