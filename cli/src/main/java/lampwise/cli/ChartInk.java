package lampwise.cli;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;

/** The few colours, lines and letters of a chart. Nothing is told by its colour alone. */
final class ChartInk {
  static final Color PAPER = Color.WHITE;
  static final Color TEXT = new Color(0x1f2933);
  static final Color FAINT_TEXT = new Color(0x4a5560);
  static final Color RULE = new Color(0x7b8794);
  static final Color GRID = new Color(0xe3e7eb);
  static final Color HATCH = new Color(0xa9b2bb);
  static final Color LAMP = new Color(0x8a5a00);
  static final Color LEVEL = new Color(0x24506b);
  static final Color BAND = new Color(0xdde7ee);

  static final BasicStroke THIN = new BasicStroke(1f);
  static final BasicStroke FINE = new BasicStroke(0.8f);
  static final BasicStroke TRACE =
      new BasicStroke(1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_BEVEL);
  static final BasicStroke DASHED =
      new BasicStroke(
          1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10f, new float[] {4f, 3f}, 0f);

  static final BasicStroke DASHED_LEVEL =
      new BasicStroke(
          1.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_BEVEL, 10f, new float[] {7f, 4f}, 0f);
  static final BasicStroke DOTTED_LEVEL =
      new BasicStroke(
          1.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_BEVEL, 10f, new float[] {2f, 3f}, 0f);

  private static final BasicStroke AROUND =
      new BasicStroke(3.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_BEVEL);

  /** Which way the lines of a hatched area run. */
  enum Hatch {
    NONE,
    /** Upwards to the right. */
    RISING,
    /** Downwards to the right. */
    FALLING,
    LEVEL,
    CROSSED
  }

  private final Font plain;
  private final Font strong;
  private final Graphics2D measure;

  /** Takes letters of these sizes. */
  ChartInk(int size, int titleSize) {
    plain = new Font(Font.SANS_SERIF, Font.PLAIN, size);
    strong = new Font(Font.SANS_SERIF, Font.BOLD, titleSize);
    measure = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics();
    smooth(measure);
  }

  /** Smooth edges and letters whose width does not hang on the device. */
  static void smooth(Graphics2D g) {
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
  }

  Font plain() {
    return plain;
  }

  Font strong() {
    return strong;
  }

  double width(String text, Font font) {
    return measure.getFontMetrics(font).getStringBounds(text, measure).getWidth();
  }

  int lineHeight(Font font) {
    FontMetrics metrics = measure.getFontMetrics(font);
    return metrics.getAscent() + metrics.getDescent() + 2;
  }

  /** From the middle of a line of letters down to their base. */
  double halfLetter(Font font) {
    return font.getSize2D() * 0.36;
  }

  /** The text in lines of at most a width; where there are more than so many, it is cut. */
  List<String> wrap(String text, Font font, double width, int most) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : words(text)) {
      String longer = line.length() == 0 ? word : line + " " + word;
      if (line.length() > 0 && width(longer, font) > width) {
        lines.add(fitted(line.toString(), font, width));
        line.setLength(0);
        line.append(word);
      } else {
        line.setLength(0);
        line.append(longer);
      }
    }
    lines.add(fitted(line.toString(), font, width));
    if (lines.size() > most) {
      String cut = lines.get(most - 1) + " ...";
      lines = new ArrayList<>(lines.subList(0, most));
      lines.set(most - 1, fitted(cut, font, width));
    }
    return lines;
  }

  /** The words of a text, each number with its unit. */
  private static List<String> words(String text) {
    List<String> words = new ArrayList<>();
    for (String word : Layout.clean(text).split(" ", -1)) {
      int last = words.size() - 1;
      boolean unit = word.startsWith("%") || word.equals("s") || word.equals("s,");
      if (unit && last >= 0) {
        words.set(last, words.get(last) + " " + word);
      } else {
        words.add(word);
      }
    }
    return words;
  }

  /** The text, cut to a width. */
  private String fitted(String text, Font font, double width) {
    if (width(text, font) <= width) {
      return text;
    }
    int least = 0;
    int most = text.length();
    while (least < most) {
      int middle = (least + most + 1) / 2;
      if (width(text.substring(0, middle) + "...", font) <= width) {
        least = middle;
      } else {
        most = middle - 1;
      }
    }
    int end = least > 0 && Character.isHighSurrogate(text.charAt(least - 1)) ? least - 1 : least;
    return text.substring(0, end) + "...";
  }

  /** Writes a text on a box of paper, so that it can be read on any ground. */
  void label(Graphics2D g, String text, double left, double middle) {
    double width = width(text, plain);
    double half = plain.getSize2D() * 0.62;
    g.setPaint(PAPER);
    g.fill(new Rectangle2D.Double(left - 3, middle - half, width + 6, 2 * half));
    text(g, text, left, middle);
  }

  /** Writes a text. */
  void text(Graphics2D g, String text, double left, double middle) {
    g.setPaint(TEXT);
    g.setFont(plain);
    g.drawString(text, (float) left, (float) (middle + halfLetter(plain)));
  }

  /** Draws a line over others, with paper around it where they are dense. */
  static void over(Graphics2D g, Path2D line, BasicStroke stroke, boolean dense) {
    if (dense) {
      g.setPaint(PAPER);
      g.setStroke(AROUND);
      g.draw(line);
    }
    g.setPaint(LAMP);
    g.setStroke(stroke);
    g.draw(line);
  }

  /** Draws the lines of a hatched area, a path of their own each way, none leaves the area. */
  static void hatch(Graphics2D g, Rectangle2D area, Hatch hatch, double spacing) {
    g.setPaint(HATCH);
    g.setStroke(FINE);
    if (hatch == Hatch.RISING || hatch == Hatch.CROSSED) {
      g.draw(slanted(area, spacing, true));
    }
    if (hatch == Hatch.FALLING || hatch == Hatch.CROSSED) {
      g.draw(slanted(area, spacing, false));
    }
    if (hatch == Hatch.LEVEL) {
      Path2D lines = new Path2D.Double();
      lines.moveTo(area.getMinX(), area.getMinY());
      for (double y = area.getMinY() + spacing / 2; y < area.getMaxY(); y += spacing) {
        lines.moveTo(area.getMinX(), y);
        lines.lineTo(area.getMaxX(), y);
      }
      g.draw(lines);
    }
  }

  private static Path2D slanted(Rectangle2D area, double spacing, boolean rising) {
    Path2D lines = new Path2D.Double();
    lines.moveTo(area.getMinX(), area.getMinY());
    double height = area.getHeight();
    // Every line is x - left = offset + depth, on one grid for the whole picture.
    double first = Math.floor((area.getMinX() - height) / spacing) * spacing;
    for (double x = first; x < area.getMaxX(); x += spacing) {
      double start = Math.max(area.getMinX(), x);
      double end = Math.min(area.getMaxX(), x + height);
      if (start < end) {
        double from = start - x;
        double to = end - x;
        lines.moveTo(start, rising ? area.getMaxY() - from : area.getMinY() + from);
        lines.lineTo(end, rising ? area.getMaxY() - to : area.getMinY() + to);
      }
    }
    return lines;
  }
}
