package example;

import lampwise.decode.Decoder;
import lampwise.sim.check.DecoderContract;

/** The naive decoder under the laws, as a developer would put it there. */
public class NaiveContract implements DecoderContract {
  @Override
  public Decoder decoder() {
    return new NaiveDecoder();
  }
}
