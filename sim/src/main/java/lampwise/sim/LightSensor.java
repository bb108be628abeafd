package lampwise.sim;

import java.util.Map;

/** Stub. */
public record LightSensor() implements Observer {
  @Override
  public Map<String, Double> settings() {
    throw new UnsupportedOperationException();
  }

  @Override
  public Observer with(String setting, double value) {
    throw new UnsupportedOperationException();
  }

  @Override
  public Scene joining(Scene scene, Chance chance) {
    throw new UnsupportedOperationException();
  }

  @Override
  public Labelled observe(Shown shown, Chance chance) {
    throw new UnsupportedOperationException();
  }

  /**
   * Stub.
   *
   * @return it
   */
  public static LightSensor fast() {
    throw new UnsupportedOperationException();
  }

  /**
   * Stub.
   *
   * @return it
   */
  public static LightSensor camera() {
    throw new UnsupportedOperationException();
  }

  /**
   * Stub.
   *
   * @return it
   */
  public static LightSensor meter() {
    throw new UnsupportedOperationException();
  }

  /**
   * Stub.
   *
   * @return it
   */
  public static LightSensor slow() {
    throw new UnsupportedOperationException();
  }

  /**
   * Stub.
   *
   * @return it
   */
  public static LightSensor faint() {
    throw new UnsupportedOperationException();
  }
}
