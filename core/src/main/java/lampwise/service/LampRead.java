package lampwise.service;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lampwise.decode.Observation;
import lampwise.decode.Reading;
import lampwise.decode.SeenBlink;
import lampwise.decode.Verdict;
import lampwise.light.Blink;
import lampwise.light.Window;
import lampwise.rhythm.Phrase;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;

/**
 * What one file says of one fixture's lamp: as much of the reading as a day's report needs, and no
 * recording, so that thousands find room.
 *
 * @param recording the file's name
 * @param seen what was decoded, as a visit keeps it
 * @param said how many times likelier the reading has made each condition
 * @param verdict the verdict
 * @param conditions the probability of each condition, likeliest first
 * @param means what the decoded state means; empty where none was decoded
 * @param observed the rhythm that was seen, as a phrase; empty if there was none
 * @param window the stretch that was watched; empty if there is none
 * @param blinks the blinks in it, in order, {@value #MOST_BLINKS} at the most
 */
public record LampRead(
    String recording,
    Visit.Lamp seen,
    LampSaid said,
    Verdict verdict,
    Map<Condition, Double> conditions,
    String means,
    String observed,
    Optional<Window> window,
    List<Blink> blinks) {
  /** The most blinks that are kept. */
  public static final int MOST_BLINKS = 400;

  /** How sure it must be that a unit is in order, or is not. */
  private static final double SURE = 0.95;

  private static final Set<Condition> IN_ORDER =
      Set.of(Condition.READY, Condition.TARGET_SEEN, Condition.SETTING_UP, Condition.HYGIENE_FLUSH);

  /** Keeps copies. */
  public LampRead {
    conditions = Rules.copy(conditions);
    blinks = List.copyOf(blinks);
  }

  /**
   * Takes what is needed from a reading.
   *
   * @param recording the file's name
   * @param sheet the sheet that was decoded against
   * @param reading the reading
   * @return what it says
   */
  public static LampRead of(String recording, CodeSheet sheet, Reading reading) {
    String means = "";
    if (reading.verdict() instanceof Verdict.Decoded decoded) {
      means = sheet.state(decoded.state()).map(LampState::means).orElse("");
    }
    Optional<Observation> main = reading.main();
    return new LampRead(
        recording,
        Visit.Lamp.of(sheet, reading, List.of(recording)),
        LampSaid.of(sheet, reading),
        reading.verdict(),
        reading.conditions(sheet),
        means,
        reading.observed().map(Phrase::print).orElse(""),
        main.flatMap(Observation::window),
        main.map(Observation::blinks).orElse(List.of()).stream()
            .limit(MOST_BLINKS)
            .map(SeenBlink::blink)
            .toList());
  }

  /**
   * Whether the lamp says that the unit is in order, at least 95 % sure.
   *
   * @return true if it does, even if it is not decided in which of its states the unit is
   */
  public boolean isInOrder() {
    return sum(true) >= SURE;
  }

  /**
   * Whether the lamp says that the unit is not in order, at least 95 % sure.
   *
   * @return true if it does, even if it is not decided what is wrong
   */
  public boolean warns() {
    return sum(false) >= SURE;
  }

  private double sum(boolean inOrder) {
    double sum = 0;
    for (Map.Entry<Condition, Double> entry : conditions.entrySet()) {
      sum += IN_ORDER.contains(entry.getKey()) == inOrder ? entry.getValue() : 0;
    }
    return sum;
  }

  /**
   * Whether a state was decoded.
   *
   * @return false if the recording is better made once more
   */
  public boolean isDecoded() {
    return verdict instanceof Verdict.Decoded;
  }

  /**
   * The complaint that a warning stands for where nobody has complained (chosen).
   *
   * @return the complaint of the likeliest condition; empty if the lamp does not {@link #warns()}
   */
  public Optional<Complaint> complaint() {
    if (!warns()) {
      return Optional.empty();
    }
    Condition likeliest = conditions.keySet().iterator().next();
    return Optional.of(
        switch (likeliest) {
          case POWER_MISSING, VALVE_CIRCUIT, SENSOR_BLOCKED, RANGE_SHORT, HELD_OFF ->
              Complaint.DEAD;
          case RANGE_LONG -> Complaint.PHANTOM;
          case RUNNING -> Complaint.RUNS_ON;
          default -> Complaint.LAMP_ONLY;
        });
  }
}
