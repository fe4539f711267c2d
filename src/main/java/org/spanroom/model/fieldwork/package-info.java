/** What crews report from the field: facts of spans and vaults, and the field book that keeps them. */
@NullMarked
package org.spanroom.model.fieldwork;

import org.jspecify.annotations.NullMarked;
