package squeezewell.desktop.screens;

import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/**
 * What the screen of what runs needs of sound and saving.
 *
 * @param notice what a person must know; empty if all is well
 * @param muted whether the sound is muted
 * @param toggleMute mutes it, or not
 */
public record SoundLine(Supplier<String> notice, BooleanSupplier muted, Runnable toggleMute) {}
