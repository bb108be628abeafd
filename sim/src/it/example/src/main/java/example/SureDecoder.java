package example;

import java.util.List;
import java.util.OptionalDouble;
import lampwise.decode.Decoder;
import lampwise.decode.LampDecoder;
import lampwise.decode.Next;
import lampwise.decode.Reading;
import lampwise.decode.Verdict;
import lampwise.light.Recording;
import lampwise.sheet.CodeSheet;

/** A decoder of one's own: decides only what is at least 98 % sure, and asks for a minute more. */
public final class SureDecoder implements Decoder {
  private static final double SURE = 0.98;

  @Override
  public Reading decode(CodeSheet sheet, List<Recording> recordings) {
    Reading reading = new LampDecoder().decode(sheet, recordings);
    if (!(reading.verdict() instanceof Verdict.Decoded decoded) || decoded.probability() >= SURE) {
      return reading;
    }
    Next next = new Next.Watch(60, OptionalDouble.empty(), "any", "Watch a minute more.");
    return new Reading(
        new Verdict.Undecided(reading.candidates(), "it is less than 98 % sure", next),
        reading.candidates(),
        reading.observed(),
        reading.segments(),
        reading.observations());
  }
}
