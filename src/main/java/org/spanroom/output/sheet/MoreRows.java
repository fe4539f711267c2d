package org.spanroom.output.sheet;

import java.util.List;
import java.util.function.Function;

/**
 * Rows that a page had no room for, of one item of its table.
 *
 * @param rows makes them, and puts their blanks on the page that they then stand on
 */
record MoreRows(String title, String style, List<SheetHead> heads, Function<SheetBlanks, List<SheetRow>> rows) {}
