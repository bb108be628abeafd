package lampwise.file;

import java.util.Optional;
import lampwise.file.ReadOptions.Dates;

/**
 * Counts the days of dates from the first one. Which of two numbers is the day is taken from what
 * the user said, else from a number above 12, else from the order in which days follow each other;
 * while all dates are the same it does not matter.
 */
final class DayCount {
  private Optional<Dates> order;
  private final boolean said;
  private Optional<Stamp> first = Optional.empty();

  DayCount(Optional<Dates> said) {
    this.order = said;
    this.said = said.isPresent();
  }

  /**
   * The days from the first date to this one.
   *
   * @return a whole number; NaN if the date can be read in two ways that differ, or in none
   */
  double days(Stamp stamp) {
    if (first.isEmpty()) {
      first = Optional.of(stamp);
    }
    Stamp start = first.get();
    if (order.isEmpty() && !stamp.yearFirst()) {
      order = tell(start, stamp);
      if (order.isEmpty()) {
        return stamp.sameDate(start) ? 0 : Double.NaN;
      }
    }
    Dates known = order.orElse(Dates.DMY);
    return stamp.day(known) - start.day(known);
  }

  /** How the order was found, if it was not said. */
  Optional<String> note() {
    return said || first.isEmpty() || first.get().yearFirst()
        ? Optional.empty()
        : order.map(
            known ->
                "dates were taken as "
                    + (known == Dates.DMY ? "day, month, year" : "month, day, year"));
  }

  private static Optional<Dates> tell(Stamp start, Stamp stamp) {
    boolean dmy = stamp.fits(Dates.DMY) && start.fits(Dates.DMY);
    boolean mdy = stamp.fits(Dates.MDY) && start.fits(Dates.MDY);
    if (dmy && mdy) {
      dmy = isNextDay(start, stamp, Dates.DMY);
      mdy = isNextDay(start, stamp, Dates.MDY);
    }
    if (dmy == mdy) {
      return Optional.empty();
    }
    return Optional.of(dmy ? Dates.DMY : Dates.MDY);
  }

  private static boolean isNextDay(Stamp start, Stamp stamp, Dates order) {
    return !stamp.sameDate(start) && Math.abs(stamp.day(order) - start.day(order)) == 1;
  }
}
