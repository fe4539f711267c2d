/** How good plans of invented cities are, and how far bounds are from them. */
@org.jspecify.annotations.NullMarked
package org.spanroom.program.annual;
