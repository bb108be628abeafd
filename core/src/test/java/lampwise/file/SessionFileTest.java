package lampwise.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwise.service.Complaint;
import lampwise.service.Diagnosis;
import lampwise.service.Guide;
import lampwise.service.Situation;
import lampwise.service.Who;
import lampwise.sheet.FixtureKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A visit as text, there and back. */
class SessionFileTest {
  private static final String SESSION =
      """
      lampwise-session: 1
      kind: urinal
      power: cells
      complaint: dead
      recent: valve, cells
      have: cell set, O-ring
      may: anyone, technician
      found: bowl clear
      unknown: cells
      safe: full
      tried: renew failed
      tried: unblock worked
      logged: 7
      handed-over: plumber
      lamp: unlisted 1.0
      lamp: invented 1, ready 0.5, power-low 2.0, unlisted 1.5; low power-low 0.9; a\\; b.csv; c.log
      """;

  private static Diagnosis read(String text) throws FileException {
    Guide guide = GuideText.read(GuideText.SMALL);
    return SessionFile.read("s", GuideText.bytes(text), guide);
  }

  private static String refused(String text) {
    return assertThrows(FileException.class, () -> read(text)).getMessage();
  }

  @Test
  void aVisitComesBackAsItWasWritten() throws FileException {
    Diagnosis visit = read(SESSION);
    assertEquals(SESSION, SessionFile.write(visit));
    assertEquals(Complaint.DEAD, visit.situation().complaint());
    assertEquals(Optional.of(List.of("cell set", "O-ring")), visit.situation().have());
    assertEquals(9, visit.acts().size());
    assertEquals(7, visit.loggedRow().orElse(0));
    assertEquals(List.of("a; b.csv", "c.log"), visit.lamp().recordings());
    assertEquals(OptionalDouble.of(0.9), visit.lamp().probability());
    assertEquals(true, visit.isInvented());
    String blank = SESSION.replace("\n", "\r\n").replace("kind:", "\r\n  kind:  ");
    assertEquals(SESSION, SessionFile.write(read(blank)));
  }

  @Test
  void whatIsNotSaidIsNotWritten() throws FileException {
    Guide guide = GuideText.read(GuideText.SMALL);
    Diagnosis visit =
        Diagnosis.start(
            guide, Situation.of(FixtureKind.FAUCET, Optional.empty(), Complaint.LAMP_ONLY));
    String text =
        "lampwise-session: 1\nkind: faucet\ncomplaint: lamp-only\nmay: anyone, technician\n";
    assertEquals(text, SessionFile.write(visit));
    assertEquals(visit.situation(), read(text).situation());
    Diagnosis open = read(text.replace("may: anyone, technician\n", ""));
    assertEquals(List.of(Who.ANYONE, Who.TECHNICIAN), open.situation().may());
    assertEquals(Optional.empty(), open.situation().have());
    String unseen = text + "lamp: ready 2.0, unlisted 0.5; undecided ? ?; r.log\n";
    assertEquals(unseen, SessionFile.write(read(unseen)));
    assertEquals("", read(unseen).lamp().condition());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "found: bowl clear | found: bowl | 8 | the value of found cannot be understood: bowl",
        "found: bowl clear | found: bowl empty | 8 | the check bowl has no answer empty",
        "found: bowl clear | found: moon clear | 8 | the guide has no check moon",
        "found: bowl clear | bowl clear | 8 | expected a key, a colon and a value",
        "found: bowl clear | : bowl clear | 8 | expected a key, a colon and a value",
        "found: bowl clear | bowl: clear | 8 | unknown key bowl",
        "unknown: cells | unknown: moon | 9 | the guide has no check moon",
        "safe: full | safe: moon | 10 | the guide has no rule to make safe moon",
        "tried: renew failed | tried: renew | 11 | the value of tried cannot be understood: renew",
        "tried: renew failed | tried: renew often | 11 | the value of tried cannot be understood:"
            + " renew often",
        "logged: 7 | logged: 0 | 13 | the value of logged cannot be understood: 0",
        "logged: 7 | logged: 2.5 | 13 | the value of logged cannot be understood: 2.5",
        "logged: 7 | logged: 1000000000 | 13 | the value of logged cannot be understood:"
            + " 1000000000",
        "logged: 7 | logged: row | 13 | the value of logged cannot be understood: row",
        "handed-over: plumber | handed-over: baker | 14 | the value of handed-over cannot be"
            + " understood: baker",
        "lamp: unlisted 1.0 | lamp: ready 1.0 | 15 | the value of lamp cannot be understood: ready"
            + " 1.0",
        "lamp: unlisted 1.0 | lamp: odd 1, unlisted 1 | 15 | the value of lamp cannot be"
            + " understood: odd 1, unlisted 1",
        "lamp: unlisted 1.0 | lamp: unlisted | 15 | the value of lamp cannot be understood:"
            + " unlisted",
        "lamp: unlisted 1.0 | lamp: unlisted -1 | 15 | the value of lamp cannot be understood:"
            + " unlisted -1",
        "lamp: unlisted 1.0 | lamp: unlisted 1; a b | 15 | the value of lamp cannot be understood:"
            + " unlisted 1; a b",
        "lamp: unlisted 1.0 | lamp: unlisted 1; a b 2 | 15 | the value of lamp cannot be"
            + " understood: unlisted 1; a b 2",
        "kind: urinal | kind: bath | 1 | kind cannot be bath",
        "power: cells | power: steam | 1 | power cannot be steam",
        "recent: valve, cells | recent: valve, roof | 1 | recent cannot be roof",
        "may: anyone, technician | may: baker | 1 | may cannot be baker",
        "power: cells | recent: room | 5 | recent stands twice",
        "complaint: dead | | 1 | kind and complaint must be there",
        "complaint: dead | complaint: temperature | 1 | the guide has no cause for the complaint"
            + " temperature of a urinal",
        "lampwise-session: 1 | lampwise-session: 2 | 1 | is no session; its first line must be"
            + " lampwise-session: 1",
      })
  void aFaultHasItsLine(String from, String to, int line, String message) {
    String told = refused(SESSION.replace(from + "\n", (to == null ? "" : to) + "\n"));
    String first = told.lines().findFirst().orElse("");
    assertEquals("s:" + line + ":1: " + message, first, told);
  }

  @Test
  void aSessionHasAnEnd() throws FileException {
    String most = SESSION + "\n".repeat(10_000 - 16);
    assertEquals(SESSION, SessionFile.write(read(most)));
    assertEquals("s:10001:1: has more than 10000 lines", refused(most + "\n"));
    assertEquals("s:1:1: is no session; its first line must be lampwise-session: 1", refused(""));
  }
}
