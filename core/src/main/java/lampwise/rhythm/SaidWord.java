package lampwise.rhythm;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * One word of what a label says, by what it does there.
 *
 * @param kind what it does
 * @param text as written, in lower case; empty at the end
 * @param number its number; NaN if it has none
 * @param start index of its first character in the label's words
 */
record SaidWord(Kind kind, String text, double number, int start) {
  /** What a word can do in a saying. */
  enum Kind {
    NUMBER,
    HALF,
    BLINK,
    QUICK,
    SHORT,
    LONG,
    SLOW,
    LIT,
    ALWAYS,
    DARK,
    NO,
    PAUSE,
    REPEAT,
    SENT,
    EVERY,
    PER,
    ARTICLE,
    UNIT,
    HERTZ,
    APART,
    BETWEEN,
    FOR,
    THEN,
    TO,
    ABOUT,
    TIMES,
    ONCE,
    SELDOM,
    FIRST,
    END_OF_LIGHT,
    CODE,
    UNKNOWN,
    END
  }

  /** Text of more characters is nobody's label. */
  static final int LONGEST = 400;

  private static final Map<String, Kind> KINDS = new HashMap<>();
  private static final Map<String, Double> NUMBERS = new HashMap<>();
  private static final Map<String, Double> UNITS = new HashMap<>();

  /** Words that say nothing about the light. */
  private static final Set<String> NOISE =
      Set.of(
          ("the lamp led light indicator is it its with of in by which that stays stay keeps keep"
                  + " goes comes up at only just this are ones row group groups burst bursts")
              .split(" ", -1));

  static {
    kind(Kind.BLINK, "blink blinks blinking blinked flash flashes flashing flashed wink winks");
    kind(Kind.BLINK, "winking winked blip blips pulse pulses beat beats");
    kind(Kind.QUICK, "quick quickly fast rapid rapidly");
    kind(Kind.SHORT, "short brief briefly");
    kind(Kind.LONG, "long");
    kind(Kind.SLOW, "slow slowly");
    kind(Kind.LIT, "lit on lights solid steady shines");
    kind(Kind.ALWAYS, "always permanently continuous continuously constant constantly steadily");
    kind(Kind.DARK, "dark off out unlit nothing");
    kind(Kind.NO, "no not without never");
    kind(Kind.PAUSE, "pause pauses gap gaps wait waits rest rests break breaks");
    kind(Kind.REPEAT, "repeat repeats repeated repeating repeatedly again forever");
    kind(Kind.SENT, "sent shown given");
    kind(Kind.EVERY, "every each");
    kind(Kind.PER, "per /");
    kind(Kind.ARTICLE, "a an");
    kind(Kind.HERTZ, "hz hertz");
    kind(Kind.APART, "apart spaced spacing");
    kind(Kind.BETWEEN, "between");
    kind(Kind.FOR, "for");
    kind(Kind.THEN, "then and plus followed afterwards , ; & + .");
    kind(Kind.TO, "to or - \u2013");
    kind(Kind.ABOUT, "about around roughly approximately approx circa ca ~");
    kind(Kind.TIMES, "times time x");
    kind(Kind.ONCE, "once");
    kind(Kind.SELDOM, "occasionally sometimes");
    kind(Kind.FIRST, "first initially");
    kind(Kind.END_OF_LIGHT, "stops stop ends");
    kind(Kind.CODE, "code codes pattern");
    kind(Kind.HALF, "half");
    String[] words =
        "one two three four five six seven eight nine ten eleven twelve".split(" ", -1);
    for (int i = 0; i < words.length; i++) {
      NUMBERS.put(words[i], i + 1.0);
    }
    NUMBERS.put("single", 1.0);
    NUMBERS.put("twice", 2.0);
    NUMBERS.put("double", 2.0);
    NUMBERS.put("thrice", 3.0);
    NUMBERS.put("triple", 3.0);
    unit(0.001, "ms msec msecs millisecond milliseconds");
    unit(1, "s sec secs second seconds");
    unit(60, "min mins minute minutes");
    unit(3600, "h hr hrs hour hours");
  }

  private static void kind(Kind kind, String words) {
    for (String word : words.split(" ", -1)) {
      KINDS.put(word, kind);
    }
  }

  private static void unit(double seconds, String words) {
    for (String word : words.split(" ", -1)) {
      UNITS.put(word, seconds);
    }
  }

  boolean is(Kind other) {
    return kind == other;
  }

  /** Whether a single blink is meant rather than blinking: {@code flash}, not {@code flashes}. */
  boolean isSingular() {
    return List.of("blink", "flash", "wink", "blip", "pulse", "beat").contains(text);
  }

  /** The word of lamps and times that is one letter away from a word of four letters or more. */
  static Optional<String> near(String word) {
    boolean compared = word.length() >= 4 && word.length() <= 16;
    return Stream.concat(
            KINDS.keySet().stream(),
            Stream.concat(NUMBERS.keySet().stream(), UNITS.keySet().stream()))
        .filter(known -> compared && known.length() >= 4 && Words.distance(word, known) == 1)
        .min(Comparator.naturalOrder());
  }

  int column() {
    return start + 1;
  }

  /** Splits what a label says, without the words that say nothing; the last one is the end. */
  static List<SaidWord> split(String said) {
    String text = said.toLowerCase(Locale.ROOT);
    List<SaidWord> words = new ArrayList<>();
    int at = 0;
    while (at < text.length()) {
      char c = text.charAt(at);
      int end = at + 1;
      if (isDigit(c) || (c == '.' && end < text.length() && isDigit(text.charAt(end)))) {
        end = numberEnd(text, at);
        String digits = text.substring(at, end).replace(',', '.');
        words.add(new SaidWord(Kind.NUMBER, digits, Double.parseDouble(digits), at));
      } else if (Character.isLetter(c)) {
        while (end < text.length() && isInWord(text, end)) {
          end++;
        }
        add(words, text.substring(at, end), at);
      } else if (!Character.isWhitespace(c) && !Character.isSpaceChar(c)) {
        add(words, text.substring(at, end), at);
      }
      at = end;
    }
    words.add(new SaidWord(Kind.END, "", Double.NaN, text.length()));
    return words;
  }

  private static void add(List<SaidWord> words, String word, int start) {
    if (NOISE.contains(word)) {
      return;
    }
    if (NUMBERS.containsKey(word)) {
      words.add(new SaidWord(Kind.NUMBER, word, NUMBERS.get(word), start));
    } else if (UNITS.containsKey(word)) {
      words.add(new SaidWord(Kind.UNIT, word, UNITS.get(word), start));
    } else {
      words.add(new SaidWord(KINDS.getOrDefault(word, Kind.UNKNOWN), word, Double.NaN, start));
    }
  }

  private static boolean isInWord(String text, int at) {
    char c = text.charAt(at);
    return Character.isLetter(c) || c == '\'' || c == '\u2019';
  }

  /** Digits with a point or a comma that has digits on both sides. */
  private static int numberEnd(String text, int start) {
    int end = start;
    boolean point = false;
    while (end < text.length()) {
      char c = text.charAt(end);
      boolean mark = (c == '.' || c == ',') && !point;
      if (mark && end + 1 < text.length() && isDigit(text.charAt(end + 1))) {
        point = true;
      } else if (!isDigit(c)) {
        break;
      }
      end++;
    }
    return end;
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
