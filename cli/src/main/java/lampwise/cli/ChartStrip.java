package lampwise.cli;

import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import lampwise.cli.RhythmTimes.Lamp;
import lampwise.cli.RhythmTimes.Said;
import lampwise.cli.RhythmTimes.Stretch;

/** The row of a rhythm as somebody described it. */
final class ChartStrip implements ChartRow {
  private final ChartSpace space;
  private final RhythmTimes times;
  private final double height;

  ChartStrip(ChartSpace space, RhythmTimes times, double height) {
    this.space = space;
    this.times = times;
    this.height = height;
  }

  @Override
  public String name() {
    return "lamp";
  }

  @Override
  public double height() {
    return height;
  }

  @Override
  public void draw(Graphics2D g, double top) {
    ChartInk ink = space.ink();
    double base = top + height - 8;
    double high = height - 16 - ink.lineHeight(ink.plain());
    g.setPaint(ChartInk.RULE);
    g.setStroke(ChartInk.THIN);
    g.draw(new Line2D.Double(space.x(0), base, space.right(), base));
    double at = 0;
    for (Stretch stretch : times.over(space.toSeconds())) {
      double from = space.x(at);
      at += stretch.seconds();
      double to = space.x(Math.min(at, space.toSeconds()));
      if (stretch.lit()) {
        Rectangle2D bar = new Rectangle2D.Double(from, base - high, Math.max(2, to - from), high);
        g.setPaint(stretch.lamp() == Lamp.ON ? ChartInk.LAMP : ChartInk.PAPER);
        g.fill(bar);
        g.setPaint(ChartInk.LAMP);
        g.setStroke(stretch.lamp() == Lamp.ON ? ChartInk.THIN : ChartInk.DASHED);
        g.draw(bar);
      }
      mark(g, stretch, (from + to) / 2, to - from, stretch.lit() ? base - high / 2 : base);
    }
    ink.label(g, "as described", space.x(0), top + 8);
  }

  private void mark(Graphics2D g, Stretch stretch, double middle, double room, double y) {
    ChartInk ink = space.ink();
    if (stretch.said() == Said.NOT && room > 9) {
      g.setPaint(ChartInk.PAPER);
      g.fill(new Rectangle2D.Double(middle - 2, y - 2, 5, 4));
      Path2D strokes = new Path2D.Double();
      for (int i = 0; i < 2; i++) {
        strokes.moveTo(middle - 4 + 4 * i, y + 6);
        strokes.lineTo(middle + 1 + 4 * i, y - 6);
      }
      g.setPaint(ChartInk.TEXT);
      g.setStroke(ChartInk.TRACE);
      g.draw(strokes);
    }
    if (stretch.said() == Said.ABOUT && !Double.isInfinite(stretch.seconds())) {
      String text = "about " + Words.duration(stretch.seconds());
      double width = ink.width(text, ink.plain());
      if (width + 8 < room) {
        ink.text(g, text, middle - width / 2, y - ink.lineHeight(ink.plain()) / 2.0);
      }
    }
  }
}
