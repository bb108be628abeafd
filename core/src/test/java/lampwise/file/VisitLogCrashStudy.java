package lampwise.file;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import lampwise.service.Outcome;
import lampwise.service.Visit;

/**
 * Kills writers of a visit log: {@code VisitLogCrashStudy KILLS SEED}. Two processes write to one
 * log as fast as they can and print each row that was acknowledged; one of them is killed at a
 * random moment (the process is destroyed by SIGKILL) and started anew, until there were so many
 * kills. Then every acknowledged row must be there, and no row half read.
 */
final class VisitLogCrashStudy {
  private static final int MOST_MILLIS = 120;
  private static final int NEW_LOG_AFTER = 25;

  private VisitLogCrashStudy() {}

  /**
   * What came out.
   *
   * @param kills how many writers were killed
   * @param acknowledged how many rows were acknowledged
   * @param lost how many of those are not in the log
   * @param extra rows in the log that were written and not acknowledged before the kill
   * @param setAside unfinished rows that were set aside
   */
  record Result(int kills, int acknowledged, int lost, int extra, int setAside) {}

  public static void main(String[] args) throws IOException, InterruptedException {
    PrintStream out = System.out;
    if (args.length == 2 && args[0].equals("write")) {
      write(Path.of(args[1]), out);
    } else if (args.length == 2) {
      out.println(run(Integer.parseInt(args[0]), Long.parseLong(args[1])));
    } else {
      out.println("usage: VisitLogCrashStudy KILLS SEED");
      System.exit(2);
    }
  }

  /** The writer: adds rows for ever and says which are acknowledged. */
  private static void write(Path log, PrintStream out) {
    String writer = Long.toString(ProcessHandle.current().pid());
    for (int i = 0; true; i++) {
      String mark = writer + "-" + i;
      try {
        VisitLog.append(log, visit(mark));
      } catch (FileException e) {
        out.println("failed " + e.getMessage());
        return;
      }
      out.println(mark);
      out.flush();
    }
  }

  private static Visit visit(String mark) {
    return new Visit(
        "2026-11-25T09:40",
        mark,
        "Pier hall, \"east\"",
        Optional.empty(),
        Optional.empty(),
        Visit.Lamp.unseen(),
        List.of(),
        Visit.Done.none(),
        List.of(),
        List.of(),
        Outcome.FIXED,
        "",
        (mark + ", \"long\" \n").repeat(40).strip());
  }

  static Result run(int kills, long seed) throws IOException, InterruptedException {
    Random chance = new Random(seed);
    Result sum = new Result(0, 0, 0, 0, 0);
    for (int done = 0; done < kills; done += NEW_LOG_AFTER) {
      Result part = oneLog(Math.min(NEW_LOG_AFTER, kills - done), chance);
      sum =
          new Result(
              sum.kills() + part.kills(),
              sum.acknowledged() + part.acknowledged(),
              sum.lost() + part.lost(),
              sum.extra() + part.extra(),
              sum.setAside() + part.setAside());
    }
    return sum;
  }

  private static Result oneLog(int kills, Random chance) throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory("visits");
    Path log = folder.resolve("visits.csv");
    List<String> acknowledged = Collections.synchronizedList(new ArrayList<>());
    List<Writer> writers = new ArrayList<>();
    try {
      for (int i = 0; i < 2; i++) {
        writers.add(new Writer(log, acknowledged));
      }
      for (int i = 0; i < kills; i++) {
        int which = chance.nextInt(2);
        writers.get(which).hasBegun();
        Thread.sleep(chance.nextInt(MOST_MILLIS));
        writers.get(which).kill();
        writers.set(which, new Writer(log, acknowledged));
      }
      for (Writer writer : writers) {
        writer.hasBegun();
        writer.kill();
      }
      return counted(folder, log, kills, acknowledged);
    } catch (FileException e) {
      throw new AssertionError("the log cannot be read any more: " + e.getMessage(), e);
    } finally {
      for (Writer writer : writers) {
        writer.kill();
      }
      try (Stream<Path> files = Files.list(folder)) {
        for (Path file : files.toList()) {
          Files.delete(file);
        }
      }
      Files.delete(folder);
    }
  }

  private static Result counted(Path folder, Path log, int kills, List<String> acknowledged)
      throws IOException, FileException {
    Set<String> marks = new HashSet<>();
    for (Visit visit : VisitLog.read(log).visits()) {
      if (!visit.equals(visit(visit.fixture())) || !marks.add(visit.fixture())) {
        throw new AssertionError("half read or doubled: " + visit);
      }
    }
    for (String line : acknowledged) {
      if (line.startsWith("failed")) {
        throw new AssertionError("a writer stopped: " + line);
      }
    }
    int lost = (int) acknowledged.stream().filter(mark -> !marks.contains(mark)).count();
    try (Stream<Path> files = Files.list(folder)) {
      int aside = (int) files.filter(file -> file.toString().contains(".torn-")).count();
      int extra = marks.size() - (acknowledged.size() - lost);
      return new Result(kills, acknowledged.size(), lost, extra, aside);
    }
  }

  /** A process that writes, and the thread that hears what was acknowledged. */
  private static final class Writer {
    private final Process process;
    private final Thread listener;
    private final List<String> heard = Collections.synchronizedList(new ArrayList<>());

    Writer(Path log, List<String> acknowledged) throws IOException {
      process =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-XX:TieredStopAtLevel=1",
                  "-XX:+UseSerialGC",
                  "-Xshare:auto",
                  "-cp",
                  System.getProperty("java.class.path"),
                  VisitLogCrashStudy.class.getName(),
                  "write",
                  log.toString())
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
      listener = new Thread(() -> listen(acknowledged));
      listener.start();
    }

    private void listen(List<String> acknowledged) {
      try (BufferedReader lines =
          new BufferedReader(
              new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
        StringBuilder line = new StringBuilder();
        for (int sign = lines.read(); sign >= 0; sign = lines.read()) {
          if (sign == '\n') {
            acknowledged.add(line.toString());
            heard.add(line.toString());
            line.setLength(0);
          } else {
            line.append((char) sign);
          }
        }
      } catch (IOException e) {
        // The pipe ends with the process.
      }
    }

    /** Waits until it has written something, so that kills do not all hit its start. */
    void hasBegun() throws InterruptedException {
      for (int i = 0; heard.isEmpty() && process.isAlive() && i < 2000; i++) {
        Thread.sleep(5);
      }
      if (heard.isEmpty()) {
        throw new AssertionError("a writer has written nothing");
      }
    }

    void kill() throws InterruptedException {
      process.destroyForcibly().waitFor();
      listener.join();
    }
  }
}
