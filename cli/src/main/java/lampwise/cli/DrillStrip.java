package lampwise.cli;

import java.util.List;
import lampwise.light.Blink;
import lampwise.light.TargetSpan;

/** Draws what was seen of a lamp in a watch as a strip for paper, in black on white. */
final class DrillStrip {
  private static final int WIDTH = 720;
  private static final int HEIGHT = 64;
  private static final double LEFT = 4;
  private static final double RIGHT = 4;
  private static final double TOP = 20;
  private static final double BASE = 46;
  private static final double LEAST_WIDE = 1.6;
  private static final double LETTER = 6.5;

  private final StringBuilder svg = new StringBuilder();
  private final DrillWatch watch;
  private final double scale;

  private DrillStrip(DrillWatch watch) {
    this.watch = watch;
    this.scale = (WIDTH - LEFT - RIGHT) / watch.seconds();
  }

  /**
   * The strip as a whole SVG document that can also stand inside a page, without ids, styles and
   * references.
   *
   * @param watch what was watched
   * @param title what it is
   */
  static String svg(DrillWatch watch, String title) {
    return new DrillStrip(watch).drawn(title);
  }

  private String drawn(String title) {
    svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"").append(WIDTH);
    svg.append("\" height=\"").append(HEIGHT).append("\" viewBox=\"0 0 ").append(WIDTH);
    svg.append(' ').append(HEIGHT).append("\" font-family=\"sans-serif\" font-size=\"11\">\n");
    svg.append("<title>").append(RhythmStrip.escaped(Layout.clean(title))).append("</title>\n");
    svg.append("<rect width=\"").append(WIDTH).append("\" height=\"").append(HEIGHT);
    svg.append("\" fill=\"#fff\"/>\n");
    line("M" + x(0) + " " + number(BASE) + "H" + x(watch.seconds()));
    for (TargetSpan hand : watch.hands()) {
      span(hand.fromSeconds(), hand.toSeconds(), "hand");
    }
    for (double[] off : watch.offs()) {
      span(off[0], off[1], "no power");
    }
    for (DrillAct act : watch.acts()) {
      if (act.kind() == DrillAct.Kind.BUTTON) {
        span(act.atSeconds(), act.atSeconds(), "button");
      }
    }
    for (Blink blink : watch.blinks()) {
      double wide = Math.max(LEAST_WIDE, (blink.offSeconds() - blink.onSeconds()) * scale);
      svg.append("<rect x=\"").append(x(blink.onSeconds())).append("\" y=\"").append(number(TOP));
      svg.append("\" width=\"").append(number(wide)).append("\" height=\"");
      svg.append(number(BASE - TOP)).append("\" fill=\"#000\"/>\n");
    }
    ticks();
    return svg.append("</svg>\n").toString();
  }

  private void ticks() {
    double step = watch.seconds() > 60 ? 10 : watch.seconds() > 12 ? 5 : 1;
    for (double at = 0; at <= watch.seconds(); at += step) {
      line("M" + x(at) + " " + number(BASE) + "v3");
      String end = at == 0 ? "start" : at >= watch.seconds() ? "end" : "middle";
      text(at, HEIGHT - 5, end, Words.decimal(at, 0) + (at == 0 ? " s" : ""));
    }
  }

  private void span(double from, double to, String word) {
    line("M" + x(from) + " " + number(TOP - 2) + "v-4H" + x(to) + "v4");
    boolean late = LEFT + from * scale + LETTER * word.length() > WIDTH;
    text(from, TOP - 8, late ? "end" : "start", word);
  }

  private void line(String path) {
    svg.append("<path d=\"").append(path).append("\" stroke=\"#000\" fill=\"none\"/>\n");
  }

  private void text(double at, double y, String anchor, String text) {
    svg.append("<text x=\"").append(x(at)).append("\" y=\"").append(number(y));
    svg.append("\" text-anchor=\"").append(anchor).append("\">").append(text).append("</text>\n");
  }

  private String x(double seconds) {
    return number(LEFT + seconds * scale);
  }

  private static String number(double value) {
    return Fixed.of(value, 2, 0);
  }

  /** Titles of several cases have numbers of one width. */
  static String number(int number, List<DrillCase> cases) {
    int digits = Integer.toString(cases.size()).length();
    StringBuilder text = new StringBuilder(Integer.toString(number));
    while (text.length() < Math.max(2, digits)) {
      text.insert(0, '0');
    }
    return text.toString();
  }
}
