package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;

/** The largest of some numbers. */
class LargestTest {
  @Property(tries = 500)
  @Label("the last of the largest is where sorting puts it")
  void lastIsWhereSortingPutsIt(
      @ForAll @Size(min = 1, max = 60) double @DoubleRange(min = -4, max = 4) [] numbers) {
    double[] sorted = numbers.clone();
    Arrays.sort(sorted);
    for (int count = 1; count <= numbers.length; count++) {
      assertEquals(
          sorted[numbers.length - count], Largest.last(numbers.clone(), count), "of " + count);
    }
  }
}
