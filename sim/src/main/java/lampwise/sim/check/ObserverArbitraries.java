package lampwise.sim.check;

import lampwise.sim.LightSensor;
import lampwise.sim.Observer;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;

/** Observers, that is noise, for laws. */
public final class ObserverArbitraries {
  private ObserverArbitraries() {}

  public static Arbitrary<Observer> any() {
    return Arbitraries.of(LightSensor.fast(), LightSensor.meter()).map(o -> o);
  }

  static String text(Observer observer) {
    return observer.settings().toString();
  }
}
