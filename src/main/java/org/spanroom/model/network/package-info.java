/** Routes, ducts and what lies in them, vaults, and the spans between vaults. */
@NullMarked
package org.spanroom.model.network;

import org.jspecify.annotations.NullMarked;
