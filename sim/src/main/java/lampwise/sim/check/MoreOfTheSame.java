package lampwise.sim.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.decode.Decoder;
import lampwise.decode.Reading;
import lampwise.light.BlinkLog;
import lampwise.light.Marks;
import lampwise.sheet.CodeSheet;
import lampwise.sim.Chance;

/** Placeholder. */
final class MoreOfTheSame {
  static final int PAIRS = 400;
  private MoreOfTheSame() {}
  static void check(Decoder decoder) {}
}
