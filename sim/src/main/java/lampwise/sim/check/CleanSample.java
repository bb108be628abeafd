package lampwise.sim.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.light.Blink;
import lampwise.light.BlinkLog;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Origin;
import lampwise.light.Recording;
import lampwise.rhythm.Count;
import lampwise.rhythm.Cycle;
import lampwise.rhythm.Ending;
import lampwise.rhythm.Length;
import lampwise.rhythm.Part;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Size;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/**
 * A lamp on a sheet that nobody need mistake, recorded without any fault for three cycles. Two
 * states of the sheet differ in the number of their blinks, or their cycles differ by so much that
 * no two clocks within the tolerance come near each other: by more than ((1 + tolerance) / (1 -
 * tolerance))<sup>2</sup>.
 *
 * @param clockTolerance of the sheet, as a fraction
 * @param codes what the states show, in their order; two or more, each unlike the others
 * @param index which of them is shown, from 0
 * @param phase the part of a cycle, from 0 to below 1, that is over when the window begins; where a
 *     blink would be cut by the window's border, the window begins just after it instead
 * @param form how it is recorded
 * @param clock how many times as long as printed everything takes
 */
public record CleanSample(
    double clockTolerance, List<Code> codes, int index, double phase, Form form, double clock) {
  private static final double BLINK_SECONDS = 0.1;
  private static final double BORDER_SECONDS = 0.02;
  private static final int CYCLES = 3;
  private static final double SAMPLE_SECONDS = 0.02;

  /** How a lamp is recorded. */
  public enum Form {
    /** The starts of the blinks. */
    STARTS,
    /** Their starts and ends. */
    SPANS,
    /** 50 light levels a second, the lamp 30 times as bright as the noise. */
    LEVELS
  }

  /**
   * Equal blinks in a cycle.
   *
   * @param blinks how many, 1 or more
   * @param apartSeconds from the start of one to the start of the next
   * @param cycleSeconds from the start of one cycle to the start of the next
   */
  public record Code(int blinks, double apartSeconds, double cycleSeconds) {
    /**
     * The rhythm that says it.
     *
     * @return {@code 3 blinks 0.4 s apart every 9 s}
     */
    public Rhythm rhythm() {
      Optional<Length> apart =
          blinks == 1 ? Optional.empty() : Optional.of(Length.exactly(apartSeconds));
      Part part = new Part.Blinks(Count.of(blinks), Size.UNSAID, Optional.empty(), apart);
      Ending every = new Ending.Every(Length.exactly(cycleSeconds));
      return new Rhythm.Blinking(List.of(), new Cycle.Parts(List.of(part), every));
    }
  }

  /** Keeps a copy of the list. */
  public CleanSample {
    codes = List.copyOf(codes);
  }

  /**
   * The same lamp with another clock.
   *
   * @param clock how many times as long as printed everything takes
   * @return a new sample
   */
  public CleanSample withClock(double clock) {
    return new CleanSample(clockTolerance, codes, index, phase, form, clock);
  }

  /**
   * The name of the state that is shown.
   *
   * @return its name in the sheet
   */
  public String state() {
    return name(index);
  }

  private static String name(int index) {
    return "s" + (index + 1);
  }

  /**
   * The sheet.
   *
   * @return a sheet with a state for each code, all of weight 1 and seen always
   */
  public CodeSheet sheet() {
    List<LampState> states = new ArrayList<>();
    for (int i = 0; i < codes.size(); i++) {
      states.add(
          SheetArbitraries.state(name(i), codes.get(i).rhythm(), Condition.OTHER, Seen.ALWAYS, 1));
    }
    return SheetArbitraries.sheet(clockTolerance, OptionalDouble.of(BLINK_SECONDS), states);
  }

  /**
   * The recording.
   *
   * @return three cycles of the lamp
   */
  public Recording recording() {
    Code code = codes.get(index);
    double end = CYCLES * code.cycleSeconds() * clock;
    Marks marks = Marks.watched(0, end);
    List<Blink> lit = new ArrayList<>();
    double before = before(code);
    for (int cycle = 0; cycle <= CYCLES; cycle++) {
      for (int i = 0; i < code.blinks(); i++) {
        double on = (cycle * code.cycleSeconds() + i * code.apartSeconds() - before) * clock;
        if (on > 0 && on < end) {
          lit.add(new Blink(on, on + BLINK_SECONDS * clock));
        }
      }
    }
    return switch (form) {
      case STARTS -> BlinkLog.ofStarts(marks, lit.stream().mapToDouble(Blink::onSeconds).toArray());
      case SPANS -> new BlinkLog(Origin.named("log"), marks, lit);
      case LEVELS -> levels(lit, end);
    };
  }

  /** The printed seconds of a cycle that are over when the window begins, in the dark. */
  private double before(Code code) {
    double before = phase * code.cycleSeconds();
    for (int i = 0; i < code.blinks(); i++) {
      double on = i * code.apartSeconds();
      if (before > on - BORDER_SECONDS && before < on + BLINK_SECONDS + BORDER_SECONDS) {
        return on + BLINK_SECONDS + BORDER_SECONDS;
      }
    }
    return before > code.cycleSeconds() - BORDER_SECONDS ? BLINK_SECONDS + BORDER_SECONDS : before;
  }

  private static LightCurve levels(List<Blink> lit, double end) {
    int size = (int) Math.floor(end / SAMPLE_SECONDS) + 1;
    double[] seconds = new double[size];
    double[] levels = new double[size];
    int next = 0;
    for (int i = 0; i < size; i++) {
      seconds[i] = i * SAMPLE_SECONDS;
      while (next < lit.size() && lit.get(next).offSeconds() <= seconds[i]) {
        next++;
      }
      boolean on = next < lit.size() && lit.get(next).onSeconds() <= seconds[i];
      levels[i] = 100 + (on ? 30 : 0) + RecordingArbitraries.noise(i);
    }
    return LightCurve.of(
        Origin.named("light"), Marks.nothing(), LightCurve.Lit.BRIGHTER, seconds, levels);
  }

  /**
   * What a decoder is given.
   *
   * @return sheet and recording
   */
  public Sample sample() {
    return new Sample(sheet(), List.of(recording()));
  }

  /** Sheet and recording, and which state it is. */
  @Override
  public String toString() {
    return sample() + "\nthe lamp shows " + state() + ", its clock at " + SampleText.number(clock);
  }
}
