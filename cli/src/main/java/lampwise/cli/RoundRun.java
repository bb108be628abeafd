package lampwise.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.file.FileFault;
import lampwise.light.Recording;
import lampwise.rhythm.Phrase;
import lampwise.service.Fixture;
import lampwise.service.LampRead;
import lampwise.service.Round;
import lampwise.sheet.CodeSheet;

/** Reads the recordings of a round, several at once, and keeps of each what the report needs. */
final class RoundRun {
  private static final long LOOK_MILLIS = 100;

  private final Surroundings here;
  private final RoundFiles files;
  private final RoundJoin join;
  private final Map<String, CodeSheet> sheets;
  private final boolean trace;
  private final LampDecoder decoder = new LampDecoder();
  private final Answer[] answers;
  private final AtomicInteger next = new AtomicInteger();
  private final AtomicInteger done = new AtomicInteger();

  /** What one file gave: its readings by fixture, or why there is none. */
  private record Answer(
      Map<Fixture, LampRead> readings, List<Round.Unused> strays, List<Round.Unused> refused) {
    static Answer none() {
      return new Answer(new LinkedHashMap<>(), new ArrayList<>(), new ArrayList<>());
    }
  }

  /**
   * Prepares a run.
   *
   * @param sheets the sheets by the ids of the fixtures; one that is not there has none
   */
  RoundRun(
      Surroundings here,
      RoundFiles files,
      List<Fixture> fixtures,
      Map<String, CodeSheet> sheets,
      boolean trace) {
    this.here = here;
    this.files = files;
    this.join = new RoundJoin(fixtures);
    this.sheets = sheets;
    this.trace = trace;
    answers = new Answer[files.names().size()];
    Arrays.setAll(answers, i -> Answer.none());
  }

  /** Reads all, with so many threads. */
  void run(int threads) {
    Progress progress = new Progress(here, answers.length, System::nanoTime);
    List<Thread> workers = new ArrayList<>();
    for (int i = 0; i < Math.min(threads, Math.max(1, answers.length)); i++) {
      Thread worker = new Thread(this::work, "round-" + i);
      worker.start();
      workers.add(worker);
    }
    for (Thread worker : workers) {
      while (worker.isAlive()) {
        try {
          worker.join(LOOK_MILLIS);
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
          next.set(answers.length);
        }
        progress.done(done.get());
      }
    }
    progress.end();
  }

  private void work() {
    List<String> names = files.names();
    for (int i = next.getAndIncrement(); i < names.size(); i = next.getAndIncrement()) {
      answers[i] = answer(names.get(i));
      done.incrementAndGet();
    }
  }

  private Answer answer(String name) {
    Answer answer = Answer.none();
    Told told = new Told(name, answer);
    try {
      Map<Fixture, List<Recording>> byFixture = new LinkedHashMap<>();
      for (Recording recording : files.read(name, told)) {
        RoundJoin.Joined joined = join.of(name, recording);
        if (joined.fixture().isEmpty()) {
          answer.strays().add(new Round.Unused(name, joined.why()));
        } else {
          byFixture
              .computeIfAbsent(joined.fixture().get(), fixture -> new ArrayList<>())
              .add(recording);
        }
      }
      byFixture.forEach((fixture, recordings) -> decode(name, fixture, recordings, answer));
    } catch (RuntimeException e) {
      told.fault(name, name, e);
    } catch (OutOfMemoryError e) {
      answer.refused().add(new Round.Unused(name, "is too large for the memory at hand"));
    }
    return answer;
  }

  private void decode(String name, Fixture fixture, List<Recording> recordings, Answer answer) {
    Optional<CodeSheet> sheet = Optional.ofNullable(sheets.get(fixture.id()));
    if (sheet.isEmpty()) {
      answer
          .refused()
          .add(
              new Round.Unused(
                  name, "the list names no sheet for " + fixture.id() + "; give --sheet FILE"));
      return;
    }
    Reading reading = decoder.decode(sheet.get(), recordings);
    String observed = reading.observed().map(Phrase::print).orElse("");
    answer
        .readings()
        .put(fixture, LampRead.of(name, sheet.get(), reading, observed, RoundStrip.of(reading)));
  }

  /** Keeps why a file was not read. */
  private final class Told implements RecordingFiles.Refusals {
    private final String name;
    private final Answer answer;

    Told(String name, Answer answer) {
      this.name = name;
      this.answer = answer;
    }

    @Override
    public void refuse(String path, FileFault fault, String line, int status) {
      String place =
          fault.line() == 0
              ? ""
              : "line "
                  + fault.line()
                  + (fault.column() == 0 ? "" : ", column " + fault.column())
                  + ": ";
      answer.refused().add(new Round.Unused(name, place + fault.message()));
    }

    @Override
    public void fault(String path, String label, RuntimeException e) {
      answer.refused().add(new Round.Unused(name, "internal fault"));
      synchronized (here) {
        Main.internalFault(label, e, trace, here);
      }
    }

    @Override
    public void cause(Exception e) {
      if (trace) {
        synchronized (here) {
          e.printStackTrace(here.err());
        }
      }
    }
  }

  /** The readings by the ids of their fixtures, in the order of the files. */
  Map<String, List<LampRead>> readings() {
    Map<String, List<LampRead>> all = new LinkedHashMap<>();
    for (Answer answer : answers) {
      answer
          .readings()
          .forEach(
              (fixture, read) ->
                  all.computeIfAbsent(fixture.id(), id -> new ArrayList<>()).add(read));
    }
    return all;
  }

  /** Recordings that belong to no fixture. */
  List<Round.Unused> strays() {
    List<Round.Unused> all = new ArrayList<>();
    for (Answer answer : answers) {
      all.addAll(answer.strays());
    }
    return all;
  }

  /** Files that could not be read. */
  List<Round.Unused> refused() {
    List<Round.Unused> all = new ArrayList<>();
    for (Answer answer : answers) {
      all.addAll(answer.refused());
    }
    return all;
  }
}
