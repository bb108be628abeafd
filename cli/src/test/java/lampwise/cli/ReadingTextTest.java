package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.decode.Candidate;
import lampwise.decode.Next;
import lampwise.decode.Observation;
import lampwise.decode.Reading;
import lampwise.decode.Segment;
import lampwise.decode.Verdict;
import lampwise.light.Window;
import lampwise.sheet.Basis;
import lampwise.sheet.CodeSheet;
import lampwise.sheet.Condition;
import lampwise.sheet.LampState;
import org.junit.jupiter.api.Test;

class ReadingTextTest {
  private static final CodeSheet LABEL = Readings.sheet(Basis.LABEL);
  private static final CodeSheet INVENTED = Readings.sheet(Basis.INVENTED);

  private static String text(CodeSheet sheet, Reading reading) {
    List<String> lines = ReadingText.reading("", sheet, reading);
    assertTrue(lines.size() < 15, lines.size() + " lines");
    for (String line : lines) {
      assertTrue(line.length() <= 80, line);
    }
    return String.join("\n", lines);
  }

  @Test
  void decoded() {
    assertEquals(
        """
        cells-low (97 %): Backup cells are running down  [invented sheet]
          seen        1 blink every 3.2 s
          rests on    28 blinks in 90 s
          condition   power-low
          label says  one wink now and then
          cleared by  new cells, then power off for a minute
          else        unlisted (3 %)
          note        the file's own note
        next: nothing more to record; do what clears the state, then record again to
              prove it""",
        text(INVENTED, Readings.decoded()));
  }

  @Test
  void aSheetThatIsNotInventedHasNoTag() {
    String first = text(LABEL, Readings.decoded()).lines().findFirst().orElseThrow();
    assertEquals("cells-low (97 %): Backup cells are running down", first);
  }

  @Test
  void unlisted() {
    assertEquals(
        """
        unlisted (98 %): this rhythm is not on the sheet
          seen        1 blink every 3.2 s
          rests on    28 blinks in 90 s
          nearest     standing-by (2 blinks every 14.1 s): 1 blink instead of 2
          note        the file's own note
        next: check that the sheet is this unit's own; if it is, keep the phrase above
              and add it once its meaning is known""",
        text(LABEL, Readings.unlisted()));
  }

  @Test
  void undecided() {
    assertEquals(
        """
        undecided: cells-low (62 %) or unlisted (36 %)
          seen        1 blink every 3.2 s
          rests on    28 blinks in 90 s
          reason      only two blinks were seen
          perhaps     cells-low (62 %): Backup cells are running down; 1 blink every
                      3.1 s; label: one wink now and then
          perhaps     unlisted (36 %): a rhythm that is not on the sheet
          or          no-rhythm (2 %)
          note        the file's own note
        next: record 45 s with nobody before it: tap at each blink""",
        text(LABEL, Readings.undecided()));
  }

  @Test
  void unreadable() {
    assertEquals(
        """
        unreadable: the light is sampled too slowly
          seen        1 blink every 3.2 s
          rests on    28 blinks in 90 s
          note        the file's own note
        next: record 45 s at 20 samples a second or more""",
        text(LABEL, Readings.unreadable()));
  }

  @Test
  void checkWithAHandAndManyCandidates() {
    List<Candidate> left = new ArrayList<>();
    for (String name : List.of("cells-low", "standing-by", "resting", "unlisted", "no-rhythm")) {
      left.add(Readings.candidate(name, 0.2));
    }
    Reading reading =
        Readings.reading(
            new Verdict.Undecided(left, "too short", new Next.Check("Measure the cells", 2)),
            left.toArray(new Candidate[0]));
    String text = text(LABEL, reading);
    assertTrue(
        text.startsWith(
            "undecided: cells-low (20 %), standing-by (20 %), resting (20 %) or 2 more\n"),
        text);
    assertTrue(text.endsWith("\nnext: Measure the cells (about 2 min)"), text);
  }

  @Test
  void oneConditionForAllThatIsLeft() {
    List<Candidate> left =
        List.of(Readings.candidate("standing-by", 0.5), Readings.candidate("resting", 0.5));
    Reading apart =
        Readings.reading(
            new Verdict.Undecided(left, "dark", new Next.Check("Look", 1)),
            left.toArray(new Candidate[0]));
    assertTrue(!text(LABEL, apart).contains("condition"), text(LABEL, apart));
    Reading same =
        Readings.reading(
            new Verdict.Undecided(left, "dark", new Next.Check("Look", 1)),
            Readings.candidate("cells-low", 0.96));
    assertTrue(
        text(LABEL, same).contains("condition   power-low (96 %) in any case"), text(LABEL, same));
  }

  @Test
  void segmentsAreShownWhereThereAreMore() {
    Verdict verdict = new Verdict.Decoded("standing-by", 0.9999, new Window(0, 60));
    Verdict other = new Verdict.Undecided(List.of(), "short", new Next.Check("Look", 1));
    Reading reading =
        new Reading(
            verdict,
            List.of(Readings.candidate("standing-by", 0.9999)),
            Optional.empty(),
            List.of(
                new Segment(0, new Window(0, 60), verdict, List.of(), Optional.empty()),
                new Segment(
                    1, new Window(60, 90), other, List.of(), Optional.of(Readings.blinks(1, 3.2)))),
            List.of(Readings.observation("a.txt"), Readings.observation("b.txt", "a second note")));
    assertEquals(
        """
        standing-by (over 99.9 %): Ready, nothing in range
          rests on    19 blinks in 60 s
          condition   ready
          stretch     a.txt, 0 to 60 s: standing-by (over 99.9 %)
          stretch     b.txt, 60 to 90 s: undecided, 1 blink every 3.2 s
          note        a.txt: the file's own note
          note        b.txt: a second note
          note        b.txt: the file's own note
        next: nothing more to record; by its lamp the unit is ready""",
        text(LABEL, reading));
  }

  @Test
  void nextDependsOnTheCondition() {
    CodeSheet sheet =
        CodeSheet.of(
            "Sheet made for a test",
            Basis.LABEL,
            List.of(
                LampState.of("seen", Readings.blinks(1, 3), "Seen", Condition.TARGET_SEEN),
                LampState.of("coil", Readings.blinks(2, 9), "Coil", Condition.VALVE_CIRCUIT)));
    String seen = text(sheet, Readings.reading(new Verdict.Decoded("seen", 0.96, Readings.WHOLE)));
    assertTrue(seen.contains("\nnext: nothing more to record; ordinary in use"), seen);
    String coil = text(sheet, Readings.reading(new Verdict.Decoded("coil", 0.96, Readings.WHOLE)));
    assertTrue(coil.contains("the sheet does not say what clears the state"), coil);
  }

  @Test
  void withoutSheet() {
    Observation seen = Readings.observation("a.txt");
    assertEquals(
        """
        a.txt: 1 blink every 3.2 s
          rests on    28 blinks in 90 s
          note        the file's own note
        next: give the unit's code sheet with --sheet FILE to learn what this means;
              --sheet demo, an invented one, is only for trying""",
        String.join("\n", ReadingText.observation("a.txt: ", seen)));
    Observation blind =
        new Observation(
            seen.recording(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            Optional.of("no contrast"),
            List.of());
    assertEquals(
        """
        unreadable: no contrast
          rests on    no blink; how long was watched is not known
          note        the file's own note
        next: record once more, then give the unit's code sheet with --sheet FILE""",
        String.join("\n", ReadingText.observation("", blind)));
  }
}
