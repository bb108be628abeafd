package lampwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.decode.LampDecoder;
import lampwise.decode.Reading;
import lampwise.file.FileFault;
import lampwise.file.ReadOptions;
import lampwise.light.Recording;
import lampwise.sheet.CodeSheet;

/** One run of the command chart: reads file after file and draws each recording. */
final class ChartRun implements RecordingFiles.Refusals {
  /**
   * What the user asked for besides the recordings.
   *
   * @param sheet the code sheet
   * @param options how to read files
   * @param image which kind of file to write
   * @param width pixels
   * @param trace whether to show where a fault of the program is
   */
  record Asked(
      Optional<CodeSheet> sheet, ReadOptions options, ChartImage image, int width, boolean trace) {}

  private record Named(String name, Recording recording) {}

  private final Surroundings here;
  private final Asked asked;
  private final RecordingFiles files;
  private final ChartFiles charts;
  private final LampDecoder decoder = new LampDecoder();
  private int status = Main.DONE;

  ChartRun(Surroundings here, Asked asked, ChartFiles charts, boolean several) {
    this.here = here;
    this.asked = asked;
    this.charts = charts;
    files = new RecordingFiles(here, asked.options(), several);
  }

  /** Draws each recording of each file, and what was said. */
  int run(List<String> names, Optional<Recording> said, boolean together) throws UsageException {
    List<Named> all = new ArrayList<>();
    for (String name : names) {
      for (Recording recording : files.read(name, this)) {
        Named named = new Named(name, recording);
        if (together) {
          all.add(named);
        } else {
          draw(List.of(named));
        }
      }
    }
    if (said.isPresent()) {
      Named named = new Named("said", said.get());
      if (together) {
        all.add(named);
      } else {
        draw(List.of(named));
      }
    }
    if (together && !all.isEmpty()) {
      DecodeRun.checkOneLamp(all.stream().map(Named::recording).toList());
      draw(all);
    }
    return status;
  }

  /** Reads recordings of one lamp and draws each. */
  private void draw(List<Named> named) {
    List<Recording> recordings = named.stream().map(Named::recording).toList();
    Named first = named.get(0);
    try {
      Optional<CodeSheet> sheet = asked.sheet();
      Optional<Reading> reading = sheet.map(known -> decoder.decode(known, recordings));
      for (int i = 0; i < named.size(); i++) {
        ChartSubject subject =
            reading.isPresent()
                ? ChartSubject.of(sheet.orElseThrow(), reading.get(), i)
                : ChartSubject.of(decoder.observe(recordings.get(i)));
        OptionalDouble blink =
            sheet.isPresent() ? sheet.get().blinkSeconds() : OptionalDouble.empty();
        write(named.get(i), subject, blink);
      }
    } catch (RuntimeException e) {
      fault(first.name(), first.recording().origin().name(), e);
    } catch (OutOfMemoryError e) {
      String label = first.recording().origin().name();
      refused(label + ": is too large for the memory at hand", Main.REFUSED);
    }
  }

  private void write(Named named, ChartSubject subject, OptionalDouble blink) {
    String file = charts.next(named.name(), named.recording());
    if (charts.stands(file)) {
      refused(ChartFiles.standing(file), Main.REFUSED);
      return;
    }
    byte[] bytes = asked.image().bytes(new ChartPicture(subject, blink, asked.width()));
    Optional<String> fault = charts.write(file, bytes);
    if (fault.isPresent()) {
      refused(fault.get(), Main.REFUSED);
    } else {
      String tag = asked.sheet().map(ChartSubject::tag).orElse("");
      here.out().println(Layout.clean(file + ": " + tag + subject.title()));
      here.out().flush();
    }
  }

  @Override
  public void refuse(String name, FileFault fault, String line, int newStatus) {
    refused(line, newStatus);
  }

  private void refused(String line, int newStatus) {
    status = Math.max(status, newStatus);
    if (!line.isEmpty()) {
      here.out().flush();
      here.err().println(Layout.clean(line));
      here.err().flush();
    }
  }

  @Override
  public void fault(String name, String label, RuntimeException fault) {
    status = Math.max(status, Main.REFUSED);
    here.out().flush();
    Main.internalFault(label, fault, asked.trace(), here);
    here.err().flush();
  }

  @Override
  public void cause(Exception cause) {
    if (asked.trace()) {
      cause.printStackTrace(here.err());
      here.err().flush();
    }
  }
}
