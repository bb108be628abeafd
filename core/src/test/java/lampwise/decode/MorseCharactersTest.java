package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The letters and figures of the Morse code as phrases of long and short blinks without lengths.
 * The signals and their timing are those of Recommendation ITU-R M.1677-1, part I: sections 1.1.1
 * and 1.1.2 (letters without the accented e, figures), section 2 (a dash is three dots, a space
 * inside a character one dot, between characters three, between words seven). A lamp repeats one
 * character, with the space between words before it starts again. Speeds count the word PARIS, 50
 * dots: a dot lasts 1.2 s over the words a minute.
 */
class MorseCharactersTest {
  private static final String SIGNALS =
      "a .- b -... c -.-. d -.. e . f ..-. g --. h .... i .. j .--- k -.- l .-.. m -- n -. o --- "
          + "p .--. q --.- r .-. s ... t - u ..- v ...- w .-- x -..- y -.-- z --.. "
          + "1 .---- 2 ..--- 3 ...-- 4 ....- 5 ..... 6 -.... 7 --... 8 ---.. 9 ----. 0 -----";

  private static final int DASH = 3;
  private static final int INSIDE = 1;
  private static final int WORD = 7;
  private static final double[] WORDS_A_MINUTE = {5, 7.5, 10, 15};
  private static final double CLOCK = 0.05;

  private static final Map<String, String> ALL = signals();
  private static final CodeSheet SHEET = sheet();

  private static Map<String, String> signals() {
    String[] words = SIGNALS.split(" ");
    Map<String, String> signals = new TreeMap<>();
    for (int i = 0; i < words.length; i += 2) {
      signals.put("char-" + words[i], words[i + 1]);
    }
    return signals;
  }

  private static CodeSheet sheet() {
    List<LampState> states = new ArrayList<>();
    ALL.forEach((name, signal) -> states.add(Sheets.state(name, phrase(signal), Seen.ALWAYS)));
    return Sheets.of(CLOCK, OptionalDouble.empty(), states);
  }

  /** Long and short where a character has both; otherwise nothing says which they are. */
  private static String phrase(String signal) {
    boolean both = signal.contains(".") && signal.contains("-");
    List<String> parts = new ArrayList<>();
    for (int from = 0; from < signal.length(); ) {
      int to = from;
      while (to < signal.length() && signal.charAt(to) == signal.charAt(from)) {
        to++;
      }
      String size = !both ? "" : signal.charAt(from) == '.' ? "short " : "long ";
      parts.add((to - from) + " " + size + (to - from > 1 ? "blinks" : "blink"));
      from = to;
    }
    return String.join(" then ", parts) + " repeating";
  }

  /** Light and dark in turn, in seconds. */
  private static double[] phases(String signal, double dotSeconds, int pause) {
    double[] phases = new double[2 * signal.length()];
    for (int i = 0; i < signal.length(); i++) {
      phases[2 * i] = (signal.charAt(i) == '.' ? 1 : DASH) * dotSeconds;
      phases[2 * i + 1] = (i + 1 < signal.length() ? INSIDE : pause) * dotSeconds;
    }
    return phases;
  }

  /** The characters that look the same where nothing says how long a blink is. */
  private static Set<String> twins(String name) {
    Set<String> twins = new TreeSet<>();
    ALL.forEach(
        (other, signal) -> {
          if (phrase(signal).equals(phrase(ALL.get(name)))) {
            twins.add(other);
          }
        });
    return twins;
  }

  private static Reading read(CodeSheet sheet, String name, double wordsAMinute, int seed) {
    SplittableRandom random = new SplittableRandom(1125L * seed + name.hashCode());
    double[] phases = phases(ALL.get(name), 1.2 / wordsAMinute, WORD);
    CleanRecordings drawn = CleanRecordings.ofPhases(phases).drawn(random, 0.01).cycles(4);
    return Answers.decode(sheet, drawn.onAndOff());
  }

  static Stream<String> different() {
    return ALL.keySet().stream().filter(name -> twins(name).size() == 1);
  }

  static Stream<String> alike() {
    return ALL.keySet().stream().filter(name -> twins(name).size() == 2);
  }

  @ParameterizedTest
  @MethodSource("different")
  void shapesAreRead(String name) {
    for (double words : WORDS_A_MINUTE) {
      Answers.assertDecoded(name, read(SHEET, name, words, 1), ALL.get(name) + " at " + words);
    }
  }

  @ParameterizedTest
  @MethodSource("alike")
  void whatDiffersInSpeedAloneIsUndecided(String name) {
    for (double words : WORDS_A_MINUTE) {
      String what = ALL.get(name) + " at " + words;
      Answers.assertUndecided(twins(name), read(SHEET, name, words, 1), what);
    }
  }

  @ParameterizedTest
  @MethodSource("alike")
  void lengthsDecideIt(String name) {
    // At 15 words a minute a dot whose end is noted 0.12 s late is nearly as long as a dash.
    for (double words : new double[] {5, 7.5, 10}) {
      double dot = 1.2 / words;
      List<LampState> states = new ArrayList<>();
      ALL.forEach(
          (other, signal) -> {
            boolean both = signal.contains(".") && signal.contains("-");
            double light = (signal.contains("-") ? DASH : 1) * dot;
            String of = String.format(Locale.ROOT, " of %.0f ms repeating", 1000 * light);
            String said = phrase(signal).replace(" repeating", both ? " repeating" : of);
            states.add(Sheets.state(other, said, Seen.ALWAYS));
          });
      CodeSheet sheet = Sheets.of(CLOCK, OptionalDouble.empty(), states);
      Answers.assertDecoded(name, read(sheet, name, words, 1), ALL.get(name) + " at " + words);
    }
  }

  @ParameterizedTest
  @MethodSource("alike")
  void rangesOfLengthDecideItUpToTheirSpeed(String name) {
    // Dots at 8 to 12 words a minute last 100 to 150 ms, dashes 300 to 450 ms.
    List<LampState> states = new ArrayList<>();
    ALL.forEach(
        (other, signal) -> {
          boolean both = signal.contains(".") && signal.contains("-");
          String of = signal.contains("-") ? " of 300 to 450 ms" : " of 100 to 150 ms";
          String said = phrase(signal).replace(" repeating", (both ? "" : of) + " repeating");
          states.add(Sheets.state(other, said, Seen.ALWAYS));
        });
    CodeSheet sheet = Sheets.of(CLOCK, OptionalDouble.empty(), states);
    for (double words : new double[] {8, 10}) {
      Answers.assertDecoded(name, read(sheet, name, words, 1), ALL.get(name) + " at " + words);
    }
  }

  @Test
  void fourPairsDifferInSpeedAlone() {
    assertEquals(36, ALL.size());
    assertEquals(28, different().count());
    assertEquals(8, alike().count());
  }
}
