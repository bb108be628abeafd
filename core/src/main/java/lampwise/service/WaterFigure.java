package lampwise.service;

/**
 * A figure beside a limit.
 *
 * @param limit the limit
 * @param value the figure in the limit's unit
 * @param unsure its expanded uncertainty in the same unit, 0 or more
 * @param verdict what that says: pass if the figure with its uncertainty lies inside the limit,
 *     fail if it lies outside, both borders counting as inside; else not decided (guard band, JCGM
 *     106, from memory)
 * @param moreFlushes how many more flushes would decide; 0 if it is decided, -1 if none would
 */
public record WaterFigure(
    WaterLimit limit, double value, double unsure, WaterVerdict verdict, int moreFlushes) {

  /** A figure without uncertainty worth speaking of: a gauge was read. */
  static WaterFigure read(WaterLimit limit, double base, double unsureBase) {
    double value = limit.unit().fromBase(base);
    double unsure = limit.unit().fromBase(unsureBase) - limit.unit().fromBase(0);
    return new WaterFigure(limit, value, unsure, verdict(limit, value, unsure), 0);
  }

  /** A flush volume. */
  static WaterFigure of(WaterLimit limit, Volume volume) {
    WaterFigure figure = read(limit, volume.litres(), volume.unsure());
    if (figure.verdict() != WaterVerdict.NOT_DECIDED) {
      return figure;
    }
    double near =
        limit.atMost().isPresent()
                && Math.abs(figure.value - limit.atMost().getAsDouble()) <= figure.unsure
            ? limit.atMost().getAsDouble()
            : limit.atLeast().orElseThrow();
    int more = volume.moreFlushes(limit.unit().toBase(near));
    return new WaterFigure(limit, figure.value, figure.unsure, figure.verdict, more);
  }

  private static WaterVerdict verdict(WaterLimit limit, double value, double unsure) {
    double least = limit.atLeast().orElse(Double.NEGATIVE_INFINITY);
    double most = limit.atMost().orElse(Double.POSITIVE_INFINITY);
    if (value - unsure >= least && value + unsure <= most) {
      return WaterVerdict.PASS;
    }
    return value - unsure > most || value + unsure < least
        ? WaterVerdict.FAIL
        : WaterVerdict.NOT_DECIDED;
  }
}
