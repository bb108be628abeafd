package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lampwise.light.Blink;
import lampwise.rhythm.Phrase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What people say who watched. */
class TellingTest {
  /** Lamps of known rhythm, watched for a minute by somebody who makes no error. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "dark | nothing",
        "steady | steady",
        "1 blink of 0.1 s every 3.1 s | 1 blink every 3 s",
        "1 blink of 0.1 s every 8.2 s | 1 blink every about 8 s",
        "1 blink of 1.5 s every 6 s | 1 blink of 1.5 s every about 6 s",
        "1 blink of 0.1 s every 1.25 s | 1 blink every 1 to 1.5 s",
        "2 blinks per second | about 2 blinks per second",
        "1.4 blinks per second | 1 to 2 blinks per second",
        "6 blinks per second | fast blinks",
        "3 blinks 0.6 s apart every 8 s | 3 blinks every about 8 s",
        "2 blinks 0.3 s apart every 4.5 s | 2 blinks every 4.5 s",
        "3 blinks 1.3 s apart every 8 s | 3 blinks every about 8 s",
        "3 blinks 0.4 s apart then dark 1.3 s then 2 blinks 0.4 s apart every 10 s"
            + " | 3 blinks then 2 blinks repeating",
        "2 blinks 0.4 s apart then dark 1.3 s then 3 blinks 0.4 s apart every 10 s"
            + " | 2 blinks then 3 blinks repeating",
        "1 long blink of 0.8 s then 2 short blinks of 0.1 s 0.6 s apart every 8 s"
            + " | 1 long blink then 2 short blinks repeating",
        "steady then dark 0.2 s every 8 s | steady then dark every about 8 s",
        "steady 5 s then dark 3 s every 8 s | steady then dark 3 s every about 8 s",
        "20 blinks 0.3 s apart every 15 s | fast blinks",
      })
  void rhythmsAreToldAsPeopleDo(String rhythm, String told) throws Exception {
    Act act = Act.unlisted(Phrase.parse(rhythm));
    Scene scene = Watched.scene(60).withActs(List.of(act)).withClock(new Scene.Clock(0, 0));
    for (int seed = 0; seed < 20; seed++) {
      Shown shown = Lamp.shine(scene, Chance.of(seed));
      assertEquals(told, Notebook.told(Person.plain(), shown, seed), "seed " + seed);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "0, 1 blink",
    "0.3, 2 blinks",
    "3.2, 1 blink every 3 s",
  })
  void fewBlinks(double apart, String told) {
    Shown shown =
        apart == 0 ? Watched.lamp(20, 5, 5.1) : Watched.lamp(20, 5, 5.1, 5 + apart, 5.1 + apart);
    assertEquals(told, Notebook.told(Person.plain(), shown, 1));
  }

  @Test
  void whatHasNoOrderIsToldByHowItLooks() {
    Shown few = Watched.lamp(60, 5, 5.1, 9, 9.1, 30, 30.1);
    assertEquals("1 blink every 4 to 21 s", Notebook.told(Person.plain(), few, 1));
    List<Blink> blinks = new ArrayList<>();
    double at = 0;
    for (double gap : new double[] {1.7, 2.9, 5.1, 2.2, 4.0, 7.5, 1.3, 3.4, 6.0, 2.5, 8.1, 1.9}) {
      at += gap;
      blinks.add(new Blink(at, at + 0.1));
    }
    assertEquals("slow blinks", Notebook.told(Person.plain(), Watched.lamp(60, blinks), 1));
  }

  @Test
  void lightsThatAreSeenOnce() {
    assertEquals("steady 3 s once", Notebook.told(Person.plain(), Watched.lamp(30, 9, 12.1), 1));
    assertEquals("steady once", Notebook.told(Person.plain(), Watched.lamp(30, -9, 12.1), 1));
    assertEquals("steady once", Notebook.told(Person.plain(), Watched.lamp(30, 12, 99), 1));
    assertEquals(
        "steady then dark", Notebook.told(Person.plain(), Watched.lamp(30, -1, 12, 12.5, 99), 1));
  }

  /** 4,000 tellings: a count error of 20 % is told from one of 17 % with 99 % certainty. */
  @Test
  void countsAreWrongAsOftenAsSet() {
    Shown shown = Watched.lamp(20, 5, 5.1, 5.5, 5.6, 6, 6.1);
    Map<String, Integer> told = new HashMap<>();
    for (int seed = 0; seed < 4000; seed++) {
      told.merge(
          Notebook.told(Person.plain().with("count-error", 0.2), shown, seed), 1, Integer::sum);
    }
    assertEquals(4000, told.get("2 blinks") + told.get("3 blinks") + told.get("4 blinks"));
    // 3.3 standard errors.
    assertEquals(400, told.get("2 blinks"), 63);
    assertEquals(400, told.get("4 blinks"), 63);
  }

  /** The deviation of 4,000 judged cycles of 20 s; three standard errors are 3.4 %. */
  @Test
  void secondsAreJudgedAsWellAsSet() {
    Person person = Person.plain().with("seconds-error", 0.1);
    Shown shown = Watched.lamp(90, 5, 5.1, 25, 25.1, 45, 45.1, 65, 65.1, 85, 85.1);
    double[] judged = new double[4000];
    for (int seed = 0; seed < judged.length; seed++) {
      String told = Notebook.told(person, shown, seed);
      assertTrue(told.startsWith("1 blink every about ") && told.endsWith(" s"), told);
      judged[seed] =
          Double.parseDouble(told.substring("1 blink every about ".length(), told.length() - 2));
    }
    assertEquals(20, Watched.mean(judged), 0.1);
    // Rounding to whole seconds adds a twelfth to the variance.
    assertEquals(Math.sqrt(4 + 1 / 12.0), Watched.deviation(judged), 0.07);
  }

  /** Who misses every tenth blink still tells the burst that mostly comes. */
  @Test
  void missesAreSeenThrough() {
    Person person = Person.hurried();
    Shown shown = bursts(4, 0.6, 8, 10);
    int right = 0;
    for (int seed = 0; seed < 200; seed++) {
      right += Notebook.told(person, shown, seed).startsWith("4 blinks every") ? 1 : 0;
    }
    assertTrue(right >= 100, right + " of 200");
  }

  private static Shown bursts(int count, double apart, double every, int times) {
    List<Blink> blinks = new ArrayList<>();
    for (int i = 0; i < times; i++) {
      for (int j = 0; j < count; j++) {
        double on = 2 + i * every + j * apart;
        blinks.add(new Blink(on, on + 0.1));
      }
    }
    return Watched.lamp(times * every, blinks);
  }

  /** Rounding is for written moments; words have none. */
  @Test
  void roundingDoesNothingToWords() {
    Shown shown = bursts(3, 0.4, 8, 6);
    assertEquals(
        "3 blinks every about 8 s", Notebook.told(Person.plain().with("rounding-s", 60), shown, 1));
  }
}
