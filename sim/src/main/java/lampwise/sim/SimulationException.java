package lampwise.sim;

/** A setting that cannot be; the message says which, and what was expected, in one line. */
public final class SimulationException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * A fault.
   *
   * @param message what is wrong and what was expected, one line
   */
  public SimulationException(String message) {
    super(message);
  }
}
