package lampwise.decode;

/** The chance that pulses of a train left no blink, for each setting of a timing. */
final class Missed {
  /**
   * Where nothing is watched no pulse is missed, and a fast train could be followed for ever; this
   * many pulses are.
   */
  static final int MOST_PULSES = 1000;

  /** Standard deviation of a value that lies evenly between two borders one apart. */
  static final double EVEN_SPREAD = 1 / Math.sqrt(12);

  /** So improbable (natural logarithm) that the rest is not looked at. */
  private static final double HOPELESS_BEFORE = -60;

  private static final double HOPELESS_AFTER = -200;
  private static final double HOPELESS_ALL = -80;

  /** A train that is expected to show more pulses than this is looked at in few phases. */
  private static final int MANY_EXPECTED = 20;

  private static final int FEW_PHASES = 3;
  private static final int PHASES = 24;

  private final Train train;
  private final Evidence evidence;
  private final Noise[] settings;
  private final double[] logMissed;
  private final double sd;

  Missed(Train train, Evidence evidence, Timing timing) {
    this.train = train;
    this.evidence = evidence;
    this.settings = new Noise[timing.size()];
    this.logMissed = new double[timing.size()];
    this.sd = timing.any().sd();
    for (int s = 0; s < settings.length; s++) {
      settings[s] = timing.setting(s);
      logMissed[s] = settings[s].logMissed();
    }
  }

  /** Adds a pulse about this time to what was missed. */
  private void add(double time, double spread, double[] logs) {
    double watched = evidence.watched(time, spread);
    if (watched > 0) {
      for (int s = 0; s < logs.length; s++) {
        logs[s] += settings[s].logMissed(watched, logMissed[s]);
      }
    }
  }

  /** The same for a pulse of a chain, whose slope is not known exactly. */
  void add(Link link, double inTrain, double[] logs) {
    double away = Math.abs(inTrain - link.line.meanTrain());
    add(link.time(inTrain), sd + EVEN_SPREAD * (link.high - link.low) * away, logs);
  }

  /**
   * Adds the pulses before a chain.
   *
   * @param least for each setting a sum that does not matter; where all are below, more may be left
   */
  void addBefore(Link link, double[] logs, double[] least) {
    double[] sums = new double[logs.length];
    int first = Math.max(train.first(), link.firstPulse - MOST_PULSES);
    for (int pulse = link.firstPulse - 1; pulse >= first; pulse--) {
      double inTrain = train.on(pulse);
      double back = inTrain - link.line.meanTrain();
      double latest = link.line.meanTime() + (back > 0 ? link.high : link.low) * back;
      if (latest + Density.GATE * sd < evidence.window().fromSeconds()
          || isBelow(sums, HOPELESS_BEFORE)
          || isBelow(sums, least)) {
        break;
      }
      add(link, inTrain, sums);
    }
    for (int s = 0; s < logs.length; s++) {
      logs[s] += sums[s];
    }
  }

  /** Adds the pulses after a chain that were not looked at yet. */
  void addAfter(Link link, double[] logs) {
    double[] sums = new double[logs.length];
    int last = Math.min(train.last(), link.scanned + MOST_PULSES);
    for (int pulse = link.scanned; pulse <= last; pulse++) {
      double inTrain = train.on(pulse);
      double ahead = inTrain - link.line.meanTrain();
      double earliest = link.line.meanTime() + (ahead > 0 ? link.low : link.high) * ahead;
      if (earliest - Density.GATE * sd > evidence.window().toSeconds()
          || isBelow(sums, HOPELESS_AFTER)) {
        break;
      }
      add(link, inTrain, sums);
    }
    for (int s = 0; s < logs.length; s++) {
      logs[s] += sums[s];
    }
  }

  private static boolean isBelow(double[] logs, double[] least) {
    for (int s = 0; s < logs.length; s++) {
      if (logs[s] > least[s]) {
        return false;
      }
    }
    return true;
  }

  private static boolean isBelow(double[] logs, double log) {
    for (double each : logs) {
      if (each > log) {
        return false;
      }
    }
    return true;
  }

  /** In how many phases a train is looked at to see how probable it is that all was missed. */
  int phases() {
    double cycles = evidence.window().lengthSeconds() / train.cycleSeconds();
    boolean many =
        train.repeats() && train.perCycle() > 0 && cycles * train.perCycle() > MANY_EXPECTED;
    return many ? FEW_PHASES : PHASES;
  }

  /** Adds all pulses of a train that starts at a time. */
  void addAll(double start, double[] logs) {
    int first = train.first() == 0 ? 0 : -train.perCycle();
    int last = Math.min(train.last(), first + MOST_PULSES);
    for (int pulse = first; pulse <= last && !isBelow(logs, HOPELESS_ALL); pulse++) {
      double time = start + train.middle() * train.on(pulse);
      if (time > evidence.window().toSeconds()) {
        break;
      }
      add(time, sd, logs);
    }
  }
}
