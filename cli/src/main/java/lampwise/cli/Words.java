package lampwise.cli;

/** Numbers as a technician says them. */
final class Words {
  private Words() {}

  /**
   * A probability in per cent. Certainty is never printed: above 99.9 % it is {@code over 99.9 %},
   * below 0.1 % {@code under 0.1 %}.
   */
  static String percent(double probability) {
    if (Double.isNaN(probability)) {
      return "how sure is not known";
    }
    if (probability > 0.999) {
      return "over 99.9 %";
    }
    if (probability < 0.001) {
      return "under 0.1 %";
    }
    boolean tenths = probability >= 0.99 || probability < 0.01;
    return decimal(probability * 100, tenths ? 1 : 0) + " %";
  }

  /** A stretch of time: seconds below ten minutes, then minutes, from three hours on hours. */
  static String duration(double seconds) {
    if (seconds >= 3 * 3600) {
      return decimal(seconds / 3600, 1) + " h";
    }
    if (seconds >= 600) {
      return decimal(seconds / 60, 1) + " min";
    }
    return decimal(seconds, seconds < 10 ? 2 : 1) + " s";
  }

  /** A moment or stretch on the recording's clock: {@code 0 to 61.5 s}. */
  static String span(double fromSeconds, double toSeconds) {
    return decimal(fromSeconds, 1) + " to " + decimal(toSeconds, 1) + " s";
  }

  /** Something counted: {@code no blink}, {@code 1 blink}, {@code 3 blinks}. */
  static String count(int number, String noun) {
    return (number == 0 ? "no" : Integer.toString(number)) + " " + noun + (number > 1 ? "s" : "");
  }

  /** A finite number rounded to at most so many decimals (0 to 2), zeros at the end cut. */
  static String decimal(double value, int decimals) {
    long tens = decimals == 0 ? 1 : decimals == 1 ? 10 : 100;
    long units = Math.round(Math.abs(value) * tens);
    StringBuilder text = new StringBuilder();
    if (value < 0 && units > 0) {
      text.append('-');
    }
    text.append(units / tens);
    long part = units % tens;
    if (part > 0) {
      text.append('.');
      if (tens == 100) {
        text.append(part / 10);
        part %= 10;
      }
      if (part > 0) {
        text.append(part);
      }
    }
    return text.toString();
  }
}
