package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class LineStoreTest {
  private static final String BUILT_IN = "There is a pulse.";
  private static final String OWN = "The lorry has stopped.";
  private static final String OTHER = "The driver waves.";

  private final AtomicInteger closed = new AtomicInteger();

  @Test
  void builtInLinesAreReadAndOthersSpoken() throws Exception {
    Speaker speaker = new Speaker(text -> new SpokenLine(new short[text.length()], 16_000));
    try (LineStore store = store(() -> speaker, BUILT_IN, OWN)) {
      assertThat(store.find(BUILT_IN).get().rate()).isEqualTo(12_000);
      assertThat(store.find(OWN).get().frames()).isEqualTo(OWN.length());
      assertThat(store.unspoken()).isZero();
    }
  }

  @Test
  void noSynthesiserIsMadeWhereNoneIsNeeded() throws Exception {
    AtomicInteger made = new AtomicInteger();
    Supplier<SpeechMaker> makers =
        () -> {
          made.incrementAndGet();
          return new Speaker(text -> new SpokenLine(new short[1], 16_000));
        };
    try (LineStore store = store(makers, BUILT_IN, "脈なし", "")) {
      assertThat(made).hasValue(0);
      assertThat(store.unspoken()).isEqualTo(2);
    }
  }

  @Test
  void withoutASynthesiserOwnLinesAreTextOnly() throws Exception {
    Supplier<SpeechMaker> missing =
        () -> {
          throw new NoClassDefFoundError("no voice here");
        };
    try (LineStore store = store(missing, OWN, BUILT_IN, OTHER)) {
      assertThat(store.find(BUILT_IN)).isPresent();
      assertThat(store.find(OWN)).isEmpty();
      assertThat(store.unspoken()).isEqualTo(2);
    }
  }

  @Test
  void oneLineThatCannotBeSpokenDoesNotSilenceTheOthers() throws Exception {
    Speaker speaker =
        new Speaker(
            text -> {
              if (text.equals(OWN)) {
                throw new SpeechException("not this one");
              }
              return new SpokenLine(new short[1], 16_000);
            });
    try (LineStore store = store(() -> speaker, OWN, OTHER)) {
      assertThat(store.find(OTHER)).isPresent();
      assertThat(store.unspoken()).isEqualTo(1);
    }
  }

  @Test
  void aSynthesiserThatBreaksOrHangsIsGivenUp() throws Exception {
    Speaker breaks =
        new Speaker(
            text -> {
              throw new IllegalStateException("broken");
            });
    try (LineStore store = store(() -> breaks, OWN, OTHER)) {
      assertThat(store.unspoken()).isEqualTo(2);
    }
    CountDownLatch never = new CountDownLatch(1);
    CountDownLatch let = new CountDownLatch(1);
    Speaker hangs =
        new Speaker(
            text -> {
              try {
                never.await();
              } catch (InterruptedException e) {
                let.countDown();
              }
              throw new SpeechException("interrupted");
            });
    try (LineStore store = new LineStore(() -> hangs, TimeUnit.MILLISECONDS.toNanos(50))) {
      store.prepare(List.of(BUILT_IN, OWN, OTHER));
      store.prepared().get();
      assertThat(store.find(BUILT_IN)).isPresent();
      assertThat(store.unspoken()).isEqualTo(2);
      assertThat(let.await(30, TimeUnit.SECONDS)).as("its thread is told to stop").isTrue();
    }
  }

  @Test
  void allLinesTogetherStayWithinTheirMemory() throws Exception {
    int large = (int) (LineStore.MOST_FRAMES / 2);
    Speaker speaker = new Speaker(text -> new SpokenLine(new short[large], 16_000));
    try (LineStore store = store(() -> speaker, "one", "two", "three")) {
      assertThat(store.unspoken()).isEqualTo(1);
    }
  }

  @Test
  void afterItsEndNothingIsLeft() throws Exception {
    Speaker speaker = new Speaker(text -> new SpokenLine(new short[1], 16_000));
    LineStore store = store(() -> speaker, OWN);
    store.close();
    assertThat(store.find(OWN)).isEmpty();
    assertThat(closed).hasValueLessThanOrEqualTo(1);
  }

  private static LineStore store(Supplier<? extends SpeechMaker> makers, String... texts)
      throws Exception {
    LineStore store = new LineStore(makers);
    store.prepare(List.of(texts));
    store.prepared().get();
    return store;
  }

  private interface Speech {
    SpokenLine of(String text) throws SpeechException;
  }

  private final class Speaker implements SpeechMaker {
    private final Speech speech;

    Speaker(Speech speech) {
      this.speech = speech;
    }

    @Override
    public SpokenLine speak(String text) throws SpeechException {
      return speech.of(text);
    }

    @Override
    public void close() {
      closed.incrementAndGet();
    }
  }
}
