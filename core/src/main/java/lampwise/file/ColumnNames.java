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
