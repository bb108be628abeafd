package lampwise.cli;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import lampwise.cli.ChartInk.Hatch;

/**
 * A row of labelled stretches of time. Those that overlap stand below each other; a label without
 * room is a number and a remark below the chart.
 */
final class ChartBands implements ChartRow {
  private static final double PAD = 5;
  private static final int MOST_LINES = 3;

  /**
   * A stretch.
   *
   * @param fromSeconds where it starts, or negative infinity
   * @param toSeconds where it ends, or infinity
   * @param label what it is
   * @param shortLabel the same in fewer letters
   * @param hatch how it is hatched
   * @param filled whether it has a ground of its own
   */
  record Band(
      double fromSeconds,
      double toSeconds,
      String label,
      String shortLabel,
      Hatch hatch,
      boolean filled) {}

  private record Placed(Rectangle2D area, Band band, String text) {}

  private final String name;
  private final ChartInk ink;
  private final double lineHeight;
  private int lines = 1;
  private final List<Placed> placed = new ArrayList<>();

  ChartBands(String name, ChartSpace space, List<Band> bands) {
    this.name = name;
    ink = space.ink();
    lineHeight = ink.lineHeight(ink.plain()) + 12;
    List<Double> free = new ArrayList<>();
    for (Band band : bands) {
      double from = space.x(band.fromSeconds());
      double to = Math.max(from + 2, space.x(band.toSeconds()));
      double room = to - from - 2 * PAD;
      String text = band.label();
      if (ink.width(text, ink.plain()) > room) {
        text = band.shortLabel();
      }
      if (ink.width(text, ink.plain()) > room) {
        text = space.remark(band.label() + ", " + span(band));
        text = ink.width(text, ink.plain()) > room + PAD ? "" : text;
      }
      int line = 0;
      while (line < free.size() && free.get(line) > from + 1) {
        line++;
      }
      if (line == free.size() && line < MOST_LINES) {
        free.add(to);
      } else {
        line = Math.min(line, MOST_LINES - 1);
        free.set(line, Math.max(to, free.get(line)));
      }
      lines = Math.max(lines, line + 1);
      double top = line * lineHeight;
      Rectangle2D area = new Rectangle2D.Double(from, top + 3, to - from, lineHeight - 6);
      placed.add(new Placed(area, band, text));
    }
  }

  private static String span(Band band) {
    if (Double.isInfinite(band.fromSeconds()) || Double.isInfinite(band.toSeconds())) {
      return Double.isInfinite(band.toSeconds())
          ? "from " + Words.decimal(band.fromSeconds(), 1) + " s"
          : "to " + Words.decimal(band.toSeconds(), 1) + " s";
    }
    return Words.span(band.fromSeconds(), band.toSeconds());
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public double height() {
    return lines * lineHeight;
  }

  @Override
  public void draw(Graphics2D g, double top) {
    for (Placed each : placed) {
      Rectangle2D at = each.area();
      Rectangle2D area =
          new Rectangle2D.Double(at.getX(), top + at.getY(), at.getWidth(), at.getHeight());
      g.setPaint(each.band().filled() ? ChartInk.BAND : Color.WHITE);
      g.fill(area);
      ChartInk.hatch(g, area, each.band().hatch(), 7);
      g.setPaint(ChartInk.RULE);
      g.setStroke(ChartInk.THIN);
      g.draw(area);
      if (!each.text().isEmpty()) {
        double left = area.getCenterX() - ink.width(each.text(), ink.plain()) / 2;
        if (each.band().hatch() == Hatch.NONE) {
          ink.text(g, each.text(), left, area.getCenterY());
        } else {
          ink.label(g, each.text(), left, area.getCenterY());
        }
      }
    }
  }
}
