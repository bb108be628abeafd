package lampwise.service;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/** One combination of what a visit starts from. */
record Surrounding(FixtureKind kind, Optional<Power> power, Complaint complaint) {
  /** Every combination with a known power. */
  static List<Surrounding> all() {
    List<Surrounding> all = new ArrayList<>();
    for (Complaint complaint : Complaint.values()) {
      for (FixtureKind kind : FixtureKind.values()) {
        for (Power power : Power.values()) {
          all.add(new Surrounding(kind, Optional.of(power), complaint));
        }
      }
    }
    return all;
  }

  boolean fits(Cause cause) {
    return cause.fits(kind, power) && cause.shares().containsKey(complaint);
  }

  boolean fits(Check check) {
    return check.fits(kind, power, complaint);
  }

  boolean fits(Remedy remedy) {
    return remedy.fits(kind, power);
  }

  /** The combination in words, such as "dead, faucet, cells". */
  String words() {
    return complaint.word() + ", " + kind.word() + power.map(p -> ", " + p.word()).orElse("");
  }
}
