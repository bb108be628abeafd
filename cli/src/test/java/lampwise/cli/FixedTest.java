package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FixedTest {
  @ParameterizedTest
  @CsvSource({
    "0, 3, 1, 0.0",
    "-0.0, 3, 0, 0",
    "-0.0004, 3, 1, 0.0",
    "90, 3, 1, 90.0",
    "90, 3, 0, 90",
    "0.0625, 3, 1, 0.062",
    "0.1875, 3, 1, 0.188",
    "-12.05, 3, 1, -12.05",
    "1e9, 6, 0, 1000000000",
    "0.3333333333333333, 9, 0, 0.333333333"
  })
  void writes(double value, int most, int least, String expected) {
    assertEquals(expected, Fixed.of(value, most, least));
  }

  @Property
  void isTheNearestOfItsDecimals(
      @ForAll double value,
      @ForAll @IntRange(max = 9) int most,
      @ForAll @IntRange(max = 9) int least) {
    String text = Fixed.of(value, most, Math.min(least, most));
    BigDecimal error = new BigDecimal(text).subtract(new BigDecimal(value)).abs();
    assertTrue(error.compareTo(BigDecimal.valueOf(5, most + 1)) <= 0, text + " for " + value);
    assertTrue(text.matches("-?[0-9]+(\\.[0-9]+)?"), text);
  }
}
