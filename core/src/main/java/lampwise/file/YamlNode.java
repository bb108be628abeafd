package lampwise.file;

import java.util.List;

/** One node of a YAML file and where it starts. Lines and columns count characters from 1. */
sealed interface YamlNode {
  /** The line on which the node starts, from 1. */
  int line();

  /** The column in which the node starts, from 1. */
  int column();

  /** What the node is, in words, for messages. */
  String what();

  /**
   * A scalar. Every scalar is text: {@code on}, {@code no} and {@code 5} are words here.
   *
   * @param textColumn the column of the first character of the text if the text stands in the file
   *     on one line, character for character; 0 if it does not (block scalars, escapes)
   */
  record Text(int line, int column, String text, int textColumn) implements YamlNode {
    @Override
    public String what() {
      return text.isEmpty() ? "nothing" : Wording.quote(text);
    }
  }

  /** A sequence. */
  record Items(int line, int column, List<YamlNode> items) implements YamlNode {
    public Items {
      items = List.copyOf(items);
    }

    @Override
    public String what() {
      return "a list";
    }
  }

  /** A mapping; a key may stand in it more than once. */
  record Table(int line, int column, List<Entry> entries) implements YamlNode {
    public Table {
      entries = List.copyOf(entries);
    }

    @Override
    public String what() {
      return "a table of keys";
    }
  }

  /** A key and its value. */
  record Entry(Text key, YamlNode value) {}

  /** A node that was refused already; no further fault is told about it. */
  record Faulty(int line, int column) implements YamlNode {
    @Override
    public String what() {
      return "a fault";
    }
  }
}
