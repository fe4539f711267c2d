package org.spanroom.model.bend;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.Angle;

/** The bends of one span, in order from its first vault. */
public record Bends(List<Bend> list) {
    public static final Bends NONE = new Bends(List.of());

    public Bends {
        list = List.copyOf(list);
    }

    /** Returns the sum of all deflections, left and right. */
    public Angle total() {
        return list.isEmpty()
                ? Angle.ZERO
                : Angle.ofRad(list.stream()
                        .mapToDouble(bend -> bend.deflection().rad())
                        .sum());
    }

    public Optional<Bend> findLargest() {
        return list.stream().max(Comparator.comparing(Bend::deflection));
    }

    public Optional<Bend> findTightest() {
        return list.stream().min(Comparator.comparingDouble(Bend::radiusM));
    }
}
