package lampwise.file;

import java.util.List;
import java.util.Optional;
import lampwise.file.PastedSection.PastedLine;
import lampwise.file.PastedTime.Role;

/** Words and signs in the first lines of a text which show that it holds pasted times. */
final class PastedMarks {
  /** So many lines are searched. */
  private static final int SEARCHED_LINES = 20;

  private final SourceText head;
  private final List<PastedSection> sections;

  private PastedMarks(SourceText head, List<PastedSection> sections) {
    this.head = head;
    this.sections = sections;
  }

  /** Looks at the first lines. */
  static PastedMarks of(SourceText source) {
    Lines lines = Lines.content(source.text());
    int end = 0;
    for (int i = 0; i < SEARCHED_LINES && lines.next(); i++) {
      end = lines.end();
    }
    SourceText head = new SourceText(source.name(), source.text().substring(0, end), List.of());
    SourceText plain = PastedText.plain(head);
    return new PastedMarks(plain, PastedSections.split(head, plain));
  }

  /** Whether the text holds pasted times and nothing else. */
  boolean show() {
    return hasMarks() || (!namesLevels() && (fixtures() > 1 || hasLaps()));
  }

  /**
   * The text without the heading that names its only fixture, to find out what stands below it.
   *
   * @param source the whole text
   */
  SourceText withoutHeading(SourceText source) {
    Optional<PastedSection> named =
        sections.stream().filter(s -> s.fixture().isPresent()).findFirst();
    if (named.isEmpty() || namesLevels()) {
      return source;
    }
    StringBuilder text = new StringBuilder(source.text());
    Lines lines = Lines.content(head.text());
    while (lines.next()) {
      if (lines.line() == named.get().heading()) {
        for (int i = lines.start(); i < lines.end(); i++) {
          text.setCharAt(i, ' ');
        }
      }
    }
    return new SourceText(source.name(), text.toString(), source.notes());
  }

  private boolean namesLevels() {
    Lines lines = Lines.content(head.text());
    while (lines.next()) {
      String line = lines.get();
      if (!hasDigit(line) && ColumnNames.levelRank(line).isPresent()) {
        return true;
      }
    }
    return false;
  }

  /** How many fixtures are named that have two times or more. */
  private int fixtures() {
    int fixtures = 0;
    for (PastedSection section : sections) {
      int numbers = 0;
      for (PastedLine line : section.lines()) {
        for (PastedToken token : PastedToken.of(line.text(), line.from(), false)) {
          numbers += token.isNumeric() ? 1 : 0;
        }
      }
      fixtures += section.fixture().isPresent() && numbers > 1 ? 1 : 0;
    }
    return fixtures;
  }

  private boolean hasLaps() {
    try {
      PastedSection first = sections.get(0);
      boolean decimalComma = PastedCommas.areDecimal(head, List.of(first));
      return LapTable.find(PastedScanner.scan(head, first, decimalComma)).isPresent();
    } catch (FileException e) {
      return false;
    }
  }

  private boolean hasMarks() {
    Lines lines = Lines.content(head.text());
    while (lines.next()) {
      List<PastedToken> tokens = PastedToken.of(lines.get(), 0, false);
      boolean marks = false;
      boolean digits = false;
      for (PastedToken token : tokens) {
        char last = token.text().charAt(token.text().length() - 1);
        marks |= isMark(token);
        digits |= Numbers.isDigit(last) || last == 's';
      }
      if ((marks && digits) || isSentence(tokens)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isMark(PastedToken token) {
    String text = token.text();
    boolean plus = text.charAt(0) == '+' && text.length() > 1;
    boolean role = text.length() <= 4 && PastedScanner.roleOf(text) != Role.UNSAID;
    return plus || role || token.item();
  }

  /** A line with a telling word, a bullet or a telling unit, and otherwise numbers and the like. */
  private static boolean isSentence(List<PastedToken> tokens) {
    boolean telling = false;
    boolean numbers = false;
    boolean clocks = true;
    boolean halfDays = false;
    for (int i = 0; i < tokens.size(); i++) {
      PastedToken token = tokens.get(i);
      String text = token.text();
      boolean bullet = i == 0 && (text.equals("-") || text.equals("*"));
      boolean half = PastedWords.isHalfDay(text);
      boolean minute = PastedWords.isMinute(text);
      if (!token.isNumeric() && !bullet && !half && !minute && !PastedWords.isPassed(text)) {
        return false;
      }
      if (token.isNumeric()) {
        numbers = true;
        clocks &= text.indexOf(':') > 0 && text.indexOf('/') < 0;
        half |= PastedWords.isHalfDay(letters(text));
        telling |= PastedTimeText.mixed(text).isPresent();
      }
      halfDays |= half;
      telling |= bullet || minute || PastedWords.isTelling(text);
    }
    return numbers && (telling || (halfDays && clocks));
  }

  private static String letters(String text) {
    int at = text.length();
    while (at > 0 && !Numbers.isDigit(text.charAt(at - 1))) {
      at--;
    }
    return text.substring(at);
  }

  private static boolean hasDigit(String line) {
    return line.chars().anyMatch(c -> c >= '0' && c <= '9');
  }
}
