package lampwise.cli;

import java.util.ArrayList;
import java.util.List;

/**
 * The commands of a Markdown page's {@code sh} blocks, each block with what the {@code text} block
 * after it shows. Of the shell only what such examples need is understood: words, quotes, a
 * backslash at the end of a line, and {@code printf '...' |} before a command.
 */
final class ShellExamples {
  /**
   * One block.
   *
   * @param line where it starts in the page, from 1
   * @param calls its calls of {@code cli/lampwise}
   * @param shown the lines of the text block that follows with only blank lines between; empty if
   *     there is none
   */
  record Example(int line, List<Call> calls, List<String> shown) {}

  /**
   * One call.
   *
   * @param input what printf writes into it
   * @param args the words after {@code cli/lampwise}
   * @param status the exit status that a comment such as {@code # status 1} promises, else 0
   */
  record Call(String input, List<String> args, int status) {
    Call(String input, List<String> args) {
      this(input, args, 0);
    }
  }

  private static final String STATUS = "# status ";

  private static final String PROGRAM = "cli/lampwise";

  private ShellExamples() {}

  /** The examples of a page; blocks without a call of the program are left out. */
  static List<Example> of(String page) {
    List<Example> examples = new ArrayList<>();
    List<String> lines = page.lines().toList();
    int at = 0;
    while (at < lines.size()) {
      if (!lines.get(at).strip().equals("```sh")) {
        at++;
        continue;
      }
      int start = at + 1;
      int end = fence(lines, start);
      List<Call> calls = calls(lines.subList(start, end));
      at = end + 1;
      int next = at;
      while (next < lines.size() && lines.get(next).isBlank()) {
        next++;
      }
      List<String> shown = List.of();
      if (next < lines.size() && lines.get(next).strip().equals("```text")) {
        at = fence(lines, next + 1);
        shown = List.copyOf(lines.subList(next + 1, at));
      }
      if (!calls.isEmpty()) {
        examples.add(new Example(start, calls, shown));
      }
    }
    return examples;
  }

  private static int fence(List<String> lines, int from) {
    int at = from;
    while (at < lines.size() && !lines.get(at).strip().equals("```")) {
      at++;
    }
    return at;
  }

  private static List<Call> calls(List<String> lines) {
    List<Call> calls = new ArrayList<>();
    StringBuilder joined = new StringBuilder();
    for (String line : lines) {
      if (line.endsWith("\\")) {
        joined.append(line, 0, line.length() - 1);
        continue;
      }
      List<String> words = words(joined.append(line).toString());
      int comment = joined.indexOf(STATUS);
      int status =
          comment < 0 ? 0 : Integer.parseInt(joined.substring(comment + STATUS.length()).strip());
      joined.setLength(0);
      if (!words.isEmpty() && words.get(0).equals(PROGRAM)) {
        calls.add(new Call("", words.subList(1, words.size()), status));
      } else if (words.size() > 3
          && words.get(0).equals("printf")
          && words.get(2).equals("|")
          && words.get(3).equals(PROGRAM)) {
        calls.add(new Call(printf(words.get(1)), words.subList(4, words.size()), status));
      } else if (words.contains(PROGRAM)) {
        throw new IllegalStateException("this call is not understood: " + words);
      }
    }
    return calls;
  }

  /** The words of a line; an unquoted {@code #} at the start of a word ends it. */
  static List<String> words(String line) {
    List<String> words = new ArrayList<>();
    StringBuilder word = new StringBuilder();
    boolean inside = false;
    char quote = 0;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (quote != 0) {
        if (c == quote) {
          quote = 0;
        } else {
          word.append(c);
        }
      } else if (c == '\'' || c == '"') {
        quote = c;
        inside = true;
      } else if (c == ' ') {
        if (inside) {
          words.add(word.toString());
        }
        word.setLength(0);
        inside = false;
      } else if (c == '#' && !inside) {
        break;
      } else {
        word.append(c);
        inside = true;
      }
    }
    if (inside) {
      words.add(word.toString());
    }
    return words;
  }

  /** What printf writes for a format without arguments. */
  private static String printf(String format) {
    return format
        .replace("%%", "%")
        .replace("\\n", "\n")
        .replace("\\t", "\t")
        .replace("\\\\", "\\");
  }

  /**
   * Runs an example.
   *
   * @return what is wrong; empty if every call ends with status 0 and the output is what is shown,
   *     where a line {@code ...} stands for any number of lines
   */
  static String faults(Example example, CommandRun.Setting setting) {
    StringBuilder output = new StringBuilder();
    StringBuilder faults = new StringBuilder();
    for (Call call : example.calls()) {
      CommandRun run = setting.run(call.input(), call.args().toArray(new String[0]));
      output.append(run.out());
      if (run.status() != call.status()) {
        faults.append("status " + run.status() + " of " + call.args() + ": " + run.err() + "\n");
      }
    }
    List<String> lines = output.toString().lines().map(String::stripTrailing).toList();
    List<String> shown = example.shown().stream().map(String::stripTrailing).toList();
    if (!shown.isEmpty() && !matches(shown, lines)) {
      faults.append("the output is not what is shown, but\n").append(output);
    }
    return faults.isEmpty() ? "" : "line " + example.line() + ": " + faults;
  }

  private static boolean matches(List<String> shown, List<String> lines) {
    if (shown.isEmpty()) {
      return lines.isEmpty();
    }
    List<String> rest = shown.subList(1, shown.size());
    if (shown.get(0).strip().equals("...")) {
      for (int skip = 0; skip <= lines.size(); skip++) {
        if (matches(rest, lines.subList(skip, lines.size()))) {
          return true;
        }
      }
      return false;
    }
    return !lines.isEmpty()
        && shown.get(0).equals(lines.get(0))
        && matches(rest, lines.subList(1, lines.size()));
  }
}
