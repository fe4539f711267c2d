package org.spanroom.output.table;

/** The bounds of the shapes seen so far. */
public final class Extent {
    private double minX = Double.POSITIVE_INFINITY;
    private double minY = Double.POSITIVE_INFINITY;
    private double minZ = Double.POSITIVE_INFINITY;
    private double maxX = Double.NEGATIVE_INFINITY;
    private double maxY = Double.NEGATIVE_INFINITY;
    private double maxZ = Double.NEGATIVE_INFINITY;

    public static Extent of(Shape shape) {
        var extent = new Extent();
        extent.add(shape);
        return extent;
    }

    public void add(Shape shape) {
        for (int vertex = 0; vertex < shape.size(); vertex++) {
            minX = Math.min(minX, shape.x(vertex));
            maxX = Math.max(maxX, shape.x(vertex));
            minY = Math.min(minY, shape.y(vertex));
            maxY = Math.max(maxY, shape.y(vertex));
        }
        if (shape.hasZ()) {
            for (int vertex = 0; vertex < shape.size(); vertex++) {
                minZ = Math.min(minZ, shape.z(vertex));
                maxZ = Math.max(maxZ, shape.z(vertex));
            }
        }
    }

    public void add(Extent other) {
        minX = Math.min(minX, other.minX);
        maxX = Math.max(maxX, other.maxX);
        minY = Math.min(minY, other.minY);
        maxY = Math.max(maxY, other.maxY);
        minZ = Math.min(minZ, other.minZ);
        maxZ = Math.max(maxZ, other.maxZ);
    }

    public boolean isEmpty() {
        return minX > maxX;
    }

    public double minX() {
        return minX;
    }

    public double maxX() {
        return maxX;
    }

    public double minY() {
        return minY;
    }

    public double maxY() {
        return maxY;
    }

    /** Returns the least height, 0 where no shape has one. */
    public double minZ() {
        return minZ > maxZ ? 0 : minZ;
    }

    public double maxZ() {
        return minZ > maxZ ? 0 : maxZ;
    }
}
