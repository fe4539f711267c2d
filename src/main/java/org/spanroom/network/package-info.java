/** From drawn routes to spans: snapping, joining pieces, cutting at vaults. */
@NullMarked
package org.spanroom.network;

import org.jspecify.annotations.NullMarked;
