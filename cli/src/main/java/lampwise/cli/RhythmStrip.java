package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lampwise.cli.RhythmTimes.Lamp;
import lampwise.cli.RhythmTimes.Said;
import lampwise.cli.RhythmTimes.Stretch;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rhythm;

/**
 * Draws a rhythm as a strip of light and dark. A pause or a steady light of unsaid length has a
 * typical one and a break mark; a length that is said as a range is drawn by its middle and marked
 * as such. The length of a blink, where it is not said, is the sheet's or a typical one, unmarked.
 * Stretches too narrow for a mark have none.
 */
final class RhythmStrip {
  private static final char ON = '\u2588';
  private static final char OFF = '\u2581';
  private static final char PERHAPS = '\u2591';
  private static final char BREAK = '/';
  private static final char ABOUT = '~';

  private static final int LEAST_COLUMNS_OF_A_CUT = 9;
  private static final double LEAST_PIXELS_OF_DARK = 4;
  private static final double LEAST_PIXELS_OF_A_BREAK = 7;

  private RhythmStrip() {}

  /**
   * The strip as a line of text: a full block for light, a low line for dark, a shaded block for a
   * blink that may be missing. {@code //} marks a stretch whose length is not said, {@code ~} one
   * that is about as long as drawn; a pause that is cut short to find room names its length. The
   * scale is chosen so that the least pause is seen; the strip ends early where the lamp stays as
   * it is.
   *
   * @param rhythm the rhythm
   * @param sheetBlink the length of a blink, in seconds, where the phrase gives none
   * @param columns the width, one or more
   * @return a line of exactly so many columns
   */
  static String text(Rhythm rhythm, OptionalDouble sheetBlink, int columns) {
    RhythmTimes times = RhythmTimes.of(rhythm, sheetBlink);
    double seen = times.worthSeeing();
    double scale = seen / columns;
    for (Stretch stretch : times.over(seen)) {
      if (!stretch.lit()) {
        // Where a break mark will stand, two columns more.
        double least = stretch.said() == Said.NOT ? stretch.seconds() / 3 : stretch.seconds();
        scale = Math.min(scale, least * 1.01);
      }
    }
    int most = mostColumns(times, scale, columns);
    StringBuilder line = new StringBuilder();
    double litTooLong = 0;
    for (Stretch stretch : times.over(Double.POSITIVE_INFINITY)) {
      if (line.length() < columns) {
        // A dark makes up for what its light was rounded by, so that cycles are drawn alike.
        double ideal = stretch.seconds() / scale - (stretch.lit() ? 0 : litTooLong);
        double natural = Double.isInfinite(ideal) ? columns : Math.max(1, Math.rint(ideal));
        litTooLong = natural - ideal;
        append(line, stretch, (int) Math.min(natural, Integer.MAX_VALUE), most);
      }
    }
    Lamp last = times.cycle().get(times.cycle().size() - 1).lamp();
    while (line.length() < columns) {
      line.append(last == Lamp.ON ? ON : OFF);
    }
    line.setLength(columns);
    return line.toString();
  }

  /** The most columns of one stretch so that one cycle finds room. */
  private static int mostColumns(RhythmTimes times, double scale, int columns) {
    List<Stretch> once = new ArrayList<>(times.prelude());
    once.addAll(times.cycle());
    int most = columns;
    while (most > LEAST_COLUMNS_OF_A_CUT) {
      int sum = 0;
      for (Stretch stretch : once) {
        sum += (int) Math.min(most, columns(stretch, scale));
      }
      if (sum <= columns) {
        return most;
      }
      most--;
    }
    return most;
  }

  private static double columns(Stretch stretch, double scale) {
    return Double.isInfinite(stretch.seconds())
        ? 1
        : Math.max(1, Math.rint(stretch.seconds() / scale));
  }

  private static void append(StringBuilder line, Stretch stretch, int natural, int most) {
    char lamp = stretch.lamp() == Lamp.ON ? ON : stretch.lamp() == Lamp.OFF ? OFF : PERHAPS;
    boolean cut = !Double.isInfinite(stretch.seconds()) && natural > most;
    int width = cut ? most : natural;
    String mark = "";
    if (stretch.said() == Said.NOT) {
      mark = "" + BREAK + BREAK;
      // A mark always finds room beside one column of the stretch itself.
      width = Math.max(width, mark.length() + 1);
    } else if (cut) {
      String about = stretch.said() == Said.ABOUT ? "" + ABOUT : "";
      mark = about + Words.duration(stretch.seconds());
    } else if (stretch.said() == Said.ABOUT && width > 2) {
      mark = "" + ABOUT;
    }
    int before = Math.max(0, (width - mark.length()) / 2);
    for (int i = 0; i < width; ) {
      if (i == before && !mark.isEmpty()) {
        line.append(mark);
        i += mark.length();
      } else {
        line.append(lamp);
        i++;
      }
    }
  }

  /**
   * The strip as a whole SVG document that can also stand inside a page: it has no ids, no styles
   * and no references. Its title is the phrase.
   *
   * @param rhythm the rhythm
   * @param sheetBlink the length of a blink, in seconds, where the phrase gives none
   * @param seconds how much of it to show; where this is not over zero (or NaN), two cycles, or
   *     less where blinks close together would run into one
   * @param width pixels, over zero
   * @param height pixels, over zero; from 28 on there is a scale
   * @return the document, without an XML declaration
   */
  static String svg(
      Rhythm rhythm, OptionalDouble sheetBlink, double seconds, int width, int height) {
    RhythmTimes times = RhythmTimes.of(rhythm, sheetBlink);
    boolean asked = seconds > 0 && seconds < Double.POSITIVE_INFINITY;
    double shown = asked ? seconds : worthSeeing(times, width);
    boolean scaled = height >= 28;
    double base = scaled ? height - 13.0 : height - 1.0;
    double top = Math.max(2, scaled ? 11 : height * 0.15);
    StringBuilder svg = new StringBuilder();
    svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"").append(width);
    svg.append("\" height=\"").append(height);
    svg.append("\" viewBox=\"0 0 ").append(width).append(' ').append(height);
    svg.append("\" font-family=\"sans-serif\" font-size=\"10\">\n<title>");
    svg.append(escaped(Phrase.print(rhythm))).append("</title>\n");
    svg.append("<path d=\"M0 ").append(number(base)).append('H').append(width);
    svg.append("\" stroke=\"#444\" fill=\"none\"/>\n");
    double at = 0;
    double perSecond = width / shown;
    for (Stretch stretch : times.over(shown)) {
      double end = Math.min(at + stretch.seconds(), shown);
      draw(svg, stretch, at * perSecond, end * perSecond, top, base);
      at = end;
    }
    if (scaled) {
      String y = number(height - 2.0);
      svg.append("<text x=\"1\" y=\"").append(y).append("\" fill=\"#222\">0</text>\n");
      svg.append("<text x=\"").append(width - 1).append("\" y=\"").append(y);
      svg.append("\" text-anchor=\"end\" fill=\"#222\">");
      svg.append(escaped(Words.duration(shown))).append("</text>\n");
    }
    return svg.append("</svg>\n").toString();
  }

  /** Two cycles, less where blinks that close together would run into one. */
  private static double worthSeeing(RhythmTimes times, int width) {
    double shown = times.worthSeeing();
    double least = shown;
    for (Stretch stretch : times.over(shown)) {
      least = stretch.lit() ? least : Math.min(least, stretch.seconds());
    }
    return Math.min(shown, least * width / LEAST_PIXELS_OF_DARK);
  }

  private static void draw(
      StringBuilder svg, Stretch stretch, double from, double to, double top, double base) {
    if (stretch.lit()) {
      double wide = Math.max(2.5, to - from);
      svg.append("<rect x=\"").append(number(from)).append("\" y=\"").append(number(top));
      svg.append("\" width=\"").append(number(wide));
      svg.append("\" height=\"").append(number(base - top));
      svg.append(
          stretch.lamp() == Lamp.ON
              ? "\" fill=\"#8a5a00\"/>\n"
              : "\" fill=\"#fff\" stroke=\"#8a5a00\" stroke-dasharray=\"2 1.5\"/>\n");
    }
    double middle = (from + to) / 2;
    if (stretch.said() == Said.NOT && to - from >= LEAST_PIXELS_OF_A_BREAK) {
      // Two slanted strokes on a gap in the base line, or across the light.
      double y = stretch.lit() ? (top + base) / 2 : base;
      svg.append("<path d=\"M").append(number(middle - 3)).append(' ').append(number(y + 4));
      svg.append("l4 -8h3l-4 8z\" fill=\"#fff\"/>\n<path d=\"M");
      svg.append(number(middle - 3)).append(' ').append(number(y + 4)).append("l4 -8M");
      svg.append(number(middle)).append(' ').append(number(y + 4));
      svg.append("l4 -8\" stroke=\"#222\" fill=\"none\"/>\n");
    } else if (stretch.said() == Said.ABOUT && to - from > 12) {
      double y = stretch.lit() ? top - 1 : base - 3;
      svg.append("<text x=\"").append(number(middle)).append("\" y=\"").append(number(y));
      svg.append("\" text-anchor=\"middle\" fill=\"#222\">\u2248</text>\n");
    }
  }

  /** A coordinate with at most two decimals. */
  private static String number(double value) {
    return Words.decimal(value, 2);
  }

  /** Text as it may stand in XML, between tags or in quotes. */
  static String escaped(String text) {
    StringBuilder escaped = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '&' -> escaped.append("&amp;");
        case '<' -> escaped.append("&lt;");
        case '>' -> escaped.append("&gt;");
        case '"' -> escaped.append("&quot;");
        case '\'' -> escaped.append("&#39;");
        default -> escaped.append(c);
      }
    }
    return escaped.toString();
  }
}
