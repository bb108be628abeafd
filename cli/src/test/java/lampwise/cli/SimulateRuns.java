package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import lampwise.file.ReadOptions;
import lampwise.file.RecordingReader;
import lampwise.light.Recording;
import org.junit.jupiter.api.io.TempDir;

/** Runs of {@code simulate} in a folder of their own, and what they wrote. */
abstract class SimulateRuns {
  static final String HURRIED =
      "--state cells-low --seconds 60 --observer hurried --seed 7 --count 100";

  @TempDir Path temp;

  /** Runs the command with the demo sheet; words are split at blanks. */
  CommandRun simulate(String words, String... more) {
    List<String> args = new ArrayList<>(List.of("simulate", "--sheet", "demo"));
    args.addAll(Arrays.asList(words.split(" ")));
    args.addAll(List.of(more));
    return CommandRun.Setting.in(temp).run("", args.toArray(new String[0]));
  }

  /** Runs the command, which must write into a folder, and gives the files' names in order. */
  List<String> made(String folder, String words, String... more) throws IOException {
    List<String> out = new ArrayList<>(List.of("--out", folder));
    out.addAll(List.of(more));
    CommandRun run = simulate(words, out.toArray(new String[0]));
    assertEquals("", run.err());
    assertEquals(0, run.status());
    return names(folder);
  }

  List<String> names(String folder) throws IOException {
    try (Stream<Path> files = Files.list(temp.resolve(folder))) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  String text(String folder, String file) throws IOException {
    return Files.readString(temp.resolve(folder).resolve(file));
  }

  List<String> truths(String folder) throws IOException {
    return text(folder, "truth.jsonl").lines().toList();
  }

  Recording recording(String folder, String file) throws Exception {
    byte[] content = Files.readAllBytes(temp.resolve(folder).resolve(file));
    List<Recording> all = RecordingReader.read(file, content, ReadOptions.none());
    assertEquals(1, all.size());
    return all.get(0);
  }

  /** A checksum of the names and bytes of all files of a folder. */
  String checksum(String folder) throws IOException, NoSuchAlgorithmException {
    MessageDigest sum = MessageDigest.getInstance("SHA-256");
    for (String name : names(folder)) {
      sum.update((name + "\n").getBytes(StandardCharsets.UTF_8));
      sum.update(Files.readAllBytes(temp.resolve(folder).resolve(name)));
    }
    return HexFormat.of().formatHex(sum.digest());
  }
}
