package lampwise.sim.check;

import java.util.ArrayList;
import java.util.List;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.LampState;

/**
 * A lamp on a sheet, and a state that fits it worse than the one it shows.
 *
 * @param clean the lamp and the sheet without that state
 * @param added the state
 * @param place where in the sheet it goes, from 0 to the number of states
 */
public record GrownSample(CleanSample clean, LampState added, int place) {
  /**
   * The sheet with the state.
   *
   * @return the larger sheet
   */
  public CodeSheet sheet() {
    CodeSheet small = clean.sheet();
    List<LampState> states = new ArrayList<>(small.states());
    states.add(place, added);
    return SheetArbitraries.sheet(small.clockTolerance(), small.blinkSeconds(), states);
  }

  /** The larger sheet and the recording, and which state it is. */
  @Override
  public String toString() {
    return new Sample(sheet(), List.of(clean.recording())) + "\nthe lamp shows " + clean.state();
  }
}
