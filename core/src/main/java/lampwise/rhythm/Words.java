package lampwise.rhythm;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What people say, and how the grammar says it. */
final class Words {
  /** Words of more characters are not compared with others. */
  private static final int LONGEST_COMPARED = 16;

  /** In the order in which a misspelt word is compared with them. */
  static final List<String> GRAMMAR =
      List.of(
          "dark",
          "steady",
          "first",
          "afterwards",
          "then",
          "for",
          "blink",
          "blinks",
          "of",
          "apart",
          "about",
          "to",
          "per",
          "second",
          "minute",
          "slow",
          "fast",
          "short",
          "long",
          "every",
          "repeating",
          "once",
          "over",
          "under",
          "ms",
          "s",
          "min",
          "h");

  static final Set<String> COLOURS =
      Set.of(
          "red", "green", "amber", "blue", "white", "yellow", "orange", "purple", "violet", "pink");

  static final Set<String> PAUSES =
      Set.of("pause", "pauses", "paused", "gap", "gaps", "wait", "waits", "rest", "rests", "break");

  private static final String ONE_LAMP = "a rhythm is one lamp, one colour, on or off: ";

  private static final String TWO_COLOURS =
      ONE_LAMP + "two colours cannot be said in one phrase; write one state for each";

  private static final Map<String, String> SAYINGS = new HashMap<>();
  private static final Map<String, String> UNSAYABLE = new HashMap<>();

  static {
    say(
        "blinks",
        "flash flashes flashed flashing wink winks winked winking blip blips pulse pulses");
    say("blinks", "blinking blinked times time x \u00d7");
    say("steady", "on lit light solid solidly constant constantly always steadily stays glows");
    say("dark", "off out unlit black nothing none");
    say("then", "and plus followed next & + ; \u2192");
    say("repeating", "repeat repeats repeated repeatedly forever again continuously");
    say("every", "each");
    say("about", "approximately approx roughly around ca circa ~ \u2248");
    say("over", "more above > exceeding");
    say("under", "less below within <");
    say("fast", "quick quickly rapid rapidly");
    say("slow", "slowly");
    say("afterwards", "after afterward");
    say("first", "initially");
    say("to", "- \u2013 \u2014 till until");
    say("apart", "spacing spaced");
    say("s", "sec secs second seconds");
    say("ms", "msec msecs millisecond milliseconds");
    say("min", "mins minute minutes m");
    say("h", "hr hrs hour hours");
    say("blinks per second", "hz hertz");
    say("2 blinks", "twice");
    say("3 blinks", "thrice");
    say("1", "a an one single");
    say("2", "two double");
    say("3", "three triple");
    say("4", "four");
    say("5", "five");
    say("6", "six");
    say("7", "seven");
    say("8", "eight");
    say("9", "nine");
    say("10", "ten");
    say("11", "eleven");
    say("12", "twelve");
    say("", "the is it than at by with are lamp led . : ! between");

    cannot(
        ONE_LAMP + "fading and dim light cannot be said",
        "fade fades faded fading dim dims dimmed dimly dimmer dimming glow glowing faint faintly"
            + " brighter brightness brightens bright breathing breathes pulsing pulsating");
    cannot(
        ONE_LAMP + "flicker without a pattern cannot be said",
        "flicker flickers flickered flickering random randomly irregular irregularly erratic"
            + " erratically patternless uneven unevenly");
    cannot(
        TWO_COLOURS,
        "colour colours color colors coloured colored alternating alternate alternates alternately"
            + " multicolour multicolor bicolour bicolor");
    cannot(
        ONE_LAMP + "a speed that changes, as with the distance of a hand, cannot be said",
        "faster quicker slower nearer closer speeding accelerating increasing increasingly"
            + " decreasing distance");
  }

  private Words() {}

  private static void say(String right, String sayings) {
    for (String saying : words(sayings)) {
      SAYINGS.put(saying, right);
    }
  }

  private static void cannot(String why, String words) {
    for (String word : words(words)) {
      UNSAYABLE.put(word, why);
    }
  }

  private static List<String> words(String text) {
    return List.of(text.split(" "));
  }

  /** What the grammar says for a word of the people; empty text if it says nothing for it. */
  static Optional<String> right(String word) {
    return Optional.ofNullable(SAYINGS.get(word));
  }

  /** Refuses a phrase that speaks of what a rhythm cannot be. */
  static void refuseUnsayable(String text, List<Token> tokens) throws Fault {
    Set<String> colours = new HashSet<>();
    for (Token token : tokens) {
      if (token.kind() == Token.Kind.WORD && COLOURS.contains(token.text())) {
        colours.add(token.text());
      }
      String why = colours.size() == 2 ? TWO_COLOURS : UNSAYABLE.getOrDefault(token.text(), "");
      if (!why.isEmpty()) {
        throw new Fault(token.column(), why, "", "");
      }
    }
    for (Token token : tokens) {
      if (COLOURS.contains(token.text())) {
        throw new Fault(
            token.column(),
            "a rhythm names no colour; the colour of the lamp stands in the sheet's key \"lamp\"",
            "",
            text.substring(0, token.start()) + text.substring(token.end()));
      }
    }
  }

  /** The word among these that is written nearest to the given one, if one is near. */
  static Optional<String> nearest(String word, List<String> among) {
    if (word.length() > LONGEST_COMPARED) {
      return Optional.empty();
    }
    int best = word.length() <= 3 ? 1 : 2;
    Optional<String> nearest = Optional.empty();
    for (String other : among) {
      int distance = distance(word, other);
      boolean near = distance < Math.max(word.length(), other.length()) && distance <= best;
      if (near && (nearest.isEmpty() || distance < best)) {
        best = distance;
        nearest = Optional.of(other);
      }
    }
    return nearest;
  }

  /** Letters to put in, leave out, replace or swap with their neighbour. */
  static int distance(String a, String b) {
    int[][] cost = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          cost[i][j] = i + j;
          continue;
        }
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        cost[i][j] =
            Math.min(cost[i - 1][j - 1] + change, Math.min(cost[i - 1][j], cost[i][j - 1]) + 1);
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        if (swapped) {
          cost[i][j] = Math.min(cost[i][j], cost[i - 2][j - 2] + 1);
        }
      }
    }
    return cost[a.length()][b.length()];
  }
}
