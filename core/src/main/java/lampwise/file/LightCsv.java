package lampwise.file;

import lampwise.light.LightCurve;
import lampwise.light.RecordingException;

/**
 * Writes light curves as the light files that {@link RecordingReader} reads: comma-separated, a
 * header {@code time_s,lux}, one row a sample. The same curve gives the same bytes on every machine
 * and Java version.
 */
public final class LightCsv {
  /** The most decimals of a level. */
  public static final int MOST_DECIMALS = 6;

  private static final String HEADER = "time_s,lux";
  private static final int TIME_DECIMALS = 6;
  private static final int LEAST_TIME_DECIMALS = 3;

  private LightCsv() {}

  /**
   * Writes a curve. Times have three decimals, and up to six where they need them; levels have as
   * many as is said. Both are rounded to the nearest. A sample without a level is a row without
   * one.
   *
   * <p>Only times and levels are written: a light file has no place for what was noted beside the
   * light, nor for which way the level moves. Reading gives the same times and levels if they have
   * no more decimals, every level is there, and the first time is below 10,000 s (later ones count
   * from the first row).
   *
   * @param curve the curve, at least one sample
   * @param decimals the decimals of a level, 0 to {@value #MOST_DECIMALS}
   * @return the text, its lines ended by LF
   * @throws RecordingException if there is no sample, the decimals are out of range, two times
   *     become one when they are rounded, or a number is beyond 10<sup>12</sup>
   */
  public static String write(LightCurve curve, int decimals) {
    if (!(decimals >= 0 && decimals <= MOST_DECIMALS)) {
      throw new RecordingException(
          "a light level has 0 to " + MOST_DECIMALS + " decimals: " + decimals);
    }
    if (curve.size() == 0) {
      throw new RecordingException("a light file holds at least one sample");
    }
    StringBuilder text = new StringBuilder(HEADER.length() + 1 + 20 * curve.size());
    text.append(HEADER).append('\n');
    String before = "";
    for (int i = 0; i < curve.size(); i++) {
      String time = number(curve.seconds(i), TIME_DECIMALS, LEAST_TIME_DECIMALS, i);
      if (time.equals(before)) {
        throw new RecordingException(
            "the times of a light file must rise: sample " + (i + 1) + " is at " + time + " s too");
      }
      before = time;
      text.append(time).append(',');
      if (!Double.isNaN(curve.level(i))) {
        text.append(number(curve.level(i), decimals, decimals, i));
      }
      text.append('\n');
    }
    return text.toString();
  }

  /**
   * How many decimals it takes to write every multiple of a step.
   *
   * @param step a step of the level, zero or more; 0 if levels come in no steps
   * @return 0 to {@value #MOST_DECIMALS}, and that if no fewer are enough
   */
  public static int decimalsOf(double step) {
    double tens = 1;
    for (int decimals = 0; decimals < MOST_DECIMALS; decimals++) {
      double units = Math.rint(step * tens);
      if (units >= 1 && units / tens == step) {
        return decimals;
      }
      tens *= 10;
    }
    return MOST_DECIMALS;
  }

  private static String number(double value, int most, int least, int index) {
    if (!(Math.abs(value) <= RecordingClock.MAX_SECONDS)) {
      throw new RecordingException("a number of sample " + (index + 1) + " is too large to write");
    }
    return JsonNumber.of(value, most, least);
  }
}
