package lampwise.cli;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lampwise.decode.Candidate;
import lampwise.decode.Nearest;
import lampwise.decode.Next;
import lampwise.decode.Observation;
import lampwise.decode.Reading;
import lampwise.decode.SeenBlink;
import lampwise.decode.Segment;
import lampwise.decode.Verdict;
import lampwise.light.Description;
import lampwise.light.LightCurve;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;

/** Readings in words for the person at the fixture: the answer first, what to do next last. */
final class ReadingText {
  private static final double SURE = 0.95;
  private static final double WORTH_NAMING = 0.01;
  private static final double POSSIBLE = 0.001;
  private static final int MOST_SPANS = 6;
  private static final int MOST_IN_HEAD = 3;

  /** Conditions of a unit at work. */
  private static final Set<Condition> ORDINARY =
      Set.of(Condition.TARGET_SEEN, Condition.RUNNING, Condition.HYGIENE_FLUSH);

  private ReadingText() {}

  /**
   * A reading against a sheet.
   *
   * @param prefix stands before the answer; empty where there is only one recording
   */
  static List<String> reading(String prefix, CodeSheet sheet, Reading reading) {
    String tag = sheet.isInvented() ? "[invented sheet]" : "";
    Verdict verdict = reading.verdict();
    Optional<Observation> shown = reading.main();
    Block block = new Block(prefix + answer(sheet, verdict, reading.candidates()), tag);
    if (reading.observed().isPresent()) {
      block.row("seen", Phrase.print(reading.observed().get()));
    }
    if (shown.isPresent()) {
      boolean stretch = verdict instanceof Verdict.Decoded;
      block.row(
          "rests on",
          stretch
              ? grounds(shown.get(), Optional.of(((Verdict.Decoded) verdict).stretch()))
              : grounds(shown.get(), shown.get().window()));
    }
    if (verdict instanceof Verdict.Decoded decoded) {
      decodedRows(block, sheet, decoded, reading.candidates());
    } else if (verdict instanceof Verdict.Undecided undecided) {
      block.row("reason", undecided.reason());
      conditionRow(block, reading.conditions(sheet));
      undecidedRows(block, sheet, undecided.candidates(), reading.candidates());
    } else if (verdict instanceof Verdict.Unlisted unlisted) {
      for (Nearest nearest : unlisted.nearest()) {
        block.row(
            "nearest", nearest.state() + " (" + nearest.rhythm() + "): " + nearest.difference());
      }
    }
    segmentRows(block, reading);
    noteRows(block, reading.observations());
    return block.lines(next(sheet, verdict));
  }

  /** What a recording shows without a sheet. */
  static List<String> observation(String prefix, Observation observation) {
    String answer = answer(observation);
    String next;
    if (observation.unreadable().isPresent()) {
      next = "record once more, then give the unit's code sheet with --sheet FILE";
    } else {
      next =
          "give the unit's code sheet with --sheet FILE to learn what this means;"
              + " --sheet demo, an invented one, is only for trying";
    }
    Block block = new Block(prefix + answer, "");
    block.row("rests on", grounds(observation, observation.window()));
    litRow(block, observation);
    noteRows(block, List.of(observation));
    return block.lines(next);
  }

  /** What was observed, as a phrase where one fits, or why nothing could be. */
  static String answer(Observation observation) {
    return observation.unreadable().isPresent()
        ? "unreadable: " + observation.unreadable().get()
        : observation.observed().map(Phrase::print).orElse(unsaid(observation));
  }

  /** What to say where no phrase fits. */
  private static String unsaid(Observation observation) {
    boolean constant =
        observation.blinks().isEmpty() && observation.recording() instanceof LightCurve;
    return constant
        ? "dark or steady: the light level never changes"
        : "no rhythm that repeats was seen";
  }

  /** When the lamp was lit, where there are few such times. */
  private static void litRow(Block block, Observation observation) {
    List<SeenBlink> blinks = observation.blinks();
    if (blinks.isEmpty()
        || blinks.size() > MOST_SPANS
        || blinks.stream().anyMatch(b -> !b.blink().hasOff())) {
      return;
    }
    StringBuilder text = new StringBuilder();
    for (SeenBlink seen : blinks) {
      text.append(text.length() == 0 ? "" : ", ");
      text.append(Words.span(seen.blink().onSeconds(), seen.blink().offSeconds()));
    }
    block.row("lit", text.toString());
  }

  /** The verdict, how sure it is and what it means: the first line of an answer. */
  static String answer(CodeSheet sheet, Verdict verdict, List<Candidate> candidates) {
    if (verdict instanceof Verdict.Decoded decoded) {
      return decoded.state()
          + " ("
          + Words.percent(decoded.probability())
          + "): "
          + sheet.state(decoded.state()).map(LampState::means).orElse("");
    }
    if (verdict instanceof Verdict.Unlisted) {
      String sure = "";
      for (Candidate candidate : candidates) {
        if (candidate.state().equals(CodeSheet.UNLISTED)) {
          sure = " (" + Words.percent(candidate.probability()) + ")";
        }
      }
      return CodeSheet.UNLISTED + sure + ": this rhythm is not on the sheet";
    }
    if (verdict instanceof Verdict.Undecided undecided) {
      List<Candidate> left = undecided.candidates();
      StringBuilder text = new StringBuilder("undecided: ");
      int named = Math.min(left.size(), MOST_IN_HEAD);
      for (int i = 0; i < named; i++) {
        text.append(i == 0 ? "" : i == left.size() - 1 ? " or " : ", ").append(sure(left.get(i)));
      }
      if (left.size() > named) {
        text.append(" or ").append(left.size() - named).append(" more");
      }
      return text.toString();
    }
    return "unreadable: " + ((Verdict.Unreadable) verdict).reason();
  }

  private static void decodedRows(
      Block block, CodeSheet sheet, Verdict.Decoded decoded, List<Candidate> candidates) {
    Optional<LampState> state = sheet.state(decoded.state());
    if (state.isPresent()) {
      block.row("condition", state.get().condition().word());
      if (state.get().labelSays().isPresent()) {
        block.row("label says", state.get().labelSays().get());
      }
      if (state.get().clearedBy().isPresent()) {
        block.row("cleared by", state.get().clearedBy().get());
      }
    }
    StringBuilder others = new StringBuilder();
    for (Candidate candidate : candidates) {
      if (candidate.probability() >= WORTH_NAMING && !candidate.state().equals(decoded.state())) {
        others.append(others.length() == 0 ? "" : ", ").append(sure(candidate));
      }
    }
    if (others.length() > 0) {
      block.row("else", others.toString());
    }
  }

  /** The likeliest with their meaning, every other that is possible by its name. */
  private static void undecidedRows(
      Block block, CodeSheet sheet, List<Candidate> left, List<Candidate> all) {
    int named = Math.min(left.size(), MOST_IN_HEAD);
    for (Candidate candidate : left.subList(0, named)) {
      block.row("perhaps", sure(candidate) + ": " + explained(sheet, candidate.state()));
    }
    StringBuilder others = new StringBuilder();
    for (int i = named; i < all.size(); i++) {
      if (i < left.size() || all.get(i).probability() >= POSSIBLE) {
        others.append(others.length() == 0 ? "" : ", ").append(sure(all.get(i)));
      }
    }
    if (others.length() > 0) {
      block.row("or", others.toString());
    }
  }

  private static void conditionRow(Block block, Map<Condition, Double> conditions) {
    for (Map.Entry<Condition, Double> entry : conditions.entrySet()) {
      if (entry.getValue() >= SURE) {
        block.row(
            "condition",
            entry.getKey().word() + " (" + Words.percent(entry.getValue()) + ") in any case");
      }
    }
  }

  private static void segmentRows(Block block, Reading reading) {
    if (reading.segments().size() < 2) {
      return;
    }
    for (Segment segment : reading.segments()) {
      Window stretch = segment.stretch();
      StringBuilder text = new StringBuilder();
      if (reading.observations().size() > 1
          && segment.recording() < reading.observations().size()) {
        Observation of = reading.observations().get(segment.recording());
        text.append(of.recording().origin().name()).append(", ");
      }
      text.append(Words.span(stretch.fromSeconds(), stretch.toSeconds())).append(": ");
      if (segment.verdict() instanceof Verdict.Decoded decoded) {
        text.append(decoded.state());
        text.append(" (").append(Words.percent(decoded.probability())).append(')');
      } else {
        text.append(segment.verdict().word());
      }
      if (segment.observed().isPresent()) {
        text.append(", ").append(Phrase.print(segment.observed().get()));
      }
      block.row("stretch", text.toString());
    }
  }

  private static void noteRows(Block block, List<Observation> observations) {
    for (Observation observation : observations) {
      String name = observations.size() > 1 ? observation.recording().origin().name() + ": " : "";
      for (String note : observation.notes()) {
        block.row("note", name + note);
      }
      for (String note : observation.recording().origin().notes()) {
        block.row("note", name + note);
      }
    }
  }

  private static String next(CodeSheet sheet, Verdict verdict) {
    if (verdict instanceof Verdict.Undecided undecided) {
      return next(undecided.next());
    }
    if (verdict instanceof Verdict.Unreadable unreadable) {
      return next(unreadable.next());
    }
    if (verdict instanceof Verdict.Unlisted) {
      return "check that the sheet is this unit's own; if it is, keep the phrase above"
          + " and add it once its meaning is known";
    }
    Optional<LampState> state = sheet.state(((Verdict.Decoded) verdict).state());
    if (state.isPresent() && state.get().condition() == Condition.READY) {
      return "nothing more to record; by its lamp the unit is ready";
    }
    if (state.flatMap(LampState::clearedBy).isPresent()) {
      return "nothing more to record; do what clears the state, then record again to prove it";
    }
    return state.isPresent() && ORDINARY.contains(state.get().condition())
        ? "nothing more to record; ordinary in use, a fault only if it stays when it should not"
        : "nothing more to record; the sheet does not say what clears the state,"
            + " see the unit's own papers";
  }

  /** What to record or check next. */
  static String next(Next next) {
    if (next instanceof Next.Check check) {
      return check.ask() + " (about " + Words.decimal(check.minutes(), 1) + " min)";
    }
    Next.Watch record = (Next.Watch) next;
    StringBuilder text = new StringBuilder("record ");
    text.append(Words.duration(record.seconds()));
    if (record.rateHz().isPresent()) {
      text.append(" at ").append(Words.decimal(record.rateHz().getAsDouble(), 0));
      text.append(" samples a second or more");
    }
    if (record.target().equals("none")) {
      text.append(" with nobody before it");
    } else if (record.target().equals("all")) {
      text.append(" with a hand before it");
    }
    if (!record.how().isEmpty()) {
      text.append(": ").append(record.how());
    }
    return text.toString();
  }

  private static String explained(CodeSheet sheet, String name) {
    Optional<LampState> state = sheet.state(name);
    if (state.isEmpty()) {
      return name.equals(CodeSheet.UNLISTED)
          ? "a rhythm that is not on the sheet"
          : "blinks in no order";
    }
    String label = state.get().labelSays().map(said -> "; label: " + said).orElse("");
    return state.get().means() + "; " + Phrase.print(state.get().rhythm()) + label;
  }

  private static String sure(Candidate candidate) {
    return candidate.state() + " (" + Words.percent(candidate.probability()) + ")";
  }

  /** So many blinks in so many seconds. */
  private static String grounds(Observation observation, Optional<Window> stretch) {
    if (observation.recording() instanceof Description) {
      return stretch.isPresent()
          ? "what somebody counted who watched for " + Words.duration(stretch.get().lengthSeconds())
          : "what somebody counted; how long was watched is not known";
    }
    int blinks = 0;
    for (SeenBlink seen : observation.blinks()) {
      if (seen.probability() >= 0.5
          && (stretch.isEmpty() || stretch.get().contains(seen.blink().onSeconds()))) {
        blinks++;
      }
    }
    String counted = Words.count(blinks, "blink");
    if (stretch.isEmpty()) {
      return counted + "; how long was watched is not known";
    }
    String kind = observation.recording() instanceof LightCurve ? " of light levels" : "";
    return counted + " in " + Words.duration(stretch.get().lengthSeconds()) + kind;
  }
}
