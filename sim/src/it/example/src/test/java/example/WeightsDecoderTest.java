package example;

import lampwise.decode.Decoder;
import lampwise.sim.check.CleanSample;
import lampwise.sim.check.DecoderContract;
import net.jqwik.api.Disabled;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/**
 * The laws of every decoder, tried on ours: they come with the interface. Those that it does not
 * hold yet are named with the reason, and show up as skipped; take them away one by one.
 */
class WeightsDecoderTest implements DecoderContract {
  @Override
  public Decoder decoder() {
    return new WeightsDecoder();
  }

  @Override
  @Property
  @Label("three clean cycles are decoded")
  @Disabled("it does not look at blinks yet")
  public void threeCleanCyclesAreDecoded(@ForAll CleanSample sample) {
    DecoderContract.super.threeCleanCyclesAreDecoded(sample);
  }

  @Override
  @Property
  @Label("a clock within the tolerance is accepted")
  @Disabled("it does not look at blinks yet")
  public void aClockWithinTheToleranceIsAccepted(
      @ForAll CleanSample sample, @ForAll @IntRange(min = -90, max = 90) int percent) {
    DecoderContract.super.aClockWithinTheToleranceIsAccepted(sample, percent);
  }
}
