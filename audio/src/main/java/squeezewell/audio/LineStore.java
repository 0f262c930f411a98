package squeezewell.audio;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;

/**
 * The lines of one exercise as sound: those that come with the program are read, others are
 * synthesised, all in the background. A line that can't be had is text only. Any thread may ask.
 */
public final class LineStore implements AutoCloseable {
  /** A synthesiser that takes longer for one line is given up (our own choice). */
  public static final long PATIENCE_NANOS = 20_000_000_000L;

  /** All lines together: 16 MB, which is over eight minutes of speech (our own choice). */
  static final long MOST_FRAMES = 8_000_000;

  private final Supplier<? extends SpeechMaker> makers;
  private final long patienceNanos;
  private final Map<String, SpokenLine> lines = new ConcurrentHashMap<>();
  private final ExecutorService worker = Executors.newSingleThreadExecutor(LineStore::daemon);
  private final ExecutorService watch = Executors.newSingleThreadExecutor(LineStore::daemon);
  private volatile Future<?> prepared = CompletableFuture.completedFuture(null);
  private volatile int unspoken;
  private long frames;

  /**
   * A store without lines.
   *
   * @param makers makes a synthesiser, if one is needed
   */
  public LineStore(Supplier<? extends SpeechMaker> makers) {
    this(makers, PATIENCE_NANOS);
  }

  LineStore(Supplier<? extends SpeechMaker> makers, long patienceNanos) {
    this.makers = Objects.requireNonNull(makers, "makers");
    this.patienceNanos = patienceNanos;
  }

  /** All lines of those texts that can be spoken; waits for them. */
  static Map<String, SpokenLine> all(List<String> texts) {
    if (texts.isEmpty()) {
      return Map.of();
    }
    try (LineStore store = new LineStore(JavaSoundSpeech::new)) {
      store.prepare(texts);
      store.prepared().get();
      return Map.copyOf(store.lines);
    } catch (ExecutionException e) {
      throw new IllegalStateException("the program's own lines are damaged", e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Map.of();
    }
  }

  /**
   * Prepares lines in the background.
   *
   * @param texts what may be said, most likely first
   */
  public void prepare(List<String> texts) {
    List<String> all = List.copyOf(texts);
    prepared = watch.submit(() -> prepareAll(all));
  }

  /** Done when all that can be spoken of what was last to be prepared is there. */
  public Future<?> prepared() {
    return prepared;
  }

  /** The line of a text; empty if it can't be spoken, or not yet. */
  public Optional<SpokenLine> find(String text) {
    return Optional.ofNullable(lines.get(text));
  }

  /** How many lines are known to be text only. */
  public int unspoken() {
    return unspoken;
  }

  /** Ends all work and forgets the lines. */
  @Override
  public void close() {
    watch.shutdownNow();
    worker.shutdownNow();
    lines.clear();
  }

  private void prepareAll(List<String> texts) {
    Map<String, String> own = new LinkedHashMap<>();
    for (String text : texts) {
      Optional<SpokenLine> prepared = PreparedLines.find(text);
      if (prepared.isPresent()) {
        keep(text, prepared.get());
      } else {
        SpeakableText.of(text).ifPresent(speakable -> own.put(text, speakable));
      }
    }
    if (!own.isEmpty()) {
      synthesise(own);
    }
    unspoken = (int) texts.stream().distinct().filter(t -> !lines.containsKey(t)).count();
  }

  /** Whatever goes wrong, the lines that are not there are text only. */
  private void synthesise(Map<String, String> speakableByText) {
    try {
      SpeechMaker maker = await(makers::get);
      try {
        for (Map.Entry<String, String> each : speakableByText.entrySet()) {
          speak(maker, each.getKey(), each.getValue());
        }
      } finally {
        if (!worker.isShutdown()) {
          worker.execute(maker::close);
        }
      }
    } catch (ExecutionException | TimeoutException | RejectedExecutionException e) {
      System.getLogger(LineStore.class.getName())
          .log(System.Logger.Level.DEBUG, "Lines are text only: {0}", e.toString());
      worker.shutdownNow();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void speak(SpeechMaker maker, String text, String speakable)
      throws ExecutionException, TimeoutException, InterruptedException {
    try {
      keep(text, await(() -> maker.speak(speakable)));
    } catch (ExecutionException e) {
      // One line that can't be spoken says nothing of the others; anything else does.
      if (!(e.getCause() instanceof SpeechException)) {
        throw e;
      }
    }
  }

  private <T> T await(Callable<T> work)
      throws ExecutionException, TimeoutException, InterruptedException {
    return worker.submit(work).get(patienceNanos, TimeUnit.NANOSECONDS);
  }

  private void keep(String text, SpokenLine line) {
    if (frames + line.frames() <= MOST_FRAMES) {
      frames += line.frames();
      lines.put(text, line);
    }
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "squeezewell-speech");
    thread.setDaemon(true);
    return thread;
  }
}
