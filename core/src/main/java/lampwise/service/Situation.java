package lampwise.service;

import java.util.List;
import java.util.Optional;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/**
 * What a visit starts from.
 *
 * @param kind the kind of fixture
 * @param power what it runs on; empty if that is not known
 * @param complaint what is said to be wrong
 * @param recent what was worked on lately; may be empty
 * @param have the parts at hand; empty if all are taken to be, an empty list if none is
 * @param may who the person at the fixture may stand in for
 */
public record Situation(
    FixtureKind kind,
    Optional<Power> power,
    Complaint complaint,
    List<Work> recent,
    Optional<List<String>> have,
    List<Who> may) {
  /** Who a technician may stand in for. */
  public static final List<Who> TECHNICIAN = List.of(Who.ANYONE, Who.TECHNICIAN);

  /** Keeps copies of the lists. */
  public Situation {
    recent = List.copyOf(recent);
    have = have.map(List::copyOf);
    may = List.copyOf(may);
  }

  /**
   * A technician with every part at hand and nothing known of earlier work.
   *
   * @param kind the kind of fixture
   * @param power what it runs on; empty if that is not known
   * @param complaint what is said to be wrong
   * @return the situation
   */
  public static Situation of(FixtureKind kind, Optional<Power> power, Complaint complaint) {
    return new Situation(kind, power, complaint, List.of(), Optional.empty(), TECHNICIAN);
  }

  /** The parts of a remedy that are not at hand. */
  List<String> missing(Remedy remedy) {
    return have.map(at -> remedy.parts().stream().filter(part -> !at.contains(part)).toList())
        .orElse(List.of());
  }
}
