/** Spanroom: ranks duct spans by the room that recovering rigid innerducts would give back. */
@org.jspecify.annotations.NullMarked
package org.spanroom;
