package lampwise.cli;

import java.awt.Graphics2D;

/** One row of a chart, as wide as the chart. */
interface ChartRow {
  /** Its name, left of it; may be empty. */
  String name();

  /** Its height, pixels. */
  double height();

  /** Draws it with its upper border there. */
  void draw(Graphics2D g, double top);
}
