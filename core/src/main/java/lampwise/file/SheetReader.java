package lampwise.file;

import lampwise.sheet.CodeSheet;

/** Reads code sheets. */
public final class SheetReader {
  private SheetReader() {}

  /**
   * Reads a sheet.
   *
   * @param name the file's name, for messages
   * @param content its bytes, UTF-8
   * @return the sheet
   * @throws FileException with every fault of the file
   */
  public static CodeSheet read(String name, byte[] content) throws FileException {
    throw new FileException(name, 0, 0, "not built");
  }

  /**
   * The built-in invented sheet.
   *
   * @return the sheet of the name {@code demo}
   */
  public static CodeSheet demo() {
    throw new UnsupportedOperationException();
  }
}
