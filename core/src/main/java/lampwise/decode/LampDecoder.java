package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.LightCurve;
import lampwise.light.Recording;
import lampwise.light.Window;
import lampwise.rhythm.Count;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;
import lampwise.sheet.CodeSheet;

/**
 * The decoder: evidence from the recording, pulse trains from the sheet, every way to fold one on
 * the other, and the probabilities that follow. Stateless; settings that nobody knows (timing error,
 * misses, strays, phase, clock) are summed over.
 */
public final class LampDecoder implements Decoder {
  /** A state that leaves this share of the blinks without partner explains them poorly. */
  private static final double POORLY = 0.34;

  /** Makes one; it has no settings and keeps no state. */
  public LampDecoder() {}

  @Override
  public Reading decode(CodeSheet sheet, List<Recording> recordings) {
    List<Observation> observations = new ArrayList<>();
    List<Segment> segments = new ArrayList<>();
    List<Segment> main = new ArrayList<>();
    List<Recording> read = new ArrayList<>();
    String unreadable = "there is no recording";
    boolean curve = false;
    for (int i = 0; i < recordings.size(); i++) {
      Recording recording = recordings.get(i);
      curve |= recording instanceof LightCurve;
      Sight sight = Sight.of(recording);
      if (sight.evidence().isEmpty()) {
        unreadable = sight.unreadable();
        observations.add(unreadable(recording, sight));
        continue;
      }
      Evidence evidence = sight.evidence().get();
      List<Segment> found = segments(sheet, recording, evidence, i);
      segments.addAll(found);
      main.add(main(found, recording));
      read.add(recording);
      observations.add(observed(recording, sight, evidence, sheet, found));
    }
    if (main.isEmpty()) {
      return new Reading(
          new Verdict.Unreadable(unreadable, Advice.again(curve)),
          List.of(),
          Optional.empty(),
          List.of(),
          observations);
    }
    Segment first = main.get(0);
    if (main.size() == 1) {
      return new Reading(
          first.verdict(), first.candidates(), first.observed(), segments, observations);
    }
    List<Candidate> together = together(sheet, main);
    Verdict verdict =
        Verdicts.of(
            sheet,
            together,
            first.observed(),
            first.stretch(),
            read.get(read.size() - 1).marks(),
            curve);
    return new Reading(verdict, together, first.observed(), segments, observations);
  }

  /**
   * Says what a recording shows without a sheet.
   *
   * @param recording the recording
   * @return the rhythm, the blinks and the window
   */
  public Observation observe(Recording recording) {
    Sight sight = Sight.of(recording);
    if (sight.evidence().isEmpty()) {
      return unreadable(recording, sight);
    }
    Evidence evidence = sight.evidence().get();
    Optional<Explained> free = freely(evidence);
    Optional<Rhythm> observed =
        free.isPresent() ? free.get().observed() : plainly(evidence, recording);
    List<SeenBlink> blinks =
        free.isPresent() ? free.get().blinks(evidence) : byThemselves(evidence);
    return new Observation(
        recording,
        Optional.of(evidence.window()),
        observed,
        byThemselvesIfCurve(recording, evidence, blinks),
        Optional.empty(),
        sight.notes());
  }

  private static Observation unreadable(Recording recording, Sight sight) {
    return new Observation(
        recording,
        recording.window(),
        Optional.empty(),
        List.of(),
        Optional.of(sight.unreadable()),
        sight.notes());
  }

  private static Observation observed(
      Recording recording,
      Sight sight,
      Evidence evidence,
      CodeSheet sheet,
      List<Segment> segments) {
    List<SeenBlink> blinks = new ArrayList<>();
    for (Segment segment : segments) {
      Evidence stretch =
          evidence.within(segment.stretch().fromSeconds(), segment.stretch().toSeconds());
      Optional<Explained> explained =
          explain(sheet, new Likelihoods(sheet, evidence, recording.marks()), stretch, segment.candidates());
      blinks.addAll(
          explained.map(e -> e.blinks(stretch)).orElseGet(() -> byThemselves(stretch)));
    }
    return new Observation(
        recording,
        Optional.of(evidence.window()),
        main(segments, recording).observed(),
        byThemselvesIfCurve(recording, evidence, blinks),
        Optional.empty(),
        sight.notes());
  }

  /** What a light sensor saw stands on its own; only what people noted gains by the rhythm. */
  private static List<SeenBlink> byThemselvesIfCurve(
      Recording recording, Evidence evidence, List<SeenBlink> blinks) {
    return recording instanceof LightCurve ? byThemselves(evidence) : blinks;
  }

  private static List<SeenBlink> byThemselves(Evidence evidence) {
    return evidence.notes().stream()
        .map(n -> new SeenBlink(new Blink(n.on(), n.off()), n.probability()))
        .toList();
  }

  private static List<Segment> segments(
      CodeSheet sheet, Recording recording, Evidence evidence, int number) {
    Likelihoods likelihoods = new Likelihoods(sheet, evidence, recording.marks());
    double[] whole = likelihoods.whole();
    List<Candidate> candidates = Posterior.candidates(sheet, whole);
    Optional<Explained> explained = explain(sheet, likelihoods, evidence, candidates);
    boolean poorly =
        explained.isEmpty()
            ? !evidence.notes().isEmpty()
            : explained.get().loose() > POORLY * evidence.notes().size()
                || !sheet.state(candidates.get(0).state()).isPresent();
    List<Window> stretches =
        Segmenter.stretches(
            evidence,
            recording.marks(),
            poorly,
            stretch -> best(sheet, likelihoods, stretch, evidence, whole));
    List<Segment> segments = new ArrayList<>();
    for (Window window : stretches) {
      boolean all = stretches.size() == 1;
      Evidence stretch =
          all ? evidence : evidence.within(window.fromSeconds(), window.toSeconds());
      List<Candidate> here =
          all
              ? candidates
              : Posterior.candidates(sheet, likelihoods.of(stretch));
      Optional<Explained> how =
          all ? explained : explain(sheet, likelihoods, stretch, here);
      Optional<Rhythm> observed =
          how.isPresent() ? how.get().observed() : plainly(stretch, recording);
      Verdict verdict =
          Verdicts.of(
              sheet, here, observed, window, recording.marks(), recording instanceof LightCurve);
      segments.add(new Segment(number, window, verdict, here, observed));
    }
    return segments;
  }

  private static Segmenter.Best best(
      CodeSheet sheet,
      Likelihoods likelihoods,
      Evidence stretch,
      Evidence all,
      double[] whole) {
    double[] logs =
        stretch.window().equals(all.window()) ? whole : likelihoods.of(stretch.roughly());
    double[] priors = Posterior.priors(sheet);
    Segmenter.Best best = new Segmenter.Best(0, Double.NEGATIVE_INFINITY);
    for (int i = 0; i < priors.length; i++) {
      double score = Math.log(priors[i]) + logs[i];
      if (score > best.score()) {
        best = new Segmenter.Best(i, score);
      }
    }
    return best;
  }

  /** How the likeliest candidate that blinks explains the blinks; empty if none does. */
  private static Optional<Explained> explain(
      CodeSheet sheet, Likelihoods likelihoods, Evidence stretch, List<Candidate> candidates) {
    String top = candidates.get(0).state();
    if (stretch.notes().isEmpty() || top.equals(CodeSheet.NO_RHYTHM)) {
      return Optional.empty();
    }
    int state = 0;
    while (state < sheet.states().size() && !sheet.states().get(state).name().equals(top)) {
      state++;
    }
    if (state == sheet.states().size()) {
      return freely(stretch);
    }
    return likelihoods.trains(state).stream()
        .map(train -> Explained.of(train, stretch, train.logWeight()))
        .max((a, b) -> Double.compare(a.logWeight(), b.logWeight()));
  }

  /** The best rhythm without a sheet, if the blinks keep one at all. */
  private static Optional<Explained> freely(Evidence evidence) {
    if (evidence.notes().size() < 3) {
      return Optional.empty();
    }
    Optional<Explained> best =
        FreeRhythms.propose(evidence).stream()
            .map(f -> Explained.of(f.train(), evidence, f.logWeight(evidence.settings()[0])))
            .max((a, b) -> Double.compare(a.logWeight(), b.logWeight()));
    double random =
        Likelihoods.noRhythm(evidence) + Math.log(Posterior.NO_RHYTHM / Posterior.UNLISTED);
    return best.filter(b -> b.logWeight() > random);
  }

  /** The rhythm of a recording with too few blinks to repeat. */
  private static Optional<Rhythm> plainly(Evidence evidence, Recording recording) {
    List<Evidence.Note> notes = evidence.notes();
    boolean mayBeSteady = evidence.level();
    if (notes.isEmpty()) {
      return mayBeSteady ? Optional.empty() : Optional.of(new Rhythm.Dark());
    }
    if (evidence.litThroughout()) {
      return Optional.of(new Rhythm.Steady());
    }
    boolean open = recording.marks().window().isEmpty() && !(recording instanceof LightCurve);
    if (notes.size() > 2 || open) {
      return Optional.empty();
    }
    Optional<Length> apart =
        notes.size() == 1
            ? Optional.empty()
            : Optional.of(
                Length.exactly(
                    Math.max(0.01, Measured.round(notes.get(1).on() - notes.get(0).on(), 2))));
    Part part = new Part.Blinks(Count.of(notes.size()), Size.UNSAID, Optional.empty(), apart);
    return Optional.of(
        new Rhythm.Blinking(
            List.of(), new Cycle.Parts(List.of(part), new Ending.Once())));
  }

  /** The segment that covers most of the window outside target spans. */
  private static Segment main(List<Segment> segments, Recording recording) {
    Segment best = segments.get(0);
    double most = -1;
    for (Segment segment : segments) {
      double seconds = segment.stretch().lengthSeconds();
      for (Window with : Visibility.clip(recording.marks().targets().spans(), segment.stretch())) {
        seconds -= with.lengthSeconds();
      }
      if (seconds > most + 1e-9) {
        most = seconds;
        best = segment;
      }
    }
    return best;
  }

  /** Combines the evidence of several recordings of one unchanged unit. */
  private static List<Candidate> together(CodeSheet sheet, List<Segment> main) {
    double[] sums = new double[sheet.states().size() + 2];
    for (int i = 0; i < sums.length; i++) {
      String name = Posterior.name(sheet, i);
      for (Segment segment : main) {
        sums[i] +=
            segment.candidates().stream()
                .filter(c -> c.state().equals(name))
                .mapToDouble(Candidate::logLikelihood)
                .sum();
      }
    }
    boolean impossible = Arrays.stream(sums).allMatch(s -> s == Double.NEGATIVE_INFINITY);
    return Posterior.candidates(sheet, impossible ? new double[sums.length] : sums);
  }
}
