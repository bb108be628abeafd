package lampwise.decode;

/** A way of recording that cannot be; its message is one line for whoever asked. */
public final class PlanException extends RuntimeException {
  private static final long serialVersionUID = 1;

  PlanException(String message) {
    super(message);
  }
}
