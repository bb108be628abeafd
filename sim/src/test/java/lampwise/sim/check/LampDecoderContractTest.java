package lampwise.sim.check;

import lampwise.decode.Decoder;
import lampwise.decode.LampDecoder;

/** The project's own decoder under all laws. */
class LampDecoderContractTest implements DecoderContract {
  @Override
  public Decoder decoder() {
    return new LampDecoder();
  }
}
