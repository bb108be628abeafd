package lampwise.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The examples of a help text: each line that starts with {@code Example}, with a call of {@code
 * lampwise} in it or in the lines below. Which of a call's words name files the help itself tells:
 * they follow an option that it shows with {@code FILE} or {@code DIR}, or are none's value.
 */
final class HelpExamples {
  /**
   * One example.
   *
   * @param call what it runs
   * @param files the files and folders that it names, in their order
   */
  record Example(ShellExamples.Call call, List<String> files) {
    @Override
    public String toString() {
      return "lampwise " + String.join(" ", call.args());
    }
  }

  private static final String HEADING = "Example";

  /** The program's name where a command starts: in front, or after the bar of a pipe. */
  private static final Pattern PROGRAM = Pattern.compile("(^ *|[|] +)lampwise ");

  private static final Pattern OPTION = Pattern.compile("(--[a-z-]+)(?:=(\\S+))?");

  private HelpExamples() {}

  /** The commands that the help of the program lists. */
  static List<String> commands(String help) {
    List<String> lines = help.lines().toList();
    List<String> commands = new ArrayList<>();
    for (int i = lines.indexOf("Commands:") + 1; !lines.get(i).isBlank(); i++) {
      commands.add(lines.get(i).strip().split(" ", 2)[0]);
    }
    return commands;
  }

  /**
   * The examples of a help text.
   *
   * @param helps each command's help; the text's own examples may call any of them
   * @throws IllegalStateException if one has no call, or more than one
   */
  static List<Example> of(String help, Map<String, String> helps) {
    List<Example> examples = new ArrayList<>();
    for (List<String> lines : blocks(help)) {
      String heading = lines.get(0);
      String after = heading.substring(heading.indexOf(':') + 1);
      StringBuilder block = new StringBuilder("```sh\n");
      block.append(named(after)).append('\n');
      lines.stream().skip(1).forEach(line -> block.append(named(line)).append('\n'));
      List<ShellExamples.Call> calls =
          ShellExamples.of(block.append("```\n").toString()).stream()
              .flatMap(example -> example.calls().stream())
              .toList();
      if (calls.size() != 1) {
        throw new IllegalStateException(calls.size() + " calls of lampwise in: " + lines);
      }
      ShellExamples.Call call = calls.get(0);
      String command = call.args().get(0);
      if (!helps.containsKey(command)) {
        throw new IllegalStateException("there is no command " + command + ": " + lines);
      }
      examples.add(new Example(call, files(call.args(), helps.get(command))));
    }
    return examples;
  }

  private static String named(String line) {
    return PROGRAM.matcher(line).replaceFirst("$1cli/lampwise ");
  }

  private static List<List<String>> blocks(String help) {
    List<List<String>> blocks = new ArrayList<>();
    for (String line : help.lines().toList()) {
      if (line.startsWith(HEADING)) {
        blocks.add(new ArrayList<>());
      }
      if (!blocks.isEmpty()) {
        blocks.get(blocks.size() - 1).add(line);
      }
    }
    return blocks;
  }

  private static List<String> files(List<String> args, String help) {
    Map<String, String> labels = labels(help);
    List<String> files = new ArrayList<>();
    for (int i = 1; i < args.size(); i++) {
      String word = args.get(i);
      String label = "FILE";
      if (word.startsWith("--")) {
        if (!labels.containsKey(word)) {
          throw new IllegalStateException(word + " is not in the help of " + args.get(0));
        }
        label = labels.get(word);
        if (label.isEmpty()) {
          continue;
        }
        i++;
        word = args.get(i);
      }
      boolean builtIn = label.endsWith("|demo") && word.equals("demo");
      if ((label.startsWith("FILE") || label.equals("DIR")) && !builtIn) {
        files.add(word);
      }
    }
    return files;
  }

  /** Each option with what it takes, empty for nothing. */
  private static Map<String, String> labels(String help) {
    Map<String, String> labels = new LinkedHashMap<>();
    for (String line : help.lines().toList()) {
      Matcher option = OPTION.matcher(line.strip());
      if (line.startsWith("      --") && option.lookingAt()) {
        labels.put(option.group(1), option.group(2) == null ? "" : option.group(2));
      }
    }
    return labels;
  }

  /** What can be put into a folder. */
  @FunctionalInterface
  interface Put {
    void into(Path path) throws IOException;
  }

  /**
   * Runs an example in a folder.
   *
   * @param given what puts each file there that an example may read
   * @param made the files and folders that an example may make
   * @param answers what is typed in, unless the example says it
   * @return what is wrong; empty if it ends with the status that it tells, says something, and
   *     makes what it names
   */
  static String faults(
      Example example, Map<String, Put> given, List<String> made, String answers, Path folder)
      throws IOException {
    for (String file : example.files()) {
      if (given.containsKey(file)) {
        given.get(file).into(folder.resolve(file));
      } else if (!made.contains(file)) {
        return example
            + ": names "
            + file
            + ", which is not known here; say in HelpExamplesTest what it holds,"
            + " or that the example makes it";
      }
    }
    ShellExamples.Call call = example.call();
    String input = call.input().isEmpty() ? answers : call.input();
    CommandRun run = CommandRun.Setting.in(folder).run(input, call.args().toArray(String[]::new));
    if (run.status() != call.status()) {
      return example + ": status " + run.status() + ", not " + call.status() + ": " + run.err();
    }
    if (run.out().isBlank()) {
      return example + ": prints nothing";
    }
    for (String file : example.files()) {
      if (!Files.exists(folder.resolve(file))) {
        return example + ": " + file + " was not made";
      }
    }
    return "";
  }
}
