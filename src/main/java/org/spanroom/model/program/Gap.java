package org.spanroom.model.program;

/**
 * Why no way joins two vaults.
 *
 * @param widestCables the most cables that can go together on any way between them, whatever is recovered or built; 0 where no sections
 *     join them
 * @param nearFrom number of the vault that can be reached from the first one and is nearest to those that can be reached from the other
 * @param nearTo number of the vault on the other side
 * @param gapM distance between these two; 0 where sections join the vaults
 */
public record Gap(int widestCables, int nearFrom, int nearTo, double gapM) {}
