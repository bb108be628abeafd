package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.LightCurve;
import lampwise.light.Recording;
import lampwise.light.Window;

/**
 * Evidence drawn from a recording, or the reason why there is none.
 *
 * @param evidence what it offers; empty if it cannot carry an answer, and for a description, which
 *     has no times
 * @param unreadable why it cannot carry an answer; empty if it can
 * @param notes what was found on the way, a sentence each
 * @param clear whether the blinks stand out one by one
 */
record Sight(Optional<Evidence> evidence, String unreadable, List<String> notes, boolean clear) {
  /** From this contrast on blinks are found one by one, if none of them is a shadow's length. */
  private static final double CLEAR = 14;

  /** Slower sensors split a blink over samples, so that single blinks are poorly timed. */
  private static final double FAST_SECONDS = 0.05;

  /** So many lights are more than shadows leave. */
  private static final int MANY = 6;

  private static final double LONG_BLINK = 0.15;

  /** A longer light is no blink, but a room or a shadow that ends (or a steady lamp). */
  private static final double LONG_SECONDS = 0.5;

  /** A blink this near to the border of the window may have been cut by it, seconds. */
  private static final double BORDER = 0.02;

  /** People do not tap apart what differs by less than this, seconds. */
  private static final double TAPPED_SECONDS = 0.03;

  private static final int MOST_LISTED = 6;

  private static final String STILL = "the light level does not change by more than its noise";

  static Sight of(Recording recording) {
    if (recording instanceof BlinkLog log) {
      return ofLog(log);
    }
    if (recording instanceof LightCurve curve) {
      return ofCurve(curve);
    }
    Optional<String> why = Told.unreadable((Description) recording);
    return new Sight(Optional.empty(), why.orElse(""), List.of(), true);
  }

  /** The same with more notes. */
  Sight with(List<String> more) {
    List<String> all = new ArrayList<>(notes);
    all.addAll(more);
    return new Sight(evidence, unreadable, all, clear);
  }

  /** The same with a note that the light never changes, if nothing stands out from its noise. */
  Sight still() {
    boolean still = evidence.isPresent() && evidence.get().notes().isEmpty();
    return still ? with(List.of(STILL)) : this;
  }

  private static Sight unreadable(String why) {
    return new Sight(Optional.empty(), why, List.of(), true);
  }

  private static Sight ofLog(BlinkLog log) {
    Optional<Window> window = log.window();
    boolean stated = log.marks().window().isPresent();
    if (window.isEmpty()) {
      return unreadable("no blink was noted, and it is not said how long the lamp was watched");
    }
    if (!stated && log.blinks().size() == 1) {
      return unreadable(
          "there is one blink only, and it is not said how long the lamp was watched");
    }
    double from = window.get().fromSeconds();
    double to = window.get().toSeconds();
    if (!(to > from)) {
      return unreadable("the window has no length");
    }
    List<Evidence.Note> notes = new ArrayList<>();
    List<Double> times = new ArrayList<>();
    boolean lengths = false;
    for (Blink blink : log.blinks()) {
      if (window.get().contains(blink.onSeconds())
          && !within(log.marks().covered(), blink.onSeconds())) {
        boolean onCut = stated && blink.hasOff() && blink.onSeconds() <= from + BORDER;
        boolean offCut = stated && blink.hasOff() && blink.offSeconds() >= to - BORDER;
        notes.add(new Evidence.Note(blink.onSeconds(), blink.offSeconds(), onCut, offCut, 0.98));
        times.add(blink.onSeconds());
        lengths |= blink.hasOff();
      }
    }
    double resolution = resolution(times);
    boolean ends = lengths;
    List<Noise> settings = Noise.ofPeople(resolution, ends);
    return new Sight(
        Optional.of(
            new Evidence(
                window.get(),
                notes,
                joined(log.marks().covered()),
                settings,
                Optional.of(() -> NoiseGrid.ofPeople(resolution, ends)),
                Math.max(resolution, TAPPED_SECONDS),
                stated,
                false)),
        "",
        List.of(),
        true);
  }

  /** Stretches in order, those that touch made one. */
  private static List<Window> joined(List<Window> stretches) {
    List<Window> sorted = new ArrayList<>(stretches);
    sorted.sort((a, b) -> Double.compare(a.fromSeconds(), b.fromSeconds()));
    List<Window> joined = new ArrayList<>();
    for (Window next : sorted) {
      int last = joined.size() - 1;
      if (last >= 0 && next.fromSeconds() <= joined.get(last).toSeconds()) {
        double to = Math.max(next.toSeconds(), joined.get(last).toSeconds());
        joined.set(last, new Window(joined.get(last).fromSeconds(), to));
      } else {
        joined.add(next);
      }
    }
    return joined;
  }

  private static boolean within(List<Window> stretches, double seconds) {
    for (Window stretch : stretches) {
      if (stretch.contains(seconds)) {
        return true;
      }
    }
    return false;
  }

  /**
   * The step to which times were rounded: a whole second, a half, a tenth; 0 if finer. The first
   * time is where the steps are counted from.
   */
  private static double resolution(List<Double> times) {
    for (double step : new double[] {1, 0.5, 0.1}) {
      boolean all = times.size() > 2;
      for (double time : times) {
        double steps = (time - times.get(0)) / step;
        all &= Math.abs(steps - Math.rint(steps)) < 1e-6;
      }
      if (all) {
        return step;
      }
    }
    return 0;
  }

  private static Sight ofCurve(LightCurve given) {
    Saturation saturation = Saturation.of(given);
    if (saturation.unreadable().isPresent()) {
      return unreadable(saturation.unreadable().get());
    }
    LightCurve curve = saturation.curve();
    Optional<Window> window = curve.window();
    if (window.isEmpty() || curve.size() < 3 || !(window.get().lengthSeconds() > 0)) {
      return unreadable("there are fewer than three samples");
    }
    double from = Math.max(window.get().fromSeconds(), curve.seconds(0));
    double to = Math.min(window.get().toSeconds(), curve.seconds(curve.size() - 1));
    if (!(to > from)) {
      return unreadable("no sample lies inside the window");
    }
    Window inside = new Window(from, to);
    LitSpans spans = LitSpans.of(curve, inside, curve.marks().covered());
    List<String> notes = new ArrayList<>();
    SampleRate rate = SampleRate.of(curve);
    if (rate.seconds() > 0) {
      notes.add(rate.note());
    }
    saturation.note().ifPresent(notes::add);
    List<Window> pauses = new ArrayList<>(spans.pauses());
    pauses.removeIf(
        pause -> saturation.stretches().stream().anyMatch(s -> Showing.overlap(s, pause) > 0));
    if (!pauses.isEmpty()) {
      notes.add("nothing is known of the pauses without samples: " + list(pauses));
    }
    List<Window> blind = new ArrayList<>(spans.pauses());
    blind.addAll(curve.marks().covered());
    blind.addAll(saturation.stretches());
    boolean constant = spans.lit().isEmpty();
    double litSeconds = 0;
    for (Evidence.Note note : spans.lit()) {
      litSeconds += note.hasOff() ? note.length() : 0;
    }
    if (litSeconds > 0.5 * inside.lengthSeconds() && spans.lit().size() > 1) {
      notes.add("mostly lit; dark " + list(darkBetween(spans.lit(), inside)));
    }
    boolean level = constant && curve.marks().covered().isEmpty();
    List<Noise> settings = Noise.ofSensor(spans.periodSeconds());
    return new Sight(
        Optional.of(
            new Evidence(
                inside,
                spans.lit(),
                joined(blind),
                settings,
                1.5 * spans.periodSeconds(),
                true,
                level)),
        "",
        notes,
        spans.contrast() > CLEAR
            && (manyLong(spans)
                || (spans.periodSeconds() < FAST_SECONDS
                    && spans.lit().stream().allMatch(Sight::isShort))));
  }

  /** Whether there are many lights, most of them longer than three samples. */
  private static boolean manyLong(LitSpans spans) {
    double least = Math.max(LONG_BLINK, 3 * spans.periodSeconds());
    long longer = spans.lit().stream().filter(n -> n.hasOff() && n.length() > least).count();
    return spans.lit().size() >= MANY && 2 * longer > spans.lit().size();
  }

  /** Whether a light may be a blink, and not a room or a shadow that ends. */
  static boolean isShort(Evidence.Note note) {
    return note.hasOff() && note.length() < LONG_SECONDS;
  }

  private static List<Window> darkBetween(List<Evidence.Note> lit, Window window) {
    List<Window> dark = new ArrayList<>();
    double from = window.fromSeconds();
    for (Evidence.Note note : lit) {
      if (note.on() > from) {
        dark.add(new Window(from, note.on()));
      }
      from = note.hasOff() ? note.off() : note.on();
    }
    if (window.toSeconds() > from) {
      dark.add(new Window(from, window.toSeconds()));
    }
    return dark;
  }

  private static String list(List<Window> stretches) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < Math.min(MOST_LISTED, stretches.size()); i++) {
      text.append(i == 0 ? "" : ", ")
          .append(Measured.round(stretches.get(i).fromSeconds(), 2))
          .append(" to ")
          .append(Measured.round(stretches.get(i).toSeconds(), 2))
          .append(" s");
    }
    int more = stretches.size() - MOST_LISTED;
    return more > 0 ? text + " and " + more + " more" : text.toString();
  }
}
