package lampwise.cli;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.util.List;
import lampwise.decode.SeenBlink;

/**
 * The row of the blinks: a full bar from on to off, a hollow one where the blink is doubtful, and a
 * bracket that opens to the right where only the start is known.
 */
final class ChartBlinks implements ChartRow {
  private static final double SURE = 0.5;
  private static final double LEAST_BAR = 2;
  private static final double BRACKET = 4;
  private static final double LEAST_APART = 3;

  private final ChartSpace space;
  private final double height;
  private final String crowd;
  private final Path2D full = new Path2D.Double();
  private final Path2D hollow = new Path2D.Double();
  private final Path2D open = new Path2D.Double();
  private final Path2D doubtful = new Path2D.Double();
  private boolean anyFull;
  private boolean anyHollow;
  private boolean anyOpen;
  private boolean anyDoubtful;

  ChartBlinks(ChartSpace space, List<SeenBlink> blinks, double height) {
    this.height = height;
    this.space = space;
    crowd =
        blinks.size() * LEAST_APART > space.right() - space.left()
            ? Words.count(blinks.size(), "blink") + ", too close to be told apart here"
            : "";
    double high = height - 8;
    double lastFull = -1;
    for (int i = 0; i < blinks.size(); i++) {
      SeenBlink seen = blinks.get(i);
      double on = space.x(seen.blink().onSeconds());
      boolean sure = seen.probability() >= SURE;
      if (on < lastFull + 1) {
        // Two in one column of pixels are one to the eye.
        continue;
      }
      lastFull = on;
      if (seen.blink().hasOff()) {
        double off = Math.max(space.x(seen.blink().offSeconds()), on + LEAST_BAR);
        bar(sure ? full : hollow, on, off, high);
        anyFull |= sure;
        anyHollow |= !sure;
      } else {
        double next =
            i + 1 < blinks.size() ? space.x(blinks.get(i + 1).blink().onSeconds()) : on + 100;
        double arm = Math.max(1.5, Math.min(BRACKET, (next - on) / 2 - 1));
        Path2D path = sure ? open : doubtful;
        path.moveTo(on + arm, 0);
        path.lineTo(on, 0);
        path.lineTo(on, high);
        path.lineTo(on + arm, high);
        anyOpen |= sure;
        anyDoubtful |= !sure;
      }
    }
  }

  private static void bar(Path2D path, double from, double to, double high) {
    path.moveTo(from, 0);
    path.lineTo(to, 0);
    path.lineTo(to, high);
    path.lineTo(from, high);
    path.closePath();
  }

  /** What the shapes mean, of those that are there. */
  String legend() {
    StringBuilder legend = new StringBuilder();
    if (anyOpen || anyDoubtful) {
      legend.append("bracket: only the start of the blink is known");
    }
    if (anyHollow || anyDoubtful) {
      legend.append(legend.length() == 0 ? "" : "; ");
      legend.append(anyHollow ? "hollow" : "dashed").append(": a doubtful blink");
    }
    return legend.toString();
  }

  @Override
  public String name() {
    return ChartPicture.BLINKS;
  }

  @Override
  public double height() {
    return height;
  }

  @Override
  public void draw(Graphics2D g, double top) {
    g.translate(0, top + 4);
    g.setPaint(ChartInk.LAMP);
    if (anyFull) {
      g.fill(full);
    }
    if (anyOpen) {
      g.setStroke(new BasicStroke(2f));
      g.draw(open);
    }
    g.setStroke(ChartInk.THIN);
    if (anyHollow) {
      g.setPaint(ChartInk.PAPER);
      g.fill(hollow);
      g.setPaint(ChartInk.LAMP);
      g.draw(hollow);
    }
    if (anyDoubtful) {
      g.setStroke(ChartInk.DASHED);
      g.draw(doubtful);
    }
    g.translate(0, -(top + 4));
    if (!crowd.isEmpty()) {
      ChartInk ink = space.ink();
      double middle = (space.left() + space.right() - ink.width(crowd, ink.plain())) / 2;
      ink.label(g, crowd, middle, top + height / 2);
    }
  }
}
