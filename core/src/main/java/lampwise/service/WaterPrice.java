package lampwise.service;

/**
 * What water costs at a site, waste water included.
 *
 * @param amount the price, 0 or more and finite
 * @param currency its currency, as it is to be printed
 * @param litres the volume that costs so much, over 0 and finite
 */
public record WaterPrice(double amount, String currency, double litres) {
  /**
   * Checks the values.
   *
   * @throws GuideException if a number is out of range
   */
  public WaterPrice {
    Rules.that(
        amount >= 0 && amount <= Double.MAX_VALUE,
        "a price must be a number of 0 or more: " + amount);
    Rules.that(
        litres > 0 && litres <= Double.MAX_VALUE, "a price must be for a volume over 0: " + litres);
  }

  /**
   * What a volume costs.
   *
   * @param volume the volume, in litres
   * @return the cost in the currency
   */
  public double of(double volume) {
    return amount / litres * volume;
  }
}
