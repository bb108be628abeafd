package lampwise.decode;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import lampwise.light.Window;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.RhythmException;

/**
 * Says how long a lamp that is mostly lit was lit and dark, each as it was seen: where lights
 * differ, a cycle less the mean light would be a dark that was never there.
 */
final class SteadyCycle {
  /** A light that lasts longer than this, or than half of its cycle, is said as steady. */
  private static final double STEADY_SECONDS = 2;

  private static final double HALF = 0.5;

  /** Lengths that differ by more than this are said as a range, as a part of their mean. */
  private static final double SAME = 0.05;

  /** The same in deviations of the largest timing error. */
  private static final double TIMING = 4;

  /** Darks that differ by more, as a part of their mean, have no phrase. */
  private static final double UNLIKE = 0.5;

  private SteadyCycle() {}

  /** The rhythm; empty if the train has other pulses, or the lights and darks say none. */
  static Optional<Rhythm> of(Train train, Evidence stretch) {
    if (!train.repeats() || train.perCycle() != 1) {
      return Optional.empty();
    }
    List<Double> lit = new ArrayList<>();
    List<Double> dark = new ArrayList<>();
    for (int i = 0; i < stretch.notes().size(); i++) {
      Evidence.Note note = stretch.notes().get(i);
      if (note.hasOff() && !note.onCut() && !note.offCut()) {
        lit.add(note.length());
      }
      if (i > 0) {
        Evidence.Note before = stretch.notes().get(i - 1);
        boolean seen = before.hasOff() && !before.offCut() && !note.onCut();
        if (seen && stretch.blind().stream().noneMatch(w -> cuts(w, before.off(), note.on()))) {
          dark.add(note.on() - before.off());
        }
      }
    }
    double on = mean(lit);
    double off = mean(dark);
    boolean steady = on > STEADY_SECONDS || on > HALF * (on + off);
    if (!steady || !(off > 0) || range(dark) > UNLIKE * off) {
      return Optional.empty();
    }
    double error = 0;
    for (Noise noise : stretch.settings()) {
      error = Math.max(error, TIMING * noise.sd());
    }
    try {
      return Optional.of(
          new Rhythm.Blinking(
              List.of(),
              new Cycle.Parts(
                  List.of(
                      new Part.Lit(Optional.of(length(lit, error))),
                      new Part.Unlit(Optional.of(length(dark, error)))),
                  new Ending.Repeating())));
    } catch (RhythmException e) {
      // Longer than a phrase can say.
      return Optional.empty();
    }
  }

  private static boolean cuts(Window blind, double from, double to) {
    return blind.fromSeconds() < to && from < blind.toSeconds();
  }

  private static Length length(List<Double> lengths, double error) {
    double mean = mean(lengths);
    double least = coarse(Collections.min(lengths));
    double most = coarse(Collections.max(lengths));
    return range(lengths) > Math.max(error, SAME * mean) && most > least
        ? Length.between(least, most)
        : Length.exactly(coarse(mean));
  }

  /** NaN if there is none. */
  private static double mean(List<Double> lengths) {
    return lengths.stream().mapToDouble(Double::doubleValue).average().orElse(Double.NaN);
  }

  private static double range(List<Double> lengths) {
    return Collections.max(lengths) - Collections.min(lengths);
  }

  private static double coarse(double seconds) {
    return Math.max(0.01, Measured.round(seconds, seconds >= 2 ? 1 : 2));
  }
}
