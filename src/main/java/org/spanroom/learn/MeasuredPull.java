package org.spanroom.learn;

import java.util.Optional;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.network.Duct;

/**
 * A pull whose force was measured.
 *
 * @param entry the report
 * @param duct as it is recorded; empty for a span that the run does not have
 * @param law of this innerduct and end; empty where the run does not pull it
 */
public record MeasuredPull(FieldEntry entry, Optional<Duct> duct, Optional<PullLaw> law) {}
