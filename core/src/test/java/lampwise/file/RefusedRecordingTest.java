package lampwise.file;

import static lampwise.file.Readings.refused;
import static lampwise.file.Readings.said;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import lampwise.file.ReadOptions.Shape;
import org.junit.jupiter.api.Test;

class RefusedRecordingTest {
  @Test
  void namesTheTimeThatCannotBeRead() {
    assertRefused("0.3 3.5\n6.5 lap", 2, 5, "\"lap\" is not a time; expected seconds");
    assertRefused("0.3\nNaN\n6.5", 2, 1, "\"NaN\" is not a finite time");
    assertRefused("NaN", 1, 1, "not a finite time");
    assertRefused("0.3 -inf", 1, 5, "not a finite time");
    assertRefused("1e999", 1, 1, "not a finite time");
    assertRefused("1e13", 1, 1, "too large");
    assertRefused("1d 2f", 1, 1, "not a time");
    assertRefused("0x10", 1, 1, "not a time");
    assertRefused("-0:03.0 0:06", 1, 1, "negative");
    assertRefused("12:00:61", 1, 1, "more than 59");
    assertRefused("12:60:01", 1, 1, "more than 59");
    assertRefused("0:99", 1, 1, "more than 59");
    assertRefused("1:2:3:4", 1, 1, "not a time");
    assertRefused("12345678:00", 1, 1, "not a time");
    assertRefused(":30", 1, 1, "not a time");
    assertRefused("1:-3", 1, 1, "not a time");
    assertRefused("1:.", 1, 1, "not a time");
    assertRefused("12:00:01 5.0", 1, 10, "not written like \"12:00:01\"");
    assertRefused("tap tap tap", 0, 0, "no numbers");
  }

  @Test
  void namesTheFirstTimeThatStepsBack() {
    assertRefused("0.3 6.5 3.5 9.7", 1, 9, "step back from \"6.5\" to \"3.5\"");
    assertRefused("0.3\n6.5\n3.5\n9.7", 3, 1, "step back from \"6.5\" to \"3.5\"");
    assertRefused("12:00:05 12:00:01 12:00:09", 1, 10, "step back from");
    assertRefused("23:00:00 00:30:00 00:30:05", 1, 10, "step back from");
    assertRefused("23:59:59 00:00:05 00:00:01", 1, 10, "step back from");
    assertRefused("0:59.0 0:01.0 0:03.0", 1, 8, "step back from");
    assertRefused("3 +1 -0.5", 1, 6, "step back");
    assertRefused("on 0.3 off 0.1 on 3", 1, 12, "step back");
    assertRefused("3 3 3", 1, 3, "all times are equal");
  }

  @Test
  void namesTheOnOrOffThatIsMissing() {
    assertRefused("off 0.3 on 0.5", 1, 5, "has no on before it");
    assertRefused("on 0.3 off 0.5 off 0.9", 1, 20, "has no on before it");
    assertRefused("on 0.3 0.5", 1, 8, "neither on nor off");
    assertRefused("on 0.3 off", 1, 8, "a time is missing");
    assertRefused("on off 0.3", 1, 4, "expected a time");
  }

  @Test
  void namesTheCellThatCannotBeRead() {
    assertRefused("time,lux\n0.0,12\nNaN,13\n0.4,12", 3, 1, "\"NaN\" is not a finite time");
    assertRefused("time,lux\n0.0,12\n,13\n0.4,12", 3, 1, "the time is missing");
    assertRefused("time,lux\n0.0,12\n0.2,abc\n0.4,12", 3, 5, "\"abc\" is not a light level");
    assertRefused("# c\n\ntime; lux\n0.0; 12\n0.2;  abc\n", 5, 7, "is not a light level");
    assertRefused("time lux\n0.0  12\n  0.2   abc\n", 3, 9, "is not a light level");
    assertRefused("time,lux\n0.0,12\n0:01,13\n0.4,12", 3, 1, "not written like");
    assertRefused("time,lux\n0.0,12\n0.2,\"13\n0.4,12", 3, 1, "quote");
  }

  @Test
  void saysWhyATableIsNoLightFile() {
    assertRefused("timestamp;lux\n1,89346E+12;12\n1,89346E+12;15", 0, 0, "all times are equal");
    assertRefused("time,lux\n", 0, 0, "no rows");
    assertRefused("lux\n12\n13\n", 0, 0, "one column");
    assertRefused("time,lux\n0,NaN\n1,NaN", 0, 0, "no column beside the times");
    assertRefused("a,b\n3,1\n1,4\n2,2\n1,1", 0, 0, "no column rises");
    assertRefused("time,lux\n0,1\n1,2\n2,3", 0, 0, "--unit");
    assertRefused("time,lux\n0.0,1\n1.0e14,2", 0, 0, "--unit");
    assertRefused("time;lux\n1,234;5\n2,345;6", 2, 1, "--decimal comma or --decimal point");
    assertRefused("time,lux\n0.0,1\n0.1,2\n0.2,3\n1e30,3", 0, 0, "too large");
    FileFault wide = refused("1,".repeat(1500) + "\n" + "2,".repeat(1500), said().as(Shape.LEVELS));
    assertTrue(wide.message().contains("more than 1000 columns"), wide::message);
  }

  @Test
  void asksWhereAFileCouldBeTwoThings() {
    assertRefused("0.00 0.21\n0.80 1.02", 0, 0, "--as spans or --as levels");
    assertRefused("0.00,0.21\n0.80,1.02", 0, 0, "--as spans or --as levels");
    assertRefused("12:00:01 12:00:02\n12:00:05 12:00:06", 0, 0, "--as times or --as spans");
    assertRefused("1 0.3\n2 3.5\n3 6.5", 0, 0, "numbered times");
    assertRefused("0,3\n3,5\n6,5", 0, 0, "decimal");
    assertRefused("1,2 3,4", 1, 5, "a comma here");
  }

  @Test
  void refusesWhatIsNoText() {
    assertRefused(new byte[] {'0', '.', '3', 0, 1, 2}, "binary");
    assertRefused(new byte[] {1, 2, 3, 4, '5'}, "control characters");
  }

  private static void assertRefused(byte[] content, String part) {
    FileFault fault = refused(content, said());
    assertTrue(fault.message().contains(part), fault::message);
  }

  private static void assertRefused(String text, int line, int column, String part) {
    FileFault fault = refused(text, said());
    assertAll(
        text,
        () -> assertEquals("r.txt", fault.file()),
        () -> assertTrue(fault.message().contains(part), fault::message),
        () -> assertFalse(fault.message().contains("\n")),
        () -> assertEquals(line, fault.line(), "line"),
        () -> assertEquals(column, fault.column(), "column"));
  }
}
