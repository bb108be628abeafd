package planted.light;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;

/** All that plain Java offers, each in the form that the compiler makes something special of. */
final class Plain {
  sealed interface Shape permits Dot, Line {}

  record Dot(double at) implements Shape {}

  record Line(double from, double to) implements Shape {
    Line {
      if (!(from <= to)) {
        throw new Fault("from " + from + " to " + to);
      }
    }
  }

  enum Side {
    LEFT,
    RIGHT
  }

  static final class Fault extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Fault(String message) {
      super(message);
    }
  }

  private final double[][] table = new double[2][3];

  static String words(Shape shape, Side side) {
    assert shape != null;
    String place = shape instanceof Dot dot ? "dot " + dot.at() : "line " + shape;
    return switch (side) {
      case LEFT -> place.toLowerCase(Locale.ROOT);
      case RIGHT -> String.format(Locale.ROOT, "%s %s", place, new Dot(1).equals(shape));
    };
  }

  static int lengthOf(String word) {
    return switch (word) {
      case "one", "two" -> 3;
      case "three" -> 5;
      default -> word.length();
    };
  }

  static List<Integer> sorted(List<String> words, DoubleUnaryOperator change) {
    Runnable nothing = () -> change.applyAsDouble(1);
    nothing.run();
    return words.stream().map(Plain::lengthOf).sorted().collect(Collectors.toList());
  }

  double[] row(int index) {
    double[] row = table[index].clone();
    System.arraycopy(row, 0, table[1], 0, row.length);
    Arrays.sort(row);
    return row;
  }

  static Optional<BigDecimal> sum(Iterable<BigDecimal> numbers) {
    List<BigDecimal> all = new ArrayList<>();
    for (BigDecimal number : numbers) {
      all.add(number);
    }
    try {
      return all.stream().reduce(BigDecimal::add);
    } catch (ArithmeticException e) {
      throw new Fault(e.getClass().getSimpleName());
    }
  }
}
