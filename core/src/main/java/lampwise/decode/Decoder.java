package lampwise.decode;

import java.util.List;
import lampwise.light.Recording;
import lampwise.sheet.CodeSheet;

/**
 * Reads recordings against a code sheet. Implementations have a public constructor without
 * arguments, keep no state between calls, and answer any recordings: the answer may be that they
 * cannot be read, but it is never an exception.
 */
public interface Decoder {
  /**
   * Reads recordings of one lamp.
   *
   * @param sheet the unit's code sheet
   * @param recordings one or more recordings of one lamp in one unchanged unit (idle, then with a
   *     hand, then after power-up); their evidence is combined. An empty list is unreadable
   * @return the answer
   */
  Reading decode(CodeSheet sheet, List<Recording> recordings);
}
