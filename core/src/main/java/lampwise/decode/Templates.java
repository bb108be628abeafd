package lampwise.decode;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import lampwise.rhythm.Count;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Limits;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rate;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;

/**
 * Turns a rhythm into pulse trains: known durations as they are, ranges in cells, unsaid ones as
 * the recording proposes them, every combination with the share of the prior that it stands for.
 */
final class Templates {
  private static final int MOST_TRAINS = 160;

  /** Blinks of a part that is said by its rate. */
  private static final int MOST_RATED = 400;

  /** The widest ratio of a stretch's borders; wider ones are cut into pieces. */
  private static final double WIDEST = 1.6;

  private final OptionalDouble sheetBlink;
  private final double clock;
  private final double[] starts;
  private final SeenLengths seen;
  private final List<Double> near;
  private final List<Train> trains = new ArrayList<>();

  private Templates(OptionalDouble sheetBlink, double clock, double[] starts, SeenLengths seen) {
    this.sheetBlink = sheetBlink;
    this.clock = Math.max(clock, 1e-4);
    this.starts = starts;
    this.seen = seen;
    this.near = Intervals.common(starts, 1, 4);
  }

  /**
   * The pulse trains of a rhythm that blinks.
   *
   * @param rhythm the rhythm
   * @param sheetBlink the length of a blink where the phrase gives none
   * @param clock how far the unit's clock may run from the printed times, as a fraction
   * @param evidence the recording, from which unsaid durations are proposed
   */
  static List<Train> of(
      Rhythm.Blinking rhythm, OptionalDouble sheetBlink, double clock, Evidence evidence) {
    SeenLengths seen = SeenLengths.of(evidence.notes());
    List<UnsaidShape> shapes = sheetBlink.isEmpty() ? UnsaidShape.of(rhythm) : List.of();
    if (shapes.isEmpty() || !UnsaidFit.isEnough(shapes.get(0), evidence)) {
      return of(rhythm, new Templates(sheetBlink, clock, evidence.starts(), seen));
    }
    List<Train> fitted = new ArrayList<>();
    for (UnsaidShape shape : shapes) {
      fitted.addAll(UnsaidFit.of(shape, evidence, seen));
    }
    return fitted;
  }

  /** The pulse trains of a rhythm as far as they are known without a recording. */
  static List<Train> of(Rhythm.Blinking rhythm, OptionalDouble sheetBlink, double clock) {
    return of(rhythm, new Templates(sheetBlink, clock, new double[0], SeenLengths.of(List.of())));
  }

  private static List<Train> of(Rhythm.Blinking rhythm, Templates templates) {
    if (rhythm.cycle() instanceof Cycle.Rated rated && rhythm.prelude().isEmpty()) {
      templates.rated(rated.rate());
    } else {
      templates.choose(Plan.of(rhythm), new ArrayList<>());
      templates.thin();
    }
    return templates.trains;
  }

  /** From one blink to the next at a rate; the slowest rates come to the longest duration. */
  private static double seconds(double perSecond) {
    return Math.min(Length.MOST_SECONDS, 1 / perSecond);
  }

  /** A rate is one pulse whose cycle stretches over the whole range. */
  private void rated(Rate rate) {
    double slowest = seconds(rate.leastPerSecond());
    double fastest = seconds(rate.mostPerSecond());
    int pieces = Math.max(1, (int) Math.ceil(Math.log(slowest / fastest) / Math.log(WIDEST)));
    double ratio = Math.pow(slowest / fastest, 1.0 / pieces);
    boolean own = sheetBlink.isPresent();
    double length = own ? sheetBlink.getAsDouble() : seen.usual();
    double logLength = own || Double.isNaN(length) ? 0 : SeenLengths.LOG_SHARE;
    for (int i = 0; i < pieces; i++) {
      double period = fastest * Math.pow(ratio, i + 0.5);
      Train train =
          new Train(
              new double[] {0},
              new double[] {length < period * Math.sqrt(ratio) ? length : Double.NaN},
              0,
              period,
              (1 - clock) / Math.sqrt(ratio),
              (1 + clock) * Math.sqrt(ratio),
              logLength - Math.log(pieces));
      trains.add(own ? train : train.measured());
    }
  }

  /** The parts of a rhythm in order, a rate that follows a prelude turned into one blink. */
  record Plan(List<Part> parts, int prelude, Ending ending) {
    static Plan of(Rhythm.Blinking rhythm) {
      List<Part> parts = new ArrayList<>(rhythm.prelude());
      if (rhythm.cycle() instanceof Cycle.Parts cycle) {
        parts.addAll(cycle.parts());
        return new Plan(parts, rhythm.prelude().size(), cycle.ending());
      }
      Rate rate = ((Cycle.Rated) rhythm.cycle()).rate();
      parts.add(new Part.Blinks(Count.of(1), Size.UNSAID, Optional.empty(), Optional.empty()));
      double fastest = seconds(rate.mostPerSecond());
      double slowest = seconds(rate.leastPerSecond());
      Length cycle = slowest > fastest ? Length.between(fastest, slowest) : Length.exactly(fastest);
      return new Plan(parts, rhythm.prelude().size(), new Ending.Every(cycle));
    }

    /** Whether the parts of the cycle say by themselves how long it is. */
    boolean complete() {
      for (Part part : parts.subList(prelude, parts.size())) {
        boolean open =
            (part instanceof Part.Lit lit && lit.length().isEmpty())
                || (part instanceof Part.Unlit unlit && unlit.length().isEmpty());
        if (open) {
          return false;
        }
      }
      return parts.get(parts.size() - 1) instanceof Part.Unlit;
    }
  }

  /**
   * One part with a value for each of its durations.
   *
   * @param count how many blinks; 1 for a steady or dark part
   * @param length how long each lasts, NaN if unknown
   * @param apart from start to start
   * @param logWeight logarithm of the share of the prior that the values stand for
   * @param half how far to either side they stand for, as a difference of logarithms
   */
  record Laid(Part part, int count, double length, double apart, double logWeight, double half) {}

  private void choose(Plan plan, List<Laid> laid) {
    if (trains.size() >= 4 * MOST_TRAINS) {
      return;
    }
    if (laid.size() == plan.parts().size()) {
      close(plan, laid);
      return;
    }
    boolean endsUnsaid = plan.ending() instanceof Ending.Repeating;
    for (Laid next : options(plan.parts().get(laid.size()), laid, endsUnsaid)) {
      laid.add(next);
      choose(plan, laid);
      laid.remove(laid.size() - 1);
    }
  }

  private List<Laid> options(Part part, List<Laid> before, boolean endsUnsaid) {
    if (part instanceof Part.Blinks blinks) {
      return blinks(blinks, before);
    }
    if (part instanceof Part.RatedFor rated) {
      return rated(rated);
    }
    Optional<Length> said =
        part instanceof Part.Lit lit ? lit.length() : ((Part.Unlit) part).length();
    // A light of unsaid length in a cycle of unsaid length lasts as long as the recording's own.
    Choices unsaid =
        part instanceof Part.Lit && endsUnsaid ? Choices.exactly(seen.usual()) : Choices.unknown();
    Choices lengths =
        Choices.saidOr(said, Limits.BLINK_LEAST_SECONDS, Limits.CYCLE_MOST_SECONDS, unsaid);
    List<Laid> options = new ArrayList<>();
    for (Choices.Value length : lengths.values()) {
      options.add(new Laid(part, 1, length.seconds(), 0, length.logWeight(), lengths.half()));
    }
    return options;
  }

  private List<Laid> blinks(Part.Blinks blinks, List<Laid> before) {
    Choices lengths =
        Choices.saidOr(
            blinks.of(),
            Limits.BLINK_LEAST_SECONDS,
            Limits.BLINK_MOST_SECONDS,
            blinkLength(blinks.size()));
    double logCounts = Math.log(blinks.count().max() - blinks.count().min() + 1);
    List<Laid> options = new ArrayList<>();
    for (int count = blinks.count().min(); count <= blinks.count().max(); count++) {
      Choices aparts =
          count == 1 ? Choices.exactly(TrainBuilder.USUAL_BLINK) : aparts(blinks, before);
      for (Choices.Value length : lengths.values()) {
        for (Choices.Value apart : aparts.values()) {
          double logWeight = length.logWeight() + apart.logWeight() - logCounts;
          options.add(
              new Laid(blinks, count, length.seconds(), apart.seconds(), logWeight, aparts.half()));
        }
      }
    }
    return options;
  }

  /** Blinks at a rate for a time: all that start within it, the first at once. */
  private List<Laid> rated(Part.RatedFor rated) {
    double fastest = seconds(rated.rate().mostPerSecond());
    double slowest = seconds(rated.rate().leastPerSecond());
    Choices periods =
        slowest > fastest ? Choices.cells(fastest, slowest) : Choices.exactly(fastest);
    Choices lengths =
        Choices.said(rated.length(), Limits.APART_LEAST_SECONDS, Limits.CYCLE_MOST_SECONDS);
    List<Laid> options = new ArrayList<>();
    for (Choices.Value period : periods.values()) {
      for (Choices.Value length : lengths.values()) {
        double blinks = Math.ceil(length.seconds() / period.seconds() - 1e-9);
        options.add(
            new Laid(
                rated,
                (int) Math.max(1, Math.min(blinks, MOST_RATED)),
                Double.NaN,
                period.seconds(),
                period.logWeight() + length.logWeight(),
                Math.max(periods.half(), lengths.half())));
      }
    }
    return options;
  }

  private Choices blinkLength(Size size) {
    return size == Size.LONG || sheetBlink.isEmpty()
        ? Choices.exactly(seen.of(size))
        : Choices.exactly(sheetBlink.getAsDouble());
  }

  /** The share of the prior that lengths stand for which were taken from the recording. */
  private double logLengths(List<Laid> laid) {
    Set<Double> taken = new HashSet<>();
    for (Laid part : laid) {
      if (part.part() instanceof Part.Blinks blinks
          && blinks.of().isEmpty()
          && (blinks.size() == Size.LONG || sheetBlink.isEmpty())
          && !Double.isNaN(part.length())) {
        taken.add(part.length());
      }
      if (part.part() instanceof Part.Lit lit
          && lit.length().isEmpty()
          && !Double.isNaN(part.length())) {
        taken.add(part.length());
      }
    }
    return taken.size() * SeenLengths.LOG_SHARE;
  }

  /**
   * Spacings; unsaid ones as the recording proposes, in a later group as likely as not the same as
   * in an earlier one.
   */
  private Choices aparts(Part.Blinks blinks, List<Laid> before) {
    Choices proposed =
        Choices.proposed(near, Limits.APART_LEAST_SECONDS, Limits.APART_MOST_SECONDS);
    if (blinks.apart().isEmpty()) {
      for (Laid earlier : before) {
        if (earlier.part() instanceof Part.Blinks other
            && earlier.count() > 1
            && other.apart().isEmpty()) {
          return proposed.or(earlier.apart());
        }
      }
    }
    return Choices.saidOr(
        blinks.apart(), Limits.APART_LEAST_SECONDS, Limits.APART_MOST_SECONDS, proposed);
  }

  /** Lays out one choice of values with every pause and cycle that is possible for it. */
  private void close(Plan plan, List<Laid> laid) {
    double inner = 0;
    double blink = TrainBuilder.USUAL_BLINK;
    int pulses = 0;
    double logLengths = logLengths(laid);
    double logWeight = logLengths;
    double half = 0;
    boolean opens = false;
    boolean contrasts = false;
    for (int i = 0; i < laid.size(); i++) {
      Laid part = laid.get(i);
      inner = Math.max(inner, part.count() > 1 ? part.apart() : 0);
      blink = Double.isNaN(part.length()) ? blink : part.length();
      pulses += i >= plan.prelude() && !(part.part() instanceof Part.Unlit) ? part.count() : 0;
      opens |= i > 0 && TrainBuilder.opensGroup(laid.get(i - 1), part);
      contrasts |= i > 0 && TrainBuilder.contrast(laid.get(i - 1), part);
      logWeight += part.logWeight();
      half = Math.max(half, part.half());
    }
    // Pauses run from the end of a blink, what was seen runs from start to start.
    double least = Limits.PAUSE_RATIO_LEAST * Math.max(inner, TrainBuilder.USUAL_BLINK) - blink;
    least = Math.max(least, TrainBuilder.USUAL_BLINK);
    double length = blink;
    Choices pauses =
        opens
            ? Choices.proposed(
                near.stream().map(gap -> gap - length).toList(),
                least,
                Limits.CYCLE_MOST_SECONDS / 2)
            : Choices.exactly(least);
    Choices joins =
        contrasts
            ? Choices.proposed(near, Limits.APART_LEAST_SECONDS, Limits.APART_MOST_SECONDS)
            : Choices.unknown();
    Choices cycles = cycles(plan, pulses);
    double widen = Math.exp(Math.max(half, Math.max(pauses.half(), cycles.half())));
    for (Choices.Value pause : pauses.values()) {
      for (Choices.Value join : joins.values()) {
        for (Choices.Value cycle : cycles.values()) {
          TrainBuilder.Gaps gaps = new TrainBuilder.Gaps(pause.seconds(), join.seconds());
          double closing = (opens ? Limits.PAUSE_RATIO_LEAST : 1) * pause.seconds();
          if (endsTooSoon(plan, laid, gaps, cycle.seconds(), closing)) {
            continue;
          }
          TrainBuilder.build(plan, laid, gaps, cycle.seconds())
              .train(
                  (1 - clock) / widen,
                  (1 + clock) * widen,
                  logWeight + pause.logWeight() + join.logWeight() + cycle.logWeight())
              .map(train -> logLengths < 0 ? train.measured() : train)
              .ifPresent(trains::add);
        }
      }
    }
  }

  /** The pause that closes a cycle is the longest, or its groups would have no order. */
  private static boolean endsTooSoon(
      Plan plan, List<Laid> laid, TrainBuilder.Gaps gaps, double cycle, double closing) {
    return !(plan.ending() instanceof Ending.Every)
        && cycle > 0
        && cycle - TrainBuilder.span(plan, laid, gaps) < 0.9 * closing;
  }

  /** The whole cycle: as said, 0 where the parts say it, or as the recording proposes. */
  private Choices cycles(Plan plan, int pulses) {
    if (plan.ending() instanceof Ending.Every every) {
      return Choices.said(every.cycle(), Limits.APART_LEAST_SECONDS, Limits.CYCLE_MOST_SECONDS);
    }
    if (plan.ending() instanceof Ending.Once || plan.complete()) {
      return Choices.exactly(0);
    }
    return Choices.proposed(
        Intervals.common(starts, Math.max(1, pulses), 4),
        Limits.APART_LEAST_SECONDS,
        Limits.CYCLE_MOST_SECONDS);
  }

  /** Keeps the weightiest trains where there are too many. */
  private void thin() {
    if (trains.size() > MOST_TRAINS) {
      trains.sort((a, b) -> Double.compare(b.logWeight(), a.logWeight()));
      trains.subList(MOST_TRAINS, trains.size()).clear();
    }
  }
}
