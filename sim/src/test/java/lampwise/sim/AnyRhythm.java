package lampwise.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.rhythm.Count;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rate;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.RhythmException;
import lampwise.rhythm.Size;

/** Rhythms of any kind by a seed, among them odd ones: whatever the rules of rhythms let pass. */
final class AnyRhythm {
  private final Chance chance;

  private AnyRhythm(long seed) {
    this.chance = Chance.of(seed);
  }

  static Rhythm of(long seed) {
    AnyRhythm any = new AnyRhythm(seed);
    while (true) {
      try {
        return any.next();
      } catch (RhythmException e) {
        // Means nothing: the next one.
      }
    }
  }

  private Rhythm next() {
    List<Part> prelude = chance.happens(0.3) ? parts(2) : List.of();
    if (chance.happens(0.15)) {
      return new Rhythm.Blinking(prelude, new Cycle.Rated(rate()));
    }
    Ending ending =
        switch (chance.below(3)) {
          case 0 -> new Ending.Repeating();
          case 1 -> new Ending.Once();
          default -> new Ending.Every(length());
        };
    return new Rhythm.Blinking(prelude, new Cycle.Parts(parts(4), ending));
  }

  private List<Part> parts(int most) {
    List<Part> parts = new ArrayList<>();
    int number = 1 + chance.below(most);
    for (int i = 0; i < number; i++) {
      parts.add(part());
    }
    return parts;
  }

  private Part part() {
    return switch (chance.below(6)) {
      case 0 -> new Part.RatedFor(rate(), length());
      case 1 -> new Part.Lit(maybe());
      case 2 -> new Part.Unlit(maybe());
      default -> blinks();
    };
  }

  private Part blinks() {
    int min = 1 + chance.below(chance.happens(0.1) ? Count.MOST : 5);
    int max = Math.min(Count.MOST, min + (chance.happens(0.2) ? chance.below(4) : 0));
    Size size = Size.values()[chance.below(3)];
    Optional<Length> apart = max == 1 ? Optional.empty() : maybe();
    return new Part.Blinks(new Count(min, max), size, maybe(), apart);
  }

  private Optional<Length> maybe() {
    return chance.happens(0.6) ? Optional.of(length()) : Optional.empty();
  }

  private Length length() {
    double a = seconds();
    double b = seconds();
    double low = Math.min(a, b);
    double high = Math.max(a, b);
    return switch (chance.below(8)) {
      case 0 -> new Length(Length.Form.ABOUT, a, a);
      case 1 -> low < high ? new Length(Length.Form.RANGE, low, high) : Length.exactly(a);
      case 2 -> low < high ? new Length(Length.Form.ABOUT_RANGE, low, high) : Length.exactly(a);
      case 3 -> new Length(Length.Form.OVER, a, Double.POSITIVE_INFINITY);
      case 4 -> new Length(Length.Form.UNDER, 0, a);
      default -> Length.exactly(a);
    };
  }

  private double seconds() {
    return switch (chance.below(12)) {
      case 0 -> (1 + chance.below(168)) * 3600.0;
      case 1 -> odd(Length.MOST_SECONDS);
      case 2, 3 -> (1 + chance.below(300)) / 1000.0;
      default -> (1 + chance.below(3000)) / 100.0;
    };
  }

  private Rate rate() {
    Rate.Form form = Rate.Form.values()[chance.below(Rate.Form.values().length)];
    if (form.inWords()) {
      return Rate.inWords(form);
    }
    Rate.Per per = chance.happens(0.7) ? Rate.Per.SECOND : Rate.Per.MINUTE;
    double a = chance.happens(0.1) ? odd(1000) : (1 + chance.below(300)) / 10.0;
    double b = a + (1 + chance.below(30)) / 10.0;
    boolean single = form == Rate.Form.EXACT || form == Rate.Form.ABOUT;
    return new Rate(form, a, single ? a : b, per);
  }

  /** Any double over zero up to a limit: the bits of positive doubles are in order. */
  private double odd(double most) {
    long bits = 1 + Long.remainderUnsigned(chance.bits(), Double.doubleToLongBits(most));
    return Double.longBitsToDouble(bits);
  }
}
