package lampwise.decode;

import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;

/**
 * How soon one blink may follow another, start to start, by what a phrase says; cheap beside laying
 * out its pulse trains.
 */
final class LeastApart {
  private static final double UNSAID = Double.POSITIVE_INFINITY;

  private LeastApart() {}

  /**
   * Seconds, not more than any of its trains has, or 0 where the phrase does not say.
   *
   * @param sheetBlink the length of a blink where the phrase gives none
   */
  static double seconds(Rhythm.Blinking rhythm, OptionalDouble sheetBlink) {
    if (!rhythm.prelude().isEmpty()) {
      return 0;
    }
    if (rhythm.cycle() instanceof Cycle.Rated rated) {
      return Math.min(Length.MOST_SECONDS, 1 / rated.rate().mostPerSecond());
    }
    Cycle.Parts cycle = (Cycle.Parts) rhythm.cycle();
    double least = UNSAID;
    double whole = 0;
    boolean dark = true;
    for (Part part : cycle.parts()) {
      boolean unlit = part instanceof Part.Unlit;
      if (!unlit && !dark) {
        return 0;
      }
      dark = unlit;
      if (part instanceof Part.Blinks blinks && cycle.parts().size() > 1) {
        whole += blinks.of().map(Length::mostSeconds).orElse(sheetBlink.orElse(UNSAID));
      }
      if (part instanceof Part.Blinks blinks && blinks.count().max() > 1) {
        least = Math.min(least, least(blinks.apart()));
        whole += (blinks.count().max() - 1) * most(blinks.apart());
      } else if (part instanceof Part.RatedFor rated) {
        least = Math.min(least, 1 / rated.rate().mostPerSecond());
        whole += rated.length().mostSeconds();
      } else if (part instanceof Part.Lit lit) {
        least = Math.min(least, least(lit.length()));
        whole += most(lit.length());
      } else if (part instanceof Part.Unlit off) {
        least = Math.min(least, least(off.length()));
        whole += most(off.length());
      }
    }
    if (cycle.ending() instanceof Ending.Every every) {
      return Math.max(0, Math.min(least, every.cycle().leastSeconds() - whole));
    }
    return cycle.ending() instanceof Ending.Once || dark ? least : 0;
  }

  private static double least(Optional<Length> said) {
    return said.map(Length::leastSeconds).orElse(0.0);
  }

  private static double most(Optional<Length> said) {
    return said.map(Length::mostSeconds).orElse(UNSAID);
  }
}
