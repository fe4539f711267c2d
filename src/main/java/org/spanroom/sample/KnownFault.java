package org.spanroom.sample;

/**
 * A fault that was put into the data on purpose.
 *
 * @param layer the file it is in: ducts, vaults, contents or zones
 * @param feature the feature concerned
 * @param detail what was done
 */
record KnownFault(Fault fault, String layer, String feature, String detail) {}
