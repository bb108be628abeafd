package lampwise.service;

import java.util.List;

/**
 * A flush volume as it was measured.
 *
 * @param litres the mean of a flush, L
 * @param unsure its expanded uncertainty (k = 2), L
 * @param flushes how many flushes it is the mean of
 * @param method how it was measured
 * @param step what repeats do not improve: the part of {@code unsure} that stays however many
 *     flushes are measured, L
 */
public record Volume(double litres, double unsure, int flushes, Method method, double step) {
  /** The factor from a standard to an expanded uncertainty (JCGM 100, k = 2). */
  private static final double COVER = 2;

  /** Reaction at the start and at the end of a timed flush, s each (common practice, no source). */
  private static final double REACTION_SECONDS = 0.25;

  /** More flushes than this are asked of nobody. */
  public static final int MOST_FLUSHES = 50;

  /** How a volume is measured. */
  public enum Method {
    /** The meter of the branch was read before and after some flushes. */
    METER("meter"),
    /** The water of each flush was caught and measured. */
    CATCH("catch"),
    /** A flow was timed. */
    TIME("time");

    private final String word;

    Method(String word) {
      this.word = word;
    }

    /**
     * The word for it.
     *
     * @return the word, lower case
     */
    public String word() {
      return word;
    }
  }

  /**
   * From a meter that was read before and after, all else closed. Each reading lies anywhere in one
   * step of the scale: u = r / (N sqrt 6) for two readings (JCGM 100); the meter's own accuracy is
   * rectangular: a V / sqrt 3.
   *
   * @param through what the meter went on by, less what else was drawn, L, 0 or more
   * @param flushes how many flushes that were, 1 or more
   * @param resolution one step of the meter's scale, L, over 0
   * @param accuracy the meter's accuracy as a part of the reading, 0 or more; 0.015 for 1.5 %
   * @return the volume
   * @throws GuideException if a value is out of range
   */
  public static Volume byMeter(double through, int flushes, double resolution, double accuracy) {
    Rules.that(through >= 0 && through < 1e9, "the meter's readings must rise: " + through);
    Rules.that(flushes >= 1, "a volume needs a flush or more: " + flushes);
    Rules.that(resolution > 0, "a step of the meter's scale must be over 0: " + resolution);
    Rules.that(accuracy >= 0 && accuracy < 1, "an accuracy must be 0 % or more: " + accuracy);
    double litres = through / flushes;
    double reading = resolution / (flushes * Math.sqrt(6));
    double own = accuracy * litres / Math.sqrt(3);
    return new Volume(litres, COVER * Math.hypot(reading, own), flushes, Method.METER, COVER * own);
  }

  /**
   * From flushes that were caught one by one: the mean, and the standard deviation of the mean, at
   * least what one step of the scale makes.
   *
   * @param caught the volumes, L, one or more
   * @param resolution one step of the scale, L, over 0
   * @return the volume; of a single flush the spread is not known, a tenth of it is taken
   * @throws GuideException if there is none or a value is out of range
   */
  public static Volume byCatch(List<Double> caught, double resolution) {
    Rules.that(!caught.isEmpty(), "no flush was caught");
    Rules.that(resolution > 0, "a step of the scale must be over 0: " + resolution);
    int size = caught.size();
    double sum = 0;
    for (double litres : caught) {
      Rules.that(litres >= 0 && litres < 1e6, "a volume must be 0 or more: " + litres);
      sum += litres;
    }
    double mean = sum / size;
    double squares = 0;
    for (double litres : caught) {
      squares += (litres - mean) * (litres - mean);
    }
    double scale = resolution / Math.sqrt(12);
    double spread = size > 1 ? Math.sqrt(squares / (size - 1)) : 0.1 * mean;
    double unsure = COVER * Math.hypot(spread / Math.sqrt(size), scale);
    return new Volume(mean, unsure, size, Method.CATCH, COVER * scale);
  }

  /**
   * From a flow and how long it ran: a screen only.
   *
   * @param flow L/min, over 0
   * @param seconds how long it ran, over 0
   * @return the volume
   * @throws GuideException if a value is out of range
   */
  public static Volume byTime(double flow, double seconds) {
    Rules.that(flow > 0 && flow < 1e6, "a flow must be over 0: " + flow);
    Rules.that(seconds > 0 && seconds < 1e6, "a time must be over 0 s: " + seconds);
    double unsure = COVER * flow / 60 * REACTION_SECONDS * Math.sqrt(2);
    return new Volume(flow / 60 * seconds, unsure, 1, Method.TIME, 0);
  }

  /**
   * How many more flushes would decide against a limit if the mean stayed as it is.
   *
   * @param limit the limit, L
   * @return how many more; 0 if it is decided already, -1 if no number up to {@value #MOST_FLUSHES}
   *     does
   */
  public int moreFlushes(double limit) {
    double away = Math.abs(litres - limit);
    for (int more = 0; more <= MOST_FLUSHES; more++) {
      double shrink = flushes / (double) (flushes + more);
      double power = method == Method.METER ? shrink * shrink : shrink;
      double part = Math.max(0, unsure * unsure - step * step) * power;
      if (Math.sqrt(part + step * step) <= away) {
        return more;
      }
    }
    return -1;
  }
}
