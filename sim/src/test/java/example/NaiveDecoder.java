package example;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.decode.Candidate;
import lampwise.decode.Decoder;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.light.BlinkLog;
import lampwise.light.Recording;
import lampwise.light.Window;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/** What one writes first: the state whose cycle is nearest to the mean time between blinks. */
public final class NaiveDecoder implements Decoder {
  @Override
  public Reading decode(CodeSheet sheet, List<Recording> recordings) {
    BlinkLog log = (BlinkLog) recordings.get(0);
    double first = log.blinks().get(0).onSeconds();
    double last = log.blinks().get(log.blinks().size() - 1).onSeconds();
    double mean = (last - first) / (log.blinks().size() - 1);
    LampState nearest = sheet.states().get(0);
    for (LampState state : sheet.states()) {
      if (Math.abs(cycle(state) - mean) < Math.abs(cycle(nearest) - mean)) {
        nearest = state;
      }
    }
    List<Candidate> candidates = new ArrayList<>();
    for (LampState state : sheet.states()) {
      candidates.add(new Candidate(state.name(), 1, 0, state.equals(nearest) ? 1 : 0));
    }
    Verdict verdict = new Verdict.Decoded(nearest.name(), 1, new Window(first, last));
    return new Reading(verdict, candidates, Optional.empty(), List.of(), List.of());
  }

  private static double cycle(LampState state) {
    return state.rhythm() instanceof Rhythm.Blinking blinking
            && blinking.cycle() instanceof Cycle.Parts parts
            && parts.ending() instanceof Ending.Every every
        ? every.cycle().fromSeconds()
        : 60;
  }
}
