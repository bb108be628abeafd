package lampwise.cli;

import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import lampwise.decode.LightTrace;

/**
 * The row of what speaks for a blink at each moment: full bars up where the samples speak for it, a
 * line down where they speak against it. Both end at a border, beyond which more changes nothing.
 */
final class ChartEvidence implements ChartRow {
  static final String NAME = "evidence";

  /** Drawn up to so much for and against, logarithms. */
  private static final double MOST_FOR = 12;

  private static final double MOST_AGAINST = 6;
  private static final double MARGIN = 5;

  private final ChartSpace space;
  private final double height;
  private final double[] up;
  private final double[] down;

  ChartEvidence(ChartSpace space, LightTrace trace, double height) {
    this.space = space;
    this.height = height;
    int columns = (int) Math.ceil(space.right() - space.left()) + 1;
    up = new double[columns];
    down = new double[columns];
    for (int i = 0; i < trace.evidenceSize(); i++) {
      double at = trace.evidenceSeconds(i);
      if (at >= space.fromSeconds() && at <= space.toSeconds()) {
        int column = (int) Math.floor(space.x(at) - space.left());
        up[column] = Math.max(up[column], Math.min(MOST_FOR, trace.evidence(i)));
        down[column] = Math.max(down[column], Math.min(MOST_AGAINST, -trace.evidence(i)));
      }
    }
  }

  /** What the shapes mean. */
  String legend() {
    return "evidence: up speaks for a blink that begins there, down against one";
  }

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public double height() {
    return height;
  }

  @Override
  public void draw(Graphics2D g, double top) {
    double unit = (height - 2 * MARGIN) / (MOST_FOR + MOST_AGAINST);
    double zero = top + MARGIN + MOST_FOR * unit;
    Path2D bars = new Path2D.Double();
    Path2D line = new Path2D.Double();
    bars.moveTo(space.left(), zero);
    line.moveTo(space.left(), zero);
    for (int column = 0; column < up.length; column++) {
      double x = Math.min(space.left() + column, space.right() - 1);
      if (up[column] > 0) {
        bars.moveTo(x, zero);
        bars.lineTo(x, zero - up[column] * unit);
        bars.lineTo(x + 1.5, zero - up[column] * unit);
        bars.lineTo(x + 1.5, zero);
        bars.closePath();
      }
      line.lineTo(x, zero + down[column] * unit);
    }
    g.setPaint(ChartInk.RULE);
    g.setStroke(ChartInk.FINE);
    g.draw(line);
    g.draw(new Line2D.Double(space.left(), zero, space.right(), zero));
    g.setPaint(ChartInk.LAMP);
    g.fill(bars);
  }
}
