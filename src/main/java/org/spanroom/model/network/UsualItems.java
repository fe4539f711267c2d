package org.spanroom.model.network;

import java.util.Optional;

/**
 * The innerduct and the cable that are taken where more of them are there than sizes are known of.
 *
 * @param innerduct empty where the config assumes no size
 * @param cable empty where the config assumes no size or no mass
 */
public record UsualItems(Optional<Innerduct> innerduct, Optional<Cable> cable) {
    public static final UsualItems NONE = new UsualItems(Optional.empty(), Optional.empty());
}
