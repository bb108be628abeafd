package lampwise.sim.check;

import java.util.List;
import lampwise.sheet.CodeSheet;
import lampwise.sim.Labelled;

/**
 * A simulated recording of a unit, and what is true of it.
 *
 * @param sheet the unit's sheet
 * @param labelled recording and truth
 * @param how who recorded it, and the seed, for people
 */
public record LabelledSample(CodeSheet sheet, Labelled labelled, String how) {
  /**
   * What a decoder is given.
   *
   * @return sheet and recording
   */
  public Sample sample() {
    return new Sample(sheet, List.of(labelled.recording()));
  }

  /**
   * What it should find.
   *
   * @return the state's name
   */
  public String state() {
    return labelled.truth().state();
  }

  /** Sheet and recording, which state it is, and how it was made. */
  @Override
  public String toString() {
    return sample() + "\nthe lamp shows " + state() + "; " + how;
  }
}
