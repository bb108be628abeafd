package lampwise.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lampwise.file.ReadOptions.Unit;

/** What the name of a column says about it. */
final class ColumnNames {
  private static final List<String> TIME_WORDS =
      List.of(
          "time",
          "timestamp",
          "datetime",
          "zeit",
          "zeitstempel",
          "temps",
          "tiempo",
          "tempo",
          "tijd",
          "tid",
          "czas",
          "\u0432\u0440\u0435\u043C\u044F",
          "\u65F6\u95F4",
          "\u6642\u9593",
          "when",
          "t",
          "ts",
          "elapsed",
          "clock",
          "pts",
          "seconds",
          "second",
          "secs",
          "sec",
          "millis",
          "milliseconds",
          "msec",
          "ms",
          "micros",
          "microseconds",
          "usec",
          "us",
          "nanos",
          "nanoseconds",
          "nsec",
          "ns",
          "s");

  private static final List<String> LEVEL_WORDS =
      List.of(
          "lux",
          "lx",
          "illuminance",
          "beleuchtungsst\u00E4rke",
          "helligkeit",
          "\u00E9clairement",
          "luminosit\u00E9",
          "iluminancia",
          "luz",
          "illuminamento",
          "luminosit\u00E0",
          "lichtst\u00E4rke",
          "\u043E\u0441\u0432\u0435\u0449\u0451\u043D\u043D\u043E\u0441\u0442\u044C",
          "\u043E\u0441\u0432\u0435\u0449\u0435\u043D\u043D\u043E\u0441\u0442\u044C",
          "\u7167\u5EA6",
          "\u5149\u7167\u5EA6",
          "licht",
          "illumination",
          "brightness",
          "luminance",
          "luma",
          "light",
          "level",
          "intensity",
          "voltage",
          "volts",
          "volt",
          "value");

  private static final List<String> COUNT_WORDS =
      List.of("frame", "frames", "index", "sample", "row", "no", "nr", "n", "number", "count");

  private static final List<String> RATE_WORDS = List.of("fps", "rate", "hz", "framerate");

  /** Light levels come no faster. */
  private static final double MAX_RATE_HZ = 100_000;

  /** No more of a name is looked at. */
  private static final int MAX_NAME = 200;

  private ColumnNames() {}

  /**
   * How well a name names a column of times.
   *
   * @return 0 for the best word; empty if the name says nothing of time
   */
  static Optional<Integer> timeRank(String name) {
    return rank(TIME_WORDS, name);
  }

  /**
   * How well a name names a column of light levels.
   *
   * @return 0 for the best word; empty if the name says nothing of light
   */
  static Optional<Integer> levelRank(String name) {
    return rank(LEVEL_WORDS, name);
  }

  /** Whether a name is that of a count of rows or frames. */
  static boolean isCount(String name) {
    List<String> words = words(name);
    return COUNT_WORDS.stream().anyMatch(words::contains);
  }

  /**
   * The rate that a line above a table states: {@code fps=29.97}, {@code sample rate: 50 Hz}.
   *
   * @return rows a second; NaN if the line states none
   */
  static double rate(String line) {
    List<String> words = words(line);
    if (RATE_WORDS.stream().noneMatch(words::contains)) {
      return Double.NaN;
    }
    double found = Double.NaN;
    for (String word : Lines.split(line, " \t=:,;#()")) {
      double value = LooseNumber.parse(bare(word), DecimalMark.POINT);
      if (value > 0 && value <= MAX_RATE_HZ) {
        if (!Double.isNaN(found)) {
          return Double.NaN;
        }
        found = value;
      }
    }
    return found;
  }

  /** A word without the letters behind its number: {@code 50Hz}. */
  private static String bare(String word) {
    int end = word.length();
    while (end > 0 && Character.isLetter(word.charAt(end - 1))) {
      end--;
    }
    return word.substring(0, end);
  }

  /** Whether two names head the starts and ends of blinks. */
  static boolean areSpans(List<String> names) {
    if (names.size() != 2) {
      return false;
    }
    String first = words(names.get(0)).stream().findFirst().orElse("");
    String second = words(names.get(1)).stream().findFirst().orElse("");
    return (first.equals("on") && second.equals("off"))
        || (first.equals("start") && second.equals("end"));
  }

  /** The unit of time that a name states: {@code time_s}, {@code Time (s)}, {@code elapsedMs}. */
  static Optional<Unit> unit(String name) {
    for (String word : words(name)) {
      Optional<Unit> unit = unitOfWord(word);
      if (unit.isPresent()) {
        return unit;
      }
    }
    return Optional.empty();
  }

  /** The unit that a comment states where it speaks of time and of no number. */
  static Optional<Unit> unitOfComment(String comment) {
    for (String part : Lines.split(comment, ",;\t")) {
      List<String> words = words(part);
      boolean numbers = false;
      for (String word : words) {
        numbers |= Numbers.isDigit(word.charAt(0));
      }
      boolean time =
          words.contains("time") || words.contains("times") || words.contains("timestamp");
      if (time && !numbers) {
        Optional<Unit> unit = unit(part);
        if (unit.isPresent()) {
          return unit;
        }
      }
    }
    return Optional.empty();
  }

  private static Optional<Unit> unitOfWord(String word) {
    return switch (word) {
      case "s", "sec", "secs", "second", "seconds" -> Optional.of(Unit.S);
      case "ms", "msec", "millis", "millisecond", "milliseconds" -> Optional.of(Unit.MS);
      case "us", "usec", "micros", "microsecond", "microseconds", "\u00B5s", "\u03BCs" ->
          Optional.of(Unit.US);
      case "ns", "nsec", "nanos", "nanosecond", "nanoseconds" -> Optional.of(Unit.NS);
      default -> Optional.empty();
    };
  }

  private static Optional<Integer> rank(List<String> known, String name) {
    List<String> words = words(name);
    for (int i = 0; i < known.size(); i++) {
      if (words.contains(known.get(i))) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  /**
   * The words of a name, lower case: parted by signs and where a capital follows a small letter.
   */
  private static List<String> words(String text) {
    List<String> words = new ArrayList<>();
    String name = text.substring(0, Math.min(text.length(), MAX_NAME));
    int start = 0;
    for (int i = 0; i <= name.length(); i++) {
      boolean letter = i < name.length() && Character.isLetterOrDigit(name.charAt(i));
      boolean capital =
          letter
              && i > start
              && Character.isUpperCase(name.charAt(i))
              && Character.isLowerCase(name.charAt(i - 1));
      if (letter && !capital) {
        continue;
      }
      if (i > start) {
        words.add(name.substring(start, i).toLowerCase(Locale.ROOT));
      }
      start = capital ? i : i + 1;
    }
    return words;
  }
}
