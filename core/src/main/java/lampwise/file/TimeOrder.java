package lampwise.file;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import lampwise.file.PastedTime.Role;

/** Brings pasted times into rising order where their writing allows only one way to do it. */
final class TimeOrder {
  /** So many numbers may be light levels in place of times. */
  private static final int LEVELS_LEAST = 8;

  /** Of levels at least this share is below the one before. */
  private static final double LEVELS_DOWN = 0.2;

  /** The longest step over midnight that still looks like one. */
  private static final double MAX_MIDNIGHT_STEP = 3600;

  private TimeOrder() {}

  /**
   * Times that do not fall.
   *
   * @param times the times, in order
   * @param seconds their seconds; a day more after midnight
   * @param notes what had to be done
   */
  record Ordered(List<PastedTime> times, List<Double> seconds, List<String> notes) {}

  /**
   * Orders times: as they stand, over one midnight, or wholly reversed.
   *
   * @param source for faults
   * @param times the times as they stand
   * @param seconds the seconds of each
   * @throws FileException at the first time that steps back, if the order is mixed
   */
  static Ordered order(SourceText source, List<PastedTime> times, double[] seconds)
      throws FileException {
    List<Integer> asIs = new ArrayList<>();
    for (int i = 0; i < seconds.length; i++) {
      asIs.add(i);
    }
    List<Integer> byBlink = reversedBlinks(times);
    List<Integer> backwards = new ArrayList<>(asIs);
    Collections.reverse(backwards);
    for (List<Integer> order : List.of(asIs, byBlink, backwards)) {
      double[] rising = pick(seconds, order);
      boolean overMidnight = !isRising(rising) && addMidnight(times, rising, RecordingClock.DAY);
      boolean overTwelve = !isRising(rising) && addMidnight(times, rising, RecordingClock.DAY / 2);
      boolean fits = isRising(rising);
      if (fits && (order == asIs || !leapsHalfADay(times, rising))) {
        List<PastedTime> ordered = order.stream().map(times::get).toList();
        return new Ordered(
            ordered,
            Arrays.stream(rising).boxed().toList(),
            notes(order != asIs, overMidnight, overTwelve));
      }
    }
    throw stepBack(source, times, seconds);
  }

  private static List<String> notes(boolean reversed, boolean overMidnight, boolean overTwelve) {
    List<String> notes = new ArrayList<>();
    if (overMidnight) {
      notes.add("the times cross midnight once");
    }
    if (overTwelve) {
      notes.add("the times pass from 12 to 1 once, as on a 12-hour clock");
    }
    if (reversed) {
      notes.add("the times run downwards, as a stopwatch lists them, and were reversed");
    }
    return notes;
  }

  private static FileException stepBack(
      SourceText source, List<PastedTime> times, double[] seconds) {
    int at = 1;
    while (at < seconds.length - 1 && seconds[at] >= seconds[at - 1]) {
      at++;
    }
    PastedTime here = times.get(at);
    return source.fault(
        here.line(),
        here.column(),
        "the times step back from "
            + Numbers.quote(times.get(at - 1).word())
            + " to "
            + Numbers.quote(here.word())
            + "; expected times in order"
            + (looksLikeLevels(seconds)
                ? ", or --rate HZ if these are light levels at an even rate"
                : ""));
  }

  /** Whether many numbers go up and down. */
  private static boolean looksLikeLevels(double[] seconds) {
    int down = 0;
    for (int i = 1; i < seconds.length; i++) {
      down += seconds[i] < seconds[i - 1] ? 1 : 0;
    }
    return seconds.length >= LEVELS_LEAST && down >= seconds.length * LEVELS_DOWN;
  }

  private static boolean isRising(double[] seconds) {
    for (int i = 1; i < seconds.length; i++) {
      if (!(seconds[i] >= seconds[i - 1])) {
        return false;
      }
    }
    return true;
  }

  /** Whether clock times are so far apart that they do not look like a list of one visit. */
  private static boolean leapsHalfADay(List<PastedTime> times, double[] seconds) {
    double longest = 0;
    for (int i = 1; i < seconds.length; i++) {
      longest = Math.max(longest, seconds[i] - seconds[i - 1]);
    }
    return longest > RecordingClock.DAY / 2
        && times.stream().anyMatch(time -> time.time().writing() == TimeText.Writing.HOURS);
  }

  /**
   * Adds a day, or half of one, after the only step down, if all are clock times and it looks like
   * midnight, or like the 1 that follows 12 on a 12-hour clock.
   */
  private static boolean addMidnight(List<PastedTime> times, double[] seconds, double day) {
    int midnight = 0;
    for (int i = 1; i < seconds.length; i++) {
      if (!(seconds[i] >= seconds[i - 1])) {
        if (midnight > 0) {
          return false;
        }
        midnight = i;
      }
    }
    for (PastedTime time : times) {
      boolean clock = time.time().writing() == TimeText.Writing.HOURS || time.time().gap();
      boolean half = day < RecordingClock.DAY;
      boolean outside = time.time().value() >= (half ? day + 3600 : day);
      boolean marked = half && (time.hasHalfDay() || time.time().value() < 3600);
      if (!clock || outside || (marked && !time.isGap())) {
        return false;
      }
    }
    double step = seconds[midnight] + day - seconds[Math.max(0, midnight - 1)];
    if (midnight == 0 || !(step <= MAX_MIDNIGHT_STEP)) {
      return false;
    }
    for (int i = midnight; i < seconds.length; i++) {
      seconds[i] += day;
    }
    return true;
  }

  /** The order in which the blinks run backwards, but each from its on to its off. */
  private static List<Integer> reversedBlinks(List<PastedTime> times) {
    List<Integer> order = new ArrayList<>();
    int end = times.size();
    for (int i = times.size() - 1; i >= 0; i--) {
      if (times.get(i).role() != Role.OFF || i == 0) {
        for (int k = i; k < end; k++) {
          order.add(k);
        }
        end = i;
      }
    }
    return order;
  }

  private static double[] pick(double[] seconds, List<Integer> order) {
    double[] picked = new double[seconds.length];
    for (int i = 0; i < picked.length; i++) {
      picked[i] = seconds[order.get(i)];
    }
    return picked;
  }
}
