package lampwise.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/**
 * The page on which a phone's user marks what a lamp does: one file without anything outside it.
 * What comes from the user or a sheet stands in it only as JSON, which the page's script reads.
 */
final class CapturePage {
  private static final String OPEN = "{{";
  private static final String CLOSE = "}}";

  /** What stands in the page's template for the JSON. */
  private static final String PLAN = "plan";

  private CapturePage() {}

  /**
   * The whole page.
   *
   * @param fixture the name to begin with; may be empty
   * @param sheet the unit's sheet, if it is known
   */
  static String of(String fixture, Optional<CodeSheet> sheet) {
    String template = resource("capture.html");
    StringBuilder page = new StringBuilder();
    int done = 0;
    for (int open = template.indexOf(OPEN); open >= 0; open = template.indexOf(OPEN, done)) {
      int close = template.indexOf(CLOSE, open);
      String name = template.substring(open + OPEN.length(), close);
      page.append(template, done, open);
      page.append(name.equals(PLAN) ? plan(fixture, sheet) : resource(name).stripTrailing());
      done = close + CLOSE.length();
    }
    return page.append(template, done, template.length()).toString();
  }

  private static String plan(String fixture, Optional<CodeSheet> sheet) {
    return "{\"fixture\":"
        + quoted(fixture)
        + ",\"sheet\":"
        + sheet.map(CapturePage::sheet).orElse("null")
        + "}";
  }

  private static String sheet(CodeSheet sheet) {
    StringBuilder json = new StringBuilder();
    json.append("{\"title\":").append(quoted(Layout.clean(sheet.title())));
    json.append(",\"invented\":").append(sheet.isInvented());
    json.append(",\"watchSeconds\":").append(WatchTime.seconds(sheet)).append(",\"states\":[");
    String comma = "";
    for (LampState state : sheet.states()) {
      json.append(comma).append("{\"rhythm\":").append(quoted(Phrase.print(state.rhythm())));
      json.append(",\"means\":").append(quoted(Layout.clean(state.means())));
      json.append(",\"when\":").append(quoted(when(state.seen()))).append('}');
      comma = ",";
    }
    return json.append("]}").toString();
  }

  private static String when(Seen seen) {
    return switch (seen) {
      case ALWAYS -> "";
      case IDLE -> "nobody in range";
      case TARGET -> "somebody in range";
      case AFTER_TARGET -> "after somebody left";
      case AFTER_FLUSH -> "after a flush";
      case WHILE_RUNNING -> "while water runs";
      case AFTER_POWER_UP -> "after power came back";
      case AFTER_BUTTON -> "after the button";
      case SET_UP -> "while it is being set";
    };
  }

  /**
   * A JSON string that may stand inside a script element: plain ASCII without any character that
   * could end the element or start a comment.
   */
  static String quoted(String text) {
    StringBuilder json = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean plain = c >= ' ' && c < 0x7f && "\"\\<>&".indexOf(c) < 0;
      json.append(plain ? String.valueOf(c) : String.format(Locale.ROOT, "\\u%04x", (int) c));
    }
    return json.append('"').toString();
  }

  private static String resource(String name) {
    try (InputStream in =
        Objects.requireNonNull(CapturePage.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
