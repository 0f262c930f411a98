package squeezewell.audio;

import java.util.concurrent.atomic.AtomicBoolean;
import javax.sound.sampled.SourceDataLine;

/** An open line of Java Sound. */
final class JavaSoundLine implements SoundLine {
  private final SourceDataLine line;
  private final SoundGrant grant;
  private final int frameBytes;
  private final AtomicBoolean closed = new AtomicBoolean();

  JavaSoundLine(SourceDataLine line, String mixerName) {
    this.line = line;
    this.frameBytes = line.getFormat().getFrameSize();
    this.grant =
        new SoundGrant(
            (int) line.getFormat().getFrameRate(),
            line.getFormat().getChannels(),
            line.getBufferSize() / frameBytes,
            mixerName);
  }

  @Override
  public SoundGrant grant() {
    return grant;
  }

  @Override
  public int writableFrames() {
    return Math.max(0, Math.min(grant.bufferFrames(), line.available() / frameBytes));
  }

  @Override
  public int write(byte[] pcm, int frames) {
    return line.write(pcm, 0, frames * frameBytes) / frameBytes;
  }

  @Override
  public void close() {
    if (closed.compareAndSet(false, true)) {
      // Not drained: draining may wait for a device that is gone.
      line.stop();
      line.flush();
      line.close();
    }
  }
}
