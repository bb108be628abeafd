package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwise.service.Answer;
import lampwise.service.Area;
import lampwise.service.Cause;
import lampwise.service.Caution;
import lampwise.service.Check;
import lampwise.service.ClosingStep;
import lampwise.service.Complaint;
import lampwise.service.Guide;
import lampwise.service.MakeSafe;
import lampwise.service.Opening;
import lampwise.service.Remedy;
import lampwise.service.Requirement;
import lampwise.service.Who;
import lampwise.service.Work;
import lampwise.sheet.Condition;
import lampwise.sheet.Power;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GuideReaderTest {
  private static final Caution LOOK = new Caution("look", "Look first", Optional.empty());

  @Test
  void readsEveryKey() throws FileException {
    Guide guide = GuideText.read(GuideText.SMALL);
    assertEquals("A small one", guide.title());
    assertEquals("made up", guide.basis());
    assertEquals(90, guide.handOverMinutes());
    assertEquals(30, guide.secondTripMinutes());
    assertEquals(Map.of(Condition.READY, 0.9, Condition.OTHER, 0.1), guide.usualConditions());
    assertEquals(
        new Cause(
            "empty",
            "Cells empty",
            "Dark",
            Area.POWER,
            List.of(),
            List.of(Power.CELLS),
            Map.of(Complaint.DEAD, 3.0, Complaint.LAMP_ONLY, 9.0),
            Map.of(Work.CELLS, 0.5),
            Map.of(Condition.POWER_LOW, 0.6),
            Optional.empty()),
        guide.cause("empty").orElseThrow());
    assertEquals(
        new Check(
            "cells",
            "Are the cells good?",
            List.of(),
            4,
            List.of(),
            List.of(),
            List.of(Power.CELLS),
            List.of(),
            List.of(new Answer("good", "Good"), new Answer("low", "Low")),
            List.of(0.9, 0.1),
            Map.of("empty", List.of(0.05, 0.95), "other", List.of(0.05, 0.95)),
            false,
            false,
            false,
            List.of(Opening.UNIT),
            Who.TECHNICIAN,
            List.of(),
            List.of(LOOK),
            Optional.empty()),
        guide.check("cells").orElseThrow());
    assertTrue(guide.check("bowl").orElseThrow().bowlLook());
    assertEquals(
        new Remedy(
            "renew",
            "New cells",
            Map.of("empty", 0.95),
            List.of(),
            List.of(Power.CELLS),
            List.of(LOOK),
            List.of("Old ones out", "New ones in"),
            List.of("cell set"),
            List.of(),
            8,
            Who.ANYONE,
            List.of(Opening.UNIT),
            true,
            List.of(new Requirement("bowl", List.of("clear"))),
            List.of(new Requirement("cells", List.of("good"))),
            Optional.empty(),
            false,
            Optional.empty()),
        guide.remedy("renew").orElseThrow());
    assertEquals(
        List.of(
            new MakeSafe(
                "full",
                "It runs over",
                List.of(),
                List.of(),
                List.of(),
                List.of(new Requirement("bowl", List.of("full"))),
                List.of(LOOK),
                List.of("Close the stop"),
                Optional.empty())),
        guide.makeSafe());
    assertEquals(List.of(new ClosingStep("Written down", List.of(), List.of())), guide.closing());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          share: {dead: 2}            | share: {dead: 0}         | 14:19: dead must be a number over 0 such as 2.5; found "0"
          share: {dead: 2}            | share: {ded: 2}          | 14:13: unknown key "ded"; did you mean "dead"?
          share: {dead: 2}            | share: {}                | 10:3: share must name at least one complaint
          area: drain                 | area: drian              | 13:11: area must be one of safety, drain, supply, site, sensing, power, wiring, valve, vacuum-breaker, setting, mixer, assembly, rating, hygiene, outlet, other; found "drian"; did you mean drain?
          lamp: {power-low: 60 %}     | lamp: {power-low: 60}    | 22:23: power-low must be a percentage from 0 % to 100 % such as 5 %; found "60"
          lamp: {power-low: 60 %}     | lamp: {power-low: 60 %, ready: 41 %} | 15:3: the chances under lamp must sum to at most 100 %; they sum to 101 %
          lately: {cells: 0.5}        | lately: {cell: 0.5}      | 21:14: unknown key "cell"; did you mean "cells"?
          usual: {clear: 95 %, full: 5 %} | usual: {clear: 95 %, full: 4 %} | 34:12: the chances of the answers must sum to 100 %; they sum to 99 %
          usual: {clear: 95 %, full: 5 %} | usual: [95 %, 5 %]   | 34:12: expected a table of answers and chances such as {clear: 100 %}; found a list
          blocked: {clear: 10 %, full: 90 %} | blocked: {clear: 10 %, ful: 90 %} | 36:30: unknown key "ful"; did you mean "full"?
          blocked: {clear: 10 %, full: 90 %} | blokked: {full: 100 %} | 36:7: unknown cause "blokked"; did you mean blocked?
          empty, other: {good: 5 %, low: 95 %} | empty, emty: {good: 5 %, low: 95 %} | 46:14: unknown cause "emty"; did you mean empty?
          empty, other: {good: 5 %, low: 95 %} | empty, empty: {good: 5 %, low: 95 %} | 46:14: the cause empty has a row already
          answers: {clear: Clear, full: Full} | answers: {clear: Clear, Full: Full} | 33:29: an answer must be lower-case letters, digits and hyphens, starting with a letter; found "Full"
          bowl-look: yes              | bowl-look: true          | 32:16: bowl-look must be one of yes, no; found "true"
          minutes: 4                  | minutes: -4              | 39:14: minutes must be a number over 0 such as 2.5; found "-4"
          fixes: {blocked: 80 %}      | fixes: {blocked: 0 %}    | 50:22: blocked must be a percentage over 0 % and at most 100 %; found "0 %"
          fixes: {blocked: 80 %}      | fixes: {block: 80 %}     | 50:13: unknown key "block"; did you mean "blocked"?
          fixes: {blocked: 80 %}      | fixes: {}                | 48:3: fixes must name at least one cause
          before: {bowl: [clear]}     | before: {bowl: [clera]}  | 66:21: an item of bowl must be one of clear, full; found "clera"; did you mean clear?
          before: {bowl: [clear]}     | before: {bowl: []}       | 66:20: bowl must hold at least one of its answers
          before: {bowl: [clear]}     | before: {boul: [clear]}  | 66:14: unknown key "boul"; did you mean "bowl"?
          before: {bowl: [clear]}     | before: bowl             | 66:13: before must be a check and its answers such as {bowl: [clear]}; found "bowl"
          steps: [Close the stop]     | steps: []                | 73:12: steps must hold at least one text
          who: anyone                 | who: everyone            | 63:10: who must be one of anyone, technician, plumber, electrician, owner; found "everyone"; did you mean anyone?
          found: {bowl: [full]}       | kind: [faucet]           | 69:3: one of the keys complaint and found must say what calls for it
          - say: Written down         | - written down           | 75:5: an item of closing must be a table with the key say; found "written down"
          - say: Written down         | - tell: Written down     | 75:5: the key "say" is missing
          usual-lamp: {ready: 90 %, other: 10 %} | usual-lamp: {ready: 90 %} | 6:13: the chances of usual-lamp must sum to 100 %; they sum to 90 %
          hand-over-minutes: 90       | hand-over-minutes: soon  | 4:20: hand-over-minutes must be a number over 0 such as 2.5; found "soon"
          title: A small one          | titel: A small one       | 1:1: the key "title" is missing
          lampwise-guide: 1           | lampwise-guide: 2        | 1:17: lampwise-guide must be 1; found "2"
          look: {say: Look first}     | Look: {say: Look first}  | 8:3: the id of a caution must be lower-case letters, digits and hyphens, starting with a letter; found "Look"
          """)
  void tellsAFaultAndWhereItStands(String from, String to, String expected) {
    String told = GuideText.faults(GuideText.changed(from, to));
    assertTrue(told.lines().toList().contains(expected), told);
  }

  @Test
  void tellsEveryFaultInOneGo() {
    String text =
        GuideText.changed("area: drain", "area: pipes")
            .replace("minutes: 20", "minutes: none")
            .replace("steps: [Close the stop]", "step: [Close the stop]");
    assertEquals(
        List.of("13:11", "53:14", "69:3", "73:5"),
        GuideText.faults(text).lines().map(line -> line.substring(0, line.indexOf(": "))).toList());
  }

  @Test
  void refusesAnIdThatStandsTwice() {
    assertEquals(
        "23:3: the cause \"blocked\" stands twice; it stood in small line 10 already",
        GuideText.faults(GuideText.changed("  other:\n    name", "  blocked:\n    name"))
            .lines()
            .filter(line -> line.contains("twice"))
            .findFirst()
            .orElseThrow());
  }

  @Test
  void refusesAGuideWithoutTheCauseOther() {
    String text =
        GuideText.changed("  other:\n    name", "  rest:\n    name")
            .replace("empty, other", "empty");
    assertEquals("1:1: the cause other is missing", GuideText.faults(text));
  }

  @Test
  void refusesAListAndAnEmptyFile() {
    assertEquals("1:1: a guide must be a table of keys; found a list", GuideText.faults("- a\n"));
    assertTrue(GuideText.faults("").contains("a guide that starts with lampwise-guide: 1"));
  }

  @Test
  void readsAGuideOfTwoFilesThatNameEachOther() throws FileException {
    int cut = GuideText.SMALL.indexOf("checks:");
    assertEquals(
        GuideText.read(GuideText.SMALL),
        GuideReader.read(
            files(
                GuideText.SMALL.substring(0, cut),
                "lampwise-guide: 1\n" + GuideText.SMALL.substring(cut))));
  }

  @Test
  void namesTheFileOfAFault() {
    int cut = GuideText.SMALL.indexOf("make-safe:");
    Map<String, byte[]> files =
        files(
            GuideText.changed("area: drain", "area: pipes").substring(0, cut),
            "lampwise-guide: 1\ntitle: Once more\n"
                + GuideText.SMALL.substring(cut).replace("[full]", "[ful]")
                + "cautions:\n  look: {say: Twice}\n");
    FileException e = assertThrows(FileException.class, () -> GuideReader.read(files));
    assertEquals(
        List.of("one:13:11", "two:2:1", "two:6:20", "two:12:3"),
        e.faults().stream()
            .map(fault -> fault.file() + ":" + fault.line() + ":" + fault.column())
            .toList());
    assertTrue(
        e.faults().get(3).message().endsWith("it stood in one line 8 already"), e.getMessage());
  }

  private static Map<String, byte[]> files(String one, String two) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("one", GuideText.bytes(one));
    files.put("two", GuideText.bytes(two));
    return files;
  }
}
