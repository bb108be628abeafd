package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lampwise.file.PastedSection.PastedLine;
import lampwise.file.PastedTime.Role;

/**
 * Splits pasted text at the lines that name a fixture: {@code fixture north-07}, {@code north-07:},
 * {@code north-07: 0.3 3.5}, or a heading without times where the text starts with one.
 */
final class PastedSections {
  private static final int MAX_NAME = 80;

  /** What a line is. */
  private enum Kind {
    TIMES,
    NAMED,
    BARE
  }

  /**
   * A line that was looked at.
   *
   * @param kind what it is
   * @param line the line; its times start behind the name, if it has one
   * @param name the name, if it has one
   */
  private record Looked(Kind kind, PastedLine line, String name) {}

  private final SourceText source;
  private final SourceText plain;

  private PastedSections(SourceText source, SourceText plain) {
    this.source = source;
    this.plain = plain;
  }

  /**
   * Splits a text.
   *
   * @param source the text as it is, for the names
   * @param plain the same with plain signs
   * @return one section or more
   */
  static List<PastedSection> split(SourceText source, SourceText plain) {
    return new PastedSections(source, plain).split();
  }

  private List<PastedSection> split() {
    List<Looked> lines = new ArrayList<>();
    Lines content = Lines.content(plain.text());
    while (content.next()) {
      lines.add(look(content));
    }
    boolean bareNames = bareLinesAreNames(lines);
    List<PastedSection> sections = new ArrayList<>();
    PastedSection section = new PastedSection(Optional.empty(), 0, new ArrayList<>());
    for (int i = 0; i < lines.size(); i++) {
      Looked looked = lines.get(i);
      boolean title = i == 0 && i + 1 < lines.size() && lines.get(1).kind() != Kind.TIMES;
      boolean bare = looked.kind() == Kind.BARE && bareNames && !title;
      if (looked.kind() == Kind.NAMED || bare) {
        if (!section.lines().isEmpty() || section.fixture().isPresent()) {
          sections.add(section);
        }
        int number = looked.line().number();
        section = new PastedSection(Optional.of(looked.name()), number, new ArrayList<>());
      }
      boolean passed = bare || (title && bareNames && looked.kind() == Kind.BARE);
      if (!passed && !isBlank(looked.line().rest())) {
        section.lines().add(looked.line());
      }
    }
    sections.add(section);
    return sections;
  }

  /**
   * Whether lines without times name fixtures: the text starts with one, and there are several, or
   * the only one holds a digit as {@code north-07} does.
   */
  private static boolean bareLinesAreNames(List<Looked> lines) {
    if (lines.size() < 2 || lines.get(0).kind() == Kind.TIMES) {
      return false;
    }
    int bare = 0;
    for (Looked looked : lines) {
      bare += looked.kind() == Kind.BARE ? 1 : 0;
    }
    boolean last = lines.get(lines.size() - 1).kind() == Kind.BARE;
    Looked first = lines.get(0);
    boolean title = lines.get(1).kind() != Kind.TIMES;
    boolean numbered = first.kind() == Kind.BARE && hasDigit(first.name());
    return !last && (bare > 1 || (numbered && !title) || (bare == 1 && title));
  }

  private Looked look(Lines content) {
    String text = content.get();
    PastedLine line = new PastedLine(content.line(), text, 0);
    List<LogWord> words = LogWord.of(text, 0);
    LogWord first = words.get(0);
    String key = first.text().toLowerCase(Locale.ROOT);
    if (key.equals("fixture") || key.equals("fixture:")) {
      return named(content, first.column() - 1 + first.text().length());
    }
    int colon = headingColon(text, first.column() - 1);
    if (colon > 0 && isName(text.substring(0, colon))) {
      return new Looked(
          Kind.NAMED, new PastedLine(content.line(), text, colon + 1), original(content, 0, colon));
    }
    return isBare(words) && !isRow(text)
        ? new Looked(Kind.BARE, line, original(content, 0, text.length()))
        : new Looked(Kind.TIMES, line, "");
  }

  /** A line that starts with the word fixture. */
  private Looked named(Lines content, int from) {
    String text = content.get();
    int colon = headingColon(text, from);
    int end = colon > 0 ? colon : text.length();
    int rest = colon > 0 ? colon + 1 : text.length();
    return new Looked(
        Kind.NAMED, new PastedLine(content.line(), text, rest), original(content, from, end));
  }

  private String original(Lines content, int from, int end) {
    String name = source.text().substring(content.start() + from, content.start() + end);
    return Wording.onOneLine(Wording.printable(name.replace('\u00A0', ' ')));
  }

  /** The first colon before a blank or the end of the line; -1 if there is none soon. */
  private static int headingColon(String text, int from) {
    int last = Math.min(text.length(), from + MAX_NAME);
    for (int i = from; i < last; i++) {
      boolean before = i + 1 == text.length() || Lines.isBlank(text.charAt(i + 1));
      if (text.charAt(i) == ':' && before) {
        return i;
      }
    }
    return -1;
  }

  /** Whether the words before a colon name a fixture: some word is none of a list of times. */
  private static boolean isName(String text) {
    List<LogWord> words = LogWord.of(text, 0);
    if (words.isEmpty() || !Character.isLetter(words.get(0).text().charAt(0))) {
      return false;
    }
    boolean foreign = false;
    for (LogWord word : words) {
      boolean number = Numbers.isDigit(word.text().charAt(0));
      foreign |= !number && isForeign(word.text());
    }
    return foreign && !PastedWords.isOfLogs(words.get(0).text());
  }

  /** Whether a line has no times and some word that is none of a list of times. */
  private static boolean isBare(List<LogWord> words) {
    boolean foreign = false;
    int length = 0;
    for (LogWord word : words) {
      char first = word.text().charAt(0);
      if (!Character.isLetter(first) && first != '(') {
        return false;
      }
      foreign |= isForeign(word.text());
      length += word.text().length();
    }
    return foreign
        && length <= MAX_NAME
        && !PastedWords.isOfLogs(words.get(0).text())
        && !isNotANumber(words);
  }

  /** Whether signs part it as they part the cells of a table. */
  private static boolean isRow(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean tight = c == ',' && i + 1 < text.length() && !Lines.isBlank(text.charAt(i + 1));
      if (c == ';' || c == '\t' || tight) {
        return true;
      }
    }
    return false;
  }

  private static boolean isNotANumber(List<LogWord> words) {
    for (LogWord word : words) {
      if (word.text().equalsIgnoreCase("nan") || Numbers.isInfinite(word.text())) {
        return true;
      }
    }
    return false;
  }

  private static boolean isForeign(String word) {
    for (String part : Lines.split(word, ",;")) {
      boolean known =
          part.isEmpty()
              || PastedWords.isPassed(part)
              || PastedWords.isHalfDay(part)
              || PastedScanner.roleOf(part) != Role.UNSAID;
      if (!known) {
        return true;
      }
    }
    return false;
  }

  private static boolean hasDigit(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (Numbers.isDigit(text.charAt(i))) {
        return true;
      }
    }
    return false;
  }

  private static boolean isBlank(String text) {
    return LogReader.trim(text).isEmpty();
  }
}
