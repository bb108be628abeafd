package lampwise.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Asks on standard output and takes answers line by line from standard input. */
final class Questions {
  /** The answers ended before the last question. */
  static final class Ended extends Exception {
    private static final long serialVersionUID = 1L;
  }

  private final Surroundings here;
  private final BufferedReader answers;

  Questions(Surroundings here) {
    this.here = here;
    this.answers = new BufferedReader(new InputStreamReader(here.in(), StandardCharsets.UTF_8));
  }

  /**
   * Asks once.
   *
   * @param question what is asked
   * @param offered what an empty answer stands for; empty for nothing
   * @return the answer, or what was offered
   * @throws Ended if there are no more answers
   */
  String ask(String question, String offered) throws Ended {
    List<String> lines = lines(question + (offered.isEmpty() ? "" : " [" + offered + "]") + ":");
    for (int i = 0; i < lines.size() - 1; i++) {
      here.out().println(lines.get(i));
    }
    here.out().print(lines.get(lines.size() - 1));
    if (here.terminal()) {
      here.out().print(' ');
    } else {
      here.out().println();
    }
    here.out().flush();
    try {
      String answer = answers.readLine();
      if (answer == null) {
        throw new Ended();
      }
      String clean = Layout.clean(answer);
      return clean.isEmpty() ? offered : clean;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Says something. */
  void say(String text) {
    lines(text).forEach(here.out()::println);
  }

  /** The text in lines, each as far in as the first. */
  private static List<String> lines(String text) {
    int in = 0;
    while (in < text.length() && text.charAt(in) == ' ') {
      in++;
    }
    String indent = text.substring(0, in);
    int width = Layout.WIDTH - in;
    return Layout.wrap(text, width, width).stream().map(line -> indent + line).toList();
  }
}
