package lampwise;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Finds the files of the folder testdata from a module's folder. */
public final class Testdata {
  private Testdata() {}

  /**
   * The path of a file in testdata.
   *
   * @param first the first name under testdata
   * @param more the names below it
   * @return the path
   */
  public static Path path(String first, String... more) {
    return Path.of("..", "testdata").resolve(Path.of(first, more));
  }

  /**
   * The bytes of a file in testdata.
   *
   * @param first the first name under testdata
   * @param more the names below it
   * @return the bytes
   */
  public static byte[] bytes(String first, String... more) {
    try {
      return Files.readAllBytes(path(first, more));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
