package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.rhythm.Count;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Limits;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rate;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;

/** Turns a rhythm into pulse trains: known durations as they are, the others as far as they go. */
final class Templates {
  /** A length to lay out pulses with where none is known. */
  static final double USUAL_BLINK = 0.1;

  private static final int MOST_TRAINS = 160;

  /** The widest ratio of a stretch's borders; wider ones are cut into pieces. */
  private static final double WIDEST = 1.6;

  private final OptionalDouble sheetBlink;
  private final double clock;
  private final double[] starts;
  private final List<Double> near;
  private final List<Train> trains = new ArrayList<>();

  private Templates(OptionalDouble sheetBlink, double clock, double[] starts) {
    this.sheetBlink = sheetBlink;
    this.clock = Math.max(clock, 1e-4);
    this.starts = starts;
    this.near = Intervals.common(starts, 1, 4);
  }

  /**
   * The pulse trains of a rhythm that blinks.
   *
   * @param rhythm the rhythm
   * @param sheetBlink the length of a blink where the phrase gives none
   * @param clock how far the unit's clock may run from the printed times, as a fraction
   * @param starts starts of the recording's blinks, from which unsaid durations are proposed
   */
  static List<Train> of(
      Rhythm.Blinking rhythm, OptionalDouble sheetBlink, double clock, double[] starts) {
    Templates templates = new Templates(sheetBlink, clock, starts);
    if (rhythm.cycle() instanceof Cycle.Rated rated && rhythm.prelude().isEmpty()) {
      templates.rated(rated.rate());
    } else {
      templates.laid(rhythm);
    }
    return templates.trains;
  }

  private void rated(Rate rate) {
    double slowest = 1 / rate.leastPerSecond();
    double fastest = 1 / rate.mostPerSecond();
    int pieces = Math.max(1, (int) Math.ceil(Math.log(slowest / fastest) / Math.log(WIDEST)));
    double ratio = Math.pow(slowest / fastest, 1.0 / pieces);
    for (int i = 0; i < pieces; i++) {
      double from = fastest * Math.pow(ratio, i);
      double period = from * Math.sqrt(ratio);
      double length = sheetBlink.isPresent() ? sheetBlink.getAsDouble() : Double.NaN;
      trains.add(
          new Train(
              new double[] {0},
              new double[] {length < period ? length : Double.NaN},
              0,
              period,
              (1 - clock) / Math.sqrt(ratio),
              (1 + clock) * Math.sqrt(ratio),
              -Math.log(pieces)));
    }
  }

  /** The parts of a rhythm in order, each with the values its durations may have. */
  private void laid(Rhythm.Blinking rhythm) {
    List<Part> parts = new ArrayList<>(rhythm.prelude());
    Ending ending = new Ending.Repeating();
    if (rhythm.cycle() instanceof Cycle.Parts cycle) {
      parts.addAll(cycle.parts());
      ending = cycle.ending();
    } else if (rhythm.cycle() instanceof Cycle.Rated rated) {
      Rate rate = rated.rate();
      double period = 2 / (rate.leastPerSecond() + rate.mostPerSecond());
      parts.add(
          new Part.Blinks(Count.of(1), Size.UNSAID, Optional.empty(), Optional.empty()));
      ending =
          new Ending.Every(
              rate.leastPerSecond() < rate.mostPerSecond()
                  ? Length.between(1 / rate.mostPerSecond(), 1 / rate.leastPerSecond())
                  : Length.exactly(period));
    }
    choose(new Layout(parts, rhythm.prelude().size(), ending), 0, new ArrayList<>(), 0, 0);
    thin();
  }

  /** What is to be laid out. */
  private record Layout(List<Part> parts, int prelude, Ending ending) {
    boolean lastIsDark() {
      return parts.get(parts.size() - 1) instanceof Part.Unlit;
    }
  }

  /** One part with a value for each of its durations. */
  private record Laid(Part part, int count, double length, double apart) {}

  private void choose(Layout layout, int index, List<Laid> laid, double logWeight, double half) {
    if (trains.size() >= 4 * MOST_TRAINS) {
      return;
    }
    if (index == layout.parts().size()) {
      close(layout, laid, logWeight, half);
      return;
    }
    Part part = layout.parts().get(index);
    if (part instanceof Part.Blinks blinks) {
      chooseBlinks(layout, index, laid, logWeight, half, blinks);
    } else if (part instanceof Part.RatedFor rated) {
      Rate rate = rated.rate();
      Choices periods =
          rate.mostPerSecond() > rate.leastPerSecond()
              ? Choices.grid(1 / rate.mostPerSecond(), 1 / rate.leastPerSecond(), 0.1)
              : Choices.exactly(1 / rate.leastPerSecond());
      Choices lengths = Choices.said(rated.length(), Limits.APART_LEAST_SECONDS, Limits.CYCLE_MOST_SECONDS);
      for (int i = 0; i < periods.values().length; i++) {
        for (int j = 0; j < lengths.values().length; j++) {
          double period = periods.values()[i];
          int count = Math.max(1, (int) Math.round(lengths.values()[j] / period));
          laid.add(new Laid(part, Math.min(count, 400), lengths.values()[j], period));
          choose(
              layout,
              index + 1,
              laid,
              logWeight + periods.logWeights()[i] + lengths.logWeights()[j],
              Math.max(half, Math.max(periods.half(), lengths.half())));
          laid.remove(laid.size() - 1);
        }
      }
    } else {
      Optional<Length> said =
          part instanceof Part.Lit lit ? lit.length() : ((Part.Unlit) part).length();
      Choices lengths = Choices.saidOr(said, Limits.BLINK_LEAST_SECONDS, Limits.CYCLE_MOST_SECONDS, Choices.unknown());
      for (int i = 0; i < lengths.values().length; i++) {
        laid.add(new Laid(part, 1, lengths.values()[i], 0));
        choose(
            layout,
            index + 1,
            laid,
            logWeight + lengths.logWeights()[i],
            Math.max(half, lengths.half()));
        laid.remove(laid.size() - 1);
      }
    }
  }

  private void chooseBlinks(
      Layout layout,
      int index,
      List<Laid> laid,
      double logWeight,
      double half,
      Part.Blinks blinks) {
    int counts = blinks.count().max() - blinks.count().min() + 1;
    Choices lengths =
        Choices.saidOr(blinks.of(), Limits.BLINK_LEAST_SECONDS, Limits.BLINK_MOST_SECONDS, blinkLength(blinks.size()));
    for (int count = blinks.count().min(); count <= blinks.count().max(); count++) {
      Choices aparts =
          count == 1
              ? Choices.exactly(USUAL_BLINK)
              : Choices.saidOr(
                  blinks.apart(), Limits.APART_LEAST_SECONDS, Limits.APART_MOST_SECONDS, aparts(laid));
      for (int i = 0; i < lengths.values().length; i++) {
        for (int j = 0; j < aparts.values().length; j++) {
          laid.add(new Laid(blinks, count, lengths.values()[i], aparts.values()[j]));
          choose(
              layout,
              index + 1,
              laid,
              logWeight
                  + lengths.logWeights()[i]
                  + aparts.logWeights()[j]
                  - Math.log(counts),
              Math.max(half, aparts.half()));
          laid.remove(laid.size() - 1);
        }
      }
    }
  }

  private Choices blinkLength(Size size) {
    if (size == Size.LONG || sheetBlink.isEmpty()) {
      return Choices.unknown();
    }
    return Choices.exactly(sheetBlink.getAsDouble());
  }

  /** Spacings that are not said: the same as in an earlier group, else as the recording proposes. */
  private Choices aparts(List<Laid> laid) {
    for (Laid earlier : laid) {
      if (earlier.part() instanceof Part.Blinks blinks
          && earlier.count() > 1
          && blinks.apart().isEmpty()) {
        return Choices.exactly(earlier.apart());
      }
    }
    return Choices.proposed(near, Limits.APART_LEAST_SECONDS, Limits.APART_MOST_SECONDS);
  }

  /** Lays out the pulses of one choice of values, proposing pauses where they are not said. */
  private void close(Layout layout, List<Laid> laid, double logWeight, double half) {
    boolean openPause = false;
    double inner = 0;
    int pulses = 0;
    for (int i = 0; i < laid.size(); i++) {
      inner = Math.max(inner, laid.get(i).count() > 1 ? laid.get(i).apart() : 0);
      if (i >= layout.prelude() && !(laid.get(i).part() instanceof Part.Unlit)) {
        pulses += laid.get(i).count();
      }
      openPause |= i > 0 && opensGroup(laid.get(i - 1), laid.get(i));
    }
    Choices pauses =
        openPause
            ? Choices.proposed(near, Math.max(Limits.PAUSE_RATIO_LEAST * inner, 0.2), Limits.CYCLE_MOST_SECONDS / 2)
            : Choices.exactly(Limits.PAUSE_RATIO_LEAST * Math.max(inner, USUAL_BLINK));
    for (int i = 0; i < pauses.values().length; i++) {
      Choices cycles = cycles(layout, laid, pulses);
      for (int j = 0; j < cycles.values().length; j++) {
        build(
            layout,
            laid,
            pauses.values()[i],
            cycles.values()[j],
            logWeight + pauses.logWeights()[i] + cycles.logWeights()[j],
            Math.max(half, Math.max(pauses.half(), cycles.half())));
      }
    }
  }

  /** The whole cycle: as said, as long as its parts, or as the recording proposes. */
  private Choices cycles(Layout layout, List<Laid> laid, int pulses) {
    if (layout.ending() instanceof Ending.Every every) {
      return Choices.said(every.cycle(), Limits.APART_LEAST_SECONDS, Limits.CYCLE_MOST_SECONDS);
    }
    boolean complete = layout.lastIsDark() && !hasFiller(layout, laid);
    if (layout.ending() instanceof Ending.Once || complete) {
      return Choices.exactly(0);
    }
    return Choices.proposed(
        Intervals.common(starts, Math.max(1, pulses), 4), Limits.APART_LEAST_SECONDS, Limits.CYCLE_MOST_SECONDS);
  }

  private static boolean hasFiller(Layout layout, List<Laid> laid) {
    for (int i = layout.prelude(); i < laid.size(); i++) {
      Laid part = laid.get(i);
      if (!(part.part() instanceof Part.Blinks) && Double.isNaN(part.length())) {
        return true;
      }
    }
    return false;
  }

  /** Whether one part follows another as a new group, with a pause that is not said. */
  private static boolean opensGroup(Laid before, Laid after) {
    return before.part() instanceof Part.Blinks first
        && after.part() instanceof Part.Blinks second
        && !contrast(first, second);
  }

  private static boolean contrast(Part.Blinks first, Part.Blinks second) {
    return first.size() != second.size()
        && first.size() != Size.UNSAID
        && second.size() != Size.UNSAID;
  }

  private void build(
      Layout layout,
      List<Laid> laid,
      double pause,
      double cycle,
      double logWeight,
      double half) {
    double fill = filler(layout, laid, pause, cycle);
    Pulses pulses = new Pulses();
    double cycleStart = 0;
    int prelude = 0;
    for (int i = 0; i < laid.size(); i++) {
      if (i == layout.prelude()) {
        cycleStart = pulses.time;
        prelude = pulses.on.size();
        if (i > 0 && pulses.litLast && !(laid.get(i).part() instanceof Part.Unlit)) {
          // A gap the eye can see between the prelude's last light and the cycle's first.
          cycleStart += USUAL_BLINK;
          pulses.time = cycleStart;
        }
      }
      Laid part = laid.get(i);
      if (i > 0 && i != layout.prelude()) {
        pulses.time += gap(laid.get(i - 1), part, pause);
      }
      pulses.add(part, fill);
    }
    double whole = layout.ending() instanceof Ending.Every ? cycle : pulses.time - cycleStart;
    if (!(layout.ending() instanceof Ending.Every) && cycle > 0) {
      whole = cycle;
    }
    boolean once = layout.ending() instanceof Ending.Once || pulses.on.size() == prelude;
    double end = pulses.on.isEmpty() ? 0 : pulses.on.get(pulses.on.size() - 1) - cycleStart;
    if (pulses.on.isEmpty() || !once && !(whole > end)) {
      return;
    }
    double[] on = pulses.on.stream().mapToDouble(Double::doubleValue).toArray();
    double[] length = pulses.length.stream().mapToDouble(Double::doubleValue).toArray();
    double widen = Math.exp(half);
    trains.add(
        new Train(
            on,
            length,
            once ? 0 : prelude,
            once ? 0 : whole,
            (1 - clock) / widen,
            (1 + clock) * widen,
            logWeight));
  }

  /** What is left of a stated cycle for the one part that does not say how long it lasts. */
  private static double filler(Layout layout, List<Laid> laid, double pause, double cycle) {
    if (!(cycle > 0)) {
      return 1;
    }
    Pulses pulses = new Pulses();
    for (int i = layout.prelude(); i < laid.size(); i++) {
      if (i > layout.prelude()) {
        pulses.time += gap(laid.get(i - 1), laid.get(i), pause);
      }
      pulses.add(laid.get(i), 0);
    }
    return Math.max(0.05, cycle - pulses.time);
  }

  private static double gap(Laid before, Laid after, double pause) {
    boolean dark = before.part() instanceof Part.Unlit || after.part() instanceof Part.Unlit;
    if (dark) {
      return 0;
    }
    if (opensGroup(before, after)) {
      return pause;
    }
    double apart = Math.max(before.count() > 1 ? before.apart() : 0,
        after.count() > 1 ? after.apart() : 0);
    return Math.max(USUAL_BLINK, apart - USUAL_BLINK);
  }

  /** Pulses as they are laid out. */
  private static final class Pulses {
    final List<Double> on = new ArrayList<>();
    final List<Double> length = new ArrayList<>();
    double time;
    boolean litLast;

    void add(Laid laid, double fill) {
      litLast = !(laid.part() instanceof Part.Unlit);
      if (laid.part() instanceof Part.Unlit) {
        time += Double.isNaN(laid.length()) ? fill : laid.length();
      } else if (laid.part() instanceof Part.Lit) {
        double seconds = Double.isNaN(laid.length()) ? fill : laid.length();
        on.add(time);
        length.add(seconds);
        time += seconds;
      } else if (laid.part() instanceof Part.RatedFor) {
        for (int i = 0; i < laid.count(); i++) {
          on.add(time + i * laid.apart());
          length.add(Double.NaN);
        }
        time += laid.length();
      } else {
        for (int i = 0; i < laid.count(); i++) {
          on.add(time + i * laid.apart());
          length.add(laid.length());
        }
        double last = Double.isNaN(laid.length()) ? USUAL_BLINK : laid.length();
        time += (laid.count() - 1) * laid.apart() + last;
      }
    }
  }

  /** Keeps the weightiest trains where there are too many. */
  private void thin() {
    if (trains.size() > MOST_TRAINS) {
      trains.sort((a, b) -> Double.compare(b.logWeight(), a.logWeight()));
      trains.subList(MOST_TRAINS, trains.size()).clear();
    }
  }
}
