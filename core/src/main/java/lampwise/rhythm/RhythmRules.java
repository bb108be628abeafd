package lampwise.rhythm;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.rhythm.Broken.Spot;

/** What a rhythm must hold as a whole to mean something. */
final class RhythmRules {
  private RhythmRules() {}

  /** Throws a {@link RhythmException} for the first rule that is broken. */
  static void check(List<Part> prelude, Cycle cycle) {
    Optional<Broken> broken = find(prelude, cycle);
    if (broken.isPresent()) {
      throw new RhythmException(broken.get().reason());
    }
  }

  /** The first rule that is broken. */
  static Optional<Broken> find(List<Part> prelude, Cycle cycle) {
    List<Part> parts = cycle instanceof Cycle.Parts p ? p.parts() : List.of();
    Optional<Broken> broken =
        eachPart(true, prelude)
            .or(() -> eachPart(false, parts))
            .or(() -> adjoining(prelude, cycle))
            .or(() -> longWithoutShort(prelude, cycle));
    if (broken.isPresent() || !(cycle instanceof Cycle.Parts whole)) {
      return broken;
    }
    return whole(prelude, whole).or(() -> wrap(prelude, whole)).or(() -> CycleTime.check(whole));
  }

  private static Optional<Broken> eachPart(boolean inPrelude, List<Part> parts) {
    for (int i = 0; i < parts.size(); i++) {
      if (parts.get(i) instanceof Part.Blinks blinks && blinks.apart().isPresent()) {
        Length apart = blinks.apart().get();
        if (blinks.count().max() == 1) {
          String reason =
              "one blink has no next one to be apart from; its length is said with \"of\"";
          return Optional.of(new Broken(inPrelude, i, Spot.APART, reason, ""));
        }
        if (blinks.of().isPresent() && !(blinks.of().get().leastSeconds() < apart.mostSeconds())) {
          String reason =
              "a blink of "
                  + PhrasePrinter.length(blinks.of().get())
                  + " does not end before the next one, "
                  + PhrasePrinter.length(apart)
                  + " from start to start";
          return Optional.of(new Broken(inPrelude, i, Spot.OF, reason, ""));
        }
      }
    }
    return Optional.empty();
  }

  /** Two darks or two steadies in a row, within the prelude, within the cycle, or between them. */
  private static Optional<Broken> adjoining(List<Part> prelude, Cycle cycle) {
    List<Part> parts = cycle instanceof Cycle.Parts p ? p.parts() : List.of();
    for (int i = 1; i < prelude.size(); i++) {
      if (alike(prelude.get(i - 1), prelude.get(i))) {
        List<Part> better = joined(prelude, i);
        return Optional.of(broken(true, i, prelude.get(i), print(better, cycle)));
      }
    }
    for (int i = 1; i < parts.size(); i++) {
      if (alike(parts.get(i - 1), parts.get(i))) {
        String better = print(prelude, joined(parts, i), ((Cycle.Parts) cycle).ending());
        return Optional.of(broken(false, i, parts.get(i), better));
      }
    }
    if (!prelude.isEmpty() && !parts.isEmpty() && alike(last(prelude), parts.get(0))) {
      return Optional.of(broken(false, 0, parts.get(0), turned(prelude, (Cycle.Parts) cycle)));
    }
    return Optional.empty();
  }

  /** The first part of the cycle added to the prelude and, where it repeats, put at its end. */
  private static String turned(List<Part> prelude, Cycle.Parts cycle) {
    List<Part> parts = new ArrayList<>(cycle.parts());
    List<Part> before = new ArrayList<>(prelude);
    Part same = before.remove(before.size() - 1);
    if (parts.size() == 1) {
      return print(before, cycle);
    }
    Part first = parts.remove(0);
    Optional<Part> sum = sum(same, first);
    if (sum.isEmpty()) {
      return "";
    }
    before.add(sum.get());
    if (!(cycle.ending() instanceof Ending.Once)) {
      parts.add(first);
    }
    return print(before, parts, cycle.ending());
  }

  private static Broken broken(boolean inPrelude, int at, Part part, String better) {
    String word = part instanceof Part.Lit ? "steady" : "dark";
    return new Broken(
        inPrelude, at, Spot.PART, "two \"" + word + "\" in a row are one; give their sum", better);
  }

  private static boolean alike(Part a, Part b) {
    return (a instanceof Part.Lit && b instanceof Part.Lit)
        || (a instanceof Part.Unlit && b instanceof Part.Unlit);
  }

  /** The parts with number {@code at} and the one before made one; empty if that is not known. */
  private static List<Part> joined(List<Part> parts, int at) {
    Optional<Part> sum = sum(parts.get(at - 1), parts.get(at));
    if (sum.isEmpty()) {
      return List.of();
    }
    List<Part> joined = new ArrayList<>(parts);
    joined.set(at - 1, sum.get());
    joined.remove(at);
    return joined;
  }

  private static Optional<Part> sum(Part a, Part b) {
    Optional<Length> x = length(a);
    Optional<Length> y = length(b);
    if (x.isEmpty() && y.isEmpty()) {
      return Optional.of(a);
    }
    if (x.isEmpty()
        || y.isEmpty()
        || x.get().form() != Length.Form.EXACT
        || y.get().form() != Length.Form.EXACT) {
      return Optional.empty();
    }
    double sum = Decimals.sum(x.get().fromSeconds(), y.get().fromSeconds());
    if (!(sum <= Length.MOST_SECONDS)) {
      return Optional.empty();
    }
    Optional<Length> length = Optional.of(Length.exactly(sum));
    return Optional.of(a instanceof Part.Lit ? new Part.Lit(length) : new Part.Unlit(length));
  }

  private static Optional<Length> length(Part part) {
    if (part instanceof Part.Lit lit) {
      return lit.length();
    }
    return part instanceof Part.Unlit unlit ? unlit.length() : Optional.empty();
  }

  private static Optional<Broken> longWithoutShort(List<Part> prelude, Cycle cycle) {
    List<Part> all = new ArrayList<>(prelude);
    all.addAll(cycle instanceof Cycle.Parts p ? p.parts() : List.of());
    double leastOfShort = leastOfShort(all);
    boolean anyShort = all.stream().anyMatch(part -> isSized(part, Size.SHORT));
    for (int i = 0; i < all.size(); i++) {
      if (!(all.get(i) instanceof Part.Blinks blinks) || blinks.size() != Size.LONG) {
        continue;
      }
      boolean inPrelude = i < prelude.size();
      int at = inPrelude ? i : i - prelude.size();
      if (!anyShort && blinks.of().isEmpty()) {
        return Optional.of(
            new Broken(
                inPrelude,
                at,
                Spot.SIZE,
                "\"long\" needs something short beside it, or a length said with \"of\"",
                sized(prelude, cycle, all.stream().anyMatch(part -> isSized(part, Size.UNSAID)))));
      }
      if (blinks.of().isPresent() && !(leastOfShort < blinks.of().get().mostSeconds())) {
        String reason = "a long blink lasts longer than a short one";
        return Optional.of(new Broken(inPrelude, at, Spot.OF, reason, ""));
      }
    }
    return Optional.empty();
  }

  private static boolean isSized(Part part, Size size) {
    return part instanceof Part.Blinks blinks && blinks.size() == size;
  }

  /** The most that any short blink must last at least, seconds; zero if none has a length. */
  private static double leastOfShort(List<Part> parts) {
    double most = 0;
    for (Part part : parts) {
      if (part instanceof Part.Blinks blinks && blinks.size() == Size.SHORT) {
        most = Math.max(most, blinks.of().map(Length::leastSeconds).orElse(0.0));
      }
    }
    return most;
  }

  /** Long blinks without their word; beside unsized blinks these become the short ones. */
  private static String sized(List<Part> prelude, Cycle cycle, boolean mixed) {
    Cycle sized =
        cycle instanceof Cycle.Parts p
            ? new Cycle.Parts(sized(p.parts(), mixed), p.ending())
            : cycle;
    return print(sized(prelude, mixed), sized);
  }

  private static List<Part> sized(List<Part> parts, boolean mixed) {
    return parts.stream().map(part -> sized(part, mixed)).toList();
  }

  private static Part sized(Part part, boolean mixed) {
    if (part instanceof Part.Blinks b) {
      Size size = !mixed ? Size.UNSAID : b.size() == Size.UNSAID ? Size.SHORT : b.size();
      return new Part.Blinks(b.count(), size, b.of(), b.apart());
    }
    return part;
  }

  /** Cycles without light, and a lone steady with a length that neither ends nor changes. */
  private static Optional<Broken> whole(List<Part> prelude, Cycle.Parts cycle) {
    List<Part> parts = cycle.parts();
    if (parts.isEmpty()) {
      return Optional.of(new Broken(false, 0, Spot.ENDING, "a cycle has at least one part", ""));
    }
    boolean plain =
        cycle.ending() instanceof Ending.Repeating
            && !prelude.isEmpty()
            && length(parts.get(0)).isEmpty();
    if (parts.size() > 1 || plain) {
      return Optional.empty();
    }
    boolean once = cycle.ending() instanceof Ending.Once;
    if (parts.get(0) instanceof Part.Unlit) {
      String better = lone(prelude, new Part.Unlit(Optional.empty()), "dark");
      String reason = "a cycle needs some light; a lamp that stays off is \"dark\" alone";
      return Optional.of(new Broken(false, 0, Spot.PART, reason, better));
    }
    if (parts.get(0) instanceof Part.Lit lit && !once) {
      String better = lone(prelude, new Part.Lit(Optional.empty()), "steady");
      if (cycle.ending() instanceof Ending.Every) {
        Part blink = new Part.Blinks(Count.of(1), Size.UNSAID, lit.length(), Optional.empty());
        better = print(prelude, List.of(blink), cycle.ending());
      } else if (lit.length().isPresent()) {
        better = print(prelude, parts, new Ending.Once());
      }
      String reason =
          "a lone \"steady\" that repeats never goes off; it needs \"once\", a second part, or no"
              + " length";
      return Optional.of(new Broken(false, 0, Spot.PART, reason, better));
    }
    return Optional.empty();
  }

  private static String lone(List<Part> prelude, Part part, String word) {
    return prelude.isEmpty() ? word : print(prelude, List.of(part), new Ending.Repeating());
  }

  /** A cycle that begins and ends dark, or steady, has the two side by side when it repeats. */
  private static Optional<Broken> wrap(List<Part> prelude, Cycle.Parts cycle) {
    List<Part> parts = cycle.parts();
    int size = parts.size();
    if (size < 2 || cycle.ending() instanceof Ending.Once || !alike(parts.get(0), last(parts))) {
      return Optional.empty();
    }
    String word = parts.get(0) instanceof Part.Lit ? "steady" : "dark";
    String reason =
        "the cycle begins and ends \"" + word + "\", which is one when it repeats; give their sum";
    Optional<Part> sum = sum(last(parts), parts.get(0));
    String better = "";
    if (sum.isPresent() && size > 2) {
      List<Part> turned = new ArrayList<>(parts.subList(1, size - 1));
      turned.add(word.equals("dark") ? turned.size() : 0, sum.get());
      List<Part> before = new ArrayList<>(prelude);
      if (!prelude.isEmpty()) {
        before.add(parts.get(0));
      }
      boolean kept = prelude.isEmpty() || word.equals("dark");
      better = kept ? print(before, turned, cycle.ending()) : "";
    }
    return Optional.of(new Broken(false, size - 1, Spot.PART, reason, better));
  }

  private static <T> T last(List<T> list) {
    return list.get(list.size() - 1);
  }

  private static String print(List<Part> prelude, List<Part> parts, Ending ending) {
    return parts.isEmpty() ? "" : print(prelude, new Cycle.Parts(parts, ending));
  }

  private static String print(List<Part> prelude, Cycle cycle) {
    return PhrasePrinter.blinking(prelude, cycle);
  }
}
