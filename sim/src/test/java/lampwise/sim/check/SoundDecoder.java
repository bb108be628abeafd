package lampwise.sim.check;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import lampwise.decode.Candidate;
import lampwise.decode.Decoder;
import lampwise.decode.LampDecoder;
import lampwise.decode.Next;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Recording;
import lampwise.light.Window;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/**
 * A decoder that holds every law, for wrong ones to be built upon: it answers one recording against
 * a sheet of plain codes by the project's decoder, always from the same zero, and knows nothing
 * beyond the weights about all else.
 */
final class SoundDecoder implements Decoder {
  /** Every contract asks for the same recordings of {@link MoreOfTheSame}. */
  private static final Map<Sample, Reading> READ = new ConcurrentHashMap<>();

  private static final Next AGAIN = new Next.Watch(60, OptionalDouble.empty(), "none", "again");

  @Override
  public Reading decode(CodeSheet sheet, List<Recording> recordings) {
    if (recordings.stream().noneMatch(r -> seconds(r) > 0)) {
      return unreadable();
    }
    boolean plain = sheet.states().stream().allMatch(SoundDecoder::isPlain);
    Recording recording = recordings.get(0);
    if (!plain || recordings.size() > 1 || !isBare(recording)) {
      return ofWeights(sheet);
    }
    Reading reading =
        READ.computeIfAbsent(
            new Sample(sheet, List.of(zeroed(recording))),
            sample -> new LampDecoder().decode(sample.sheet(), sample.recordings()));
    return answer(reading.verdict(), reading.candidates());
  }

  static Reading answer(Verdict verdict, List<Candidate> candidates) {
    return new Reading(verdict, candidates, Optional.empty(), List.of(), List.of());
  }

  static Reading unreadable() {
    return answer(new Verdict.Unreadable("nothing was watched", AGAIN), List.of());
  }

  static Reading ofWeights(CodeSheet sheet) {
    double sum = sheet.states().stream().mapToDouble(LampState::weight).sum();
    List<Candidate> all = new ArrayList<>();
    for (LampState state : sheet.states()) {
      double share = 0.94 * state.weight() / sum;
      all.add(new Candidate(state.name(), share, 0, share));
    }
    all.add(new Candidate(CodeSheet.UNLISTED, 0.05, 0, 0.05));
    all.add(new Candidate(CodeSheet.NO_RHYTHM, 0.01, 0, 0.01));
    return undecided(all);
  }

  static Reading undecided(List<Candidate> candidates) {
    return answer(new Verdict.Undecided(candidates, "not known", AGAIN), candidates);
  }

  static double seconds(Recording recording) {
    boolean empty = recording instanceof LightCurve curve && curve.size() < 3;
    return empty ? 0 : recording.window().map(Window::lengthSeconds).orElse(0.0);
  }

  private static boolean isPlain(LampState state) {
    boolean plain =
        !(state.rhythm() instanceof Rhythm.Blinking blinking)
            || blinking.cycle() instanceof Cycle.Rated
            || (blinking.prelude().isEmpty()
                && blinking.cycle() instanceof Cycle.Parts parts
                && parts.parts().size() == 1
                && parts.parts().get(0) instanceof Part.Blinks
                && parts.ending() instanceof Ending.Every);
    return plain && state.seen() == Seen.ALWAYS;
  }

  /** Blinks in a stated window or light levels, and nothing else. */
  private static boolean isBare(Recording recording) {
    Marks window = recording.window().map(Marks.nothing()::withWindow).orElse(Marks.nothing());
    boolean log = recording instanceof BlinkLog && recording.marks().equals(window);
    return log || (recording instanceof LightCurve && recording.marks().equals(Marks.nothing()));
  }

  /** The recording on a clock that is zero where its window begins. */
  private static Recording zeroed(Recording recording) {
    double zero = recording.window().map(Window::fromSeconds).orElse(0.0);
    return micros(Shifted.of(recording, -zero));
  }

  /** To the microsecond, so that two recordings that were the same are the same. */
  private static Recording micros(Recording recording) {
    if (recording instanceof BlinkLog log) {
      return new BlinkLog(
          log.origin(),
          log.marks().withWindow(micros(log.window().orElseThrow())),
          log.blinks().stream()
              .map(b -> new Blink(micros(b.onSeconds()), micros(b.offSeconds())))
              .toList());
    }
    if (recording instanceof LightCurve curve) {
      double[] seconds = new double[curve.size()];
      double[] levels = new double[curve.size()];
      for (int i = 0; i < seconds.length; i++) {
        seconds[i] = micros(curve.seconds(i));
        levels[i] = curve.level(i);
      }
      return LightCurve.of(curve.origin(), curve.marks(), curve.lit(), seconds, levels);
    }
    return recording;
  }

  private static Window micros(Window window) {
    return new Window(micros(window.fromSeconds()), micros(window.toSeconds()));
  }

  private static double micros(double seconds) {
    return Double.isFinite(seconds) && Math.abs(seconds) < 1e9
        ? new BigDecimal(seconds).setScale(6, RoundingMode.HALF_EVEN).doubleValue()
        : seconds;
  }
}
