package lampwise.cli;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.cli.ChartBands.Band;
import lampwise.cli.ChartInk.Hatch;
import lampwise.decode.Candidate;
import lampwise.decode.LightTrace;
import lampwise.decode.Segment;
import lampwise.decode.Verdict;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.TargetSpan;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.ui.RectangleEdge;

/**
 * A recording drawn: the answer in words, then rows over one time axis, then what found no room.
 * Everything is laid out when it is made, so that drawing it is the same on any ground.
 */
final class ChartPicture implements Drawing {
  /** Below this width, pixels, letters and rows are those of a phone. */
  static final int NARROW = 600;

  static final String STATE = "state";
  static final String TARGET = "target";
  static final String UNSEEN = "unseen";
  static final String EVENT = "event";
  static final String BLINKS = "blinks";
  private static final String SECONDS = "seconds";

  private static final double EDGE = 14;
  private static final double LEAST_BESIDE_FIRST_NUMBER = 16;
  private static final int MOST_REMARKS = 10;

  /** A line of text. */
  private record Line(String text, Font font, boolean faint, double left, double base) {}

  private final int width;
  private final ChartInk ink;
  private final ChartSpace space;
  private final List<Line> above = new ArrayList<>();
  private final List<Line> below = new ArrayList<>();
  private final List<ChartRow> rows = new ArrayList<>();
  private final List<Band> grounds = new ArrayList<>();
  private List<Double> flags = List.of();
  private final double besideFirstNumber;
  private final double rowsTop;
  private final double rowsBottom;
  private final int height;

  /**
   * Lays a chart out.
   *
   * @param subject what it is about
   * @param sheetBlink the length of a blink, in seconds, for a description that gives none
   * @param width pixels
   */
  ChartPicture(ChartSubject subject, OptionalDouble sheetBlink, int width) {
    this.width = width;
    boolean narrow = width < NARROW;
    ink = new ChartInk(narrow ? 13 : 14, narrow ? 17 : 19);
    double y = write(above, subject.head(), ink.plain(), true, narrow ? 3 : 2, EDGE);
    y = write(above, subject.title(), ink.strong(), false, narrow ? 5 : 3, y + 2);
    for (String note : subject.notes()) {
      y = write(above, note, ink.plain(), false, narrow ? 4 : 2, y + 1);
    }
    rowsTop = y + 8;
    Optional<RhythmTimes> described = described(subject, sheetBlink);
    double left = 12;
    boolean weighed = subject.trace().map(trace -> trace.evidenceSize() > 0).orElse(false);
    for (String name :
        List.of(STATE, TARGET, UNSEEN, EVENT, weighed ? ChartEvidence.NAME : BLINKS)) {
      left = Math.max(left, 16 + ink.width(name, ink.plain()));
    }
    Window extent =
        described.isPresent()
            ? new Window(0, Math.min(described.get().worthSeeing(), 1e7))
            : subject.extent();
    // The first number stands in the middle of its place.
    double number = ChartAxes.widest(ink, extent.fromSeconds(), extent.toSeconds());
    besideFirstNumber = Math.max(LEAST_BESIDE_FIRST_NUMBER, number / 2 + 6);
    left = Math.max(left, 8 + besideFirstNumber + ink.width(SECONDS, ink.plain()));
    if (subject.recording() instanceof LightCurve curve) {
      left = Math.max(left, 8 + ChartLevels.axisWidth(ink, curve));
    }
    space = ChartSpace.of(ink, width, left, extent);
    if (described.isPresent()) {
      rows.add(new ChartStrip(space, described.get(), narrow ? 90 : 100));
    } else {
      addRows(subject, narrow);
    }
    double bottom = rowsTop;
    for (ChartRow row : rows) {
      bottom += row.height();
    }
    rowsBottom = bottom;
    y = rowsBottom + ink.lineHeight(ink.plain()) + 10;
    y = write(below, legend(described.isPresent()), ink.plain(), true, narrow ? 6 : 3, y);
    for (String remark : remarks()) {
      y = write(below, remark, ink.plain(), false, 2, y);
    }
    height = (int) Math.ceil(y + 8);
  }

  private static Optional<RhythmTimes> described(ChartSubject subject, OptionalDouble sheetBlink) {
    if (!(subject.recording() instanceof Description description)) {
      return Optional.empty();
    }
    try {
      Rhythm rhythm =
          description.said().equals(Description.NOTHING)
              ? new Rhythm.Dark()
              : Phrase.parse(description.said());
      return Optional.of(RhythmTimes.of(rhythm, sheetBlink));
    } catch (PhraseException e) {
      return Optional.empty();
    }
  }

  private double write(
      List<Line> lines, String text, Font font, boolean faint, int most, double top) {
    double y = top;
    if (text.isEmpty()) {
      return y;
    }
    for (String line : ink.wrap(text, font, width - 2 * EDGE, most)) {
      y += ink.lineHeight(font);
      lines.add(new Line(line, font, faint, EDGE, y - 4));
    }
    return y;
  }

  private void addRows(ChartSubject subject, boolean narrow) {
    addStates(subject.segments());
    addTargets(subject);
    Optional<ChartLevels> levels = Optional.empty();
    if (subject.recording() instanceof LightCurve curve) {
      levels = Optional.of(new ChartLevels(space, curve, subject.trace(), narrow ? 180 : 230));
    }
    addUnseen(subject, levels);
    List<Event> events = subject.recording().marks().events();
    if (!events.isEmpty()) {
      ChartEvents row = new ChartEvents(space, events);
      rows.add(row);
      flags = row.xs();
    }
    double tall = levels.isPresent() ? 34 : narrow ? 80 : 90;
    rows.add(new ChartBlinks(space, subject.blinks(), tall));
    if (subject.trace().isPresent() && subject.trace().get().evidenceSize() > 0) {
      rows.add(new ChartEvidence(space, subject.trace().get(), narrow ? 64 : 72));
    }
    levels.ifPresent(rows::add);
  }

  private void addStates(List<Segment> segments) {
    List<Band> bands = new ArrayList<>();
    for (Segment segment : segments) {
      Verdict verdict = segment.verdict();
      String word = verdict.word();
      String sure = "";
      if (verdict instanceof Verdict.Unlisted) {
        sure = segment.observed().map(Phrase::print).orElse("");
      } else if (verdict instanceof Verdict.Decoded decoded) {
        word = decoded.state();
        sure = Words.percent(decoded.probability());
      } else if (verdict instanceof Verdict.Undecided undecided
          && !undecided.candidates().isEmpty()) {
        Candidate likeliest = undecided.candidates().get(0);
        sure = "perhaps " + likeliest.state() + " " + Words.percent(likeliest.probability());
      }
      String between = verdict instanceof Verdict.Unlisted ? ": " : ", ";
      Hatch hatch =
          verdict instanceof Verdict.Decoded
              ? Hatch.NONE
              : verdict instanceof Verdict.Undecided ? Hatch.RISING : Hatch.CROSSED;
      bands.add(
          new Band(
              segment.stretch().fromSeconds(),
              segment.stretch().toSeconds(),
              Layout.clean(sure.isEmpty() ? word : word + between + sure),
              Layout.clean(word),
              hatch,
              hatch == Hatch.NONE));
    }
    if (!bands.isEmpty()) {
      rows.add(new ChartBands(STATE, space, bands));
    }
  }

  private void addTargets(ChartSubject subject) {
    List<Band> bands = new ArrayList<>();
    for (TargetSpan span : subject.recording().marks().targets().spans()) {
      bands.add(
          new Band(span.fromSeconds(), span.toSeconds(), TARGET, TARGET, Hatch.RISING, false));
    }
    if (!bands.isEmpty()) {
      rows.add(new ChartBands(TARGET, space, bands));
      grounds.addAll(bands);
    }
  }

  /** What was not seen: the lamp covered, nobody watching, no levels. */
  private void addUnseen(ChartSubject subject, Optional<ChartLevels> levels) {
    List<Band> bands = new ArrayList<>();
    for (Window window : subject.recording().marks().covered()) {
      bands.add(unseen(window.fromSeconds(), window.toSeconds(), "covered", Hatch.LEVEL));
    }
    if (levels.isPresent()) {
      for (Window window : levels.get().missing()) {
        bands.add(unseen(window.fromSeconds(), window.toSeconds(), "no levels", Hatch.FALLING));
      }
    }
    for (Window window : subject.trace().map(LightTrace::saturated).orElse(List.of())) {
      bands.add(unseen(window.fromSeconds(), window.toSeconds(), "too bright", Hatch.CROSSED));
    }
    Optional<Window> watched = subject.recording().window();
    if (watched.isPresent()) {
      Window extent = subject.extent();
      double from = watched.get().fromSeconds();
      double to = watched.get().toSeconds();
      if (extent.fromSeconds() < from) {
        bands.add(unseen(Double.NEGATIVE_INFINITY, from, "not watched", Hatch.FALLING));
      }
      if (extent.toSeconds() > to) {
        bands.add(unseen(to, Double.POSITIVE_INFINITY, "not watched", Hatch.FALLING));
      }
    }
    bands.sort(Comparator.comparingDouble(Band::fromSeconds));
    if (!bands.isEmpty()) {
      rows.add(new ChartBands(UNSEEN, space, bands));
      grounds.addAll(bands);
    }
  }

  private static Band unseen(double from, double to, String word, Hatch hatch) {
    return new Band(from, to, word, word, hatch, false);
  }

  private String legend(boolean described) {
    if (described) {
      return "two strokes: the length is not said";
    }
    List<String> legend = new ArrayList<>();
    for (ChartRow row : rows) {
      if (row instanceof ChartBlinks blinks) {
        legend.add(blinks.legend());
      } else if (row instanceof ChartEvidence evidence) {
        legend.add(evidence.legend());
      } else if (row instanceof ChartLevels levels) {
        legend.add(levels.legend());
      }
    }
    legend.removeIf(String::isEmpty);
    return String.join("; ", legend);
  }

  private List<String> remarks() {
    List<String> all = new ArrayList<>();
    List<String> known = space.remarks();
    for (int i = 0; i < known.size() && i < MOST_REMARKS; i++) {
      all.add((i + 1) + ": " + known.get(i));
    }
    if (known.size() > MOST_REMARKS) {
      all.add("and " + (known.size() - MOST_REMARKS) + " more");
    }
    return all;
  }

  @Override
  public int width() {
    return width;
  }

  @Override
  public int height() {
    return height;
  }

  @Override
  public void draw(Graphics2D g) {
    g.setPaint(ChartInk.PAPER);
    g.fill(new Rectangle2D.Double(0, 0, width, height));
    above.forEach(line -> draw(g, line));
    NumberAxis seconds = ChartAxes.ranged(ink, space.fromSeconds(), space.toSeconds());
    Rectangle2D area =
        new Rectangle2D.Double(
            space.left(), rowsTop, space.right() - space.left(), rowsBottom - rowsTop);
    for (Band ground : grounds) {
      double from = space.x(ground.fromSeconds());
      double to = Math.max(from + 1, space.x(ground.toSeconds()));
      ChartInk.hatch(
          g,
          new Rectangle2D.Double(from, rowsTop, to - from, area.getHeight()),
          ground.hatch(),
          14);
    }
    g.setPaint(ChartInk.FAINT_TEXT);
    g.setStroke(ChartInk.DASHED);
    for (double x : flags) {
      g.draw(new Line2D.Double(x, rowsTop, x, rowsBottom));
    }
    seconds.draw(g, rowsBottom, area, area, RectangleEdge.BOTTOM, null);
    double y = rowsTop;
    for (ChartRow row : rows) {
      if (!row.name().isEmpty()) {
        double left = space.left() - 8 - ink.width(row.name(), ink.plain());
        ink.text(g, row.name(), left, y + row.height() / 2);
      }
      row.draw(g, y);
      y += row.height();
      g.setPaint(ChartInk.GRID);
      g.setStroke(new BasicStroke(1f));
      if (y < rowsBottom) {
        g.draw(new Line2D.Double(space.left(), y, space.right(), y));
      }
    }
    // On the line of the numbers, before the first.
    double numbers = rowsBottom + 4 + ink.lineHeight(ink.plain()) / 2.0;
    ink.text(
        g, SECONDS, space.left() - besideFirstNumber - ink.width(SECONDS, ink.plain()), numbers);
    below.forEach(line -> draw(g, line));
  }

  private static void draw(Graphics2D g, Line line) {
    g.setFont(line.font());
    g.setPaint(line.faint() ? ChartInk.FAINT_TEXT : ChartInk.TEXT);
    g.drawString(line.text(), (float) line.left(), (float) line.base());
  }
}
