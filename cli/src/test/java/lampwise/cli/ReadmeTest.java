package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What README.md shows is what the program does. */
class ReadmeTest {
  private static final CommandRun.Setting ROOT = CommandRun.Setting.in(CommandRun.root());

  private static final String SAMPLE =
      """
      # Sample

      ```sh
      # a comment, and a command that is not ours
      mvn -q package
      cli/lampwise --help   # asks for help
      ```

      ```text
      Usage: lampwise COMMAND [OPTION...] [FILE...]
      ...
      Example: lampwise decode --sheet unit.sheet.yaml tapped.txt
      ```

      ```sh
      printf '3.1 6.2\\n9.3%%' | cli/lampwise decode --to 12 \\
          --event "power-up@0 s" ''
      ```

      Some words.

      ```text
      no output of the block above
      ```
      """;

  @Test
  void theSampleIsUnderstood() {
    List<ShellExamples.Example> examples = ShellExamples.of(SAMPLE);
    assertEquals(2, examples.size());
    assertEquals(List.of(new ShellExamples.Call("", List.of("--help"))), examples.get(0).calls());
    assertEquals(3, examples.get(0).shown().size());
    assertEquals(
        List.of(
            new ShellExamples.Call(
                "3.1 6.2\n9.3%", List.of("decode", "--to", "12", "--event", "power-up@0 s", ""))),
        examples.get(1).calls());
    assertEquals(List.of(), examples.get(1).shown());
  }

  @Test
  void aCallThatIsNotUnderstoodIsNotPassedOver() {
    String page = "```sh\ncat a.txt | cli/lampwise decode\n```\n";
    assertThrows(IllegalStateException.class, () -> ShellExamples.of(page));
  }

  @Test
  void aRightExampleHasNoFaultsAndAWrongOneHas() {
    ShellExamples.Example right = ShellExamples.of(SAMPLE).get(0);
    assertEquals("", ShellExamples.faults(right, ROOT));
    ShellExamples.Example changed = ShellExamples.of(SAMPLE.replace("Usage: l", "Use: l")).get(0);
    assertTrue(ShellExamples.faults(changed, ROOT).contains("not what is shown"));
    ShellExamples.Example cut = ShellExamples.of(SAMPLE.replace("\n...\n", "\n")).get(0);
    assertTrue(ShellExamples.faults(cut, ROOT).contains("not what is shown"));
    ShellExamples.Example failing = ShellExamples.of(SAMPLE.replace("--help", "--hlep")).get(0);
    assertTrue(ShellExamples.faults(failing, ROOT).contains("status 2"));
  }

  @Test
  void theReadmeHolds() throws IOException {
    Path readme = CommandRun.root().resolve("README.md");
    assertTrue(Files.isRegularFile(readme), "README.md is missing in the project's root");
    List<ShellExamples.Example> examples = ShellExamples.of(Files.readString(readme));
    assertFalse(examples.isEmpty(), "README.md shows no call of cli/lampwise");
    StringBuilder faults = new StringBuilder();
    for (ShellExamples.Example example : examples) {
      faults.append(ShellExamples.faults(example, ROOT));
    }
    assertEquals("", faults.toString());
  }
}
