package lampwise.file;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A number and its unit, as a site writes it.
 *
 * @param value the number, 0 or more and finite
 * @param unit the unit
 */
record Amount(double value, String unit) {
  private static final double LITRES_PER_GALLON = 3.785411784;
  private static final double LITRES_PER_CUBIC_FOOT = 28.316846592;

  /** The amount; empty for anything that is not a number and one of the units. */
  static Optional<Amount> of(String text, List<String> units) {
    for (String unit : units) {
      if (text.endsWith(unit)) {
        String number = text.substring(0, text.length() - unit.length()).stripTrailing();
        OptionalDouble value = Quantities.number(number);
        if (value.isPresent() && value.getAsDouble() <= Double.MAX_VALUE) {
          return Optional.of(new Amount(value.getAsDouble(), unit));
        }
      }
    }
    return Optional.empty();
  }

  /** A volume in litres; empty for anything that is not one. */
  static OptionalDouble litres(String text) {
    Optional<Amount> amount = of(text, List.of("gal", "ft3", "L", "m3"));
    return amount.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(amount.get().value() * litresPer(amount.get().unit()));
  }

  private static double litresPer(String unit) {
    return switch (unit) {
      case "gal" -> LITRES_PER_GALLON;
      case "ft3" -> LITRES_PER_CUBIC_FOOT;
      case "m3" -> 1000;
      default -> 1;
    };
  }
}
