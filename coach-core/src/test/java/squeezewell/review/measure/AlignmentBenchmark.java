package squeezewell.review.measure;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How long it takes to align so many prompts with as many breaths, each of which is near its own
 * prompt or has missed it. The command stands in docs/measurements.md.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(2)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class AlignmentBenchmark {
  private static final long INTERVAL_NANOS = 6_000_000_000L;
  private static final long LATE_NANOS = 250_000_000L;

  /** How many of each. */
  @Param({"1000", "10000", "100000"})
  int count;

  /** How widely the breaths are spread around their prompts, standard deviation in milliseconds. */
  @Param({"400", "3000"})
  int spreadMillis;

  private long[] prompts;
  private long[] breaths;

  /** Makes prompts and breaths. */
  @Setup
  public void prepare() {
    SplittableRandom random = new SplittableRandom(1);
    prompts = LongStream.range(0, count).map(k -> k * INTERVAL_NANOS).toArray();
    breaths =
        Arrays.stream(prompts)
            .map(p -> p + LATE_NANOS + (long) (spreadMillis * 1e6 * random.nextGaussian()))
            .sorted()
            .toArray();
  }

  /** Aligns them. */
  @Benchmark
  public Alignment align() {
    return Alignment.of(prompts, breaths);
  }
}
