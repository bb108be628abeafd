package lampwise.file;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwise.light.LightCurve;
import lampwise.light.Recording;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import lampwise.service.Fixture;
import lampwise.service.Guide;
import lampwise.service.Visit;

/**
 * What a fuzzer feeds: each reader of the project with any bytes. A reader gives a value or its
 * typed error with one line a fault; anything else that is thrown is a finding. The bytes that a
 * fuzzer found worth keeping are run by {@link FuzzCorpusTest}.
 */
public final class FuzzTargets {
  private static final Guide GUIDE = GuideReader.builtIn();

  private FuzzTargets() {}

  private static void assertSaid(FileException refused) {
    assertFalse(refused.faults().isEmpty(), "a file was refused without a reason");
    refused.faults().forEach(fault -> assertSaid(fault.message()));
  }

  static void assertSaid(String message) {
    assertFalse(message.isBlank(), "a blank reason");
    assertEquals(1, message.lines().count(), () -> "not one line: " + message);
  }

  /** A recording of any shape; the first two bytes choose the options. */
  public static final class Recordings {
    private Recordings() {}

    /**
     * Feeds {@link RecordingReader}.
     *
     * @param content any bytes
     */
    public static void fuzzerTestOneInput(byte[] content) {
      int a = content.length > 0 ? content[0] & 0xff : 0;
      int b = content.length > 1 ? content[1] & 0xff : 0;
      ReadOptions options =
          new ReadOptions(
              chosen(ReadOptions.Shape.values(), a & 7),
              (a & 8) == 0 ? Optional.empty() : Optional.of((a & 16) == 0 ? "2" : "lux"),
              (a & 32) == 0 ? Optional.empty() : Optional.of((a & 64) == 0 ? "1" : "time"),
              chosen(ReadOptions.Unit.values(), b & 7),
              (a & 128) == 0 ? LightCurve.Lit.BRIGHTER : LightCurve.Lit.DARKER,
              Optional.empty(),
              (b & 8) == 0 ? Optional.empty() : Optional.of("60"),
              (b & 16) == 0 ? List.of() : List.of("3..5"),
              List.of(),
              List.of(),
              new ReadOptions.Writing(
                  (b & 32) == 0 ? Double.NaN : 10,
                  chosen(ReadOptions.Dates.values(), b >> 6),
                  Optional.empty()));
      byte[] rest = Arrays.copyOfRange(content, Math.min(2, content.length), content.length);
      try {
        List<Recording> read = RecordingReader.read("fuzz", rest, options);
        assertFalse(read.isEmpty(), "a file was read and held nothing");
      } catch (FileException e) {
        assertSaid(e);
      } catch (OptionException e) {
        assertSaid(e.getMessage());
      }
    }

    /** Most bytes choose none, so that files are mostly read as they come. */
    private static <T> Optional<T> chosen(T[] of, int at) {
      return at > 0 && at <= of.length ? Optional.of(of[at - 1]) : Optional.empty();
    }
  }

  /** A Lampwise log, which must come back as it was written. */
  public static final class Logs {
    private Logs() {}

    /**
     * Feeds {@link LampwiseLog}.
     *
     * @param content any bytes
     */
    public static void fuzzerTestOneInput(byte[] content) {
      try {
        List<Recording> read = LampwiseLog.read("fuzz", content);
        String written = LampwiseLog.write(read);
        List<Recording> again = LampwiseLog.read("again", written.getBytes(UTF_8));
        assertEquals(written, LampwiseLog.write(again));
      } catch (FileException e) {
        assertSaid(e);
        assertFalse(e.faults().get(0).file().equals("again"), () -> "not read again: " + e);
      }
    }
  }

  /** A code sheet. */
  public static final class Sheets {
    private Sheets() {}

    /**
     * Feeds {@link SheetReader}.
     *
     * @param content any bytes
     */
    public static void fuzzerTestOneInput(byte[] content) {
      try {
        SheetReader.read("fuzz", content);
      } catch (FileException e) {
        assertSaid(e);
      }
    }
  }

  /** A guide. */
  public static final class Guides {
    private Guides() {}

    /**
     * Feeds {@link GuideReader}.
     *
     * @param content any bytes
     */
    public static void fuzzerTestOneInput(byte[] content) {
      try {
        GuideReader.read("fuzz", content);
      } catch (FileException e) {
        assertSaid(e);
      }
    }
  }

  /** A site's own figures. */
  public static final class Sites {
    private Sites() {}

    /**
     * Feeds {@link SiteReader}.
     *
     * @param content any bytes
     */
    public static void fuzzerTestOneInput(byte[] content) {
      try {
        SiteReader.read("fuzz", content, GUIDE);
      } catch (FileException e) {
        assertSaid(e);
      }
    }
  }

  /** A visit that was left, which must come back as it was written. */
  public static final class Sessions {
    private Sessions() {}

    /**
     * Feeds {@link SessionFile}.
     *
     * @param content any bytes
     */
    public static void fuzzerTestOneInput(byte[] content) {
      try {
        String written = SessionFile.write(SessionFile.read("fuzz", content, GUIDE));
        assertEquals(
            written, SessionFile.write(SessionFile.read("again", written.getBytes(UTF_8), GUIDE)));
      } catch (FileException e) {
        assertSaid(e);
        assertFalse(e.faults().get(0).file().equals("again"), () -> "not read again: " + e);
      }
    }
  }

  /** A rhythm phrase, which must come back as it was printed. */
  public static final class Phrases {
    private Phrases() {}

    /**
     * Feeds {@link Phrase}.
     *
     * @param content any bytes
     */
    public static void fuzzerTestOneInput(byte[] content) {
      Rhythm rhythm;
      try {
        rhythm = Phrase.parse(new String(content, UTF_8));
      } catch (PhraseException e) {
        assertSaid(e.getMessage());
        return;
      }
      try {
        assertEquals(rhythm, Phrase.parse(Phrase.print(rhythm)));
      } catch (PhraseException e) {
        throw new AssertionError("not read again: " + Phrase.print(rhythm), e);
      }
    }
  }

  /** A visit log; what is read must come back as it is written. */
  public static final class Visits {
    private Visits() {}

    /**
     * Feeds {@link VisitRows}.
     *
     * @param content any bytes
     */
    public static void fuzzerTestOneInput(byte[] content) {
      try {
        StringBuilder written = new StringBuilder(CsvRows.text(VisitColumns.NAMES));
        List<Visit> visits = VisitRows.of("fuzz", content).visits();
        for (int i = 0; i < visits.size(); i++) {
          written.append(CsvRows.text(VisitColumns.cells(i + 1, 0, visits.get(i))));
        }
        byte[] bytes = written.toString().getBytes(UTF_8);
        assertEquals(visits, VisitRows.of("again", bytes).visits());
      } catch (FileException e) {
        assertSaid(e);
        assertFalse(e.faults().get(0).file().equals("again"), () -> "not read again: " + e);
      }
    }
  }

  /** A list of fixtures, which must come back as it is written. */
  public static final class Fixtures {
    private Fixtures() {}

    /**
     * Feeds {@link FixtureList}.
     *
     * @param content any bytes
     */
    public static void fuzzerTestOneInput(byte[] content) {
      try {
        List<Fixture> fixtures = FixtureList.read("fuzz", content);
        byte[] written = FixtureList.write(fixtures).getBytes(UTF_8);
        assertEquals(fixtures, FixtureList.read("again", written));
      } catch (FileException e) {
        assertSaid(e);
        assertFalse(e.faults().get(0).file().equals("again"), () -> "not read again: " + e);
      }
    }
  }
}
