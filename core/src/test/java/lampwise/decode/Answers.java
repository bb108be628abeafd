package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import lampwise.light.Recording;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;

/** What tests ask of a reading. */
final class Answers {
  /** Probabilities sum to 1 to within this. */
  static final double SUM_TOLERANCE = 1e-9;

  private Answers() {}

  static Reading decode(CodeSheet sheet, Recording... recordings) {
    return new LampDecoder().decode(sheet, List.of(recordings));
  }

  /** The reading in a line, for messages. */
  static String shown(Reading reading) {
    StringBuilder text = new StringBuilder(reading.verdict().word());
    for (Candidate candidate : reading.candidates()) {
      if (candidate.probability() >= 0.001) {
        text.append(
            String.format(Locale.ROOT, " %s %.4f", candidate.state(), candidate.probability()));
      }
    }
    return text + "; observed " + reading.observed().map(Phrase::print).orElse("nothing");
  }

  static String top(Reading reading) {
    return reading.candidates().isEmpty() ? "" : reading.candidates().get(0).state();
  }

  static double probability(Reading reading, String state) {
    return reading.candidates().stream()
        .filter(candidate -> candidate.state().equals(state))
        .mapToDouble(Candidate::probability)
        .sum();
  }

  static void assertDecoded(String state, Reading reading, String what) {
    Verdict.Decoded decoded =
        assertInstanceOf(
            Verdict.Decoded.class, reading.verdict(), () -> what + ": " + shown(reading));
    assertEquals(state, decoded.state(), () -> what + ": " + shown(reading));
  }

  static void assertDecoded(String state, Reading reading) {
    assertDecoded(state, reading, state);
  }

  /** Undecided between these states and no others. */
  static void assertUndecided(Set<String> states, Reading reading, String what) {
    Verdict.Undecided undecided =
        assertInstanceOf(
            Verdict.Undecided.class, reading.verdict(), () -> what + ": " + shown(reading));
    assertEquals(new TreeSet<>(states), open(undecided), () -> what + ": " + shown(reading));
  }

  /** Undecided, and these are all the states that have a chance of one in a hundred. */
  static void assertUndecidedAmong(Set<String> states, Reading reading, String what) {
    assertInstanceOf(
        Verdict.Undecided.class, reading.verdict(), () -> what + ": " + shown(reading));
    Set<String> possible =
        reading.candidates().stream()
            .filter(c -> c.probability() >= 0.01)
            .map(Candidate::state)
            .collect(Collectors.toSet());
    assertEquals(states, possible, () -> what + ": " + shown(reading));
  }

  static Set<String> open(Verdict.Undecided undecided) {
    Set<String> names = new TreeSet<>();
    undecided.candidates().forEach(candidate -> names.add(candidate.state()));
    return names;
  }

  static void assertNotDecoded(Reading reading, String what) {
    assertNotEquals("decoded", reading.verdict().word(), () -> what + ": " + shown(reading));
  }

  /**
   * Candidates sorted, none twice, each between 0 and 1, together 1, in agreement with the verdict.
   */
  static void assertSound(CodeSheet sheet, Reading reading) {
    assertSound(sheet, reading.candidates(), reading.verdict());
    for (Segment segment : reading.segments()) {
      assertSound(sheet, segment.candidates(), segment.verdict());
    }
  }

  private static void assertSound(CodeSheet sheet, List<Candidate> candidates, Verdict verdict) {
    if (candidates.isEmpty()) {
      assertEquals("unreadable", verdict.word());
      return;
    }
    Set<String> names = new TreeSet<>();
    double sum = 0;
    double before = 1 + SUM_TOLERANCE;
    for (Candidate candidate : candidates) {
      double probability = candidate.probability();
      assertTrue(probability >= 0 && probability <= before, candidates::toString);
      assertTrue(names.add(candidate.state()), candidates::toString);
      before = probability;
      sum += probability;
    }
    assertEquals(1, sum, SUM_TOLERANCE, candidates::toString);
    assertEquals(sheet.states().size() + 2, names.size(), candidates::toString);
    if (verdict instanceof Verdict.Decoded decoded) {
      assertEquals(candidates.get(0).state(), decoded.state());
      assertTrue(decoded.probability() >= 0.95 && sheet.state(decoded.state()).isPresent());
    } else if (verdict instanceof Verdict.Undecided undecided) {
      double open = undecided.candidates().stream().mapToDouble(Candidate::probability).sum();
      assertTrue(open >= 0.95 - SUM_TOLERANCE, undecided::toString);
      assertTrue(candidates.get(0).probability() < 0.95, undecided::toString);
    } else if (verdict instanceof Verdict.Unlisted) {
      assertEquals(CodeSheet.UNLISTED, candidates.get(0).state());
    }
  }

  /** The whole cycle of a rhythm in seconds; NaN if it has none that is said. */
  static double cycleSeconds(Rhythm rhythm) {
    if (rhythm instanceof Rhythm.Blinking blinking) {
      if (blinking.cycle() instanceof Cycle.Rated rated) {
        return 2 / (rated.rate().leastPerSecond() + rated.rate().mostPerSecond());
      }
      if (blinking.cycle() instanceof Cycle.Parts parts
          && parts.ending() instanceof Ending.Every every) {
        return 0.5 * (every.cycle().leastSeconds() + every.cycle().mostSeconds());
      }
    }
    return Double.NaN;
  }
}
