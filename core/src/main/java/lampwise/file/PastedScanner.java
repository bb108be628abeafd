package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import lampwise.file.PastedSection.PastedLine;
import lampwise.file.PastedTime.Role;
import lampwise.file.PastedTime.Style;
import lampwise.file.TimeText.Writing;

/**
 * Finds the times in pasted text. Commas, semicolons, blanks, tabs and line ends separate them;
 * bullets, numbers of list items, units, the usual words around times and a first line without
 * digits are passed over.
 */
final class PastedScanner {
  /** What is said of a text without times. */
  static final String NO_NUMBERS =
      "holds no numbers; expected blink times (" + TimeText.EXPECTED + ") or light levels";

  private final SourceText source;
  private final List<String> notes = new ArrayList<>();
  private final List<PastedTime> times = new ArrayList<>();
  private Role role = Role.UNSAID;
  private int roleLine;
  private int roleColumn;
  private boolean gapWords;
  private boolean numbered;
  private int firstItem = -1;
  private int lastItem = -1;

  private PastedScanner(SourceText source) {
    this.source = source;
  }

  /**
   * The times and the notes of a text.
   *
   * @param times in the order of the text
   * @param notes what was passed over
   * @param gapWords whether words such as {@code lap} say that times between blinks may be meant
   * @param itemsFall whether the numbers of the items fall, as a stopwatch lists laps
   * @param numbered whether the heading starts with a word that counts, as {@code no; time}
   */
  record Found(
      List<PastedTime> times,
      List<String> notes,
      boolean gapWords,
      boolean itemsFall,
      boolean numbered) {}

  /**
   * Finds the times of a section.
   *
   * @param source the text with plain signs
   * @param decimalComma whether a comma between digits is a decimal point
   * @throws FileException at the first word that is neither a time nor understood
   */
  static Found scan(SourceText source, PastedSection section, boolean decimalComma)
      throws FileException {
    PastedScanner scanner = new PastedScanner(source);
    if (decimalComma) {
      scanner.notes.add("a comma inside a number was read as its decimal point");
    }
    scanner.scanLines(section, decimalComma);
    return new Found(
        scanner.times,
        scanner.notes,
        scanner.gapWords,
        scanner.firstItem > scanner.lastItem,
        scanner.numbered);
  }

  private void scanLines(PastedSection section, boolean decimalComma) throws FileException {
    boolean first = section.fixture().isEmpty();
    boolean heading = false;
    for (PastedLine line : section.lines()) {
      List<PastedToken> tokens = PastedToken.of(line.text(), line.from(), decimalComma);
      if (first && !hasDigit(line.text()) && !mentionsTime(tokens)) {
        heading = true;
        numbered = tokens.size() > 1 && PastedWords.counts(tokens.get(0).text());
        gapWords |= tokens.stream().anyMatch(token -> PastedWords.saysGaps(token.text()));
      } else {
        scanLine(tokens, line.number());
      }
      first = false;
    }
    if (role != Role.UNSAID) {
      throw source.fault(roleLine, roleColumn, "a time is missing after on or off");
    }
    if (heading && times.isEmpty()) {
      throw source.fault(0, 0, NO_NUMBERS);
    }
    if (heading) {
      notes.add("the first line was taken for a heading");
    }
  }

  private void scanLine(List<PastedToken> tokens, int line) throws FileException {
    int lastNumber = tokens.size() - 1;
    while (lastNumber >= 0 && !tokens.get(lastNumber).isNumeric()) {
      lastNumber--;
    }
    boolean afterTime = false;
    for (int i = 0; i < tokens.size(); i++) {
      PastedToken token = tokens.get(i);
      if (token.item()) {
        item(token);
        afterTime = false;
      } else if (roleOf(token.text()) != Role.UNSAID) {
        role(token, line);
        afterTime = false;
      } else if (isDash(token, i, afterTime && i < lastNumber)
          || PastedWords.isPassed(token.text(), i < lastNumber)) {
        gapWords |= PastedWords.saysGaps(token.text());
        if (PastedWords.counts(token.text()) && isCount(tokens, i + 1)) {
          item(tokens.get(++i));
        }
        afterTime = false;
      } else {
        i = scanTime(tokens, i, line);
        afterTime = true;
      }
    }
  }

  private void item(PastedToken token) {
    lastItem = token.number();
    firstItem = firstItem < 0 ? lastItem : firstItem;
  }

  private void role(PastedToken token, int line) throws FileException {
    if (role != Role.UNSAID) {
      throw source.fault(
          line,
          token.column(),
          "expected a time after on or off, not " + Numbers.quote(token.text()));
    }
    role = roleOf(token.text());
    roleLine = line;
    roleColumn = token.column();
  }

  /** Whether a lone sign is a bullet or stands between words; between times it may mean "to". */
  private static boolean isDash(PastedToken token, int index, boolean betweenTimes) {
    return token.text().equals("-") ? !betweenTimes : token.text().equals("*") && index == 0;
  }

  /** Whether a whole number behind a word such as {@code flash} counts and a time follows. */
  private static boolean isCount(List<PastedToken> tokens, int at) {
    if (at >= tokens.size() || !tokens.get(at).isWhole()) {
      return false;
    }
    int whole = 0;
    int numbers = 0;
    for (int i = at + 1; i < tokens.size() && !PastedWords.counts(tokens.get(i).text()); i++) {
      boolean number = tokens.get(i).isNumeric();
      numbers += number ? 1 : 0;
      whole += number && tokens.get(i).isWhole() ? 1 : 0;
    }
    return numbers > 0 && !(numbers > 1 && whole == numbers);
  }

  /** Reads a time and the units behind it; returns the place of its last word. */
  private int scanTime(List<PastedToken> tokens, int at, int line) throws FileException {
    PastedToken token = tokens.get(at);
    int last = at;
    try {
      PastedTimeText time = parse(token.text());
      String unit = at + 1 < tokens.size() ? tokens.get(at + 1).text() : "";
      boolean bare = time.style() == Style.BARE;
      if (bare && PastedWords.isHalfDay(unit)) {
        time = PastedTimeText.halfDay(token.text(), time.time(), unit);
        last++;
      } else if (bare && time.time().writing() == Writing.NUMBER && isUnit(unit)) {
        time = time.of(unit);
        last++;
        boolean more = PastedWords.isMinute(unit) && isSeconds(tokens, at + 2);
        if (more) {
          time = time.plus(parse(tokens.get(at + 2).text()).time().value());
          last += tokens.get(at + 2).text().endsWith("s") ? 1 : 2;
        }
      }
      times.add(
          new PastedTime(role, time.time(), time.style(), line, token.column(), token.text()));
      role = Role.UNSAID;
      return last;
    } catch (TimeText.Fault e) {
      throw source.fault(
          line, token.column(), String.valueOf(e.getMessage()) + hint(token.text(), at == 0));
    }
  }

  /** Whether a number of seconds and its unit stand at a place: {@code 2.5 s}, {@code 2.5s}. */
  private static boolean isSeconds(List<PastedToken> tokens, int at) {
    if (at >= tokens.size() || !Numbers.isDigit(tokens.get(at).text().charAt(0))) {
      return false;
    }
    String word = tokens.get(at).text();
    boolean alone = Double.isFinite(Numbers.parse(word));
    boolean joined =
        word.endsWith("s") && Double.isFinite(Numbers.parse(word.substring(0, word.length() - 1)));
    return joined
        || (alone && at + 1 < tokens.size() && PastedWords.isSecond(tokens.get(at + 1).text()));
  }

  private static PastedTimeText parse(String word) throws TimeText.Fault {
    return PastedTimeText.parse(word.replace(',', '.'));
  }

  private static boolean isUnit(String word) {
    return PastedWords.isSecond(word) || PastedWords.isMinute(word) || word.equals("ms");
  }

  /** What a word that is no time may have been meant for. */
  private static String hint(String word, boolean first) {
    if (PastedWords.isOfLogs(word)) {
      return "; such lines belong to a Lampwise log, whose first line is lampwise-log: 1";
    }
    if (PastedWords.isOfRhythms(word)) {
      return "; a rhythm in words is given with --saw";
    }
    int dash = word.indexOf('-', 1);
    boolean between =
        dash > 0
            && dash + 1 < word.length()
            && Numbers.isDigit(word.charAt(dash - 1))
            && Numbers.isDigit(word.charAt(dash + 1));
    if (word.equals("-") || (between && word.indexOf('-', dash + 1) < 0)) {
      return "; for the start and the end of a blink write on 3.1 off 3.2";
    }
    boolean number = word.chars().anyMatch(c -> c >= '0' && c <= '9');
    if (number || word.equalsIgnoreCase("nan") || Numbers.isInfinite(word)) {
      return "";
    }
    return first
        ? "; put # before a remark, or fixture before the name of another lamp"
        : "; put # before a remark";
  }

  /** The role that a word such as {@code on} or {@code off:} gives to the next time. */
  static Role roleOf(String word) {
    String bare =
        word.endsWith(":") || word.endsWith("=") ? word.substring(0, word.length() - 1) : word;
    return switch (bare.length() > 3 ? "" : bare.toLowerCase(Locale.ROOT)) {
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
  private static boolean mentionsTime(List<PastedToken> tokens) {
    return tokens.stream()
        .anyMatch(t -> t.text().equalsIgnoreCase("nan") || Numbers.isInfinite(t.text()));
  }
}
