package lampwise.cli;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwise.decode.LampDecoder;
import lampwise.decode.Observation;
import lampwise.decode.Reading;
import lampwise.file.FileFault;
import lampwise.file.ReadOptions;
import lampwise.file.ReadingJson;
import lampwise.light.Recording;
import lampwise.sheet.CodeSheet;

/** One run of the command decode: reads file after file and prints each answer at once. */
final class DecodeRun implements RecordingFiles.Refusals {
  private final Surroundings here;
  private final Optional<CodeSheet> sheet;
  private final Optional<Recording> said;
  private final boolean json;
  private final boolean trace;
  private final boolean several;
  private final LampDecoder decoder = new LampDecoder();
  private final RecordingFiles files;
  private int status = Main.DONE;
  private boolean first = true;

  DecodeRun(
      Surroundings here,
      Optional<CodeSheet> sheet,
      ReadOptions options,
      Optional<Recording> said,
      boolean json,
      boolean trace,
      boolean several) {
    this.here = here;
    this.sheet = sheet;
    this.said = said;
    this.json = json;
    this.trace = trace;
    this.several = several;
    files = new RecordingFiles(here, options, several);
  }

  /** Each recording by itself. */
  int each(List<String> names) {
    for (String name : names) {
      List<Recording> recordings = files.read(name, this);
      for (Recording recording : recordings) {
        answer(name, List.of(recording), several || recordings.size() > 1);
      }
    }
    said.ifPresent(words -> answer(words.origin().name(), List.of(words), several));
    return status;
  }

  /** All recordings as those of one lamp. Without a sheet there is nothing to put together. */
  int together(List<String> names) throws UsageException {
    if (sheet.isEmpty()) {
      return each(names);
    }
    List<Recording> all = new ArrayList<>();
    List<String> read = new ArrayList<>();
    for (String name : names) {
      List<Recording> recordings = files.read(name, this);
      if (!recordings.isEmpty()) {
        read.add(name);
      }
      all.addAll(recordings);
    }
    if (said.isPresent()) {
      all.add(said.get());
      read.add(said.get().origin().name());
    }
    checkOneLamp(all);
    if (!all.isEmpty()) {
      answer(String.join(" + ", read), all, false);
    }
    return status;
  }

  /** Decodes recordings of one lamp and prints the answer. */
  private void answer(String name, List<Recording> recordings, boolean named) {
    String label = recordings.get(0).origin().name();
    try {
      String prefix = json ? "" : prefix(recordings.get(0), named);
      if (sheet.isPresent()) {
        Reading reading = decoder.decode(sheet.get(), recordings);
        if (json) {
          printJson(out -> ReadingJson.reading(out, name, sheet.get(), reading));
        } else {
          print(ReadingText.reading(prefix, sheet.get(), reading));
        }
      } else {
        Observation observation = decoder.observe(recordings.get(0));
        if (json) {
          printJson(out -> ReadingJson.observation(out, name, observation));
        } else {
          print(ReadingText.observation(prefix, observation));
        }
      }
      here.out().flush();
    } catch (RuntimeException e) {
      fault(name, label, e);
    } catch (OutOfMemoryError e) {
      FileFault fault = new FileFault(label, 0, 0, "is too large for the memory at hand");
      refuse(name, fault, fault.toString(), Main.REFUSED);
    }
  }

  /** Recordings that name different fixtures are not of one lamp. */
  static void checkOneLamp(List<Recording> recordings) throws UsageException {
    Set<String> fixtures = new LinkedHashSet<>();
    for (Recording recording : recordings) {
      recording.origin().fixture().ifPresent(fixtures::add);
    }
    if (fixtures.size() > 1) {
      throw new UsageException(
          "--together takes recordings of one lamp, but they name the fixtures "
              + Layout.clean(String.join(", ", fixtures)));
    }
  }

  /** What tells one recording's answer from the others': its file's name, its fixture. */
  static String prefix(Recording recording, boolean named) {
    String fixture = recording.origin().fixture().orElse("");
    if (named) {
      return recording.origin().name() + (fixture.isEmpty() ? "" : ", " + fixture) + ": ";
    }
    return fixture.isEmpty() ? "" : fixture + ": ";
  }

  private void print(List<String> lines) {
    if (!first) {
      here.out().println();
    }
    first = false;
    for (int i = 0; i < lines.size(); i++) {
      boolean strong = i == 0 && here.colour();
      here.out().println(strong ? "\u001b[1m" + lines.get(i) + "\u001b[0m" : lines.get(i));
    }
  }

  /** Prints an object's line whole or not at all. */
  private void printJson(JsonLine line) {
    StringWriter object = new StringWriter();
    try {
      line.writeTo(object);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    here.out().append(object.getBuffer()).append('\n');
  }

  private interface JsonLine {
    void writeTo(Writer out) throws IOException;
  }

  @Override
  public void refuse(String name, FileFault fault, String line, int newStatus) {
    status = Math.max(status, newStatus);
    if (json) {
      printJson(out -> ReadingJson.refused(out, name, fault));
    }
    if (!line.isEmpty()) {
      say(Layout.clean(line));
    }
  }

  @Override
  public void fault(String name, String label, RuntimeException e) {
    status = Math.max(status, Main.REFUSED);
    here.out().flush();
    if (json) {
      FileFault fault = new FileFault(label, 0, 0, "internal fault");
      printJson(out -> ReadingJson.refused(out, name, fault));
    }
    Main.internalFault(label, e, trace, here);
    here.err().flush();
  }

  @Override
  public void cause(Exception e) {
    if (trace) {
      e.printStackTrace(here.err());
      here.err().flush();
    }
  }

  private void say(String line) {
    here.out().flush();
    here.err().println(line);
    here.err().flush();
  }
}
