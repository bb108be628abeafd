package lampwise.decode;

import java.util.List;

/** Least squares with few unknowns, by Cholesky's decomposition of the normal equations. */
final class LeastSquares {
  /** A pivot smaller than this, against the largest, is none. */
  private static final double SINGULAR = 1e-9;

  private LeastSquares() {}

  /**
   * The solution.
   *
   * @param rows a row of factors for each value, all as long
   * @param values the values
   * @return the unknowns; empty if the rows do not determine them
   */
  static double[] solve(List<double[]> rows, List<Double> values) {
    double[][] lower = decompose(rows);
    int size = lower.length;
    double[] x = new double[size];
    for (int r = 0; r < rows.size(); r++) {
      for (int i = 0; i < size; i++) {
        x[i] += rows.get(r)[i] * values.get(r);
      }
    }
    for (int i = 0; i < size; i++) {
      for (int k = 0; k < i; k++) {
        x[i] -= lower[i][k] * x[k];
      }
      x[i] /= lower[i][i];
    }
    for (int i = size - 1; i >= 0; i--) {
      for (int k = i + 1; k < size; k++) {
        x[i] -= lower[k][i] * x[k];
      }
      x[i] /= lower[i][i];
    }
    return x;
  }

  /** Logarithm of the determinant of the normal equations; NaN if they determine nothing. */
  static double logDeterminant(List<double[]> rows) {
    double[][] lower = decompose(rows);
    double sum = lower.length == 0 ? Double.NaN : 0;
    for (int i = 0; i < lower.length; i++) {
      sum += 2 * Math.log(lower[i][i]);
    }
    return sum;
  }

  private static double[][] decompose(List<double[]> rows) {
    int size = rows.isEmpty() ? 0 : rows.get(0).length;
    double[][] lower = new double[size][size];
    if (rows.size() < size) {
      return new double[0][];
    }
    for (double[] row : rows) {
      for (int i = 0; i < size; i++) {
        for (int k = 0; k <= i; k++) {
          lower[i][k] += row[i] * row[k];
        }
      }
    }
    double largest = 0;
    for (int i = 0; i < size; i++) {
      largest = Math.max(largest, lower[i][i]);
    }
    for (int i = 0; i < size; i++) {
      for (int k = 0; k <= i; k++) {
        double sum = lower[i][k];
        for (int j = 0; j < k; j++) {
          sum -= lower[i][j] * lower[k][j];
        }
        if (i == k) {
          if (!(sum > SINGULAR * largest)) {
            return new double[0][];
          }
          lower[i][i] = Math.sqrt(sum);
        } else {
          lower[i][k] = sum / lower[k][k];
        }
      }
    }
    return lower;
  }
}
