package lampwise.sim.check;

import java.util.List;
import lampwise.light.Recording;
import lampwise.sheet.CodeSheet;

/**
 * What a decoder is given. Its text is short and can be read by people.
 *
 * @param sheet the code sheet
 * @param recordings the recordings of one lamp; may be empty
 */
public record Sample(CodeSheet sheet, List<Recording> recordings) {
  /** Keeps a copy of the list. */
  public Sample {
    recordings = List.copyOf(recordings);
  }

  /** The sheet, a line a state, and the recordings, each in the manner of a Lampwise log. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(SampleText.of(sheet));
    if (recordings.isEmpty()) {
      text.append("\nno recording");
    }
    recordings.forEach(recording -> text.append('\n').append(SampleText.of(recording)));
    return text.toString();
  }
}
