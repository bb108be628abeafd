package lampwise.sim;

import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;
import lampwise.sheet.Seen;

/**
 * One state that a lamp is in, from a moment on.
 *
 * @param fromSeconds when it begins; negative infinity if the unit has been in it for long, so that
 *     a prelude is over and the cycle is anywhere
 * @param state its name in the sheet, {@code unlisted} or {@code no-rhythm}
 * @param show what the lamp shows in it
 * @param seen when it shows it; outside these times it is dark
 */
public record Act(double fromSeconds, String state, Show show, Seen seen) {
  /**
   * Checks the beginning.
   *
   * @throws SimulationException if it is NaN or positive infinity
   */
  public Act {
    if (!(fromSeconds < Double.POSITIVE_INFINITY)) {
      throw new SimulationException("a state must begin at a finite time: " + fromSeconds);
    }
  }

  /**
   * A state of a sheet that the unit has been in for long.
   *
   * @param state the state
   * @return the act
   */
  public static Act of(LampState state) {
    return new Act(
        Double.NEGATIVE_INFINITY, state.name(), new Show.Rhythmic(state.rhythm()), state.seen());
  }

  /**
   * A rhythm that no state of the sheet has.
   *
   * @param rhythm the rhythm
   * @return the act, named {@code unlisted}
   */
  public static Act unlisted(Rhythm rhythm) {
    return new Act(
        Double.NEGATIVE_INFINITY, CodeSheet.UNLISTED, new Show.Rhythmic(rhythm), Seen.ALWAYS);
  }

  /**
   * Blinks in no order.
   *
   * @param perSecond how many a second on average, over zero and at most 10
   * @return the act, named {@code no-rhythm}
   */
  public static Act random(double perSecond) {
    return new Act(
        Double.NEGATIVE_INFINITY, CodeSheet.NO_RHYTHM, new Show.Random(perSecond), Seen.ALWAYS);
  }

  /**
   * The same act, beginning at a moment.
   *
   * @param seconds when
   * @return a new act
   */
  public Act from(double seconds) {
    return new Act(seconds, state, show, seen);
  }
}
