package lampwise.file;

import java.util.List;
import lampwise.light.Recording;

/** Reads recordings from the bytes of a file or of pasted text. */
public final class RecordingReader {
  private RecordingReader() {}

  /**
   * Reads the recordings of a file.
   *
   * @param name the file's name, for messages and as the recording's name
   * @param content its bytes
   * @param options what the user said about it
   * @return one recording or more
   * @throws FileException if the file cannot be read as a recording
   * @throws OptionException if an option cannot be understood or does not fit the file
   */
  public static List<Recording> read(String name, byte[] content, ReadOptions options)
      throws FileException, OptionException {
    throw new FileException(name, 0, 0, "not built");
  }
}
