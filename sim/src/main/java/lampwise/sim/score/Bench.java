package lampwise.sim.score;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import lampwise.file.FileException;
import lampwise.file.SheetReader;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.PhraseException;
import lampwise.rhythm.Rhythm;
import lampwise.rhythm.Rhythms;
import lampwise.sheet.CodeSheet;
import lampwise.sim.Mix;
import lampwise.sim.Observer;
import lampwise.sim.Person;
import lampwise.sim.Presets;

/** What the project's figures refer to: an invented sheet, unlisted rhythms, observers, windows. */
public final class Bench {
  /** The seed of the published figures. */
  public static final long SEED = 1125;

  /** How many recordings a cell of the published figures has. */
  public static final int COUNT = 1000;

  private static final String SHEET = "bench.sheet.yaml";

  private static final List<String> UNLISTED =
      List.of(
          "1 blink every 10 s",
          "1 blink every 1.2 s",
          "1 blink every 2.6 s",
          "5 blinks 0.6 s apart every 8 s",
          "2 blinks 0.3 s apart every 4.5 s",
          "3 blinks 1.3 s apart every 8 s",
          "2 blinks 0.45 s apart then dark 1.3 s then 2 blinks 0.45 s apart every 11 s",
          "5 to 6 blinks per second");

  private static final List<Double> RANDOM_PER_SECOND = List.of(0.3, 1.0);

  private static final List<Double> WINDOWS_OF_PEOPLE = List.of(10.0, 20.0, 45.0, 90.0);
  private static final List<Double> WINDOWS_OF_SENSORS = List.of(30.0, 90.0);

  private Bench() {}

  /**
   * The bench's sheet, which is invented.
   *
   * @return the sheet
   */
  public static CodeSheet sheet() {
    try (InputStream in = Bench.class.getResourceAsStream(SHEET)) {
      return SheetReader.read(SHEET, Objects.requireNonNull(in, SHEET).readAllBytes());
    } catch (IOException | FileException e) {
      throw new IllegalStateException("the bench's own sheet cannot be read", e);
    }
  }

  /**
   * The bench's mix on any sheet: its states, the bench's unlisted rhythms as far as the sheet does
   * not list them, and blinks in no order at the bench's two rates, with the usual shares.
   *
   * @param sheet the sheet
   * @return the mix
   */
  public static Mix mix(CodeSheet sheet) {
    return new Mix(sheet, unlisted(sheet), RANDOM_PER_SECOND, Mix.UNLISTED_SHARE, Mix.RANDOM_SHARE);
  }

  /**
   * A mix of nothing that the sheet lists: each of the bench's unlisted rhythms and each of its two
   * rates of blinks in no order is as likely.
   *
   * @param sheet the sheet
   * @return the mix
   */
  public static Mix unlistedMix(CodeSheet sheet) {
    List<Rhythm> unlisted = unlisted(sheet);
    double all = unlisted.size() + RANDOM_PER_SECOND.size();
    double random = RANDOM_PER_SECOND.size() / all;
    return new Mix(sheet, unlisted, RANDOM_PER_SECOND, 1 - random, random);
  }

  private static List<Rhythm> unlisted(CodeSheet sheet) {
    List<Rhythm> rhythms = new ArrayList<>();
    for (String phrase : UNLISTED) {
      Rhythm rhythm = rhythm(phrase);
      if (sheet.states().stream().noneMatch(s -> Rhythms.sameLamp(s.rhythm(), rhythm))) {
        rhythms.add(rhythm);
      }
    }
    return rhythms;
  }

  private static Rhythm rhythm(String phrase) {
    try {
      return Phrase.parse(phrase);
    } catch (PhraseException e) {
      throw new IllegalStateException(phrase, e);
    }
  }

  /**
   * The windows in which an observer watches.
   *
   * @param observer the observer
   * @return seconds, rising: 10, 20, 45 and 90 for people, 30 and 90 for light sensors
   */
  public static List<Double> windows(Observer observer) {
    return observer instanceof Person ? WINDOWS_OF_PEOPLE : WINDOWS_OF_SENSORS;
  }

  /**
   * The cells of an observer in the bench's windows.
   *
   * @param name a name from {@link Presets#names()}
   * @return the cells, the shortest window first
   * @throws lampwise.sim.SimulationException if there is no such observer
   */
  public static List<Cell> cells(String name) {
    Observer observer = Presets.named(name);
    return windows(observer).stream().map(seconds -> new Cell(name, observer, seconds)).toList();
  }
}
