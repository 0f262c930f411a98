package squeezewell.report;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.UUID;

/** Identifiers made from a name, version 5 of RFC 9562, section 5.5: the same name, the same. */
final class NamedUuid {
  private NamedUuid() {}

  /** The identifier of a name in a namespace. */
  static UUID of(UUID namespace, String name) {
    byte[] text = name.getBytes(StandardCharsets.UTF_8);
    ByteBuffer all =
        ByteBuffer.allocate(16 + text.length)
            .putLong(namespace.getMostSignificantBits())
            .putLong(namespace.getLeastSignificantBits())
            .put(text);
    try {
      ByteBuffer hash = ByteBuffer.wrap(MessageDigest.getInstance("SHA-1").digest(all.array()));
      long most = (hash.getLong() & ~0xF000L) | 0x5000L;
      return new UUID(most, (hash.getLong() & 0x3FFFFFFFFFFFFFFFL) | 0x8000000000000000L);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-1", e);
    }
  }
}
