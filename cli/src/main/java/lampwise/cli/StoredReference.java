package lampwise.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.SortedMap;
import java.util.concurrent.ConcurrentSkipListMap;
import lampwise.sim.Mix;
import lampwise.sim.score.Cell;

/**
 * The reference decoders' answers, kept in a file: a line for each, with a checksum of all that it
 * depends on but the recording's number, which reference it is, that number, and the probabilities.
 */
final class StoredReference {
  /** Changes whenever the reference decoder or the recordings do. */
  private static final String FIRST_LINE = "lampwise-reference: 2";

  private static final int CHECKSUM_DIGITS = 24;

  /** Words of a line before its probabilities. */
  private static final int KEY_WORDS = 3;

  /** Which of the references. */
  enum Kind {
    /** It is told what is shown that the sheet does not list. */
    TOLD("told"),
    /** It has the same candidates as a decoder. */
    SAME("same");

    private final String word;

    Kind(String word) {
      this.word = word;
    }
  }

  private final Surroundings here;
  private final Optional<String> name;
  private final SortedMap<String, double[]> answers = new ConcurrentSkipListMap<>();

  private StoredReference(Surroundings here, Optional<String> name) {
    this.here = here;
    this.name = name;
  }

  /**
   * Reads the file if it is there.
   *
   * @param name the file; if empty, nothing is kept
   * @throws UsageException if it cannot be read or is no such file
   */
  static StoredReference open(Surroundings here, Optional<String> name) throws UsageException {
    StoredReference stored = new StoredReference(here, name);
    try {
      if (name.isPresent() && Files.exists(stored.path())) {
        stored.read(Files.readString(stored.path()));
      }
    } catch (IOException e) {
      throw new UsageException(
          Layout.clean(name.orElse("") + ": cannot be read (" + e.getMessage() + ")"));
    }
    return stored;
  }

  private Path path() throws UsageException {
    String file = name.orElse("");
    try {
      if (!file.isEmpty()) {
        return here.folder().resolve(file);
      }
    } catch (InvalidPathException e) {
      // Said below.
    }
    throw new UsageException(
        "--stored takes the name of a file, not \"" + Layout.clean(file) + "\"");
  }

  private void read(String text) throws UsageException {
    String[] lines = text.split("\n", -1);
    if (!lines[0].equals(FIRST_LINE)) {
      throw fault(1, "expected the line \"" + FIRST_LINE + "\": another file, or another version");
    }
    for (int i = 1; i < lines.length; i++) {
      String[] words = lines[i].split(" ", -1);
      if (lines[i].isEmpty() && i == lines.length - 1) {
        return;
      }
      if (words.length < KEY_WORDS + 2) {
        throw fault(i + 1, "expected a checksum, told or same, a number and probabilities");
      }
      double[] chances = new double[words.length - KEY_WORDS];
      double sum = 0;
      for (int k = 0; k < chances.length; k++) {
        chances[k] = probability(words[k + KEY_WORDS], i + 1);
        sum += chances[k];
      }
      if (!(Math.abs(sum - 1) < 1e-6)) {
        throw fault(i + 1, "the probabilities do not sum to 1");
      }
      answers.put(words[0] + " " + words[1] + " " + words[2], chances);
    }
    throw fault(lines.length, "the last line is not whole");
  }

  private double probability(String word, int line) throws UsageException {
    try {
      double value = Double.parseDouble(word);
      if (value >= 0 && value <= 1) {
        return value;
      }
    } catch (NumberFormatException e) {
      // Said below.
    }
    throw fault(line, "expected a probability, not " + word);
  }

  private UsageException fault(int line, String what) {
    return new UsageException(
        Layout.clean(name.orElse("") + ": line " + line + ": " + what + "; --stored"));
  }

  /** What an answer depends on besides the recording's number. */
  static String key(Mix mix, Cell cell, long seed) {
    String all = mix + "\n" + cell + "\n" + cell.watching().settings() + "\n" + seed;
    try {
      byte[] sum =
          MessageDigest.getInstance("SHA-256").digest(all.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(sum).substring(0, CHECKSUM_DIGITS);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private static String line(String key, Kind kind, int number) {
    return key + " " + kind.word + " " + number;
  }

  /** A kept answer. */
  Optional<double[]> answer(String key, Kind kind, int number) {
    return Optional.ofNullable(answers.get(line(key, kind, number)));
  }

  /** Keeps an answer; any thread may. */
  void keep(String key, Kind kind, int number, double[] answer) {
    answers.put(line(key, kind, number), answer);
  }

  /**
   * Writes all answers to the file, if there is one to be.
   *
   * @throws IOException if it cannot be written
   */
  void write() throws IOException, UsageException {
    if (name.isEmpty()) {
      return;
    }
    StringBuilder text = new StringBuilder(FIRST_LINE).append('\n');
    answers.forEach(
        (key, answer) -> {
          text.append(key);
          for (double probability : answer) {
            text.append(' ').append(probability);
          }
          text.append('\n');
        });
    OutputFiles.put(path(), text.toString().getBytes(StandardCharsets.UTF_8), true);
  }
}
