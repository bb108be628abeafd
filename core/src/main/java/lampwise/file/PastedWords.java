package lampwise.file;

import java.util.Locale;
import java.util.Set;

/** The words that may stand around pasted times. */
final class PastedWords {
  /** Words that may be followed by a number that counts: {@code flash 3 at 0:12}. */
  private static final Set<String> COUNTING =
      Set.of("blink", "flash", "tap", "lap", "wink", "pulse", "no", "nr", "number");

  /** Words that say that a list may hold the times between blinks. */
  private static final Set<String> GAPS =
      Set.of("lap", "laps", "gap", "gaps", "interval", "intervals");

  /** Words of a table or of a sentence that say nothing of their own. */
  private static final Set<String> PASSED =
      Set.of(
          "blinks",
          "flashes",
          "taps",
          "winks",
          "pulses",
          "blinked",
          "flashed",
          "tapped",
          "winked",
          "laps",
          "split",
          "splits",
          "total",
          "elapsed",
          "gap",
          "gaps",
          "interval",
          "intervals",
          "lamp",
          "led",
          "lit",
          "lights",
          "light",
          "it",
          "is",
          "was",
          "the",
          "a",
          "and",
          "then",
          "again",
          "also",
          "at",
          "came",
          "comes",
          "went",
          "goes",
          "seen",
          "saw",
          "noted",
          "i",
          "time",
          "times",
          "clock",
          "t",
          "seconds",
          "secs",
          "sec",
          "s");

  /** Of these, what a light file may have in a line with numbers too. */
  private static final Set<String> OF_LIGHT_FILES =
      Set.of("light", "lights", "time", "times", "t", "seconds", "secs", "sec", "s", "a", "i");

  /** Words that count and say nothing else, so that they are passed over only before a number. */
  private static final Set<String> BEFORE_NUMBERS = Set.of("lap", "no", "nr", "number");

  /** Words of a rhythm phrase. */
  private static final Set<String> OF_RHYTHMS =
      Set.of("every", "per", "repeating", "once", "apart", "dark", "steady", "fast", "slow");

  /** Words of a Lampwise log and of the options, which name no fixture. */
  private static final Set<String> OF_LOGS =
      Set.of("window", "target", "targets", "event", "covered", "from", "to", "until", "watched");

  private PastedWords() {}

  private static String bare(String word) {
    int end = word.length();
    while (end > 0 && ":=.!?".indexOf(word.charAt(end - 1)) >= 0) {
      end--;
    }
    return word.length() > 20 ? "" : word.substring(0, end).toLowerCase(Locale.ROOT);
  }

  static boolean counts(String word) {
    return COUNTING.contains(bare(word));
  }

  static boolean saysGaps(String word) {
    return GAPS.contains(bare(word));
  }

  /** Whether a word may be passed over beside times. */
  static boolean isPassed(String word) {
    String bare = bare(word);
    return PASSED.contains(bare) || COUNTING.contains(bare) || word.equals("@");
  }

  /** Whether a word may be passed over; some only where a number follows in the line. */
  static boolean isPassed(String word, boolean beforeNumber) {
    return isPassed(word) && (beforeNumber || !BEFORE_NUMBERS.contains(bare(word)));
  }

  /** Whether a word belongs to a rhythm phrase rather than to pasted times. */
  static boolean isOfRhythms(String word) {
    return OF_RHYTHMS.contains(bare(word));
  }

  /** Whether a word beside numbers shows that a text is no light file. */
  static boolean isTelling(String word) {
    return isPassed(word, true) && !OF_LIGHT_FILES.contains(bare(word));
  }

  /** Whether a word belongs to a log or an option rather than to pasted times. */
  static boolean isOfLogs(String word) {
    return OF_LOGS.contains(bare(word));
  }

  /** Whether a word is a unit of seconds. */
  static boolean isSecond(String word) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "s", "sec", "secs", "second", "seconds", "s.", "sec." -> true;
      default -> false;
    };
  }

  /** Whether a word is a unit of minutes. */
  static boolean isMinute(String word) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "m", "min", "mins", "minute", "minutes", "min." -> true;
      default -> false;
    };
  }

  /** Whether a word is the forenoon or afternoon of a 12-hour clock. */
  static boolean isHalfDay(String word) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "am", "pm", "a.m.", "p.m.", "a.m", "p.m" -> true;
      default -> false;
    };
  }
}
