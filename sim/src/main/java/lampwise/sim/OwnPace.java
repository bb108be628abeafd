package lampwise.sim;

import java.util.function.DoublePredicate;

/** Converts one value after another, up to the last that has ended by the time of a row. */
final class OwnPace implements DoublePredicate {
  private final Converter converter;
  private final double averaging;
  private final double cycle;
  private final double begin;
  private int done;

  OwnPace(Converter converter, double averaging, double cycle, double begin) {
    this.converter = converter;
    this.averaging = averaging;
    this.cycle = cycle;
    this.begin = begin;
    converter.convert(begin, begin + averaging);
  }

  @Override
  public boolean test(double at) {
    double next = begin + (done + 1) * cycle;
    while (next + averaging <= at) {
      converter.convert(next, next + averaging);
      done++;
      next = begin + (done + 1) * cycle;
    }
    return true;
  }
}
