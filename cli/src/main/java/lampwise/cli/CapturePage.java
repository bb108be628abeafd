package lampwise.cli;

import java.util.Map;
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
    return PageTemplate.filled("capture.html", Map.of(PLAN, plan(fixture, sheet)));
  }

  private static String plan(String fixture, Optional<CodeSheet> sheet) {
    return "{\"fixture\":"
        + PageTemplate.quoted(fixture)
        + ",\"sheet\":"
        + sheet.map(CapturePage::sheet).orElse("null")
        + "}";
  }

  private static String sheet(CodeSheet sheet) {
    StringBuilder json = new StringBuilder();
    json.append("{\"title\":").append(PageTemplate.quoted(Layout.clean(sheet.title())));
    json.append(",\"invented\":").append(sheet.isInvented());
    json.append(",\"watchSeconds\":").append(WatchTime.seconds(sheet)).append(",\"states\":[");
    String comma = "";
    for (LampState state : sheet.states()) {
      json.append(comma)
          .append("{\"rhythm\":")
          .append(PageTemplate.quoted(Phrase.print(state.rhythm())));
      json.append(",\"means\":").append(PageTemplate.quoted(Layout.clean(state.means())));
      json.append(",\"when\":").append(PageTemplate.quoted(when(state.seen()))).append('}');
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
}
