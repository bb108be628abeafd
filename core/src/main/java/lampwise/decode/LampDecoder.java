package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwise.light.Description;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Recording;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;

/**
 * The decoder: evidence from the recording, pulse trains from the sheet, every way to fold one on
 * the other, and the probabilities that follow. Stateless; settings that nobody knows (timing
 * error, misses, strays, phase, clock) are summed over.
 */
public final class LampDecoder implements Decoder {
  /** From this probability on a blinking lamp below shadows is believed (chosen). */
  private static final double LIKELIER_THAN_SHADOWS = 0.9;

  /** Makes one; it has no settings and keeps no state. */
  public LampDecoder() {}

  @Override
  public Reading decode(CodeSheet sheet, List<Recording> recordings) {
    List<OwnZero> own = recordings.stream().map(OwnZero::of).toList();
    return OwnZero.given(read(sheet, own), own);
  }

  /** Reads recordings on their own times. */
  private static Reading read(CodeSheet sheet, List<OwnZero> own) {
    List<Recording> recordings = own.stream().map(OwnZero::recording).toList();
    List<Observation> observations = new ArrayList<>();
    List<Segment> segments = new ArrayList<>();
    List<Segment> main = new ArrayList<>();
    String unreadable = "there is no recording";
    boolean curve = false;
    for (int i = 0; i < recordings.size(); i++) {
      Recording recording = recordings.get(i);
      curve |= recording instanceof LightCurve;
      Sight sight = own.get(i).sight();
      if (!sight.unreadable().isEmpty()) {
        unreadable = sight.unreadable();
        observations.add(unreadable(recording, sight));
        continue;
      }
      Stretches found =
          recording instanceof Description description
              ? Stretches.told(sheet, description, i)
              : found(sheet, recording, sight, i);
      if (recording instanceof LightCurve light) {
        TooFast fast = new TooFast(sheet, SampleRate.of(light));
        found = Aliases.checked(fast, light, own.get(i).samplesZero(), found);
        sight = blinks(sheet, found) ? sight : sight.still();
        sight = sight.with(fast.notes(light));
        sight = sight.with(Visibility.note(sheet, light.marks()).stream().toList());
      }
      segments.addAll(found.segments());
      main.add(found.main());
      observations.add(observation(recording, sight, found.main().observed(), found.blinks()));
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
            sheet, together, first.observed(), first.stretch(), marks(recordings, first), curve);
    return new Reading(verdict, together, first.observed(), segments, observations);
  }

  /** By the raw samples where blinks do not stand out one by one, else by the blinks. */
  private static Stretches found(CodeSheet sheet, Recording recording, Sight sight, int number) {
    Evidence evidence = sight.evidence().orElseThrow();
    if (recording instanceof LightCurve curve && !sight.clear()) {
      Optional<LightLikelihoods> light = LightLikelihoods.of(sheet, curve, evidence);
      if (light.isPresent()) {
        return Stretches.folded(sheet, curve, light.get(), number);
      }
    }
    Stretches found = Stretches.of(sheet, recording, evidence, number);
    if (recording instanceof LightCurve curve && sight.clear() && maybeShadows(evidence, found)) {
      return LightLikelihoods.belowShadows(sheet, curve, evidence)
          .map(light -> Stretches.folded(sheet, curve, light, number))
          .filter(below -> listed(sheet, below) > LIKELIER_THAN_SHADOWS)
          .orElse(found);
    }
    return found;
  }

  /** Whether long lights that keep to no state may be the room's between shadows. */
  private static boolean maybeShadows(Evidence evidence, Stretches found) {
    String top = found.main().candidates().get(0).state();
    return (top.equals(CodeSheet.NO_RHYTHM) || top.equals(CodeSheet.UNLISTED))
        && evidence.notes().stream().anyMatch(note -> !Sight.isShort(note));
  }

  /** Whether the likeliest candidate is a lamp that blinks. */
  private static boolean blinks(CodeSheet sheet, Stretches stretches) {
    String top = stretches.main().candidates().get(0).state();
    return sheet.state(top).map(s -> s.rhythm() instanceof Rhythm.Blinking).orElse(true);
  }

  /** The probability of the likeliest candidate, if the sheet lists it; else 0. */
  private static double listed(CodeSheet sheet, Stretches stretches) {
    Candidate top = stretches.main().candidates().get(0);
    return sheet.state(top.state()).isPresent() ? top.probability() : 0;
  }

  /**
   * Says what a recording shows without a sheet.
   *
   * @param recording the recording
   * @return the rhythm, the blinks and the window
   */
  public Observation observe(Recording recording) {
    OwnZero own = OwnZero.of(recording);
    return own.given(seen(own.recording(), own.sight()));
  }

  /** What a recording on its own time shows. */
  private static Observation seen(Recording recording, Sight sight) {
    if (!sight.unreadable().isEmpty()) {
      return unreadable(recording, sight);
    }
    if (recording instanceof Description description) {
      return observation(recording, sight, Told.observed(description), List.of());
    }
    Evidence found = sight.evidence().orElseThrow();
    Evidence evidence =
        recording instanceof LightCurve curve ? FaintBlinks.shown(curve, found) : found;
    Optional<Explained> free = Explained.freely(evidence);
    return observation(
        recording,
        recording instanceof LightCurve && evidence.notes().isEmpty() ? sight.still() : sight,
        free.isPresent() ? free.get().observed() : Measured.unrepeated(evidence),
        free.isPresent() ? free.get().blinks() : evidence.blinks());
  }

  /** What a light sensor saw stands on its own; what people noted gains by the rhythm. */
  private static Observation observation(
      Recording recording, Sight sight, Optional<Rhythm> observed, List<SeenBlink> blinks) {
    boolean alone = recording instanceof LightCurve;
    return new Observation(
        recording,
        sight.evidence().map(Evidence::window).or(recording::window),
        observed,
        alone && sight.clear() ? sight.evidence().orElseThrow().blinks() : blinks,
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

  /** The marks that say most of targets: those of a recording in which somebody was there. */
  private static Marks marks(List<Recording> recordings, Segment first) {
    for (Recording recording : recordings) {
      if (!recording.marks().targets().spans().isEmpty()) {
        return recording.marks();
      }
    }
    return recordings.get(first.recording()).marks();
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
