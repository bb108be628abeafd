package lampwise.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearTest {
  private static final List<String> KNOWN = List.of("timing-sd-s", "missed", "lapse", "rounding-s");

  @Test
  void aFewLettersOffIsNear() {
    assertEquals(List.of("missed"), Near.to("mised", KNOWN));
    assertEquals(List.of("missed"), Near.to("Misesd ", KNOWN));
    assertEquals(List.of("lapse"), Near.to("laps", KNOWN));
  }

  @Test
  void aPartIsNear() {
    assertEquals(List.of("timing-sd-s"), Near.to("timing", KNOWN));
    assertEquals(List.of("missed"), Near.to("missed-blinks", KNOWN));
  }

  @Test
  void whatIsFarIsNot() {
    assertEquals(List.of(), Near.to("brightness", KNOWN));
    assertEquals(List.of(), Near.to("", KNOWN));
    assertEquals(List.of(), Near.to("s", KNOWN));
  }

  @Test
  void theNearestComesFirstAndNoMoreThanFour() {
    List<String> many = List.of("abcdefxxx", "abcdefx", "abcdefxx", "abcdef", "abcdefxxxx");
    assertEquals(List.of("abcdef", "abcdefx", "abcdefxx", "abcdefxxx"), Near.to("abcdef", many));
  }

  @Test
  void aSwapIsOneChange() {
    assertEquals(0, Near.distance("", ""));
    assertEquals(3, Near.distance("", "abc"));
    assertEquals(1, Near.distance("abcd", "abdc"));
    assertEquals(2, Near.distance("abcd", "bc"));
    assertEquals(3, Near.distance("kitten", "sitting"));
  }

  @Test
  void theMessageIsOneLine() {
    assertEquals(
        "there is no colour gren; near: green; known: red, green",
        Near.unknown("no colour", "gren", List.of("red", "green")));
    assertEquals(
        "there is no colour a?b; known: red, green",
        Near.unknown("no colour", "a\nb", List.of("red", "green")));
    assertEquals(
        "there is no colour \"\"; known: red", Near.unknown("no colour", "", List.of("red")));
  }
}
