package lampwise.file;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Recording;
import lampwise.light.RecordingException;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;

/** Writes a Lampwise log. */
final class LogWriter {
  private static final int DECIMALS = 3;

  private final StringBuilder text = new StringBuilder();

  private LogWriter() {}

  /** Writes recordings. */
  static String write(List<? extends Recording> recordings) {
    if (recordings.isEmpty()) {
      throw new RecordingException("a log holds at least one recording");
    }
    LogWriter writer = new LogWriter();
    writer.line(LampwiseLog.KEY + ": " + LampwiseLog.VERSION);
    for (Recording recording : recordings) {
      if (recordings.size() > 1 || recording.origin().fixture().isPresent()) {
        writer.line("fixture:" + recording.origin().fixture().map(f -> " " + named(f)).orElse(""));
      }
      writer.marks(recording.marks());
      if (recording instanceof BlinkLog log) {
        writer.blinks(log);
      } else if (recording instanceof Description description) {
        writer.line("saw: " + said(description.said()));
      } else if (recording instanceof LightCurve) {
        throw new RecordingException(
            "a log holds blinks or words, not the light levels of " + recording.origin().name());
      }
    }
    return writer.text.toString();
  }

  private void line(String line) {
    text.append(line).append('\n');
  }

  private static String named(String fixture) {
    if (fixture.isEmpty()
        || !LogReader.trim(fixture).equals(fixture)
        || Wording.unprintable(fixture).isPresent()) {
      throw new RecordingException(
          "a fixture's name must be printable, without blanks around it: "
              + Wording.quote(fixture));
    }
    return fixture;
  }

  private void marks(Marks marks) {
    marks.window().ifPresent(window -> line("window: " + range(window)));
    targets(marks.targets());
    for (Event event : marks.events()) {
      line("event: " + event.kind().word() + " at " + seconds(event.atSeconds()) + " s");
    }
    for (Window covered : marks.covered()) {
      line("covered: " + range(covered));
    }
  }

  private void targets(Targets targets) {
    switch (targets.knowledge()) {
      case UNKNOWN -> {
        // no mark
      }
      case LIKELY -> line("target: likely");
      case KNOWN -> spans(targets.spans());
    }
  }

  private void spans(List<TargetSpan> spans) {
    if (spans.equals(List.of(TargetSpan.always()))) {
      line("target: all");
      return;
    }
    boolean none = true;
    for (TargetSpan span : spans) {
      String from = border(span.fromSeconds(), "start", "");
      String to = border(span.toSeconds(), "end", " s");
      if (!(from + " s").equals(to)) {
        line("target: " + from + " to " + to);
        none = false;
      }
    }
    if (none) {
      line("target: none");
    }
  }

  private static String border(double seconds, String open, String unit) {
    return Double.isInfinite(seconds) ? open : seconds(seconds) + unit;
  }

  private void blinks(BlinkLog log) {
    Optional<Window> window = log.marks().window();
    double earliest = Double.NEGATIVE_INFINITY;
    for (Blink blink : log.blinks()) {
      if (window.isPresent() && !window.get().contains(blink.onSeconds())) {
        throw new RecordingException(
            "the blink at " + Numbers.text(blink.onSeconds()) + " s starts outside the window");
      }
      if (!(blink.onSeconds() >= earliest)) {
        throw new RecordingException(
            "the blink at "
                + Numbers.text(blink.onSeconds())
                + " s starts while another is on, until "
                + Numbers.text(earliest)
                + " s");
      }
      earliest = blink.hasOff() ? blink.offSeconds() : blink.onSeconds();
      String on = seconds(blink.onSeconds());
      String off = blink.hasOff() ? seconds(blink.offSeconds()) : on;
      line("on " + on + (off.equals(on) ? "" : " off " + off));
    }
  }

  private static String said(String words) {
    if (words.equals(Description.NOTHING)) {
      return words;
    }
    try {
      return Phrase.print(Phrase.parse(words));
    } catch (PhraseException e) {
      throw new RecordingException(
          Wording.quote(words) + " is no rhythm phrase: " + e.getMessage());
    }
  }

  private static String range(Window window) {
    return seconds(window.fromSeconds()) + " to " + seconds(window.toSeconds()) + " s";
  }

  /** A time to the millisecond, without trailing zeros. */
  private static String seconds(double value) {
    if (!(Math.abs(value) <= RecordingClock.MAX_SECONDS)) {
      throw new RecordingException("the time " + value + " s is too large for a log");
    }
    // Not by way of the double's own text, which is another one on Java 17 than on 19.
    BigDecimal rounded = new BigDecimal(value).setScale(DECIMALS, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
