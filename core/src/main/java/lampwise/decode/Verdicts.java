package lampwise.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.light.Marks;
import lampwise.light.Window;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Part;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/** Makes a verdict of probabilities: the first that holds. */
final class Verdicts {
  /** How sure an answer must be. */
  static final double SURE = 0.95;

  /** From here on blinks without order are called unreadable. */
  static final double RANDOM = 0.5;

  private static final int MOST_NEAREST = 2;

  private Verdicts() {}

  static Verdict of(
      CodeSheet sheet,
      List<Candidate> candidates,
      Optional<Rhythm> observed,
      Window stretch,
      Marks marks,
      boolean curve) {
    for (Candidate candidate : candidates) {
      if (candidate.state().equals(CodeSheet.NO_RHYTHM) && candidate.probability() >= RANDOM) {
        return new Verdict.Unreadable(
            "the blinks come in no order that a lamp would keep", Advice.again(curve));
      }
    }
    Candidate top = candidates.get(0);
    if (top.probability() >= SURE) {
      if (top.state().equals(CodeSheet.UNLISTED)) {
        return new Verdict.Unlisted(observed, nearest(sheet, candidates, observed));
      }
      return new Verdict.Decoded(top.state(), top.probability(), stretch);
    }
    List<Candidate> open = new ArrayList<>();
    double sum = 0;
    for (Candidate candidate : candidates) {
      if (sum < SURE) {
        open.add(candidate);
        sum += candidate.probability();
      }
    }
    return new Verdict.Undecided(
        open,
        "more than one state fits what was seen",
        Advice.settle(sheet, open, candidates, marks, curve));
  }

  private static List<Nearest> nearest(
      CodeSheet sheet, List<Candidate> candidates, Optional<Rhythm> observed) {
    List<Nearest> nearest = new ArrayList<>();
    for (Candidate candidate : candidates) {
      Optional<LampState> state = sheet.state(candidate.state());
      if (state.isPresent() && nearest.size() < MOST_NEAREST) {
        nearest.add(
            new Nearest(
                candidate.state(),
                Phrase.print(state.get().rhythm()),
                difference(state.get().rhythm(), observed)));
      }
    }
    return nearest;
  }

  private static String difference(Rhythm listed, Optional<Rhythm> observed) {
    if (observed.isEmpty()) {
      return "what was seen has no phrase to compare";
    }
    if (!(listed instanceof Rhythm.Blinking there)) {
      return "it blinks, and this state does not";
    }
    if (!(observed.get() instanceof Rhythm.Blinking here)) {
      return "it does not blink, and this state does";
    }
    String seen = blinks(here);
    String expected = blinks(there);
    if (!seen.equals(expected)) {
      return seen + " in a cycle instead of " + expected;
    }
    double cycle = cycleSeconds(here);
    double listedCycle = cycleSeconds(there);
    if (cycle > 0 && listedCycle > 0 && Math.abs(cycle / listedCycle - 1) > 0.03) {
      return "cycle of "
          + Phrase.shown(Measured.round(cycle, 2))
          + " instead of "
          + Phrase.shown(Measured.round(listedCycle, 2));
    }
    return "the same blinks at other spacings";
  }

  /** The counts of the groups of a cycle: {@code 2 + 3 blinks}. */
  private static String blinks(Rhythm.Blinking rhythm) {
    if (!(rhythm.cycle() instanceof Cycle.Parts parts)) {
      return "1 blink";
    }
    StringBuilder text = new StringBuilder();
    int last = 1;
    for (Part part : parts.parts()) {
      if (part instanceof Part.Blinks blinks) {
        int min = blinks.count().min();
        last = blinks.count().max();
        text.append(text.isEmpty() ? "" : " + ").append(min);
        text.append(last > min ? " to " + last : "");
      } else if (part instanceof Part.Lit) {
        last = 1;
        text.append(text.isEmpty() ? "" : " + ").append(1);
      } else if (part instanceof Part.RatedFor) {
        last = 2;
        text.append(text.isEmpty() ? "" : " + ").append("a run of");
      }
    }
    boolean one = last == 1 && text.length() == 1;
    return text + (one ? " blink" : " blinks");
  }

  private static double cycleSeconds(Rhythm.Blinking rhythm) {
    if (rhythm.cycle() instanceof Cycle.Rated rated) {
      return 2 / (rated.rate().leastPerSecond() + rated.rate().mostPerSecond());
    }
    if (rhythm.cycle() instanceof Cycle.Parts parts
        && parts.ending() instanceof Ending.Every every) {
      return 0.5 * (every.cycle().leastSeconds() + Math.min(every.cycle().mostSeconds(), 1e6));
    }
    return 0;
  }
}
