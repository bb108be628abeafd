package lampwise.cli;

import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import lampwise.light.Event;

/** The row of the moments that were noted: a flag at each, its word beside it. */
final class ChartEvents implements ChartRow {
  private static final int MOST_LINES = 3;
  private static final int MOST_REMARKS = 6;

  private record Placed(double x, int line, double left, String text) {}

  private final ChartInk ink;
  private final double lineHeight;
  private final List<Placed> placed = new ArrayList<>();
  private int lines = 1;

  ChartEvents(ChartSpace space, List<Event> events) {
    ink = space.ink();
    lineHeight = ink.lineHeight(ink.plain());
    List<Double> free = new ArrayList<>();
    int remarks = 0;
    for (Event event : events) {
      double x = space.x(event.atSeconds());
      String text = event.kind().word();
      double width = ink.width(text, ink.plain());
      double left = Math.min(x + 9, space.right() - width);
      boolean turned = left < x + 9;
      left = turned ? x - 9 - width : left;
      int line = 0;
      while (line < free.size() && free.get(line) > Math.min(left, x) - 4) {
        line++;
      }
      if (line >= MOST_LINES) {
        if (remarks++ < MOST_REMARKS) {
          space.remark(text + " at " + Words.decimal(event.atSeconds(), 1) + " s");
        }
        placed.add(new Placed(x, 0, left, ""));
        continue;
      }
      double end = Math.max(left + width, x);
      if (line < free.size()) {
        free.set(line, end);
      } else {
        free.add(end);
      }
      lines = Math.max(lines, line + 1);
      placed.add(new Placed(x, line, left, text));
    }
  }

  /** Where the lines through the whole chart stand. */
  List<Double> xs() {
    return placed.stream().map(Placed::x).toList();
  }

  @Override
  public String name() {
    return ChartPicture.EVENT;
  }

  @Override
  public double height() {
    return lines * lineHeight + 6;
  }

  @Override
  public void draw(Graphics2D g, double top) {
    for (Placed each : placed) {
      double middle = top + 3 + (each.line() + 0.5) * lineHeight;
      Path2D flag = new Path2D.Double();
      flag.moveTo(each.x() - 5, middle - 5);
      flag.lineTo(each.x() + 5, middle - 5);
      flag.lineTo(each.x(), middle + 5);
      flag.closePath();
      g.setPaint(ChartInk.TEXT);
      g.fill(flag);
      if (!each.text().isEmpty()) {
        ink.label(g, each.text(), each.left(), middle);
      }
    }
  }
}
