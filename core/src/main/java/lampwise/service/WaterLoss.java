package lampwise.service;

/**
 * What water that runs for nothing comes to.
 *
 * @param litresPerMinute how much runs, 0 or more
 */
public record WaterLoss(double litresPerMinute) {
  private static final int MINUTES_A_DAY = 1440;
  private static final int DAYS = 365;

  /**
   * Checks the value.
   *
   * @throws GuideException if it is negative or not finite
   */
  public WaterLoss {
    Rules.that(
        litresPerMinute >= 0 && litresPerMinute < 1e9,
        "a flow must be 0 or more: " + litresPerMinute);
  }

  /**
   * In an hour.
   *
   * @return L
   */
  public double hour() {
    return 60 * litresPerMinute;
  }

  /**
   * In a day.
   *
   * @return L
   */
  public double day() {
    return MINUTES_A_DAY * litresPerMinute;
  }

  /**
   * In a year of 365 days.
   *
   * @return L
   */
  public double year() {
    return DAYS * day();
  }
}
