package squeezewell.audio;

import com.sun.speech.freetts.audio.NullAudioPlayer;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import javax.sound.sampled.AudioFormat;

/** Takes what a synthesiser says into memory, up to a length. It never throws. */
final class JavaSoundSpeechSink extends NullAudioPlayer {
  private static final int BYTES_PER_SAMPLE = 2;

  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private final int mostSeconds;
  private AudioFormat format;
  private boolean tooLong;

  JavaSoundSpeechSink(int mostSeconds) {
    this.mostSeconds = mostSeconds;
  }

  /** Whether all that was said is here, and it is something, in a form that is known. */
  synchronized boolean complete() {
    return !tooLong
        && bytes.size() >= BYTES_PER_SAMPLE
        && format != null
        && format.getChannels() == 1
        && format.getSampleSizeInBits() == 8 * BYTES_PER_SAMPLE;
  }

  synchronized int rate() {
    return Math.round(format.getSampleRate());
  }

  synchronized short[] samples() {
    ByteBuffer buffer =
        ByteBuffer.wrap(bytes.toByteArray())
            .order(format.isBigEndian() ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
    short[] samples = new short[buffer.limit() / BYTES_PER_SAMPLE];
    buffer.asShortBuffer().get(samples);
    return samples;
  }

  @Override
  public synchronized boolean write(byte[] audio, int from, int count) {
    float rate = format == null ? 0 : format.getSampleRate();
    if (bytes.size() + count > mostSeconds * rate * BYTES_PER_SAMPLE) {
      tooLong = true;
      return false;
    }
    bytes.write(audio, from, count);
    return true;
  }

  @Override
  public boolean write(byte[] audio) {
    return write(audio, 0, audio.length);
  }

  @Override
  public synchronized void setAudioFormat(AudioFormat given) {
    format = given;
  }

  @Override
  public synchronized AudioFormat getAudioFormat() {
    return format;
  }

  @Override
  public void begin(int size) {
    // Each line has a sink of its own.
  }

  @Override
  public boolean end() {
    return true;
  }

  @Override
  public void startFirstSampleTimer() {
    // Nothing is measured here.
  }
}
