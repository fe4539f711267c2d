/** Routes, vaults and contents read from files: formats, fields, coordinate reference systems. */
@NullMarked
package org.spanroom.input;

import org.jspecify.annotations.NullMarked;
