package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JsonNumberTest {
  @ParameterizedTest
  @CsvSource({
    "0, 3, 1, 0.0",
    "-0.0, 3, 1, 0.0",
    "-0.0004, 3, 0, 0",
    "45, 3, 0, 45",
    "0.5, 3, 0, 0.5",
    "90, 3, 1, 90.0",
    "3.0625, 3, 1, 3.063",
    "-12.050, 3, 1, -12.05",
    "0.000001, 6, 1, 0.000001",
    "0.9999999, 6, 1, 1.0",
    "1e12, 3, 1, 1000000000000.0",
    "1e12, 3, 0, 1000000000000",
    "-1234567890.0625, 3, 1, -1234567890.063"
  })
  void writes(double value, int most, int least, String expected) {
    assertEquals(expected, JsonNumber.of(value, most, least));
  }

  @Property
  void liesWithinHalfAUnitOfTheValue(@ForAll @DoubleRange(min = -2e9, max = 2e9) double value) {
    BigDecimal written = new BigDecimal(JsonNumber.of(value, 3, 1));
    BigDecimal error = written.subtract(new BigDecimal(value)).abs();
    // Half a thousandth and the rounding of the product in double arithmetic.
    assertTrue(error.compareTo(new BigDecimal("0.0005001")) <= 0, written + " for " + value);
  }
}
