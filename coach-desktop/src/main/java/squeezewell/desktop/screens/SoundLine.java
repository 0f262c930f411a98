package squeezewell.desktop.screens;

import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/**
 * What a running screen tells of sound and saving.
 *
 * @param notice what a person must know; empty if all is well
 * @param muted whether the sound is muted
 */
public record SoundLine(Supplier<String> notice, BooleanSupplier muted) {}
