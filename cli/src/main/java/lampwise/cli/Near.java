package lampwise.cli;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Known names that are near to one that is not known. */
final class Near {
  private static final int MOST = 5;

  private Near() {}

  /**
   * The known names that a wrong one may stand for: those that need few letters changed, and those
   * that share a part with it.
   *
   * @return the nearest first, at most five; all known ones, in their order, if none is near
   */
  static List<String> of(String name, Collection<String> known) {
    String wanted = name.toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
    List<String> near = new ArrayList<>();
    for (String candidate : known) {
      if (distance(wanted, candidate) <= Math.max(1, Math.min(wanted.length(), 9) / 3)
          || sharesAWord(wanted, candidate)) {
        near.add(candidate);
      }
    }
    near.sort(Comparator.comparingInt(candidate -> distance(wanted, candidate)));
    return near.isEmpty()
        ? List.copyOf(known)
        : List.copyOf(near.subList(0, Math.min(near.size(), MOST)));
  }

  /** The same in words: {@code near: a, b}, or {@code known: a, b, c} if none is near. */
  static String said(String name, Collection<String> known) {
    List<String> near = of(name, known);
    boolean all = near.size() == known.size();
    return (all ? "known: " : "near: ") + String.join(", ", near);
  }

  /** Whether one holds a word of the other, of three letters or more. */
  private static boolean sharesAWord(String wanted, String candidate) {
    for (String word : wanted.split("-", -1)) {
      if (word.length() >= 3 && candidate.contains(word)) {
        return true;
      }
    }
    return false;
  }

  /** How many letters have to be put in, left out or replaced. */
  private static int distance(String a, String b) {
    int[] before = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      before[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] now = new int[b.length() + 1];
      now[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replaced = before[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        now[j] = Math.min(replaced, 1 + Math.min(before[j], now[j - 1]));
      }
      before = now;
    }
    return before[b.length()];
  }
}
