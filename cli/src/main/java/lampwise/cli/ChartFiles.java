package lampwise.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import lampwise.light.Recording;

/** Names the files of charts and writes them. No file is written twice in one run. */
final class ChartFiles {
  private final Surroundings here;
  private final Optional<String> out;
  private final boolean force;
  private final Set<String> used = new HashSet<>();

  /**
   * Takes what the user asked for.
   *
   * @param out the name of the file, or of the first of several
   * @param force whether a file of that name may be replaced
   */
  ChartFiles(Surroundings here, Optional<String> out, boolean force) {
    this.here = here;
    this.out = out;
    this.force = force;
  }

  /**
   * A name for the next chart: the one asked for, or the recording's own; where it is used, with
   * the fixture or a number.
   *
   * @param file the recording's file, as named on the command line
   */
  String next(String file, Recording recording) {
    String name = out.orElseGet(() -> stem(file) + ChartImage.PNG.ending());
    int point = name.lastIndexOf('.');
    String start = name.substring(0, point);
    String ending = name.substring(point);
    Optional<String> fixture = recording.origin().fixture().map(ChartFiles::plain);
    if (fixture.isPresent() && !fixture.get().isEmpty() && out.isEmpty()) {
      start = start + "-" + fixture.get();
    }
    String free = start + ending;
    for (int number = 2; !used.add(free.toLowerCase(Locale.ROOT)); number++) {
      free = start + "-" + number + ending;
    }
    return free;
  }

  /** The last part of a path without its ending. */
  private static String stem(String file) {
    String name = file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
    int point = name.lastIndexOf('.');
    String stem = point > 0 ? name.substring(0, point) : name;
    return stem.isEmpty() || stem.equals(RecordingFiles.STANDARD_INPUT) ? "chart" : stem;
  }

  /** Letters and digits of a text, everything else a hyphen. */
  private static String plain(String text) {
    StringBuilder plain = new StringBuilder();
    text.codePoints()
        .limit(60)
        .forEach(
            c -> {
              if (Character.isLetterOrDigit(c)) {
                plain.appendCodePoint(c);
              } else if (plain.length() > 0 && plain.charAt(plain.length() - 1) != '-') {
                plain.append('-');
              }
            });
    int end = plain.length();
    return end > 0 && plain.charAt(end - 1) == '-' ? plain.substring(0, end - 1) : plain.toString();
  }

  /** Whether there is a file of that name that must stay. */
  boolean stands(String name) {
    try {
      return !force && Files.exists(here.folder().resolve(name));
    } catch (InvalidPathException e) {
      return false;
    }
  }

  /**
   * Writes a file.
   *
   * @return what went wrong, one line; empty if nothing did
   */
  Optional<String> write(String name, byte[] bytes) {
    try {
      OutputFiles.put(here.folder().resolve(name), bytes, force);
      return Optional.empty();
    } catch (FileAlreadyExistsException e) {
      return Optional.of(standing(name));
    } catch (NoSuchFileException e) {
      return Optional.of(name + ": cannot be written: there is no such folder");
    } catch (IOException | InvalidPathException e) {
      return Optional.of(name + ": cannot be written (" + e.getMessage() + ")");
    }
  }

  static String standing(String name) {
    return name + ": exists already; --force replaces it, --out names another file";
  }
}
