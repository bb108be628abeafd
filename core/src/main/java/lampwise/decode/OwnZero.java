package lampwise.decode;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;

/**
 * A recording whose times are counted from the start of its window, in whole microseconds: where
 * the zero of a clock lies must not decide on which side of a border a time falls. Knows the way
 * back. Of a light curve marks and evidence are counted so, the samples stay as they are; words
 * stay as they are.
 */
final class OwnZero {
  private static final double STEPS_PER_SECOND = 1e6;
  private static final double STEP_SECONDS = 1 / STEPS_PER_SECOND;

  /**
   * Below 0.5 by so much that halves, quarters and thirds of a microsecond, the middles between
   * samples, lie far from the border of rounding.
   */
  private static final double ROUNDING = 0.3633;

  /** Times farther away than this, seconds, have no microseconds; they stay as they are. */
  private static final double FARTHEST_SECONDS = 1e8;

  private final Recording original;
  private final Recording recording;
  private final Sight sight;
  private final double zeroSeconds;
  private final double samplesZero;

  /** The given time of each that is counted anew. */
  private final Map<Double, Double> given = new HashMap<>();

  private OwnZero(Recording original) {
    this.original = original;
    Optional<Window> window = original.window();
    if (original instanceof BlinkLog log && window.isPresent() && isNear(log, window.get())) {
      this.zeroSeconds = window.get().fromSeconds();
      // Of times in one microsecond the first one counted is given back: the window's before all.
      counted(window.get());
      List<Blink> blinks =
          log.blinks().stream()
              .filter(blink -> window.get().contains(blink.onSeconds()))
              .map(this::counted)
              .toList();
      this.recording = new BlinkLog(log.origin(), counted(log.marks()), blinks);
      this.sight = Sight.of(recording);
      this.samplesZero = 0;
      return;
    }
    Sight seen = Sight.of(original);
    // The samples of a longer curve, which is not folded, keep their times.
    if (original instanceof LightCurve curve
        && curve.size() <= LightSamples.MOST_SAMPLES
        && seen.evidence().isPresent()
        && isNear(seen.evidence().get().window())
        && isNear(curve.marks())) {
      this.zeroSeconds = seen.evidence().get().window().fromSeconds();
      this.samplesZero = 0;
      counted(seen.evidence().get().window());
      LightCurve counted = counted(curve);
      Sight own = Sight.of(counted);
      // What is said of times is said of the given ones.
      this.sight = new Sight(own.evidence(), own.unreadable(), seen.notes(), own.clear());
      this.recording = Saturation.of(counted).curve();
      return;
    }
    Recording usable =
        original instanceof LightCurve curve ? Saturation.of(curve).curve() : original;
    if (usable instanceof LightCurve curve
        && seen.clear()
        && seen.evidence().isPresent()
        && isNear(seen.evidence().get().window())
        && isNear(curve.marks())) {
      this.zeroSeconds = seen.evidence().get().window().fromSeconds();
      this.samplesZero = zeroSeconds;
      Evidence counted = counted(seen.evidence().get());
      this.recording = curve.withMarks(counted(curve.marks()));
      this.sight = new Sight(Optional.of(counted), seen.unreadable(), seen.notes(), seen.clear());
      return;
    }
    this.zeroSeconds = 0;
    this.samplesZero = 0;
    this.recording = usable;
    this.sight = seen;
  }

  static OwnZero of(Recording recording) {
    return new OwnZero(recording);
  }

  /** The recording on its own time. */
  Recording recording() {
    return recording;
  }

  /** Where its own time begins on the time that a light curve's samples have here. */
  double samplesZero() {
    return samplesZero;
  }

  /** What can be drawn from it, on its own time. */
  Sight sight() {
    return sight;
  }

  /** A reading of recordings on their own times, on the times that were given. */
  static Reading given(Reading reading, List<OwnZero> own) {
    List<Segment> segments = new ArrayList<>();
    for (Segment segment : reading.segments()) {
      OwnZero zero = own.get(segment.recording());
      segments.add(
          new Segment(
              segment.recording(),
              zero.given(segment.stretch()),
              zero.given(segment.verdict()),
              segment.candidates(),
              segment.observed()));
    }
    List<Observation> observations = new ArrayList<>();
    for (int i = 0; i < own.size(); i++) {
      observations.add(own.get(i).given(reading.observations().get(i)));
    }
    Verdict verdict =
        own.isEmpty()
            ? reading.verdict()
            : own.get(reading.mainRecording()).given(reading.verdict());
    return new Reading(verdict, reading.candidates(), reading.observed(), segments, observations);
  }

  /** What the recording on its own time shows, on the times that were given. */
  Observation given(Observation observation) {
    return new Observation(
        original,
        sight.evidence().isPresent() ? observation.window().map(this::given) : original.window(),
        observation.observed(),
        observation.blinks().stream()
            .map(seen -> new SeenBlink(given(seen.blink()), seen.probability()))
            .toList(),
        observation.unreadable(),
        observation.notes());
  }

  private Verdict given(Verdict verdict) {
    return verdict instanceof Verdict.Decoded decoded
        ? new Verdict.Decoded(decoded.state(), decoded.probability(), given(decoded.stretch()))
        : verdict;
  }

  private Window given(Window window) {
    if (recording == original) {
      return window;
    }
    double from = given(window.fromSeconds());
    return new Window(from, Math.max(from, given(window.toSeconds())));
  }

  private Blink given(Blink blink) {
    if (recording == original) {
      return blink;
    }
    double on = given(blink.onSeconds());
    double off = given(blink.offSeconds());
    return new Blink(on, blink.hasOff() ? Math.max(off, on + STEP_SECONDS) : Double.NaN);
  }

  private double given(double seconds) {
    return given.getOrDefault(seconds, seconds + zeroSeconds);
  }

  private static boolean isNear(BlinkLog log, Window window) {
    boolean near = isNear(window) && isNear(log.marks());
    for (Blink blink : log.blinks()) {
      near &= isNear(blink.onSeconds()) && (!blink.hasOff() || isNear(blink.offSeconds()));
    }
    return near;
  }

  private static boolean isNear(Marks marks) {
    boolean near = marks.window().map(OwnZero::isNear).orElse(true);
    for (Window covered : marks.covered()) {
      near &= isNear(covered);
    }
    for (TargetSpan span : marks.targets().spans()) {
      near &= isNearOrOpen(span.fromSeconds()) && isNearOrOpen(span.toSeconds());
    }
    for (Event event : marks.events()) {
      near &= isNear(event.atSeconds());
    }
    return near;
  }

  private static boolean isNear(Window window) {
    return isNear(window.fromSeconds()) && isNear(window.toSeconds());
  }

  /** Whoever was there before and after has no borders. */
  private static boolean isNearOrOpen(double seconds) {
    return isNear(seconds) || Double.isInfinite(seconds);
  }

  private static boolean isNear(double seconds) {
    return Math.abs(seconds) <= FARTHEST_SECONDS;
  }

  /** A microsecond from one sample to the next at the least. */
  private LightCurve counted(LightCurve curve) {
    double[] seconds = new double[curve.size()];
    double[] levels = new double[curve.size()];
    for (int i = 0; i < seconds.length; i++) {
      double own = microseconds(curve.seconds(i));
      seconds[i] = i == 0 ? own : Math.max(own, seconds[i - 1] + STEP_SECONDS);
      levels[i] = curve.level(i);
    }
    return LightCurve.of(curve.origin(), counted(curve.marks()), curve.lit(), seconds, levels);
  }

  private Marks counted(Marks marks) {
    Targets targets =
        new Targets(
            marks.targets().knowledge(),
            marks.targets().spans().stream().map(this::counted).toList());
    return new Marks(
        marks.window().map(this::counted),
        targets,
        marks.events().stream()
            .map(event -> new Event(event.kind(), counted(event.atSeconds())))
            .toList(),
        marks.covered().stream().map(this::counted).toList());
  }

  private Evidence counted(Evidence evidence) {
    Window window = counted(evidence.window());
    return new Evidence(
        window,
        evidence.notes().stream().map(this::counted).toList(),
        evidence.blind().stream().map(this::counted).toList(),
        evidence.settings(),
        evidence.finer(),
        Math.rint(evidence.resolutionSeconds() * STEPS_PER_SECOND) / STEPS_PER_SECOND,
        evidence.stated(),
        evidence.level());
  }

  private Evidence.Note counted(Evidence.Note note) {
    double on = counted(note.on());
    double off = note.hasOff() ? end(on, note.on(), note.off()) : Double.NaN;
    return new Evidence.Note(on, off, note.onCut(), note.offCut(), note.probability());
  }

  private Blink counted(Blink blink) {
    double on = counted(blink.onSeconds());
    return new Blink(
        on, blink.hasOff() ? end(on, blink.onSeconds(), blink.offSeconds()) : Double.NaN);
  }

  private TargetSpan counted(TargetSpan span) {
    double from = counted(span.fromSeconds());
    return new TargetSpan(from, end(from, span.fromSeconds(), span.toSeconds()));
  }

  private Window counted(Window window) {
    double from = counted(window.fromSeconds());
    return new Window(from, end(from, window.fromSeconds(), window.toSeconds()));
  }

  /** The end of a stretch, a microsecond after its start at the least if it has a length. */
  private double end(double from, double givenFrom, double givenTo) {
    double to = counted(givenTo);
    if (to > from || !(givenTo > givenFrom)) {
      return to;
    }
    double later = from + STEP_SECONDS;
    given.putIfAbsent(later, givenTo);
    return later;
  }

  private double counted(double seconds) {
    double counted = microseconds(seconds);
    given.putIfAbsent(counted, seconds);
    return counted;
  }

  private double microseconds(double seconds) {
    return Math.floor((seconds - zeroSeconds) * STEPS_PER_SECOND + ROUNDING) / STEPS_PER_SECOND;
  }
}
