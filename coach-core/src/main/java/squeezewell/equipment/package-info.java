/** Oxygen, breath size, sizes of airways and what to have ready. Knows no session. */
package squeezewell.equipment;
