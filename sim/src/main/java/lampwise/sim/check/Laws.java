package lampwise.sim.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import lampwise.decode.Candidate;
import lampwise.decode.Decoder;
import lampwise.decode.Reading;
import lampwise.decode.Segment;
import lampwise.decode.Verdict;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.light.Window;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sim.Chance;

/**
 * The laws, each for one sample. A law that is broken is an {@link AssertionError} that says how.
 * All but the first pass over what the decoder does not answer at all.
 */
final class Laws {
  private Laws() {}

  static AssertionError broken(String how) {
    return new AssertionError(how);
  }

  static void answers(Decoder decoder, Sample sample) {
    Reading reading;
    try {
      reading = decoder.decode(sample.sheet(), sample.recordings());
    } catch (RuntimeException | StackOverflowError fault) {
      throw new AssertionError("there is no answer but " + fault, fault);
    }
    if (reading == null) {
      throw broken("the answer is null");
    }
    if (reading.verdict() == null || reading.observed() == null) {
      throw broken("the answer has no verdict, or null for what was observed");
    }
    for (Segment segment : reading.segments()) {
      if (segment.verdict() == null || segment.stretch() == null || segment.observed() == null) {
        throw broken("a segment has no verdict or no stretch, or null for what was observed");
      }
    }
  }

  static void repeats(Decoder decoder, Sample sample, Sample between) {
    Optional<Reading> first = Readings.of(decoder, sample);
    Readings.of(decoder, between);
    Optional<Reading> second = Readings.of(decoder, sample);
    if (!first.equals(second)) {
      throw broken(
          "the second call gave another answer: "
              + first.map(Readings::text).orElse("none")
              + " then "
              + second.map(Readings::text).orElse("none"));
    }
  }

  static void sumsToOne(Decoder decoder, Sample sample) {
    Optional<Reading> reading = Readings.of(decoder, sample);
    if (reading.isPresent()) {
      sumsToOne(sample.sheet(), reading.get().verdict(), reading.get().candidates());
      for (Segment segment : reading.get().segments()) {
        sumsToOne(sample.sheet(), segment.verdict(), segment.candidates());
      }
    }
  }

  private static void sumsToOne(CodeSheet sheet, Verdict verdict, List<Candidate> candidates) {
    if (candidates.isEmpty() && verdict instanceof Verdict.Unreadable) {
      return;
    }
    Set<String> expected = new TreeSet<>(Set.of(CodeSheet.UNLISTED, CodeSheet.NO_RHYTHM));
    sheet.states().forEach(state -> expected.add(state.name()));
    Set<String> names = new TreeSet<>();
    double sum = 0;
    for (Candidate candidate : candidates) {
      double probability = candidate.probability();
      if (!(probability >= 0 && probability <= 1)) {
        throw broken("the probability of " + candidate.state() + " is " + probability);
      }
      names.add(candidate.state());
      sum += probability;
    }
    if (!names.equals(expected) || candidates.size() != expected.size()) {
      throw broken("the candidates are " + names + ", not " + expected + ", each once");
    }
    if (!Tolerance.SUM.holds(sum, 1)) {
      throw broken("the probabilities sum to " + sum + " (" + Tolerance.SUM + ")");
    }
    if (verdict instanceof Verdict.Decoded decoded && sheet.state(decoded.state()).isEmpty()) {
      throw broken("it decoded " + decoded.state() + ", which is no state of the sheet");
    }
  }

  static void shifts(Decoder decoder, Sample sample, double seconds) {
    Alike alike = new Alike(Tolerance.SHIFT, name -> name, seconds);
    Optional<Reading> first = Readings.of(decoder, sample);
    Optional<Reading> second = Readings.of(decoder, Shifted.of(sample, seconds));
    same(alike, first, second, "all times " + SampleText.number(seconds) + " s later");
  }

  private static void same(
      Alike alike, Optional<Reading> first, Optional<Reading> second, String change) {
    if (first.isPresent() != second.isPresent()) {
      throw broken(change + ": an answer only with or only without that");
    }
    if (first.isPresent() && second.isPresent()) {
      Optional<String> difference = alike.difference(first.get(), second.get());
      if (difference.isPresent()) {
        throw broken(
            change
                + ": "
                + difference.get()
                + "\nbefore: "
                + Readings.text(first.get())
                + "\nafter:  "
                + Readings.text(second.get()));
      }
    }
  }

  /** The new names are in no order that the old ones were in. */
  static void relabels(Decoder decoder, Sample sample, long seed) {
    Chance chance = Chance.of(seed);
    List<LampState> left = new ArrayList<>(sample.sheet().states());
    List<LampState> mixed = new ArrayList<>();
    Map<String, String> names = new HashMap<>();
    while (!left.isEmpty()) {
      LampState state = left.remove(chance.below(left.size()));
      String name = "abcdefghijkl".charAt(chance.below(12)) + "-" + mixed.size();
      names.put(state.name(), name);
      mixed.add(named(state, name));
    }
    CodeSheet old = sample.sheet();
    CodeSheet sheet =
        new CodeSheet(
            old.title(),
            old.basis(),
            old.note(),
            old.kinds(),
            old.power(),
            old.cells(),
            old.lamp(),
            old.clockTolerance(),
            old.blinkSeconds(),
            mixed);
    same(
        new Alike(Tolerance.ORDER, name -> names.getOrDefault(name, name), 0),
        Readings.of(decoder, sample),
        Readings.of(decoder, new Sample(sheet, sample.recordings())),
        "states in the order and with the names of " + names);
  }

  private static LampState named(LampState state, String name) {
    return new LampState(
        name,
        state.rhythm(),
        state.means(),
        state.condition(),
        state.seen(),
        state.weight(),
        state.labelSays(),
        state.clearedBy(),
        state.lamp());
  }

  static void decidesNothingOfNothing(Decoder decoder, CodeSheet sheet, Marks marks) {
    Marks open = new Marks(Optional.empty(), marks.targets(), marks.events(), marks.covered());
    Marks moment = open.withWindow(new Window(3, 3));
    Marks minute = open.withWindow(new Window(0, 60));
    List<Recording> empty =
        List.of(
            BlinkLog.ofStarts(open),
            BlinkLog.ofStarts(moment),
            BlinkLog.ofStarts(moment, 3),
            curve(open),
            curve(open, 3),
            curve(moment, 3),
            curve(minute),
            new Description(Origin.named("words"), moment, Description.NOTHING));
    for (Recording recording : empty) {
      for (List<Recording> all : List.of(List.of(recording), List.of(recording, recording))) {
        Optional<Reading> reading = Readings.of(decoder, new Sample(sheet, all));
        if (reading.isPresent() && decides(reading.get().verdict())) {
          throw broken(
              "it decided on nothing: "
                  + Readings.text(reading.get())
                  + "\nof "
                  + all.size()
                  + " x\n"
                  + SampleText.of(recording));
        }
      }
    }
  }

  private static boolean decides(Verdict verdict) {
    return verdict instanceof Verdict.Decoded || verdict instanceof Verdict.Unlisted;
  }

  private static LightCurve curve(Marks marks, double... seconds) {
    double[] levels = new double[seconds.length];
    return LightCurve.of(Origin.named("light"), marks, LightCurve.Lit.BRIGHTER, seconds, levels);
  }

  static void decodesClean(Decoder decoder, CleanSample sample) {
    Optional<Reading> reading = Readings.of(decoder, sample.sample());
    if (reading.isPresent()
        && !Readings.decoded(reading.get()).equals(Optional.of(sample.state()))) {
      throw broken("not decoded as " + sample.state() + ": " + Readings.text(reading.get()));
    }
  }

  static void accepts(Decoder decoder, CleanSample sample, double shareOfTolerance) {
    CleanSample stretched = sample.withClock(1 + shareOfTolerance * sample.clockTolerance());
    Optional<Reading> reading = Readings.of(decoder, stretched.sample());
    if (reading.isPresent()
        && !Readings.likeliest(reading.get()).equals(Optional.of(sample.state()))) {
      throw broken(
          sample.state()
              + " is not the likeliest where the clock runs "
              + SampleText.number(stretched.clock())
              + " times as long: "
              + Readings.text(reading.get()));
    }
  }

  static void rejects(Decoder decoder, CleanSample sample, double clock) {
    Optional<Reading> reading = Readings.of(decoder, sample.withClock(clock).sample());
    if (reading.isPresent()
        && Readings.decoded(reading.get()).equals(Optional.of(sample.state()))) {
      throw broken(
          "decoded as "
              + sample.state()
              + " although everything takes "
              + SampleText.number(clock)
              + " times as long: "
              + Readings.text(reading.get()));
    }
  }

  static void keepsRightAnswers(Decoder decoder, GrownSample grown) {
    String truth = grown.clean().state();
    Optional<Reading> before = Readings.of(decoder, grown.clean().sample());
    if (before.isEmpty() || !Readings.decoded(before.get()).equals(Optional.of(truth))) {
      return;
    }
    Sample larger = new Sample(grown.sheet(), List.of(grown.clean().recording()));
    Optional<Reading> after = Readings.of(decoder, larger);
    if (after.isPresent()) {
      boolean other = Readings.decoded(after.get()).map(s -> !s.equals(truth)).orElse(false);
      if (other || after.get().verdict() instanceof Verdict.Unlisted) {
        throw broken(
            "right before the state was added: "
                + Readings.text(before.get())
                + "\nwrong after:  "
                + Readings.text(after.get()));
      }
    }
  }
}
