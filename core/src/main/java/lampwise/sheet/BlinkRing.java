package lampwise.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;

/**
 * The blinks of a cycle that repeats, in a ring: each with its length and the time to the next.
 * Unlike {@link lampwise.rhythm.Rhythms#sameLamp} it knows the sheet's length of a blink and
 * forgives rounding, as where one phrase says the pause that another leaves to {@code every}.
 */
final class BlinkRing {
  /** How far two times may differ and still be one time that was rounded twice (chosen). */
  private static final double ROUNDING_SECONDS = 0.02;

  /** The same as a fraction of the time; the smaller of the two counts (chosen). */
  private static final double ROUNDING_FRACTION = 0.01;

  /** A blink; its length is NaN if neither the phrase nor the sheet says it. */
  private record Step(Size size, double lengthSeconds, double toNextSeconds) {}

  private final List<Step> steps = new ArrayList<>();

  private BlinkRing() {}

  /**
   * The ring of a rhythm.
   *
   * @param rhythm the rhythm
   * @param blinkSeconds the length of a blink where the rhythm gives none
   * @return the ring; empty if the rhythm has a prelude or no cycle of parts that repeats, or a
   *     time that the ring needs is a range or is not said
   */
  static Optional<BlinkRing> of(Rhythm rhythm, OptionalDouble blinkSeconds) {
    if (rhythm instanceof Rhythm.Blinking blinking
        && blinking.prelude().isEmpty()
        && blinking.cycle() instanceof Cycle.Parts parts
        && !(parts.ending() instanceof Ending.Once)) {
      BlinkRing ring = new BlinkRing();
      for (Part part : parts.parts()) {
        ring.add(part, blinkSeconds);
      }
      if (parts.ending() instanceof Ending.Every every) {
        ring.close(every);
      } else if (parts.parts().get(0) instanceof Part.Unlit dark) {
        ring.addDark(dark);
      }
      if (ring.isWhole()) {
        return Optional.of(ring);
      }
    }
    return Optional.empty();
  }

  private void add(Part part, OptionalDouble blinkSeconds) {
    if (part instanceof Part.Blinks blinks) {
      boolean fixed = blinks.count().min() == blinks.count().max();
      double length = blinks.of().map(BlinkRing::exact).orElse(blinkSeconds.orElse(Double.NaN));
      double apart = fixed ? blinks.apart().map(BlinkRing::exact).orElse(Double.NaN) : Double.NaN;
      for (int i = 1; i <= blinks.count().min(); i++) {
        steps.add(new Step(blinks.size(), length, i < blinks.count().min() ? apart : 0));
      }
      if (!fixed) {
        addToLast(Double.NaN);
      }
    } else if (part instanceof Part.Lit lit) {
      steps.add(new Step(Size.UNSAID, lit.length().map(BlinkRing::exact).orElse(Double.NaN), 0));
    } else if (part instanceof Part.Unlit unlit) {
      addDark(unlit);
    } else {
      steps.add(new Step(Size.UNSAID, Double.NaN, Double.NaN));
    }
  }

  /** Adds a pause to the last blink; one before the first blink is left for the last of all. */
  private void addDark(Part.Unlit dark) {
    if (!steps.isEmpty()) {
      addToLast(
          steps.get(steps.size() - 1).lengthSeconds()
              + dark.length().map(BlinkRing::exact).orElse(Double.NaN));
    }
  }

  private void addToLast(double seconds) {
    if (!steps.isEmpty()) {
      Step last = steps.remove(steps.size() - 1);
      steps.add(new Step(last.size(), last.lengthSeconds(), last.toNextSeconds() + seconds));
    }
  }

  /** Gives the last blink what the others leave of the cycle, whatever dark was said after it. */
  private void close(Ending.Every every) {
    if (!steps.isEmpty()) {
      double others =
          steps.stream().limit(steps.size() - 1L).mapToDouble(Step::toNextSeconds).sum();
      Step last = steps.remove(steps.size() - 1);
      steps.add(new Step(last.size(), last.lengthSeconds(), exact(every.cycle()) - others));
    }
  }

  /** Whether every time to the next blink is known; a group without a said pause leaves a 0. */
  private boolean isWhole() {
    return !steps.isEmpty() && steps.stream().allMatch(step -> step.toNextSeconds() > 0);
  }

  private static double exact(Length length) {
    return length.form() == Length.Form.EXACT ? length.fromSeconds() : Double.NaN;
  }

  /**
   * Where the other ring has this one's first blink, to within rounding.
   *
   * @return the number of blinks from the other's first, the least that fits; empty if the two are
   *     not the same ring
   */
  OptionalInt startIn(BlinkRing other) {
    int size = steps.size();
    return IntStream.range(0, size == other.steps.size() ? size : 0)
        .filter(
            shift ->
                IntStream.range(0, size)
                    .allMatch(i -> alike(steps.get(i), other.steps.get((i + shift) % size))))
        .findFirst();
  }

  /** Whether two blinks are one; the words long and short count where no length is known. */
  private static boolean alike(Step a, Step b) {
    boolean unsaid = Double.isNaN(a.lengthSeconds()) && Double.isNaN(b.lengthSeconds());
    boolean oneLength = unsaid ? a.size() == b.size() : near(a.lengthSeconds(), b.lengthSeconds());
    return oneLength && near(a.toNextSeconds(), b.toNextSeconds());
  }

  private static boolean near(double a, double b) {
    double most = Math.min(ROUNDING_SECONDS, ROUNDING_FRACTION * Math.max(a, b));
    return Math.abs(a - b) <= most;
  }
}
