package lampwise.sim.check;

import lampwise.decode.Decoder;
import lampwise.decode.LampDecoder;

/** The project's own decoder under the laws; what they have found is in docs/laws.md. */
class LampDecoderContractTest implements DecoderContract {
  @Override
  public Decoder decoder() {
    return new LampDecoder();
  }
}
