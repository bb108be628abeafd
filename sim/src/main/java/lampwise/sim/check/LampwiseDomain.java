package lampwise.sim.check;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import lampwise.light.BlinkLog;
import lampwise.light.Description;
import lampwise.light.LightCurve;
import lampwise.light.Marks;
import lampwise.light.Recording;
import lampwise.rhythm.Phrase;
import lampwise.rhythm.Rhythm;
import lampwise.sheet.CodeSheet;
import lampwise.sim.Observer;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.SampleReportingFormat;
import net.jqwik.api.configurators.ArbitraryConfigurator;
import net.jqwik.api.domains.DomainContext;
import net.jqwik.api.providers.ArbitraryProvider;
import net.jqwik.api.providers.TypeUsage;

/**
 * What the project's laws are about, by type: {@link Rhythm}, {@link CodeSheet}, {@link Marks},
 * {@link BlinkLog}, {@link LightCurve}, {@link Description}, {@link Recording}, {@link Observer},
 * {@link Sample}, {@link LabelledSample}, {@link CleanSample} and {@link GrownSample}. With {@link
 * Plausible} a rhythm, sheet, recording, sample or what is noted is such as might really occur.
 * Samples of these types are reported as short text.
 */
public final class LampwiseDomain implements DomainContext {
  private static final int PRIORITY = 10;

  private static final List<Kind<?>> KINDS =
      List.of(
          new Kind<>(Rhythm.class, RhythmArbitraries::any, RhythmArbitraries::plausible),
          new Kind<>(CodeSheet.class, SheetArbitraries::any, SheetArbitraries::plausible),
          new Kind<>(Marks.class, MarksArbitraries::any, MarksArbitraries::plausible),
          new Kind<>(Recording.class, RecordingArbitraries::any, RecordingArbitraries::plausible),
          new Kind<>(BlinkLog.class, RecordingArbitraries::blinkLogs),
          new Kind<>(LightCurve.class, RecordingArbitraries::lightCurves),
          new Kind<>(Description.class, RecordingArbitraries::descriptions),
          new Kind<>(Observer.class, ObserverArbitraries::any),
          new Kind<>(Sample.class, SampleArbitraries::any, SampleArbitraries::plausible),
          new Kind<>(LabelledSample.class, SampleArbitraries::labelled),
          new Kind<>(CleanSample.class, CleanArbitraries::samples),
          new Kind<>(GrownSample.class, CleanArbitraries::grown));

  /** Makes one; jqwik does. */
  public LampwiseDomain() {}

  @Override
  public List<ArbitraryProvider> getArbitraryProviders() {
    return List.copyOf(KINDS);
  }

  @Override
  public List<ArbitraryConfigurator> getArbitraryConfigurators() {
    return List.of();
  }

  @Override
  public List<SampleReportingFormat> getReportingFormats() {
    return List.of(new Text());
  }

  /** A type, and its arbitraries. */
  private record Kind<T>(
      Class<T> type, Supplier<Arbitrary<T>> any, Supplier<Arbitrary<T>> plausible)
      implements ArbitraryProvider {
    Kind(Class<T> type, Supplier<Arbitrary<T>> any) {
      this(type, any, any);
    }

    @Override
    public boolean canProvideFor(TypeUsage target) {
      return target.isOfType(type);
    }

    @Override
    public Set<Arbitrary<?>> provideFor(TypeUsage target, SubtypeProvider subtypes) {
      return Set.of((target.isAnnotated(Plausible.class) ? plausible : any).get());
    }

    @Override
    public int priority() {
      return PRIORITY;
    }
  }

  /** Reports values as the text that people read. */
  private static final class Text implements SampleReportingFormat {
    @Override
    public boolean appliesTo(Object value) {
      return text(value).isPresent();
    }

    @Override
    public Object report(Object value) {
      return SampleReportingFormat.plainLabel("\n" + text(value).orElse("").indent(2));
    }

    private static Optional<String> text(Object value) {
      if (value instanceof Rhythm rhythm) {
        return Optional.of(Phrase.print(rhythm));
      }
      if (value instanceof CodeSheet sheet) {
        return Optional.of(SampleText.of(sheet));
      }
      if (value instanceof Recording recording) {
        return Optional.of(SampleText.of(recording));
      }
      if (value instanceof Observer observer) {
        return Optional.of(ObserverArbitraries.text(observer));
      }
      boolean own =
          value instanceof Sample
              || value instanceof LabelledSample
              || value instanceof CleanSample
              || value instanceof GrownSample;
      return own ? Optional.of(value.toString()) : Optional.empty();
    }
  }
}
