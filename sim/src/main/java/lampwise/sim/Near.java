package lampwise.sim;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;

/** Finds the known names that one who wrote an unknown name may have meant. */
final class Near {
  private static final int MOST = 4;

  /** A part of a name is looked for from this many letters on. */
  private static final int LEAST_LETTERS = 3;

  private Near() {}

  /**
   * The known names that are near: a few letters off, or one a part of the other; those with the
   * fewest letters to change first, and no more than four. May be empty.
   */
  static List<String> to(String name, Collection<String> known) {
    String wanted = name.strip().toLowerCase(Locale.ROOT);
    List<Candidate> near = new ArrayList<>();
    for (String other : known) {
      int distance = distance(wanted, other);
      boolean part =
          Math.min(wanted.length(), other.length()) >= LEAST_LETTERS
              && (other.contains(wanted) || wanted.contains(other));
      if (part || distance <= Math.max(1, Math.min(wanted.length(), other.length()) / 3)) {
        near.add(new Candidate(other, distance));
      }
    }
    return near.stream()
        .sorted((a, b) -> Integer.compare(a.distance(), b.distance()))
        .limit(MOST)
        .map(Candidate::name)
        .toList();
  }

  /**
   * A message for an unknown name: {@code there is no setting mised; near: missed; known: ...}.
   *
   * @param kind what was looked for, with its article: {@code no setting}
   */
  static String unknown(String kind, String name, Collection<String> known) {
    List<String> near = to(name, known);
    return "there is "
        + kind
        + " "
        + shown(name)
        + (near.isEmpty() ? "" : "; near: " + String.join(", ", near))
        + "; known: "
        + String.join(", ", known);
  }

  /** One line of no more than forty characters. */
  private static String shown(String name) {
    String line =
        name.codePoints()
            .limit(40)
            .map(c -> Character.isISOControl(c) ? '?' : c)
            .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
            .toString();
    return line.isBlank() ? "\"" + line + "\"" : line;
  }

  private record Candidate(String name, int distance) {}

  /** How many letters must be put in, taken out, changed or swapped with the next one. */
  static int distance(String a, String b) {
    int[] last = new int[b.length() + 1];
    int[] before = new int[b.length() + 1];
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      before[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        boolean same = a.charAt(i - 1) == b.charAt(j - 1);
        int best = Math.min(before[j - 1] + (same ? 0 : 1), 1 + Math.min(before[j], row[j - 1]));
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        row[j] = swapped ? Math.min(best, last[j - 2] + 1) : best;
      }
      int[] free = last;
      last = before;
      before = row;
      row = free;
    }
    return before[b.length()];
  }
}
