/** A plain program that only cuts routes at vaults and exports the spans: what a whole run is measured against. */
package org.spanroom.plain;
