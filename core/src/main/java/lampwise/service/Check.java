package lampwise.service;

import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lampwise.sheet.FixtureKind;
import lampwise.sheet.Power;

/**
 * Something to look at, try or measure, with the chance of each answer under each cause.
 *
 * @param id its id
 * @param question what is asked
 * @param steps how to find out; may be empty where the question says it all
 * @param minutes how long it takes, over 0
 * @param needs tools that it needs; may be empty
 * @param kinds the kinds of fixture it can be made at; empty for all
 * @param powers the kinds of power it can be made with; empty for all
 * @param complaints the complaints for which it is asked; empty for all
 * @param answers the answers, at least two
 * @param usual the chance of each answer under a cause that has no row of its own, summing to 1
 * @param rows the chance of each answer under the causes, by their ids, each row summing to 1
 * @param first whether it is asked before everything else
 * @param bowlLook whether it tells if water can run off, so that a flush may follow
 * @param flushes whether it makes water flow by a flush, the manual override included
 * @param opens what it opens; empty if nothing
 * @param who who may make it
 * @param before the checks that must have been made before, all of them
 * @param cautions shown before its first step
 * @param source where it is published; empty for common practice without a source
 */
public record Check(
    String id,
    String question,
    List<String> steps,
    double minutes,
    List<String> needs,
    List<FixtureKind> kinds,
    List<Power> powers,
    List<Complaint> complaints,
    List<Answer> answers,
    List<Double> usual,
    Map<String, List<Double>> rows,
    boolean first,
    boolean bowlLook,
    boolean flushes,
    List<Opening> opens,
    Who who,
    List<Requirement> before,
    List<Caution> cautions,
    Optional<String> source) {
  /**
   * Keeps copies and checks the values.
   *
   * @throws GuideException if the id is no name, there are fewer than two answers, an answer stands
   *     twice, the minutes are not over 0, or a row has another number of chances or does not sum
   *     to 1
   */
  public Check {
    Rules.id("a check", id);
    Rules.minutes(id, minutes);
    steps = List.copyOf(steps);
    needs = List.copyOf(needs);
    kinds = List.copyOf(kinds);
    powers = List.copyOf(powers);
    complaints = List.copyOf(complaints);
    answers = List.copyOf(answers);
    usual = List.copyOf(usual);
    Map<String, List<Double>> copies = new LinkedHashMap<>();
    rows.forEach((cause, row) -> copies.put(cause, List.copyOf(row)));
    rows = Collections.unmodifiableMap(copies);
    opens = List.copyOf(opens);
    before = List.copyOf(before);
    cautions = List.copyOf(cautions);
    Rules.that(answers.size() >= 2, "the check " + id + " needs at least two answers");
    Set<String> words = new HashSet<>();
    for (Answer answer : answers) {
      Rules.that(
          words.add(answer.word()), "the answer " + answer.word() + " of " + id + " doubles");
    }
    checkRow(id, "usual", usual, answers.size());
    for (Map.Entry<String, List<Double>> row : rows.entrySet()) {
      checkRow(id, row.getKey(), row.getValue(), answers.size());
    }
  }

  private static void checkRow(String id, String name, List<Double> row, int answers) {
    Rules.that(
        row.size() == answers,
        "the row " + name + " of " + id + " must have " + answers + " chances: " + row.size());
    for (double chance : row) {
      Rules.that(Rules.isChance(chance), "the row " + name + " of " + id + " holds " + chance);
    }
    Rules.that(
        Math.abs(Rules.sum(row) - 1) <= Rules.SLACK,
        "the row " + name + " of " + id + " sums to " + Rules.sum(row) + " in place of 1");
  }

  /**
   * Whether it can be made at a unit and is asked for a complaint.
   *
   * @param kind the kind of fixture
   * @param power what it runs on; empty if that is not known
   * @param complaint the complaint
   * @return true if nothing rules it out
   */
  public boolean fits(FixtureKind kind, Optional<Power> power, Complaint complaint) {
    return Rules.fits(kinds, powers, kind, power)
        && (complaints.isEmpty() || complaints.contains(complaint));
  }

  /**
   * Finds an answer.
   *
   * @param word its word
   * @return the answer, or empty if the check has none of that word
   */
  public Optional<Answer> answer(String word) {
    return answers.stream().filter(answer -> answer.word().equals(word)).findFirst();
  }

  /**
   * The chance of each answer under a cause.
   *
   * @param cause the cause's id
   * @return one chance for each answer, in their order; the usual ones if the cause has no row
   */
  public List<Double> chances(String cause) {
    return rows.getOrDefault(cause, usual);
  }

  /**
   * The same check with other minutes, made by others.
   *
   * @param otherMinutes how long it takes, over 0
   * @param otherWho who may make it
   * @return the check
   * @throws GuideException if the minutes are not over 0
   */
  public Check with(double otherMinutes, Who otherWho) {
    return new Check(
        id,
        question,
        steps,
        otherMinutes,
        needs,
        kinds,
        powers,
        complaints,
        answers,
        usual,
        rows,
        first,
        bowlLook,
        flushes,
        opens,
        otherWho,
        before,
        cautions,
        source);
  }
}
