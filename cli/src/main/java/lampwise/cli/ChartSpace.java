package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import lampwise.light.Window;

/**
 * Where times lie on a chart, and the numbered remarks for what finds no room there.
 *
 * @param ink letters
 * @param width the whole width, pixels
 * @param left where the time axis starts, pixels
 * @param right where it ends
 * @param fromSeconds the time at its start
 * @param toSeconds the time at its end
 * @param remarks what was numbered so far, to be written below the chart
 */
record ChartSpace(
    ChartInk ink,
    int width,
    double left,
    double right,
    double fromSeconds,
    double toSeconds,
    List<String> remarks) {
  private static final double MARGIN = 0.015;

  /** Room for an extent with a small margin at either end. */
  static ChartSpace of(ChartInk ink, int width, double left, Window extent) {
    double length = extent.lengthSeconds();
    double size = Math.max(Math.abs(extent.fromSeconds()), Math.abs(extent.toSeconds()));
    // Never so little that the ends of the axis are one number.
    double margin = Math.max(length > 0 ? length * MARGIN : 1, size * 1e-9);
    return new ChartSpace(
        ink,
        width,
        left,
        width - 14.0,
        extent.fromSeconds() - margin,
        extent.toSeconds() + margin,
        new ArrayList<>());
  }

  /** Where a time lies; what is outside lies on the border. */
  double x(double seconds) {
    double part = (seconds - fromSeconds) / (toSeconds - fromSeconds);
    return left + Math.max(0, Math.min(1, part)) * (right - left);
  }

  /** How wide a time is. */
  double pixels(double seconds) {
    return seconds / (toSeconds - fromSeconds) * (right - left);
  }

  /** Adds a remark and returns its number. */
  String remark(String text) {
    remarks.add(text);
    return Integer.toString(remarks.size());
  }
}
