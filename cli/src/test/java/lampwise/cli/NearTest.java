package lampwise.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearTest {
  private static final List<String> KNOWN =
      List.of(
          "cells-low",
          "coil-open",
          "coil-shorted",
          "target-seen",
          "seen-a",
          "seen-b",
          "seen-c",
          "seen-d",
          "no-power");

  @Test
  void aMisspeltNameIsFirst() {
    assertEquals(List.of("cells-low"), Near.of("cels-low", KNOWN));
    assertEquals(List.of("cells-low"), Near.of("Cells_Low", KNOWN));
    assertEquals(List.of("coil-open", "coil-shorted"), Near.of("coil-opne", KNOWN));
    assertEquals(List.of("no-power"), Near.of("power", KNOWN));
  }

  @Test
  void atMostFiveAreNear() {
    assertEquals(
        List.of("seen-a", "seen-b", "seen-c", "seen-d", "target-seen"), Near.of("seen", KNOWN));
  }

  @Test
  void allAreNamedIfNoneIsNear() {
    assertEquals(KNOWN, Near.of("xyzzy", KNOWN));
    assertEquals(KNOWN, Near.of("", KNOWN));
    assertEquals("known: aa, bb", Near.said("xyzzy", List.of("aa", "bb")));
    assertEquals("near: aa", Near.said("a", List.of("aa", "bbb")));
  }
}
