package lampwise.cli;

import java.text.DecimalFormat;
import java.text.NumberFormat;
import java.util.Locale;
import org.jfree.chart.axis.NumberAxis;

/** Axes with plain numbers, alike in every locale. */
final class ChartAxes {
  private static final double MARGIN = 0.06;

  /** Of the size of a level: what differs by less is one level. */
  private static final double LEAST_RANGE = 1e-9;

  private ChartAxes() {}

  /** An axis for values between two; where they are one, or there is none, some range around. */
  static NumberAxis axis(ChartInk ink, double least, double greatest) {
    double low = least <= greatest ? least : 0;
    double high = least <= greatest ? greatest : 1;
    double margin = margin(low, high);
    return ranged(ink, low - margin, high + margin);
  }

  private static double margin(double low, double high) {
    double size = Math.max(Math.abs(low), Math.abs(high));
    if (high - low > size * LEAST_RANGE) {
      return (high - low) * MARGIN;
    }
    return size > 0 ? size / 10 : 1;
  }

  /** An axis from one value to a greater one. */
  static NumberAxis ranged(ChartInk ink, double from, double to) {
    NumberAxis axis = new NumberAxis();
    axis.setAutoRange(false);
    axis.setStandardTickUnits(NumberAxis.createStandardTickUnits(Locale.ROOT));
    axis.setRange(from, to);
    axis.setNumberFormatOverride(format(to - from, Math.max(Math.abs(from), Math.abs(to))));
    axis.setTickLabelFont(ink.plain());
    axis.setTickLabelPaint(ChartInk.TEXT);
    axis.setTickMarkPaint(ChartInk.RULE);
    axis.setAxisLinePaint(ChartInk.RULE);
    axis.setTickMarkStroke(ChartInk.THIN);
    axis.setAxisLineStroke(ChartInk.THIN);
    return axis;
  }

  /** The width of the widest number at such an axis, about. */
  static double widest(ChartInk ink, double least, double greatest) {
    if (!(least <= greatest)) {
      return ink.width("0.25", ink.plain());
    }
    double size = Math.max(Math.abs(least), Math.abs(greatest));
    double range = greatest - least + 2 * margin(least, greatest);
    DecimalFormat format = format(range, size);
    // A tick has at most one figure more than a tenth of the range, and whole ones end in zeros.
    double step = StrictMath.pow(10, Math.floor(Math.log10(range)) - 1);
    double some = 0;
    for (double at : new double[] {least, greatest}) {
      String tick = format.format(Math.rint(at / step) * step + (step < 1 ? step / 2 : 0));
      some = Math.max(some, ink.width(tick, ink.plain()));
    }
    return some;
  }

  private static DecimalFormat format(double range, double size) {
    boolean plain = (size < 1e7 && range > 1e-5) || size == 0;
    DecimalFormat format = (DecimalFormat) NumberFormat.getNumberInstance(Locale.ROOT);
    format.applyPattern(plain ? "0.######" : "0.####E0");
    return format;
  }
}
