package org.spanroom.bend;

/** How the residual of a vertex changes with the unknowns of the arc that it belongs to. */
final class ChainSlopes {
    /** By direction and offset of the straight before, the radius, direction and offset of the straight after it. */
    final double[] values = new double[TangentChain.ARC_WIDTH];

    /**
     * How an arc's residual changes with its two straights and its radius: the center moves so that it keeps its distance
     * from both straights, and the residual is the radius less the distance from the center.
     */
    void fillArc(TangentChain chain, int arc, double placeX, double placeY) {
        int next = arc + 1;
        double awayX = placeX - chain.centerX[arc];
        double awayY = placeY - chain.centerY[arc];
        double away = Math.sqrt(awayX * awayX + awayY * awayY);
        double unitX = away > 1e-9 ? awayX / away : 0;
        double unitY = away > 1e-9 ? awayY / away : 0;
        double sinTurn = chain.sinTurn[arc];
        double byFirst = chain.side[arc] * (unitX * chain.cos[next] + unitY * chain.sin[next]) / sinTurn;
        double bySecond = -chain.side[arc] * (unitX * chain.cos[arc] + unitY * chain.sin[arc]) / sinTurn;
        values[0] = byFirst * chain.leavesM[arc];
        values[1] = byFirst;
        values[2] = chain.sharp[arc] ? 0 : chain.side[arc] * (1 + byFirst + bySecond);
        values[3] = bySecond * chain.reachesM[arc];
        values[4] = bySecond;
    }

    /** How the miss of a corner of one vertex changes with its two straights and its radius. */
    void fillMiss(TangentChain chain, int arc, double placeX, double placeY) {
        int next = arc + 1;
        double sinTurn = chain.sinTurn[arc];
        double cosTurn = Math.cos(chain.turnRad(arc));
        double share = chain.sideways(arc);
        double awayX = placeX - chain.centerX[arc];
        double awayY = placeY - chain.centerY[arc];
        boolean before = chain.leavesM[arc] - chain.station(arc, placeX, placeY)
                >= chain.station(next, placeX, placeY) - chain.reachesM[arc];
        double own = share * cosTurn / sinTurn;
        double other = -share / sinTurn;
        values[0] = (before ? own : other) * chain.leavesM[arc]
                - (before ? share * (chain.normalX(arc) * awayX + chain.normalY(arc) * awayY) : 0);
        values[1] = before ? own : other;
        values[2] = chain.sharp[arc] ? 0 : share * chain.side[arc] * (cosTurn - 1) / sinTurn;
        values[3] = (before ? other : own) * chain.reachesM[arc]
                + (before ? 0 : share * (chain.normalX(next) * awayX + chain.normalY(next) * awayY));
        values[4] = before ? other : own;
    }
}
