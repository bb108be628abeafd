package example;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.decode.Candidate;
import lampwise.decode.Decoder;
import lampwise.decode.Next;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.light.Recording;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/** Where a decoder of one's own begins: it knows how common each state is, and looks at nothing. */
public final class WeightsDecoder implements Decoder {
  private static final double LISTED = 0.94;

  @Override
  public Reading decode(CodeSheet sheet, List<Recording> recordings) {
    double sum = sheet.states().stream().mapToDouble(LampState::weight).sum();
    List<Candidate> all = new ArrayList<>();
    for (LampState state : sheet.states()) {
      all.add(candidate(state.name(), LISTED * state.weight() / sum));
    }
    all.add(candidate(CodeSheet.UNLISTED, 0.05));
    all.add(candidate(CodeSheet.NO_RHYTHM, 0.01));
    all.sort(Comparator.comparingDouble(Candidate::probability).reversed());
    Next next = new Next.Watch(60, OptionalDouble.empty(), "any", "Ask one that looks.");
    Verdict verdict = new Verdict.Undecided(all, "the recording was not looked at", next);
    return new Reading(verdict, all, Optional.empty(), List.of(), List.of());
  }

  /** What fits the recording better gets a greater likelihood; here all fit alike. */
  private static Candidate candidate(String state, double prior) {
    return new Candidate(state, prior, 0, prior);
  }
}
