package lampwise.cli;

import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import lampwise.decode.LightTrace;
import lampwise.light.LightCurve;
import lampwise.light.Window;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.ui.RectangleEdge;

/**
 * The row of the light levels: a line through the samples, steps where a level was only written
 * when it changed. In a column of pixels no more is drawn than its first, least, greatest and last
 * level.
 */
final class ChartLevels implements ChartRow {
  /** A pause is this many times the usual time between samples. */
  private static final double PAUSE = 5;

  /** Times between samples that differ so much are those of changes. */
  private static final double UNEVEN = 3;

  /** Levels are drawn to here; axes cannot carry more. */
  private static final double GREATEST = 1e100;

  /** From so many pixels apart on, samples are drawn as dots of this size. */
  private static final double DOTS_APART = 5;

  private static final double DOT = 3;

  private final ChartSpace space;
  private final LightCurve curve;
  private final double height;
  private final double usualGap;
  private final boolean steps;
  private final NumberAxis axis;
  private final Optional<LightTrace> trace;

  ChartLevels(ChartSpace space, LightCurve curve, Optional<LightTrace> trace, double height) {
    this.space = space;
    this.curve = curve;
    this.trace = trace.filter(read -> read.size() > 0);
    this.height = height;
    double[] gaps = gaps(curve);
    usualGap = gaps.length == 0 ? Double.POSITIVE_INFINITY : gaps[gaps.length / 2];
    steps =
        gaps.length > 0
            && gaps[gaps.length * 9 / 10] > UNEVEN * Math.max(gaps[gaps.length / 10], 0);
    double[] range = range(curve, trace.map(LightTrace::saturated).orElse(List.of()));
    axis = ChartAxes.axis(space.ink(), range[0], range[1]);
  }

  /** The width that the numbers at the axis of a curve need. */
  static double axisWidth(ChartInk ink, LightCurve curve) {
    double[] range = range(curve, List.of());
    return ChartAxes.widest(ink, range[0], range[1]) + 8;
  }

  private static double[] gaps(LightCurve curve) {
    double[] gaps = new double[Math.max(0, curve.size() - 1)];
    for (int i = 0; i < gaps.length; i++) {
      gaps[i] = curve.seconds(i + 1) - curve.seconds(i);
    }
    Arrays.sort(gaps);
    return gaps;
  }

  private static double level(LightCurve curve, int index) {
    double level = curve.level(index);
    return Double.isNaN(level) ? level : Math.max(-GREATEST, Math.min(GREATEST, level));
  }

  /** The least and the greatest level, those of stretches that were left out aside. */
  private static double[] range(LightCurve curve, List<Window> leftOut) {
    double[] range = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (int i = 0; i < curve.size(); i++) {
      double level = level(curve, i);
      double at = curve.seconds(i);
      if (leftOut.stream().noneMatch(window -> window.contains(at))) {
        range[0] = level < range[0] ? level : range[0];
        range[1] = level > range[1] ? level : range[1];
      }
    }
    return range;
  }

  /** The stretches in which levels are missing. */
  List<Window> missing() {
    List<Window> missing = new ArrayList<>();
    double since = Double.NaN;
    for (int i = 0; i < curve.size(); i++) {
      if (Double.isNaN(curve.level(i))) {
        since = Double.isNaN(since) ? curve.seconds(i) : since;
        continue;
      }
      if (!Double.isNaN(since)) {
        missing.add(new Window(since, curve.seconds(i)));
        since = Double.NaN;
      } else if (i > 0 && pauses(i)) {
        missing.add(new Window(curve.seconds(i - 1), curve.seconds(i)));
      }
    }
    if (!Double.isNaN(since) && curve.seconds(curve.size() - 1) > since) {
      missing.add(new Window(since, curve.seconds(curve.size() - 1)));
    }
    return missing;
  }

  private boolean pauses(int index) {
    return !steps && curve.seconds(index) - curve.seconds(index - 1) > PAUSE * usualGap;
  }

  /** Whether levels are drawn as steps. */
  boolean steps() {
    return steps;
  }

  @Override
  public String name() {
    return "";
  }

  @Override
  public double height() {
    return height;
  }

  @Override
  public void draw(Graphics2D g, double top) {
    // The name of the axis has a line of its own, so that it hides no level.
    double line = space.ink().lineHeight(space.ink().plain());
    Rectangle2D area =
        new Rectangle2D.Double(
            space.left(), top + line + 2, space.right() - space.left(), height - line - 8);
    axis.draw(g, area.getMinX(), area, area, RectangleEdge.LEFT, null);
    g.setPaint(ChartInk.LEVEL);
    g.setStroke(ChartInk.TRACE);
    g.draw(trace(area));
    if (usualGap < Double.POSITIVE_INFINITY && space.pixels(usualGap) >= DOTS_APART) {
      g.fill(dots(area));
    }
    if (trace.isPresent()) {
      boolean dense = space.pixels(usualGap) < 1;
      ChartInk.over(g, level(area, trace.get()::darkLevel), ChartInk.DASHED_LEVEL, dense);
      if (trace.get().hasLitLevel()) {
        ChartInk.over(g, level(area, trace.get()::litLevel), ChartInk.DOTTED_LEVEL, dense);
      }
    }
    String unit =
        curve.lit() == LightCurve.Lit.DARKER ? "light level (lower is on)" : "light level";
    space.ink().label(g, unit, area.getMinX() + 6, top + 2 + line / 2);
  }

  /** What the lines over the levels mean; empty without any. */
  String legend() {
    if (trace.isEmpty()) {
      return "";
    }
    String dark = "dashed: the level that counts as dark";
    return trace.get().hasLitLevel() ? dark + "; dotted: lit from here on" : dark;
  }

  private double y(int index, Rectangle2D area) {
    return y(level(curve, index), area);
  }

  /** Where a level lies; one beyond the axis lies on the border. */
  private double y(double level, Rectangle2D area) {
    double y = axis.valueToJava2D(level, area, RectangleEdge.LEFT);
    return Math.max(area.getMinY(), Math.min(area.getMaxY(), y));
  }

  /** Samples that stand apart, each as a dot. */
  private Path2D dots(Rectangle2D area) {
    Path2D dots = new Path2D.Double();
    dots.moveTo(area.getMinX(), area.getMaxY());
    for (int i = 0; i < curve.size(); i++) {
      if (!Double.isNaN(curve.level(i))) {
        double x = space.x(curve.seconds(i));
        double y = y(i, area);
        dots.append(new Ellipse2D.Double(x - DOT / 2, y - DOT / 2, DOT, DOT), false);
      }
    }
    return dots;
  }

  /** A line of a level, one point in a column of pixels; broken where it is not known. */
  private Path2D level(Rectangle2D area, IntToDoubleFunction levels) {
    LightTrace read = trace.orElseThrow();
    Path2D path = new Path2D.Double();
    path.moveTo(area.getMinX(), area.getMaxY());
    boolean pen = false;
    double last = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < read.size(); i++) {
      double level = levels.applyAsDouble(i);
      double x = space.x(read.seconds(i));
      if (!(Math.abs(level) <= GREATEST)) {
        pen = false;
      } else if (x >= last + 1 || !pen) {
        double y = y(level, area);
        if (pen) {
          path.lineTo(x, y);
        } else {
          path.moveTo(x, y);
        }
        pen = true;
        last = x;
      }
    }
    return path;
  }

  private Path2D trace(Rectangle2D area) {
    Path2D path = new Path2D.Double();
    path.moveTo(area.getMinX(), area.getMaxY());
    boolean pen = false;
    int i = 0;
    while (i < curve.size()) {
      if (Double.isNaN(curve.level(i))) {
        pen = false;
        i++;
        continue;
      }
      pen &= !(i > 0 && pauses(i));
      int last = lastOfColumn(i);
      int low = i;
      int high = i;
      for (int k = i; k <= last; k++) {
        low = curve.level(k) < curve.level(low) ? k : low;
        high = curve.level(k) > curve.level(high) ? k : high;
      }
      int[] kept = {i, Math.min(low, high), Math.max(low, high), last};
      for (int k = 0; k < kept.length; k++) {
        if (k == 0 || kept[k] > kept[k - 1]) {
          add(path, pen, space.x(curve.seconds(kept[k])), y(kept[k], area));
          pen = true;
        }
      }
      i = last + 1;
    }
    return path;
  }

  /** The last sample in a row in the same column of pixels as this one. */
  private int lastOfColumn(int index) {
    double column = Math.floor(space.x(curve.seconds(index)));
    int last = index;
    while (last + 1 < curve.size()
        && !Double.isNaN(curve.level(last + 1))
        && !pauses(last + 1)
        && Math.floor(space.x(curve.seconds(last + 1))) == column) {
      last++;
    }
    return last;
  }

  private void add(Path2D path, boolean pen, double x, double y) {
    if (!pen) {
      path.moveTo(x, y);
      // A sample by itself is a dot.
      path.lineTo(x + 0.5, y);
      return;
    }
    if (steps) {
      path.lineTo(x, path.getCurrentPoint().getY());
    }
    path.lineTo(x, y);
  }
}
