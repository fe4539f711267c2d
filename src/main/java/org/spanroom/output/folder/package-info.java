/** The folder of results: locked, written whole or not at all. */
@NullMarked
package org.spanroom.output.folder;

import org.jspecify.annotations.NullMarked;
