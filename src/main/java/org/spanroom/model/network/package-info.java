/** Routes, ducts and what is in them, vaults, and the spans between vaults. */
@NullMarked
package org.spanroom.model.network;

import org.jspecify.annotations.NullMarked;
