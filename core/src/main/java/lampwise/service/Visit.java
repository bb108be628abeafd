package lampwise.service;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.FixtureKind;

/**
 * What was found, done and measured at one fixture: a row of the visit log.
 *
 * @param when the local date and time at the end of the visit, {@code 2026-11-25T09:40} or with
 *     seconds; as the caller knows it, for nothing here reads a clock
 * @param fixture the fixture's id, not blank
 * @param place where it is; may be empty
 * @param kind the kind of fixture; empty if nobody said
 * @param complaint what was said to be wrong; empty if nothing was
 * @param lamp what its lamp said
 * @param findings what the checks showed, in order
 * @param done what was done
 * @param before figures from before the work, each with its name and unit: {@code static 410 kPa}
 * @param after figures from after it
 * @param outcome how it ended
 * @param who who was there; may be empty
 * @param note anything else; may be empty
 */
public record Visit(
    String when,
    String fixture,
    String place,
    Optional<FixtureKind> kind,
    Optional<Complaint> complaint,
    Lamp lamp,
    List<Finding> findings,
    Done done,
    List<String> before,
    List<String> after,
    Outcome outcome,
    String who,
    String note) {
  /**
   * Keeps copies of the lists, trims all text, leaves out blank texts of lists, and checks what
   * every visit must have.
   *
   * @throws GuideException if the fixture is blank, or the time is not written as above
   */
  public Visit {
    when = when.strip();
    fixture = fixture.strip();
    place = place.strip();
    findings = List.copyOf(findings);
    before = texts(before);
    after = texts(after);
    who = who.strip();
    note = note.strip();
    Rules.that(!fixture.isBlank(), "a visit needs the fixture it was made at");
    Rules.that(LocalTime.isOne(when), "a visit's time must be like 2026-11-25T09:40: " + when);
  }

  /** To millionths, which is what the log keeps. */
  private static OptionalDouble rounded(OptionalDouble value) {
    return value.isEmpty() ? value : OptionalDouble.of(Math.rint(value.getAsDouble() * 1e6) / 1e6);
  }

  private static List<String> texts(List<String> texts) {
    return texts.stream().map(String::strip).filter(text -> !text.isEmpty()).toList();
  }

  /**
   * What the lamp said.
   *
   * @param recordings the names of the recordings; may be empty
   * @param state the state of the sheet that was decoded, or the verdict where none was; may be
   *     empty
   * @param condition the condition of that state; may be empty
   * @param probability how sure that is, 0 to 1; empty where nothing was decoded
   */
  public record Lamp(
      List<String> recordings, String state, String condition, OptionalDouble probability) {
    /**
     * Keeps a copy of the list, trims, and rounds to millionths.
     *
     * @throws GuideException if the probability is not 0 to 1
     */
    public Lamp {
      recordings = texts(recordings);
      state = state.strip();
      condition = condition.strip();
      probability = rounded(probability);
      Rules.that(
          probability.isEmpty() || Rules.isChance(probability.getAsDouble()),
          "a probability must be 0 to 1: " + probability);
    }

    /**
     * Takes it from a reading.
     *
     * @param sheet the sheet that was decoded against
     * @param reading the reading
     * @param recordings the names of what was read; may be empty
     * @return the state where one was decoded, else the verdict alone
     */
    public static Lamp of(CodeSheet sheet, Reading reading, List<String> recordings) {
      Verdict verdict = reading.verdict();
      if (verdict instanceof Verdict.Decoded decoded) {
        String condition =
            sheet.state(decoded.state()).map(state -> state.condition().word()).orElse("");
        return new Lamp(
            recordings, decoded.state(), condition, OptionalDouble.of(decoded.probability()));
      }
      return new Lamp(recordings, verdict.word(), "", OptionalDouble.empty());
    }

    /**
     * Nothing was seen of it.
     *
     * @return a lamp without recordings and reading
     */
    public static Lamp unseen() {
      return new Lamp(List.of(), "", "", OptionalDouble.empty());
    }
  }

  /**
   * What was done.
   *
   * @param cause the id of the cause, as far as it is known; may be empty
   * @param remedies the ids of the remedies that were tried, in order
   * @param parts the parts that were used
   * @param minutes how long the visit took; empty if nobody said
   */
  public record Done(
      String cause, List<String> remedies, List<String> parts, OptionalDouble minutes) {
    /**
     * Keeps copies of the lists, trims, and rounds to millionths.
     *
     * @throws GuideException if the minutes are below 0 or not finite
     */
    public Done {
      cause = cause.strip();
      remedies = texts(remedies);
      parts = texts(parts);
      minutes = rounded(minutes);
      Rules.that(
          minutes.isEmpty() || (minutes.getAsDouble() >= 0 && minutes.getAsDouble() < 1e9),
          "the minutes of a visit must be 0 or more: " + minutes);
    }

    /**
     * Nothing was done.
     *
     * @return a visit's work without cause, remedies, parts and minutes
     */
    public static Done none() {
      return new Done("", List.of(), List.of(), OptionalDouble.empty());
    }
  }
}
