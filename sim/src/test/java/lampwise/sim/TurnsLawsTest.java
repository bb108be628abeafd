package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class TurnsLawsTest {
  @Property
  void theSineIsThatOfStrictMath(@ForAll @DoubleRange(min = -1e6, max = 1e6) double turns) {
    double part = turns - Math.rint(turns);
    assertEquals(StrictMath.sin(2 * Math.PI * part), Turns.sine(turns), 1e-9);
  }

  @Property
  void whatAveragingLeavesIsTheMean(@ForAll @DoubleRange(min = 0, max = 50) double periods) {
    double sum = 0;
    for (int i = 0; i < 20_000; i++) {
      sum += Turns.sine(0.25 + periods * ((i + 0.5) / 20_000 - 0.5));
    }
    assertEquals(sum / 20_000, Turns.averaged(periods), 1e-5);
  }
}
