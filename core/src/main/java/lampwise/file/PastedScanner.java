package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import lampwise.file.PastedTime.Role;

/**
 * Finds the times in pasted text. Commas, semicolons, blanks, tabs and line ends separate them;
 * numbers of list items, a unit {@code s} and a first line without digits are passed over.
 */
final class PastedScanner {
  private final SourceText source;
  private final boolean decimalComma;
  private final List<String> notes = new ArrayList<>();
  private final List<PastedTime> times = new ArrayList<>();
  private Role role = Role.UNSAID;
  private int roleLine;
  private int roleColumn;

  private PastedScanner(SourceText source, boolean decimalComma) {
    this.source = source;
    this.decimalComma = decimalComma;
  }

  /**
   * The times and the notes of a text.
   *
   * @param times in the order of the text
   * @param notes what was passed over
   */
  record Found(List<PastedTime> times, List<String> notes) {}

  /**
   * Finds the times.
   *
   * @throws FileException at the first word that is neither a time nor understood
   */
  static Found scan(SourceText source) throws FileException {
    PastedScanner scanner = new PastedScanner(source, PastedCommas.areDecimal(source));
    scanner.scanLines();
    return new Found(scanner.times, scanner.notes);
  }

  private void scanLines() throws FileException {
    if (decimalComma) {
      notes.add("a comma inside a number was read as its decimal point");
    }
    Lines lines = Lines.content(source.text());
    boolean first = true;
    boolean heading = false;
    while (lines.next()) {
      String line = lines.get();
      if (first && !hasDigit(line) && !mentionsTime(line)) {
        heading = true;
      } else {
        scanLine(line, lines.line());
      }
      first = false;
    }
    if (role != Role.UNSAID) {
      throw source.fault(roleLine, roleColumn, "a time is missing after on or off");
    }
    if (heading && times.isEmpty()) {
      throw source.fault(
          0,
          0,
          "holds no numbers; expected blink times (" + TimeText.EXPECTED + ") or light levels");
    }
    if (heading) {
      notes.add("the first line was taken for a heading");
    }
  }

  private void scanLine(String line, int number) throws FileException {
    int at = 0;
    boolean afterTime = false;
    while (at < line.length()) {
      if (isSeparator(line, at)) {
        at++;
        continue;
      }
      int end = at;
      while (end < line.length() && !isSeparator(line, end)) {
        end++;
      }
      if (line.charAt(at) == '#' && !Lines.isNumbered(line, at, line.length())) {
        return;
      }
      int item = itemEnd(line, at, end, line.length());
      if (item > at) {
        at = item;
        continue;
      }
      String word = line.substring(at, end);
      if (!(afterTime && word.equals("s"))) {
        afterTime = scanWord(word, number, at + 1);
      }
      at = end;
    }
  }

  /** Reads a word that is no list number; true if it is a time. */
  private boolean scanWord(String word, int line, int column) throws FileException {
    Role said = roleOf(word);
    if (said != Role.UNSAID) {
      if (role != Role.UNSAID) {
        throw source.fault(
            line, column, "expected a time after on or off, not " + Numbers.quote(word));
      }
      role = said;
      roleLine = line;
      roleColumn = column;
      return false;
    }
    try {
      TimeText time = TimeText.parse(plain(word));
      times.add(new PastedTime(role, time, line, column, word));
      role = Role.UNSAID;
      return true;
    } catch (TimeText.Fault e) {
      throw source.fault(line, column, String.valueOf(e.getMessage()));
    }
  }

  private String plain(String word) {
    int end = word.length();
    if (end > 1 && word.charAt(end - 1) == 's' && isNumberPart(word.charAt(end - 2))) {
      end--;
    }
    String plain = word.substring(0, end);
    return decimalComma ? plain.replace(',', '.') : plain;
  }

  private static boolean isNumberPart(char c) {
    return Numbers.isDigit(c) || c == '.';
  }

  private boolean isSeparator(String line, int at) {
    char c = line.charAt(at);
    if (c == ',' && decimalComma) {
      return at == 0
          || at + 1 == line.length()
          || !Numbers.isDigit(line.charAt(at - 1))
          || !Numbers.isDigit(line.charAt(at + 1));
    }
    return c == ',' || c == ';' || Lines.isBlank(c);
  }

  /**
   * Where the number of a list item ends: {@code 1)}, {@code 1.} or {@code 1:} before a blank and a
   * time, {@code #1}.
   *
   * @return the place after it; {@code at} if there is none
   */
  static int itemEnd(String line, int at, int end, int lineEnd) {
    boolean hash = line.charAt(at) == '#';
    int digits = at + (hash ? 1 : 0);
    while (digits < end && Numbers.isDigit(line.charAt(digits))) {
      digits++;
    }
    if (digits == at) {
      return at;
    }
    if (digits == end) {
      return hash ? end : at;
    }
    char mark = line.charAt(digits);
    if (mark == ')' || (hash && mark != '.')) {
      return digits + 1;
    }
    boolean dotted = (mark == '.' || mark == ':') && digits + 1 == end;
    return dotted && timeFollows(line, end, lineEnd) ? end : at;
  }

  /** Whether the next word starts like a time and is no list number itself. */
  private static boolean timeFollows(String line, int from, int lineEnd) {
    int at = from;
    while (at < lineEnd && Lines.isBlank(line.charAt(at))) {
      at++;
    }
    if (at == from || at == lineEnd || "0123456789+-.".indexOf(line.charAt(at)) < 0) {
      return false;
    }
    int end = at;
    while (end < lineEnd && ",; \t\f\u00A0".indexOf(line.charAt(end)) < 0) {
      end++;
    }
    return line.charAt(end - 1) != '.' && line.charAt(end - 1) != ':';
  }

  /** The role that a word such as {@code on} or {@code off:} gives to the next time. */
  static Role roleOf(String word) {
    String bare =
        word.endsWith(":") || word.endsWith("=") ? word.substring(0, word.length() - 1) : word;
    return switch (bare.toLowerCase(Locale.ROOT)) {
      case "on" -> Role.ON;
      case "off" -> Role.OFF;
      default -> Role.UNSAID;
    };
  }

  private static boolean hasDigit(String line) {
    for (int i = 0; i < line.length(); i++) {
      if (Numbers.isDigit(line.charAt(i))) {
        return true;
      }
    }
    return false;
  }

  /**
   * Whether a word without digits stands for a time or belongs to one, so that it is no heading.
   */
  private boolean mentionsTime(String line) {
    for (String word : Lines.split(line, ",; \t")) {
      if (word.equalsIgnoreCase("nan") || Numbers.isInfinite(word)) {
        return true;
      }
    }
    return false;
  }
}
