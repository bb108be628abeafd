package lampwise.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwise.rhythm.Count;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rate;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.RhythmException;
import lampwise.rhythm.Size;

/** Says in a rhythm what a fitted pulse train came to. */
final class Measured {
  /** Single blinks closer together than this are said as a rate. */
  private static final double RATE_BELOW_SECONDS = 0.67;

  /** Gaps are the same if they differ by less than this fraction, or by 50 ms. */
  private static final double SAME = 0.15;

  private static final double SAME_SECONDS = 0.05;

  /** A light that lasts longer than this is said as steady. */
  private static final double STEADY_SECONDS = 2;

  private Measured() {}

  /** The rhythm of a train that ran at this stretch; lengths NaN where they were not seen. */
  static Optional<Rhythm> rhythm(Train train, double stretch, double[] lengths) {
    // To the microsecond, so that what another zero of time does to a number decides nothing.
    double[] rounded = Arrays.stream(lengths).map(length -> round(length, 6)).toArray();
    try {
      return Optional.of(new Rhythm.Blinking(List.of(), cycle(train, stretch, rounded)));
    } catch (RhythmException e) {
      // Rounded values may contradict each other; then there is no honest phrase.
      return Optional.empty();
    }
  }

  /**
   * What a stretch shows in which nothing repeats: dark, steady, or one or two blinks once. Empty
   * if that cannot be said: a level that never changes, or a window that ends with the last blink.
   */
  static Optional<Rhythm> unrepeated(Evidence stretch) {
    List<Evidence.Note> notes = stretch.notes();
    if (notes.isEmpty()) {
      return stretch.level() ? Optional.empty() : Optional.of(new Rhythm.Dark());
    }
    if (stretch.litThroughout()) {
      return Optional.of(new Rhythm.Steady());
    }
    if (notes.size() > 2 || !stretch.stated()) {
      return Optional.empty();
    }
    double[] on = new double[notes.size()];
    double[] lengths = new double[on.length];
    for (int i = 0; i < on.length; i++) {
      Evidence.Note note = notes.get(i);
      on[i] = note.on() - notes.get(0).on();
      lengths[i] = note.onCut() || note.offCut() ? Double.NaN : note.length();
    }
    return rhythm(new Train(on, lengths, 0, 0, 1, 1, 0), 1, lengths);
  }

  private static Cycle cycle(Train train, double stretch, double[] lengths) {
    int from = train.prelude();
    int count = train.size() - from;
    double[] on = new double[count];
    for (int i = 0; i < count; i++) {
      on[i] = round(stretch * (train.on(from + i) - train.on(from)), 6);
    }
    double whole = train.cycleSeconds() * stretch;
    if (count == 1
        && train.repeats()
        && Double.isNaN(lengths[from])
        && whole < RATE_BELOW_SECONDS) {
      double rate = round(1 / whole, 1);
      return new Cycle.Rated(new Rate(Rate.Form.EXACT, rate, rate, Rate.Per.SECOND));
    }
    boolean steady = count == 1 && isSteady(lengths[from], whole, train.repeats());
    if (steady && train.repeats()) {
      double lit = coarse(lengths[from]);
      double dark = Math.max(0.01, coarse(whole - lengths[from]));
      return new Cycle.Parts(
          List.of(
              new Part.Lit(Optional.of(Length.exactly(lit))),
              new Part.Unlit(Optional.of(Length.exactly(dark)))),
          new Ending.Repeating());
    }
    List<Part> parts = new ArrayList<>();
    int start = 0;
    double end = 0;
    while (start < count) {
      int stop = groupEnd(on, lengths, from, start, whole, train.repeats());
      if (start > 0) {
        parts.add(
            new Part.Unlit(Optional.of(Length.exactly(Math.max(0.01, fine(on[start] - end))))));
      }
      parts.add(part(on, lengths[from + start], start, stop));
      double last = lengths[from + stop - 1];
      end = on[stop - 1] + (Double.isNaN(last) ? TrainBuilder.USUAL_BLINK : last);
      start = stop;
    }
    return new Cycle.Parts(
        parts,
        train.repeats() ? new Ending.Every(Length.exactly(coarse(whole))) : new Ending.Once());
  }

  private static boolean isSteady(double length, double whole, boolean repeats) {
    return length > STEADY_SECONDS || (repeats && length > 0.5 * whole);
  }

  private static Part part(double[] on, double length, int start, int stop) {
    int count = stop - start;
    if (count == 1 && length > STEADY_SECONDS) {
      return new Part.Lit(Optional.of(Length.exactly(coarse(length))));
    }
    Optional<Length> of =
        Double.isNaN(length)
            ? Optional.empty()
            : Optional.of(Length.exactly(Math.max(0.01, fine(length))));
    Optional<Length> apart =
        count == 1
            ? Optional.empty()
            : Optional.of(
                Length.exactly(Math.max(0.02, fine((on[stop - 1] - on[start]) / (count - 1)))));
    return new Part.Blinks(Count.of(count), Size.UNSAID, of, apart);
  }

  /** The first pulse after a group of evenly spaced, equally long pulses. */
  private static int groupEnd(
      double[] on, double[] lengths, int from, int start, double whole, boolean repeats) {
    int stop = start + 1;
    while (stop < on.length && same(lengths[from + start], lengths[from + stop])) {
      double gap = on[stop] - on[stop - 1];
      double first = on[start + 1] - on[start];
      double after =
          stop + 1 < on.length ? on[stop + 1] - on[stop] : repeats ? whole + on[0] - on[stop] : gap;
      boolean pause = stop == start + 1 && gap > 1.3 * after && on.length > 2;
      if (!same(gap, first) || pause) {
        break;
      }
      stop++;
    }
    return stop;
  }

  private static boolean same(double a, double b) {
    if (Double.isNaN(a) || Double.isNaN(b)) {
      return Double.isNaN(a) == Double.isNaN(b);
    }
    return Math.abs(a - b) < SAME * Math.max(a, b) || Math.abs(a - b) < SAME_SECONDS;
  }

  /** Rounded to what a recording of a minute can tell of a whole cycle. */
  private static double coarse(double seconds) {
    return round(seconds, seconds >= 2 ? 1 : 2);
  }

  private static double fine(double seconds) {
    return round(seconds, 2);
  }

  static double round(double value, int decimals) {
    double scale = Math.pow(10, decimals);
    return Math.rint(value * scale) / scale;
  }
}
