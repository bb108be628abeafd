package lampwise.service;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
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
 * @param strip what the lamp did, to be drawn; empty if the recording shows no time
 */
public record LampRead(
    String recording,
    Visit.Lamp seen,
    LampSaid said,
    Verdict verdict,
    Map<Condition, Double> conditions,
    String means,
    String observed,
    Optional<Strip> strip) {
  /**
   * The lamp's light over the stretch that was watched.
   *
   * @param fromSeconds where it begins
   * @param toSeconds where it ends
   * @param lit each blink: when it began and how long it was, both in seconds; of unknown length 0
   */
  public record Strip(double fromSeconds, double toSeconds, List<Lit> lit) {
    /** Keeps a copy of the list. */
    public Strip {
      lit = List.copyOf(lit);
    }
  }

  /**
   * A blink of a strip.
   *
   * @param onSeconds when it began
   * @param lengthSeconds how long it was; 0 if that is not known
   */
  public record Lit(double onSeconds, double lengthSeconds) {}

  /** How sure it must be that a unit is in order, or is not. */
  private static final double SURE = 0.95;

  private static final Set<Condition> IN_ORDER =
      Set.of(Condition.READY, Condition.TARGET_SEEN, Condition.SETTING_UP, Condition.HYGIENE_FLUSH);

  /** Keeps copies. */
  public LampRead {
    conditions = Rules.copy(conditions);
  }

  /**
   * Takes what is needed from a reading.
   *
   * @param recording the file's name
   * @param sheet the sheet that was decoded against
   * @param reading the reading
   * @param observed the rhythm that was seen, as a phrase; may be empty
   * @param strip what the lamp did; may be empty
   * @return what it says
   */
  public static LampRead of(
      String recording, CodeSheet sheet, Reading reading, String observed, Optional<Strip> strip) {
    String means = "";
    if (reading.verdict() instanceof Verdict.Decoded decoded) {
      means = sheet.state(decoded.state()).map(LampState::means).orElse("");
    }
    return new LampRead(
        recording,
        Visit.Lamp.of(sheet, reading, List.of(recording)),
        LampSaid.of(sheet, reading),
        reading.verdict(),
        reading.conditions(sheet),
        means,
        observed,
        strip);
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
