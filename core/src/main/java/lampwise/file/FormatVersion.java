package lampwise.file;

import java.util.OptionalDouble;

/** The version of a format that a file says of itself. There is only one so far. */
final class FormatVersion {
  private static final String VERSION = "1";

  private FormatVersion() {}

  /**
   * Whether the file may be read on. A newer version is a fault and the only one to tell; another
   * wrong one is a fault among others.
   *
   * @param key the key of the version
   * @param node the file's root
   * @param faults takes what is wrong
   */
  static boolean accept(String key, YamlNode.Table node, FaultList faults) {
    for (YamlNode.Entry entry : node.entries()) {
      if (entry.key().text().equals(key)
          && entry.value() instanceof YamlNode.Text text
          && !text.text().equals(VERSION)) {
        faults.add(text, key + " must be " + VERSION + YamlTable.found(text));
        OptionalDouble number = Quantities.number(text.text());
        return !(number.isPresent() && number.getAsDouble() >= 2);
      }
    }
    return true;
  }
}
