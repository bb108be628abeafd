package lampwise.sim.check;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import lampwise.decode.Candidate;
import lampwise.decode.Observation;
import lampwise.decode.Reading;
import lampwise.decode.SeenBlink;
import lampwise.decode.Segment;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rhythm;

/**
 * Compares two readings that should be the same but for names and times.
 *
 * @param tolerance of probabilities
 * @param names the name in the second reading of each state of the first
 * @param bySeconds how much later everything is in the second reading
 */
record Alike(Tolerance tolerance, UnaryOperator<String> names, double bySeconds) {
  /** The probability at which a verdict turns, in the contract of verdicts. */
  private static final List<Double> BORDERS = List.of(0.95, 0.5);

  /** What differs first; empty if nothing does. */
  Optional<String> difference(Reading first, Reading second) {
    Optional<String> found =
        answer(
            first.verdict().word() + " " + Readings.decoded(first).map(names).orElse(""),
            second.verdict().word() + " " + Readings.decoded(second).orElse(""),
            first.candidates(),
            second.candidates());
    if (found.isPresent()) {
      return found;
    }
    if (!samePhrase(first.observed(), second.observed())) {
      return Optional.of("observed " + text(first.observed()) + " and " + text(second.observed()));
    }
    if (first.segments().size() != second.segments().size()) {
      return Optional.of(first.segments().size() + " segments and " + second.segments().size());
    }
    for (int i = 0; i < first.segments().size(); i++) {
      Segment segment = first.segments().get(i);
      found = difference(segment, second.segments().get(i), timed(first, segment));
      if (found.isPresent()) {
        return found.map(text -> text + ", in a segment");
      }
    }
    if (first.observations().size() != second.observations().size()) {
      return Optional.of("not as many observations");
    }
    for (int i = 0; i < first.observations().size(); i++) {
      found = difference(first.observations().get(i), second.observations().get(i));
      if (found.isPresent()) {
        return found.map(text -> text + ", in an observation");
      }
    }
    return Optional.empty();
  }

  /** Of words without a window there are no times. */
  private static boolean timed(Reading reading, Segment segment) {
    return segment.recording() >= reading.observations().size()
        || reading.observations().get(segment.recording()).window().isPresent();
  }

  private Optional<String> difference(Segment first, Segment second, boolean timed) {
    Optional<String> found =
        answer(
            first.verdict().word(),
            second.verdict().word(),
            first.candidates(),
            second.candidates());
    if (found.isEmpty() && first.recording() != second.recording()) {
      found = Optional.of("recordings " + first.recording() + " and " + second.recording());
    }
    if (found.isEmpty() && timed) {
      found = times(first.stretch(), second.stretch());
    }
    return found;
  }

  private Optional<String> difference(Observation first, Observation second) {
    if (first.window().isPresent() != second.window().isPresent()
        || first.unreadable().isPresent() != second.unreadable().isPresent()
        || first.blinks().size() != second.blinks().size()) {
      return Optional.of("not the same window, readability or number of blinks");
    }
    if (first.window().isPresent() && second.window().isPresent()) {
      Optional<String> found = times(first.window().get(), second.window().get());
      if (found.isPresent()) {
        return found;
      }
    }
    for (int i = 0; i < first.blinks().size(); i++) {
      SeenBlink a = first.blinks().get(i);
      SeenBlink b = second.blinks().get(i);
      if (!sameTime(a.blink().onSeconds(), b.blink().onSeconds())
          || !tolerance.holds(a.probability(), b.probability())) {
        return Optional.of("blinks " + a + " and " + b);
      }
    }
    return Optional.empty();
  }

  private Optional<String> answer(
      String firstVerdict, String secondVerdict, List<Candidate> first, List<Candidate> second) {
    Map<String, Double> expected = new HashMap<>();
    first.forEach(c -> expected.put(names.apply(c.state()), c.probability()));
    Map<String, Double> found = Readings.probabilities(second);
    if (!expected.keySet().equals(found.keySet())) {
      return Optional.of("candidates " + expected.keySet() + " and " + found.keySet());
    }
    for (Map.Entry<String, Double> entry : expected.entrySet()) {
      double other = found.getOrDefault(entry.getKey(), Double.NaN);
      if (!tolerance.holds(entry.getValue(), other)) {
        return Optional.of(
            "probability "
                + entry.getValue()
                + " and "
                + other
                + " of "
                + entry.getKey()
                + " ("
                + tolerance
                + ")");
      }
    }
    boolean borderline =
        first.stream().anyMatch(c -> BORDERS.stream().anyMatch(b -> near(c.probability(), b)));
    return borderline || firstVerdict.equals(secondVerdict)
        ? Optional.empty()
        : Optional.of("verdict " + firstVerdict + " and " + secondVerdict);
  }

  private boolean near(double probability, double border) {
    return Math.abs(probability - border) <= 2 * tolerance.most();
  }

  private Optional<String> times(Window first, Window second) {
    return sameTime(first.fromSeconds(), second.fromSeconds())
            && sameTime(first.toSeconds(), second.toSeconds())
        ? Optional.empty()
        : Optional.of(
            "times "
                + first
                + " and, "
                + bySeconds
                + " s later, "
                + second
                + " ("
                + Tolerance.SHIFT_SECONDS
                + ")");
  }

  private boolean sameTime(double first, double second) {
    return Tolerance.SHIFT_SECONDS.holds(first + bySeconds, second);
  }

  private static String text(Optional<Rhythm> observed) {
    return observed.map(Phrase::print).orElse("nothing");
  }

  /** The same words, and numbers that differ by no more than rounding another way makes them. */
  private static boolean samePhrase(Optional<Rhythm> first, Optional<Rhythm> second) {
    List<String> a = words(text(first));
    List<String> b = words(text(second));
    boolean same = a.size() == b.size();
    for (int i = 0; same && i < a.size(); i++) {
      same = a.get(i).equals(b.get(i)) || sameNumber(a.get(i), b.get(i));
    }
    return same;
  }

  private static List<String> words(String text) {
    return List.of(text.split(" ", -1));
  }

  private static boolean sameNumber(String a, String b) {
    if (!isNumber(a) || !isNumber(b)) {
      return false;
    }
    double x = Double.parseDouble(a);
    double y = Double.parseDouble(b);
    return Math.abs(x - y) <= Tolerance.PHRASE.most() * Math.max(1, Math.max(x, y));
  }

  private static boolean isNumber(String word) {
    return !word.isEmpty() && word.chars().allMatch(c -> (c >= '0' && c <= '9') || c == '.');
  }
}
