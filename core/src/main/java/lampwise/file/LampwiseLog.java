package lampwise.file;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.Event;
import lampwise.light.Marks;
import lampwise.light.Recording;
import lampwise.light.TargetSpan;
import lampwise.light.Targets;
import lampwise.light.Window;

/**
 * The Lampwise log: plain text for blink logs and descriptions, several fixtures in one file. It is
 * read by {@link RecordingReader}; this class writes it.
 *
 * <pre>
 * lampwise-log: 1
 * fixture: north-07
 * window: 0 to 60 s
 * target: 20 to 28 s
 * event: power-up at 0 s
 * on 3.10 off 3.22
 * on 6.25
 * </pre>
 */
public final class LampwiseLog {
  /** The first line of every log, but for the version. */
  static final String FIRST = "lampwise-log:";

  static final int VERSION = 1;

  /** Times are written to the thousandth of a second. */
  private static final int DECIMALS = 3;

  private LampwiseLog() {}

  /**
   * Writes recordings as one log, times rounded to 1 ms.
   *
   * @param recordings blink logs and descriptions, in the order to be written; may be empty
   * @return the text, each line ended by a line feed
   * @throws FileException if one is a light curve, or its fixture's name cannot stand in a line
   */
  public static String write(List<Recording> recordings) throws FileException {
    StringBuilder text = new StringBuilder(FIRST).append(' ').append(VERSION).append('\n');
    for (Recording recording : recordings) {
      String fixture = recording.origin().fixture().orElse("");
      if (Wording.unprintable(fixture).isPresent() || !fixture.strip().equals(fixture)) {
        throw new FileException(
            recording.origin().name(),
            0,
            0,
            "the fixture " + Wording.quote(fixture) + " cannot be written on one line");
      }
      if (fixture.isEmpty() && recordings.size() > 1) {
        throw new FileException(
            recording.origin().name(), 0, 0, "one of several recordings needs a fixture's name");
      }
      text.append(fixture.isEmpty() ? "" : "fixture: " + fixture + "\n");
      write(text, recording.marks());
      if (recording instanceof BlinkLog log) {
        log.blinks().forEach(blink -> write(text, blink));
      } else if (recording instanceof Description description) {
        text.append("saw: ").append(description.said()).append('\n');
      } else {
        throw new FileException(
            recording.origin().name(), 0, 0, "a light curve cannot be written as a log");
      }
    }
    return text.toString();
  }

  private static void write(StringBuilder text, Marks marks) {
    marks.window().ifPresent(window -> span(text, "window", window));
    Targets targets = marks.targets();
    if (targets.knowledge() == Targets.Knowledge.KNOWN && targets.spans().isEmpty()) {
      text.append("target: none\n");
    }
    for (TargetSpan span : targets.spans()) {
      if (span.equals(TargetSpan.always())) {
        text.append("target: all\n");
      } else {
        span(text, "target", new Window(span.fromSeconds(), span.toSeconds()));
      }
    }
    for (Event event : marks.events()) {
      text.append("event: ").append(event.kind().word());
      text.append(" at ").append(seconds(event.atSeconds())).append(" s\n");
    }
    marks.covered().forEach(covered -> span(text, "covered", covered));
  }

  private static void span(StringBuilder text, String key, Window window) {
    text.append(key).append(": ").append(seconds(window.fromSeconds()));
    text.append(" to ").append(seconds(window.toSeconds())).append(" s\n");
  }

  private static void write(StringBuilder text, Blink blink) {
    text.append("on ").append(seconds(blink.onSeconds()));
    if (blink.hasOff()) {
      text.append(" off ").append(seconds(blink.offSeconds()));
    }
    text.append('\n');
  }

  private static String seconds(double seconds) {
    BigDecimal rounded = new BigDecimal(seconds).setScale(DECIMALS, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
