package lampwise.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import lampwise.file.FileException;
import lampwise.file.OptionException;
import lampwise.file.ReadOptions;
import lampwise.file.RecordingReader;
import lampwise.light.Recording;

/** Where the recordings of a round come from: a folder, or the demonstration that is built in. */
interface RoundFiles {
  /** The files' names, in order. */
  List<String> names();

  /** The recordings of a file; none if it was refused, which has then been told. */
  List<Recording> read(String name, RecordingFiles.Refusals refusals);

  /** A folder of recordings. */
  record Folder(Surroundings here, String folder, List<String> names) implements RoundFiles {
    /** Ends of the names of files that are no recordings. */
    private static final Set<String> OTHERS =
        Set.of(".yaml", ".yml", ".md", ".html", ".json", ".jsonl", ".png", ".svg", ".pdf");

    /**
     * Lists the files right in a folder, by name; hidden ones, those of the round itself and those
     * whose names tell that they are no recordings are left out.
     *
     * @param own the files of the round itself: list, log, report
     * @throws UsageException if it is no folder that can be listed
     */
    static Folder of(Surroundings here, String folder, List<Path> own) throws UsageException {
      Path path = path(here, folder);
      if (!Files.isDirectory(path)) {
        throw new UsageException(
            Layout.clean(folder) + ": no such folder; expected that of the day's recordings");
      }
      List<Path> others = own.stream().map(file -> file.toAbsolutePath().normalize()).toList();
      try (Stream<Path> files = Files.list(path)) {
        List<String> names =
            files
                .filter(Files::isRegularFile)
                .filter(file -> !others.contains(file.toAbsolutePath().normalize()))
                .map(file -> file.getFileName().toString())
                .filter(Folder::canBeOne)
                .sorted()
                .toList();
        return new Folder(here, folder, names);
      } catch (IOException | UncheckedIOException e) {
        throw new UsageException(
            Layout.clean(folder + ": cannot be listed (" + e.getMessage() + ")"));
      }
    }

    private static Path path(Surroundings here, String folder) throws UsageException {
      try {
        return here.folder().resolve(folder);
      } catch (InvalidPathException e) {
        throw new UsageException(Layout.clean(folder) + ": is not the name of a folder");
      }
    }

    private static boolean canBeOne(String name) {
      int point = name.lastIndexOf('.');
      return point != 0
          && !name.contains(".torn-")
          && (point < 0 || !OTHERS.contains(name.substring(point).toLowerCase(Locale.ROOT)));
    }

    @Override
    public List<Recording> read(String name, RecordingFiles.Refusals refusals) {
      String path = Path.of(folder, name).toString();
      return new RecordingFiles(here, ReadOptions.none(), false).read(path, refusals);
    }
  }

  /** The ferry terminal: invented fixtures, visits and recordings that are part of the program. */
  final class Demonstration implements RoundFiles {
    /** Its fixtures. */
    static final String FIXTURES = "fixtures.csv";

    /** Its earlier visits. */
    static final String VISITS = "visits.csv";

    /** The day that it plays on. */
    static final String DAY = "2026-11-25";

    private final List<String> names = new ArrayList<>();

    Demonstration() {
      new String(bytes("recordings.txt"), StandardCharsets.UTF_8).lines().forEach(names::add);
    }

    /** A file of it. */
    static byte[] bytes(String name) {
      String path = "round/" + name;
      try (InputStream in =
          Objects.requireNonNull(RoundFiles.class.getResourceAsStream(path), path)) {
        return in.readAllBytes();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public List<String> names() {
      return List.copyOf(names);
    }

    @Override
    public List<Recording> read(String name, RecordingFiles.Refusals refusals) {
      try {
        return RecordingReader.read(name, bytes(name), ReadOptions.none());
      } catch (FileException e) {
        refusals.refuse(name, e.faults().get(0), e.faults().get(0).toString(), Main.REFUSED);
      } catch (OptionException e) {
        throw new IllegalStateException("there are no options", e);
      }
      return List.of();
    }
  }
}
