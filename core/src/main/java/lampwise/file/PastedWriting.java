package lampwise.file;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwise.file.PastedTime.Role;
import lampwise.file.PastedTime.Style;
import lampwise.file.TimeText.Writing;

/** How a list of times is written as a whole: what no single time can show. */
final class PastedWriting {
  /** What is said of clock times without seconds. */
  static final String COARSE =
      "the clock times have no seconds; whole minutes are too coarse to tell most rhythms, so note"
          + " the seconds too";

  /** From this hour on {@code h:mm} is more usual than {@code m:ss} of a stopwatch. */
  private static final double FIRST_HOUR = 4 * 60.0;

  private static final double DAY_MINUTES = 24 * 60.0;
  private static final double HALF_DAY_MINUTES = DAY_MINUTES / 2;

  /** Clock times to the minute lie no further apart, by their median. */
  private static final double MAX_STEP_MINUTES = 2;

  private PastedWriting() {}

  /**
   * Whether {@code 12:01 12:02 12:04} are hours and minutes: no time has decimals, the first is
   * 4:00 or later, none is 24:00 or later, and the steps are minutes by ones and twos. In any other
   * list they are minutes and seconds.
   */
  static boolean isToTheMinute(List<PastedTime> times) {
    List<Double> values = new ArrayList<>();
    for (PastedTime time : times) {
      boolean minutes = time.time().writing() == Writing.MINUTES && time.style() == Style.BARE;
      boolean fine = time.word().indexOf('.') >= 0 || time.word().indexOf(',') >= 0;
      if (!minutes || fine || time.isGap() || time.time().value() >= DAY_MINUTES) {
        return false;
      }
      values.add(time.time().value());
    }
    if (values.size() < 2 || values.get(0) < FIRST_HOUR) {
      return false;
    }
    double[] steps = new double[values.size() - 1];
    for (int i = 0; i < steps.length; i++) {
      double step = Math.abs(values.get(i + 1) - values.get(i)) % HALF_DAY_MINUTES;
      steps[i] = Math.min(step, HALF_DAY_MINUTES - step);
    }
    Arrays.sort(steps);
    return steps[steps.length / 2] <= MAX_STEP_MINUTES;
  }

  /** Hours and minutes in place of minutes and seconds. */
  static List<PastedTime> asHours(List<PastedTime> times) {
    return times.stream()
        .map(
            time ->
                new PastedTime(
                    time.role(),
                    new TimeText(Writing.HOURS, time.time().value() * 60, false),
                    Style.TO_THE_MINUTE,
                    time.line(),
                    time.column(),
                    time.word()))
        .toList();
  }

  /**
   * Whether every number has a minus that is a bullet: each stands first on its line, and they run
   * away from zero.
   */
  static boolean hasBullets(List<PastedTime> times) {
    double before = 0;
    int line = 0;
    for (PastedTime time : times) {
      double value = time.time().value();
      boolean bullet =
          time.time().writing() == Writing.NUMBER
              && !time.isGap()
              && time.line() > line
              && time.role() == Role.UNSAID
              && time.word().charAt(0) == '-';
      if (!bullet || !(value < before)) {
        return false;
      }
      before = value;
      line = time.line();
    }
    return times.size() > 2;
  }

  /** The numbers without their bullets. */
  static List<PastedTime> withoutBullets(List<PastedTime> times) {
    return times.stream()
        .map(t -> t.with(new TimeText(Writing.NUMBER, -t.time().value(), false)))
        .toList();
  }

  /** How the times are written, for the line that says what was understood. */
  static String name(List<PastedTime> times) {
    PastedTime first = times.get(0);
    for (PastedTime time : times) {
      if (!time.isGap() && time.time().writing().compareTo(first.time().writing()) > 0) {
        first = time;
      }
    }
    String name =
        switch (first.time().writing()) {
          case NUMBER -> "seconds";
          case MINUTES -> "minutes and seconds";
          case HOURS -> "clock times";
        };
    boolean gaps = times.size() > 1 && times.get(1).isGap();
    boolean coarse =
        first.style() == Style.HALF_DAY_MINUTES || first.style() == Style.TO_THE_MINUTE;
    return (first.hasHalfDay() ? "12-hour clock times" : name)
        + (coarse ? " to the minute" : "")
        + (gaps ? " and gaps" : "");
  }
}
