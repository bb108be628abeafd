package lampwise.decode;

import java.util.List;
import lampwise.light.Recording;
import lampwise.sheet.CodeSheet;

/** The decoder. */
public final class LampDecoder implements Decoder {
  /** Makes one; it has no settings and keeps no state. */
  public LampDecoder() {}

  @Override
  public Reading decode(CodeSheet sheet, List<Recording> recordings) {
    throw new UnsupportedOperationException();
  }

  /**
   * Says what a recording shows without a sheet.
   *
   * @param recording the recording
   * @return the rhythm, the blinks and the window
   */
  public Observation observe(Recording recording) {
    throw new UnsupportedOperationException();
  }
}
