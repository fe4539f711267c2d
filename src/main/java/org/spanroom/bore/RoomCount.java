package org.spanroom.bore;

import java.util.List;
import java.util.Optional;
import org.spanroom.bore.Section.Wire;
import org.spanroom.model.Room;
import org.spanroom.model.RoomSettings;
import org.spanroom.model.Service;

/** Counts the room of one cross-section: areas, positions before, and the new cables that every rule allows. */
final class RoomCount {
    private final RoomSettings settings;

    RoomCount(RoomSettings settings) {
        this.settings = settings;
    }

    Room count(Section section) {
        List<Wire> staying = staying(section);
        double boreMm2 = section.boreAreaMm2();
        double outMm2 =
                section.pipes().stream().mapToDouble(Section.Pipe::areaMm2).sum();
        double freedCablesMm2 = section.pipes().stream()
                .mapToDouble(pipe -> Section.areaMm2(staysOf(pipe.wires())))
                .sum();
        int byTable = settings.sleevesFor(section.insideDiameterMm());
        int sleeves = byTable;
        while (sleeves > 0 && !fillAllows(section, staying, sleeves)) {
            sleeves--;
        }
        return new Room(
                boreMm2,
                section.closedBeforeMm2() / boreMm2,
                Section.areaMm2(staying) / boreMm2,
                outMm2 - freedCablesMm2,
                section.pipes().size(),
                positionsBefore(section),
                sleeves,
                newCables(staying, sleeves),
                sleeves == byTable ? Room.SLEEVES_PER_DUCT : Room.BORE_FILL,
                Optional.empty());
    }

    private List<Wire> staying(Section section) {
        return staysOf(section.wires());
    }

    private List<Wire> staysOf(List<Wire> wires) {
        return wires.stream()
                .filter(wire -> !settings.deadCablesComeOut() || wire.service() != Service.DEAD)
                .toList();
    }

    private int positionsBefore(Section section) {
        double neededMm = settings.innerductToCableRatio() * settings.designCableOutsideDiameterMm();
        return (int) section.pipes().stream()
                .filter(pipe -> pipe.wires().isEmpty() && pipe.insideDiameterMm() >= neededMm)
                .count();
    }

    /** Where the cables that stay need cells too, theirs are not for new ones. */
    private int newCables(List<Wire> staying, int sleeves) {
        int cells = sleeves * settings.cellsPerSleeve();
        return settings.oldCablesNeedCells() ? Math.max(0, cells - staying.size()) : cells;
    }

    private boolean fillAllows(Section section, List<Wire> staying, int sleeves) {
        int added = newCables(staying, sleeves);
        double cableMm2 = Math.PI / 4 * Math.pow(settings.designCableOutsideDiameterMm(), 2);
        double filledMm2 = Section.areaMm2(staying) + added * cableMm2;
        return filledMm2 <= settings.fillLimitRatio(staying.size() + added) * section.boreAreaMm2();
    }
}
