package lampwise.cli;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import lampwise.decode.SeenBlink;

/**
 * The row of the blinks: a full bar from on to off, a hollow one where the blink is doubtful, and a
 * bracket that opens to the right where only the start is known. Blinks that run into one have
 * their number above them.
 */
final class ChartBlinks implements ChartRow {
  private static final double SURE = 0.5;
  private static final double LEAST_BAR = 2;
  private static final double BRACKET = 4;
  private static final double LEAST_ARM = 1.5;
  private static final double LEAST_APART = 3;
  private static final double LEAST_DARK = 1;
  private static final double BETWEEN_NUMBERS = 4;
  private static final String TOO_CLOSE = "too close to be told apart here";

  /** Blinks that the eye takes for one, in pixels. */
  private record Clump(double from, double to, int blinks) {}

  private final ChartSpace space;
  private final double barHeight;
  private final boolean none;
  private final String crowd;
  private final boolean crowdSaysWhy;
  private final List<Clump> clumps;
  private final Path2D full = new Path2D.Double();
  private final Path2D hollow = new Path2D.Double();
  private final Path2D open = new Path2D.Double();
  private final Path2D doubtful = new Path2D.Double();
  private boolean anyFull;
  private boolean anyHollow;
  private boolean anyOpen;
  private boolean anyDoubtful;

  /**
   * Lays the row out.
   *
   * @param blinks in order of time
   * @param height of the bars and a margin; numbers above them take a line more
   */
  ChartBlinks(ChartSpace space, List<SeenBlink> blinks, double height) {
    this.space = space;
    barHeight = height;
    none = blinks.isEmpty();
    double room = space.right() - space.left();
    boolean crowded = blinks.size() * LEAST_APART > room;
    String count = Words.count(blinks.size(), "blink");
    String reason = count + ", " + TOO_CLOSE;
    crowdSaysWhy = space.ink().width(reason, space.ink().plain()) + 12 <= room;
    crowd = !crowded ? "" : crowdSaysWhy ? reason : count;
    List<Clump> all = new ArrayList<>();
    double high = height - 8;
    double lastDrawn = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < blinks.size(); i++) {
      SeenBlink seen = blinks.get(i);
      double on = space.x(seen.blink().onSeconds());
      boolean sure = seen.probability() >= SURE;
      double end;
      if (seen.blink().hasOff()) {
        end = Math.max(space.x(seen.blink().offSeconds()), on + LEAST_BAR);
      } else {
        double next =
            i + 1 < blinks.size() ? space.x(blinks.get(i + 1).blink().onSeconds()) : on + 100;
        end = on + Math.max(LEAST_ARM, Math.min(BRACKET, (next - on) / 2 - 1));
      }
      add(all, seen.blink().hasOff() ? on : on - 1, end);
      if (on < lastDrawn + 1) {
        // Two in one column of pixels are one to the eye.
        continue;
      }
      lastDrawn = on;
      if (seen.blink().hasOff()) {
        bar(sure ? full : hollow, on, end, high);
        anyFull |= sure;
        anyHollow |= !sure;
      } else {
        Path2D path = sure ? open : doubtful;
        path.moveTo(end, 0);
        path.lineTo(on, 0);
        path.lineTo(on, high);
        path.lineTo(end, high);
        anyOpen |= sure;
        anyDoubtful |= !sure;
      }
    }
    clumps = crowded ? List.of() : numbered(all);
  }

  /** Adds a blink to the last clump if no dark is seen before it. */
  private static void add(List<Clump> all, double from, double to) {
    int last = all.size() - 1;
    if (last >= 0 && from - all.get(last).to() < LEAST_DARK) {
      Clump before = all.get(last);
      all.set(last, new Clump(before.from(), Math.max(before.to(), to), before.blinks() + 1));
    } else {
      all.add(new Clump(from, to, 1));
    }
  }

  /** The clumps of two and more; those whose numbers have no room side by side share one. */
  private List<Clump> numbered(List<Clump> all) {
    List<Clump> kept = new ArrayList<>();
    int singles = 0;
    for (Clump clump : all) {
      if (clump.blinks() == 1) {
        singles++;
        continue;
      }
      Clump next = clump;
      while (!kept.isEmpty()) {
        Clump before = kept.get(kept.size() - 1);
        if (left(next) > left(before) + width(before) + BETWEEN_NUMBERS) {
          break;
        }
        kept.remove(kept.size() - 1);
        next = new Clump(before.from(), next.to(), before.blinks() + singles + next.blinks());
        singles = 0;
      }
      kept.add(next);
      singles = 0;
    }
    return kept;
  }

  private static String number(Clump clump) {
    return clump.blinks() + "\u00d7";
  }

  private double width(Clump clump) {
    return space.ink().width(number(clump), space.ink().plain());
  }

  private double left(Clump clump) {
    double width = width(clump);
    double centred = (clump.from() + clump.to() - width) / 2;
    return Math.max(space.left(), Math.min(centred, space.right() - width));
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
    List<String> legend = new ArrayList<>();
    if (anyOpen || anyDoubtful) {
      legend.add("bracket: only the start of the blink is known");
    }
    if (anyHollow || anyDoubtful) {
      legend.add((anyHollow ? "hollow" : "dashed") + ": a doubtful blink");
    }
    if (!clumps.isEmpty()) {
      legend.add(number(clumps.get(0)) + ": so many blinks, " + TOO_CLOSE);
    }
    if (!crowd.isEmpty() && !crowdSaysWhy) {
      legend.add("the blinks are " + TOO_CLOSE);
    }
    return String.join("; ", legend);
  }

  @Override
  public String name() {
    return ChartPicture.BLINKS;
  }

  @Override
  public double height() {
    return barHeight + numbersHeight();
  }

  private double numbersHeight() {
    return clumps.isEmpty() ? 0 : space.ink().lineHeight(space.ink().plain());
  }

  @Override
  public void draw(Graphics2D g, double top) {
    ChartInk ink = space.ink();
    for (Clump clump : clumps) {
      ink.label(g, number(clump), left(clump), top + 2 + numbersHeight() / 2);
    }
    double bars = top + numbersHeight();
    drawBars(g, bars + 4);
    String words = none ? "none seen" : crowd;
    if (!words.isEmpty()) {
      double left = (space.left() + space.right() - ink.width(words, ink.plain())) / 2;
      ink.label(g, words, left, bars + barHeight / 2);
    }
  }

  private void drawBars(Graphics2D g, double top) {
    g.translate(0, top);
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
    g.translate(0, -top);
  }
}
