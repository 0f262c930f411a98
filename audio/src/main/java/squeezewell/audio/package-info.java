/**
 * Turns cues into sound. Synthesis and mixing are pure functions on sample arrays, placed by frame;
 * only {@link squeezewell.audio.JavaSoundDevice} touches the sound card.
 */
package squeezewell.audio;
