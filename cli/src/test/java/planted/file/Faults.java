package planted.file;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Date;
import picocli.CommandLine;

/** Uses a layer below its own, prints, reads the clock, and knows the command line's libraries. */
final class Faults {
  static Object arrow() {
    return new planted.sim.Thing();
  }

  static void printsOut() {
    System.out.println();
  }

  static void printsErr() {
    System.err.println();
  }

  static void printsTrace(Exception e) {
    e.printStackTrace();
  }

  static long millis() {
    return System.currentTimeMillis();
  }

  static long nanos() {
    return System.nanoTime();
  }

  static Object instant() {
    return Instant.now();
  }

  static Object localDate(ZoneId zone) {
    return LocalDate.now(zone);
  }

  static Object clock() {
    return Clock.systemUTC();
  }

  static Object date() {
    return new Date();
  }

  static Object zone() {
    return ZoneId.systemDefault();
  }

  static Object picocli() {
    return CommandLine.Help.Ansi.OFF;
  }

  static Object picture() {
    return new java.awt.Point();
  }
}
