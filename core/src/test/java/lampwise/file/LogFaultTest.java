package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every fault of a log has its line, its column and what was expected. */
class LogFaultTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "windw: 0 to 60 s | 2:1: unknown key \"windw\"; did you mean \"window\"?",
        "Event: red | 2:1: unknown key \"Event\"; did you mean \"event\"?",
        "zzz: red | 2:1: unknown key \"zzz\"; known are fixture, window, target, event, covered, saw",
        "lampwise-log: 1 | 2:1: a second log starts here; only one may stand in a file, of several"
            + " fixtures",
        "window 0 to 60 s | 2:1: expected a colon after window; found \"window\"",
        "3.10 | 2:1: expected a key such as window:, or a blink such as \"on 3.10 off 3.22\"; found"
            + " \"3.10\"",
        "window: 0 to 60 | 2:16: expected the unit s; found the end of the line",
        "window: 0 to 60 min | 2:17: expected the unit s; found \"min\"",
        "window: 0 s to 60 s | 2:11: expected \"to\", as in 0 to 60 s; found \"s\"",
        "window: | 2:8: expected a stretch such as 0 to 60 s; found the end of the line",
        "window: 60 to 0 s | 2:9: a stretch must not end before it starts; expected a stretch such"
            + " as 0 to 60 s",
        "covered: 5 to 4 s | 2:10: a stretch must not end before it starts; expected a stretch"
            + " such as 0 to 60 s",
        "target: 5 to 5 s | 2:9: a target must leave after it comes; expected none, all, likely or a"
            + " stretch such as 20 to 28 s",
        "target: some | 2:9: expected none, all, likely or a stretch such as 20 to 28 s; found"
            + " \"some\"",
        "target: none here | 2:14: expected the end of the line; found \"here\"",
        "event: fall at 3 s | 2:8: expected an event (power-up, button, flush, door) such as"
            + " power-up at 0 s; found \"fall\"",
        "event: door 3 s | 2:13: expected \"at\", as in door at 0 s; found \"3\"",
        "event: door at NaN s | 2:16: expected a time in seconds; found \"NaN\"",
        "on NaN | 2:4: expected a time in seconds such as 3.10; found \"NaN\"",
        "on 1e3 | 2:4: expected a time in seconds such as 3.10; found \"1e3\"",
        "on 3. | 2:4: expected a time in seconds such as 3.10; found \"3.\"",
        "on 0:03 | 2:4: expected a time in seconds such as 3.10; found \"0:03\"",
        "on 1234567890123 | 2:4: \"1234567890123\" is too large for a time in seconds",
        "on | 2:3: expected a time in seconds such as 3.10; found the end of the line",
        "on 3.1 3.2 | 2:8: expected off or the end of the line; found \"3.2\"",
        "on 3.1 off | 2:11: expected a time in seconds such as 3.22; found the end of the line",
        "on 3.1 off 3.1 | 2:12: a blink must end after it starts: on 3.1, off 3.1",
        "on 3.1 off 2.9 | 2:12: a blink must end after it starts: on 3.1, off 2.9",
        "on 3.1 off 3.2 # long | 2:16: expected the end of the line; found \"#\"",
        "saw: | 2:5: expected a rhythm such as 3 blinks every 8 s, or nothing",
      })
  void namesTheFaultOfALine(String line, String expected) {
    assertFaults("lampwise-log: 1\n" + line, expected);
  }

  @Test
  void namesTheColumnOfAnImpossiblePhrase() {
    assertFaults(
        "lampwise-log: 1\nsaw:  0 blinks every 3 s",
        "2:7: saw: a part has at least one blink; no light is \"dark\"; try \"1 blink every 3 s\"");
    assertFaults(
        "lampwise-log: 1\n\nfixture: a\n  saw: 3 blinks every 3 parsecs",
        "4:25: saw: \"parsecs\" where a unit (ms, s, min or h) was expected");
  }

  @Test
  void holdsTheLinesOfAPartAgainstEachOther() {
    assertFaults(
        "lampwise-log: 1\nwindow: 0 to 5 s\nwindow: 0 to 6 s",
        "3:1: the key \"window\" stands twice; it stood in line 2 already");
    assertFaults(
        "lampwise-log: 1\nsaw: steady\nsaw: dark",
        "3:1: the key \"saw\" stands twice; it stood in line 2 already");
    assertFaults(
        "lampwise-log: 1\ntarget: none\ntarget: 3 to 4 s",
        "3:1: a span cannot stand beside the target of line 2; expected either spans, or one of"
            + " none, all, likely alone");
    assertFaults(
        "lampwise-log: 1\ntarget: 3 to 4 s\ntarget: none",
        "3:1: none cannot stand beside the target of line 2; expected either spans, or one of"
            + " none, all, likely alone");
    String both = "a part holds either blinks or saw, not both; start another part with fixture:";
    assertFaults("lampwise-log: 1\non 3\nsaw: steady\non 4", "3:1: " + both);
    assertFaults("lampwise-log: 1\nsaw: steady\non 3\non 4", "3:1: " + both);
    String back = "; expected blinks in order, each after the one before has ended";
    assertFaults(
        "lampwise-log: 1\non 3\non 2.5\non 4", "3:4: the times step back from 3 to 2.5" + back);
    assertFaults(
        "lampwise-log: 1\non 3 off 5\non 4.5", "3:4: the times step back from 5 to 4.5" + back);
    String outside = " s starts outside the window, 0 to 5 s";
    assertFaults(
        "lampwise-log: 1\non -1\non 5\non 6\nwindow: 0 to 5 s",
        "2:4: the blink at -1" + outside,
        "4:4: the blink at 6" + outside);
    assertFaults(
        "lampwise-log: 1\nfixture: a\u0007b",
        "2:9: the fixture's name holds the character U+0007, which is not text");
  }

  @Test
  void refusesAnotherHead() {
    assertFaults(
        "lampwise-log: 2\nsmell: 3",
        "1:15: the version \"2\" of the format is not known; this program reads 1");
    assertFaults("lampwise-log:", "1:14: expected the version 1; found the end of the line");
    assertFaults("lampwise-log: 1 x", "1:17: expected the end of the line; found \"x\"");
    assertFaults(
        "Lampwise-Log: 1",
        "1:1: expected \"lampwise-log: 1\" in the first line; found \"Lampwise-Log:\"");
    assertFaults(
        "lampwise-log 1",
        "1:1: expected \"lampwise-log: 1\" in the first line; found \"lampwise-log\"");
    assertFaults(
        "\nlampwise-log: 1", "2:1: expected \"lampwise-log: 1\" in the first line, not below it");
  }

  @Test
  void tellsAllFaultsInOneGoInTheOrderOfTheFile() {
    assertFaults(
        "lampwise-log: 1\non 9\nwindow: 0 to 5 s\non x\nsay: 3",
        "2:4: the blink at 9 s starts outside the window, 0 to 5 s",
        "4:4: expected a time in seconds such as 3.10; found \"x\"",
        "5:1: unknown key \"say\"; did you mean \"saw\"?");
  }

  private static void assertFaults(String text, String... expected) {
    FileException e =
        assertThrows(
            FileException.class,
            () -> RecordingReader.read("a.log", text.getBytes(UTF_8), ReadOptions.none()));
    assertEquals(
        List.of(expected),
        e.faults().stream().map(f -> f.line() + ":" + f.column() + ": " + f.message()).toList());
  }
}
