package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Part;
import lampwise.rhythm.Size;

/** Lays out the pulses of a rhythm all of whose durations have a value. */
final class TrainBuilder {
  /** A length to lay out pulses with where none is known, and a gap that an eye can see. */
  static final double USUAL_BLINK = 0.1;

  private final List<Double> on = new ArrayList<>();
  private final List<Double> length = new ArrayList<>();

  /** Where the last part ended. */
  private double time;

  private int prelude;
  private double cycleSeconds;
  private boolean repeats;

  private TrainBuilder() {}

  /**
   * Lays out the parts.
   *
   * @param gaps the dark between parts where it is not said
   * @param cycle the whole cycle, 0 where the parts say it or nothing repeats
   */
  static TrainBuilder build(
      Templates.Plan plan, List<Templates.Laid> laid, Gaps gaps, double cycle) {
    double fill = cycle > 0 ? Math.max(0.05, cycle - span(plan, laid, gaps)) : 1;
    TrainBuilder builder = new TrainBuilder();
    double cycleStart = 0;
    for (int i = 0; i < laid.size(); i++) {
      if (i > 0) {
        boolean first = i == plan.prelude();
        builder.time += first ? afterPrelude(laid, i) : gap(laid.get(i - 1), laid.get(i), gaps);
      }
      if (i == plan.prelude()) {
        cycleStart = builder.time;
        builder.prelude = builder.on.size();
      }
      builder.add(laid.get(i), fill);
    }
    builder.repeats =
        !(plan.ending() instanceof Ending.Once) && builder.on.size() > builder.prelude;
    builder.cycleSeconds = cycle > 0 ? cycle : builder.time - cycleStart;
    return builder;
  }

  /** The train, or empty where the values contradict each other. */
  Optional<Train> train(double low, double high, double logWeight) {
    if (on.isEmpty()) {
      return Optional.empty();
    }
    double[] starts = on.stream().mapToDouble(Double::doubleValue).toArray();
    double[] lengths = length.stream().mapToDouble(Double::doubleValue).toArray();
    if (!repeats) {
      return Optional.of(new Train(starts, lengths, 0, 0, low, high, logWeight));
    }
    if (!(cycleSeconds > starts[starts.length - 1] - starts[prelude])) {
      return Optional.empty();
    }
    return Optional.of(new Train(starts, lengths, prelude, cycleSeconds, low, high, logWeight));
  }

  /** How long the parts of a cycle last, a part without length not counted. */
  static double span(Templates.Plan plan, List<Templates.Laid> laid, Gaps gaps) {
    TrainBuilder builder = new TrainBuilder();
    for (int i = plan.prelude(); i < laid.size(); i++) {
      if (i > plan.prelude()) {
        builder.time += gap(laid.get(i - 1), laid.get(i), gaps);
      }
      builder.add(laid.get(i), 0);
    }
    return builder.time;
  }

  private void add(Templates.Laid laid, double fill) {
    double seconds = Double.isNaN(laid.length()) ? fill : laid.length();
    if (laid.part() instanceof Part.Unlit) {
      time += seconds;
    } else if (laid.part() instanceof Part.Lit) {
      on.add(time);
      length.add(seconds);
      time += seconds;
    } else {
      for (int i = 0; i < laid.count(); i++) {
        on.add(time + i * laid.apart());
        length.add(laid.length());
      }
      double last = Double.isNaN(laid.length()) ? USUAL_BLINK : laid.length();
      time += (laid.count() - 1) * laid.apart() + last;
    }
  }

  /**
   * What is dark between parts where it is not said.
   *
   * @param pause from the end of one group to the start of the next
   * @param join from the start of a long blink to the start of a short one, or the other way
   */
  record Gaps(double pause, double join) {}

  /** Whether one part follows another as a new group, with a pause that is not said. */
  static boolean opensGroup(Templates.Laid before, Templates.Laid after) {
    return before.part() instanceof Part.Blinks
        && after.part() instanceof Part.Blinks
        && !contrast(before, after);
  }

  /** Whether long stands beside short, which opens no group. */
  static boolean contrast(Templates.Laid before, Templates.Laid after) {
    return before.part() instanceof Part.Blinks first
        && after.part() instanceof Part.Blinks second
        && first.size() != second.size()
        && first.size() != Size.UNSAID
        && second.size() != Size.UNSAID;
  }

  private static double gap(Templates.Laid before, Templates.Laid after, Gaps gaps) {
    if (before.part() instanceof Part.Unlit || after.part() instanceof Part.Unlit) {
      return 0;
    }
    double length = Double.isNaN(before.length()) ? USUAL_BLINK : before.length();
    if (opensGroup(before, after)) {
      return gaps.pause();
    }
    if (contrast(before, after)) {
      return Math.max(0.05, gaps.join() - length);
    }
    double apart =
        Math.max(before.count() > 1 ? before.apart() : 0, after.count() > 1 ? after.apart() : 0);
    return Math.max(USUAL_BLINK, apart - USUAL_BLINK);
  }

  private static double afterPrelude(List<Templates.Laid> laid, int cycle) {
    boolean dark =
        laid.get(cycle - 1).part() instanceof Part.Unlit
            || laid.get(cycle).part() instanceof Part.Unlit;
    return dark ? 0 : USUAL_BLINK;
  }
}
