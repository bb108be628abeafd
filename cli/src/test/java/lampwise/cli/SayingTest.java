package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code decode --saw}: what somebody says instead of a recording. */
class SayingTest {
  @TempDir Path folder;
  private CommandRun.Setting here = CommandRun.Setting.in(Path.of(""));

  @BeforeEach
  void setUp() {
    here = CommandRun.Setting.in(folder);
  }

  private CommandRun decode(String... more) {
    String[] all = new String[more.length + 3];
    all[0] = "decode";
    all[1] = "--sheet";
    all[2] = "demo";
    System.arraycopy(more, 0, all, 3, more.length);
    return here.run("", all);
  }

  @Test
  void aCountAndATimeLeaveTheStatesOfThatCount() {
    CommandRun run = decode("--saw", "3 blinks every 9 to 11 s", "--watched", "40");
    assertEquals(0, run.status());
    assertTrue(run.out().startsWith("undecided: window-covered"), run.out());
    assertTrue(run.out().contains("coil-open"), run.out());
    assertTrue(run.out().contains("what somebody counted who watched for 40 s"), run.out());
  }

  @Test
  void nothingNamesEveryDarkStateAndTheHandThatTellsThemApart() {
    String out = decode("--saw", "nothing", "--watched", "120").out();
    for (String state :
        new String[] {"resting", "no-power", "target-seen", "flushing", "starting", "learning"}) {
      assertTrue(out.contains(state), out);
    }
    assertTrue(out.contains("next: hold a hand or card"), out);
  }

  @Test
  void nothingWithoutATimeIsUnreadable() {
    assertTrue(decode("--saw", "nothing").out().startsWith("unreadable: nothing was seen"));
  }

  @Test
  void wrongWordsAreWrongUseWithTheColumnAndTheRightOnes() {
    CommandRun run = decode("--saw", "3 flashes");
    assertEquals(2, run.status());
    assertEquals("", run.out());
    assertTrue(run.err().contains("column 3"), run.err());
    assertTrue(run.err().contains("3 blinks"), run.err());
    assertEquals(1, run.err().strip().lines().count(), run.err());
  }

  @Test
  void watchedGoesWithSawOnly() {
    CommandRun run = decode("--watched", "40");
    assertEquals(2, run.status());
    assertTrue(run.err().contains("--watched goes with --saw"), run.err());
  }

  @Test
  void withoutASheetThePhraseIsSaidBack() {
    CommandRun run = here.run("", "decode", "--saw", "fast blinks");
    assertEquals(0, run.status());
    assertTrue(run.out().startsWith("fast blinks"), run.out());
  }

  @Test
  void wordsDecideTogetherWithTapsWhatNeitherDoesAlone() throws IOException {
    Files.writeString(folder.resolve("taps.txt"), "2.0 2.22\n");
    String[] words = {"--saw", "3 blinks every 9 to 11 s", "--watched", "40"};
    String[] taps = {"--to", "4", "taps.txt"};
    assertTrue(decode(words).out().startsWith("undecided"), decode(words).out());
    assertTrue(decode(taps).out().startsWith("undecided"), decode(taps).out());
    String[] both = {"--together", words[0], words[1], words[2], words[3], "--to", "4", "taps.txt"};
    assertTrue(decode(both).out().startsWith("window-covered"), decode(both).out());
    assertTrue(decode(both).out().contains("[invented sheet]"), decode(both).out());
  }

  /** The usual visit: a look from aside, then a hand. */
  @Test
  void aHandDecidesTogetherWithIdleDarknessWhatNeitherDoesAlone() throws IOException {
    String head = "lampwise-log: 1\nfixture: north-07\n";
    Files.writeString(folder.resolve("idle.log"), head + "window: 0 to 60 s\ntarget: none\n");
    String hand = head + "window: 0 to 30 s\ntarget: 5 to 20 s\n";
    Files.writeString(folder.resolve("hand.log"), hand + "on 5.3\non 5.6\n");
    Files.writeString(folder.resolve("dead.log"), hand);
    assertTrue(decode("idle.log").out().contains("undecided: resting"), decode("idle.log").out());
    assertTrue(decode("hand.log").out().contains("undecided: resting"), decode("hand.log").out());
    CommandRun both = decode("--together", "idle.log", "hand.log");
    assertTrue(both.out().startsWith("north-07: resting (9"), both.out());
    assertTrue(both.out().contains("hand.log, 5 to 20 s: target-seen"), both.out());
    CommandRun dead = decode("--together", "idle.log", "dead.log");
    assertTrue(dead.out().contains("no-power"), dead.out());
    assertTrue(dead.out().contains("next: measure the cells"), dead.out());
  }
}
