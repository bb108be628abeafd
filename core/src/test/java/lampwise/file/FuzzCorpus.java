package lampwise.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** The inputs that a fuzzer kept for each reader, one archive a reader. */
enum FuzzCorpus {
  /** Recordings of any shape. */
  RECORDINGS("Recordings", FuzzTargets.Recordings::fuzzerTestOneInput),
  /** Lampwise logs. */
  LOGS("Logs", FuzzTargets.Logs::fuzzerTestOneInput),
  /** Code sheets. */
  SHEETS("Sheets", FuzzTargets.Sheets::fuzzerTestOneInput),
  /** Guides. */
  GUIDES("Guides", FuzzTargets.Guides::fuzzerTestOneInput),
  /** A site's figures. */
  SITES("Sites", FuzzTargets.Sites::fuzzerTestOneInput),
  /** Visits that were left. */
  SESSIONS("Sessions", FuzzTargets.Sessions::fuzzerTestOneInput),
  /** Rhythm phrases. */
  PHRASES("Phrases", FuzzTargets.Phrases::fuzzerTestOneInput),
  /** Visit logs. */
  VISITS("Visits", FuzzTargets.Visits::fuzzerTestOneInput),
  /** Lists of fixtures. */
  FIXTURES("Fixtures", FuzzTargets.Fixtures::fuzzerTestOneInput);

  private static final Path FOLDER = Path.of("src", "test", "fuzz");

  private final String target;
  private final Consumer<byte[]> reader;

  FuzzCorpus(String target, Consumer<byte[]> reader) {
    this.target = target;
    this.reader = reader;
  }

  String target() {
    return target;
  }

  Path archive() {
    return FOLDER.resolve(target + ".zip");
  }

  void feed(byte[] content) {
    reader.accept(content);
  }

  /** The inputs by name; none if there is no archive. */
  Map<String, byte[]> inputs() {
    Map<String, byte[]> inputs = new TreeMap<>();
    if (!Files.exists(archive())) {
      return inputs;
    }
    try (InputStream in = Files.newInputStream(archive());
        ZipInputStream zip = new ZipInputStream(in)) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        inputs.put(entry.getName(), zip.readAllBytes());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return inputs;
  }

  /** Packs inputs, the same bytes for the same inputs. */
  static void pack(Map<String, byte[]> inputs, Path to) throws IOException {
    try (OutputStream out = Files.newOutputStream(to);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Map.Entry<String, byte[]> input : new TreeMap<>(inputs).entrySet()) {
        ZipEntry entry = new ZipEntry(input.getKey());
        entry.setLastModifiedTime(FileTime.fromMillis(0));
        zip.putNextEntry(entry);
        zip.write(input.getValue());
        zip.closeEntry();
      }
    }
  }
}
