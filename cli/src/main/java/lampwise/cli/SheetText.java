package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.SheetCheck;
import lampwise.sheet.SheetWarning;
import lampwise.sheet.TellApart;

/** What a check of a sheet found and the sheet's states, for people; fits 80 columns. */
final class SheetText {
  private static final int STRIP_COLUMNS = 72;
  private static final String INDENT = "  ";

  /** What stands for the blocks of a strip where only plain letters can be shown. */
  private static final String BLOCKS = "\u2588\u2581\u2591";

  private static final String LETTERS = "#_:";

  private SheetText() {}

  /** The whole answer; its first line is the answer itself. */
  static List<String> lines(CodeSheet sheet, boolean blocks) {
    List<SheetWarning> warnings = SheetCheck.warnings(sheet);
    List<String> lines = new ArrayList<>();
    String tag = sheet.isInvented() ? "  [invented sheet]" : "";
    lines.add(
        "sheet is right: "
            + Words.count(sheet.states().size(), "state")
            + ", "
            + Words.count(warnings.size(), "warning")
            + tag);
    String blink =
        sheet.blinkSeconds().isPresent()
            ? ", a blink lasts " + Phrase.shown(sheet.blinkSeconds().getAsDouble())
            : "";
    add(
        lines,
        sheet.title()
            + "; basis "
            + sheet.basis().word()
            + ", clock within "
            + Words.decimal(sheet.clockTolerance() * 100, 1)
            + " %"
            + blink);
    for (SheetWarning warning : warnings) {
      add(lines, "warning: " + warning.message() + "; " + check(sheet, warning));
    }
    for (LampState state : sheet.states()) {
      lines.add("");
      lines.addAll(
          Layout.wrap(
              state.name() + ": " + Phrase.print(state.rhythm()), Layout.WIDTH, Layout.WIDTH));
      lines.add(INDENT + strip(sheet, state, blocks));
      add(lines, state.means());
      add(lines, keys(sheet, state));
    }
    return lines;
  }

  private static String check(CodeSheet sheet, SheetWarning warning) {
    Optional<LampState> first = sheet.state(warning.first());
    Optional<LampState> second = sheet.state(warning.second());
    return first
        .flatMap(one -> second.flatMap(other -> TellApart.check(one, other)))
        .orElse("the unit's own papers may name a check that can");
  }

  private static String keys(CodeSheet sheet, LampState state) {
    StringBuilder keys = new StringBuilder(state.condition().word());
    keys.append(", seen ").append(TellApart.when(state.seen()));
    if (!state.lamp().equals(Optional.empty()) && !state.lamp().equals(sheet.lamp())) {
      keys.append(", lamp ").append(state.lamp().get());
    }
    state.labelSays().ifPresent(said -> keys.append("; label says: ").append(said));
    state.clearedBy().ifPresent(by -> keys.append("; cleared by: ").append(by));
    return keys.toString();
  }

  private static void add(List<String> lines, String text) {
    int width = Layout.WIDTH - INDENT.length();
    for (String line : Layout.wrap(text, width, width)) {
      lines.add(INDENT + line);
    }
  }

  /** The strip of a state, in blocks or in plain letters. */
  private static String strip(CodeSheet sheet, LampState state, boolean blocks) {
    String strip = RhythmStrip.text(state.rhythm(), sheet.blinkSeconds(), STRIP_COLUMNS);
    if (blocks) {
      return strip;
    }
    StringBuilder plain = new StringBuilder(strip.length());
    for (int i = 0; i < strip.length(); i++) {
      int block = BLOCKS.indexOf(strip.charAt(i));
      plain.append(block < 0 ? strip.charAt(i) : LETTERS.charAt(block));
    }
    return plain.toString();
  }

  /**
   * Whether the reader's end can show blocks: unless the locale names another coding than UTF-8.
   */
  static boolean blocks(Surroundings here) {
    String locale =
        here.variable("LC_ALL")
            .or(() -> here.variable("LC_CTYPE"))
            .or(() -> here.variable("LANG"))
            .orElse("utf-8")
            .toLowerCase(Locale.ROOT);
    boolean dumb = here.variable("TERM").filter("dumb"::equals).isPresent();
    return !dumb && (locale.contains("utf-8") || locale.contains("utf8"));
  }
}
