package lampwise.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import lampwise.light.Window;
import org.junit.jupiter.api.Test;

/** Where a state may change. */
class PlacesTest {
  private static Evidence evidence(double to, double... starts) {
    List<Evidence.Note> notes =
        java.util.Arrays.stream(starts)
            .mapToObj(t -> new Evidence.Note(t, t + 0.1, false, false, 0.98))
            .toList();
    return new Evidence(
        new Window(0, to), notes, List.of(), Noise.ofPeople(0.01, true), 0.03, true, false);
  }

  @Test
  void thePlacesOfEveryDarkLieInItAndCoverIt() {
    Evidence evidence = evidence(30, 1, 1.4, 20);
    Places places = Places.of(evidence);
    double[] from = {0, 1.1, 1.5, 20.1};
    double[] to = {1, 1.4, 20, 30};
    for (int gap = 0; gap < 4; gap++) {
      double width = 0;
      for (int i = places.first()[gap]; i < places.first()[gap + 1]; i++) {
        assertTrue(places.seconds()[i] > from[gap] && places.seconds()[i] < to[gap]);
        width += places.widths()[i];
      }
      assertEquals(to[gap] - from[gap], width, 1e-9);
    }
    assertEquals(places.seconds().length, places.first()[4]);
  }

  @Test
  void aDayOfDarkHasFewPlaces() {
    int places = Places.of(evidence(86_400)).seconds().length;
    assertTrue(places > 10 && places < 100, () -> places + " places");
  }

  @Test
  void blinksThatTouchLeaveNoPlaceBetweenThem() {
    Places places = Places.of(evidence(10, 1, 1.05, 5));
    assertEquals(places.first()[1], places.first()[2]);
  }
}
