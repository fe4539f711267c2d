/** Options, exit codes and the terminal. */
@NullMarked
package org.spanroom.cli;

import org.jspecify.annotations.NullMarked;
