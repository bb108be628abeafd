package lampwise.file;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.LampState;
import lampwise.sheet.Power;
import lampwise.sheet.Seen;
import lampwise.sheet.SheetException;

/**
 * Writes code sheets as {@link SheetReader} reads them, in the one canonical way: keys in a fixed
 * order, one a line, what is the default left out, quotation marks only where YAML needs them.
 * Reading gives an equal sheet back, and equal sheets are written alike.
 */
public final class SheetWriter {
  /** Signs that may stand in a text without quotation marks, not at its start. */
  private static final String PLAIN_INNER = " -+./()%'!?*=<>&@_~^$|";

  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  private final StringBuilder out = new StringBuilder();

  private SheetWriter() {}

  /**
   * Writes a sheet.
   *
   * @param sheet the sheet; runs of blanks and line ends in its texts are written as one blank
   * @return the file's content, line ends {@code \n}
   * @throws SheetException if a text is empty or holds a character that is not text, so that the
   *     file could not be read
   */
  public static String write(CodeSheet sheet) {
    SheetWriter writer = new SheetWriter();
    writer.sheet(sheet);
    return writer.out.toString();
  }

  private void sheet(CodeSheet sheet) {
    line("", "lampwise-sheet", "1");
    text("", "title", sheet.title());
    line("", "basis", sheet.basis().word());
    text("", "note", sheet.note());
    list("kind", sheet.kinds().stream().map(FixtureKind::word).toList());
    list("power", sheet.power().stream().map(Power::word).toList());
    text("", "cells", sheet.cells());
    text("", "lamp", sheet.lamp());
    if (sheet.clockTolerance() != CodeSheet.DEFAULT_CLOCK) {
      BigDecimal percent = decimal(sheet.clockTolerance()).multiply(HUNDRED);
      line("", "clock", plain(percent) + " %");
    }
    if (sheet.blinkSeconds().isPresent()) {
      line("", "blink", duration(sheet.blinkSeconds().getAsDouble()));
    }
    out.append("states:\n");
    for (LampState state : sheet.states()) {
      out.append("  ").append(state.name()).append(":\n");
      state("    ", state);
    }
  }

  private void state(String indent, LampState state) {
    line(indent, "rhythm", Phrase.print(state.rhythm()));
    text(indent, "means", state.means());
    line(indent, "condition", state.condition().word());
    if (state.seen() != Seen.ALWAYS) {
      line(indent, "seen", state.seen().word());
    }
    if (state.weight() != 1) {
      line(indent, "weight", plain(decimal(state.weight())));
    }
    text(indent, "label-says", state.labelSays());
    text(indent, "cleared-by", state.clearedBy());
    text(indent, "lamp", state.lamp());
  }

  private void line(String indent, String key, String value) {
    out.append(indent).append(key).append(": ").append(value).append('\n');
  }

  private void list(String key, List<String> words) {
    if (!words.isEmpty()) {
      line("", key, "[" + String.join(", ", words) + "]");
    }
  }

  private void text(String indent, String key, Optional<String> text) {
    text.ifPresent(said -> text(indent, key, said));
  }

  private void text(String indent, String key, String text) {
    String said = Wording.onOneLine(text);
    Optional<String> unprintable = Wording.unprintable(said);
    if (said.isEmpty() || unprintable.isPresent()) {
      throw new SheetException(
          key
              + unprintable
                  .map(c -> " holds the character " + c + ", which is not text")
                  .orElse(" must be a text, not empty"));
    }
    line(indent, key, isPlain(said) ? said : quoted(said));
  }

  /** Whether YAML takes the text as it is; less than YAML allows, but never more. */
  private static boolean isPlain(String text) {
    if (!Character.isLetterOrDigit(text.codePointAt(0))) {
      return false;
    }
    for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
      int c = text.codePointAt(i);
      boolean comma = (c == ',' || c == ';') && i + 1 < text.length() && text.charAt(i + 1) == ' ';
      if (!Character.isLetterOrDigit(c) && PLAIN_INNER.indexOf(c) < 0 && !comma) {
        return false;
      }
    }
    return true;
  }

  private static String quoted(String text) {
    StringBuilder quoted = new StringBuilder("\"");
    text.codePoints()
        .forEach(
            c -> {
              if (c == '"' || c == '\\') {
                quoted.append('\\').appendCodePoint(c);
              } else if ((c >= 0x20 && c < 0x7f) || Character.isLetterOrDigit(c)) {
                quoted.appendCodePoint(c);
              } else if (c <= 0xffff) {
                quoted.append(String.format(Locale.ROOT, "\\u%04X", c));
              } else {
                quoted.append(String.format(Locale.ROOT, "\\U%08X", c));
              }
            });
    return quoted.append('"').toString();
  }

  /** In milliseconds below 0.1 s where that reads back to the same number, else in seconds. */
  private static String duration(double seconds) {
    String inMilliseconds = plain(decimal(seconds).movePointRight(3)) + " ms";
    OptionalDouble back = Quantities.seconds(inMilliseconds);
    return seconds < 0.1 && back.isPresent() && back.getAsDouble() == seconds
        ? inMilliseconds
        : plain(decimal(seconds)) + " s";
  }

  /** The shortest decimal that reads back to the number, which is finite. */
  private static BigDecimal decimal(double number) {
    return new BigDecimal(Double.toString(number));
  }

  private static String plain(BigDecimal number) {
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }
}
