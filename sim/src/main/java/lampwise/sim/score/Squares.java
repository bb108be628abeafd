package lampwise.sim.score;

/** A little of linear algebra, for least squares. */
final class Squares {
  private Squares() {}

  /** The lower triangle whose product with its turn is a positive definite matrix (Cholesky). */
  static double[][] root(double[][] matrix) {
    int size = matrix.length;
    double[][] root = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int k = 0; k <= i; k++) {
        double sum = matrix[i][k];
        for (int m = 0; m < k; m++) {
          sum -= root[i][m] * root[k][m];
        }
        root[i][k] = i == k ? Math.sqrt(sum) : sum / root[k][k];
      }
    }
    return root;
  }

  /** What a positive definite matrix makes these values of. */
  static double[] solve(double[][] matrix, double[] values) {
    double[][] root = root(matrix);
    int size = values.length;
    double[] solved = values.clone();
    for (int i = 0; i < size; i++) {
      for (int k = 0; k < i; k++) {
        solved[i] -= root[i][k] * solved[k];
      }
      solved[i] /= root[i][i];
    }
    for (int i = size - 1; i >= 0; i--) {
      for (int k = i + 1; k < size; k++) {
        solved[i] -= root[k][i] * solved[k];
      }
      solved[i] /= root[i][i];
    }
    return solved;
  }
}
