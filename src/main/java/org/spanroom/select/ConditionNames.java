package org.spanroom.select;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import org.geotools.api.filter.BinaryComparisonOperator;
import org.geotools.api.filter.Id;
import org.geotools.api.filter.PropertyIsBetween;
import org.geotools.api.filter.PropertyIsEqualTo;
import org.geotools.api.filter.PropertyIsGreaterThan;
import org.geotools.api.filter.PropertyIsGreaterThanOrEqualTo;
import org.geotools.api.filter.PropertyIsLessThan;
import org.geotools.api.filter.PropertyIsLessThanOrEqualTo;
import org.geotools.api.filter.PropertyIsNotEqualTo;
import org.geotools.api.filter.expression.Expression;
import org.geotools.api.filter.expression.Literal;
import org.geotools.api.filter.expression.PropertyName;
import org.geotools.filter.visitor.DefaultFilterVisitor;
import org.geotools.util.Converters;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.UsageException;

/** Collects the columns that a condition asks for, and refuses what could never be met: a wrong name, or a text for a number. */
final class ConditionNames extends DefaultFilterVisitor {
    private final Map<String, Class<?>> types;
    private final UnaryOperator<String> remedy;
    private final Set<String> used = new TreeSet<>();

    ConditionNames(Map<String, Class<?>> types, UnaryOperator<String> remedy) {
        this.types = types;
        this.remedy = remedy;
    }

    Set<String> used() {
        return used;
    }

    @Override
    public @Nullable Object visit(PropertyName name, @Nullable Object data) {
        String column = name.getPropertyName();
        if (!types.containsKey(column)) {
            throw new UsageException("--where: the spans have no column '" + column + "'; " + remedy.apply(column));
        }
        used.add(column);
        return data;
    }

    @Override
    public @Nullable Object visit(Id ids, @Nullable Object data) {
        throw new UsageException("--where: IN (...) needs a column before it, such as span_id IN ('A', 'B')");
    }

    @Override
    public @Nullable Object visit(PropertyIsEqualTo filter, @Nullable Object data) {
        check(filter);
        return super.visit(filter, data);
    }

    @Override
    public @Nullable Object visit(PropertyIsNotEqualTo filter, @Nullable Object data) {
        check(filter);
        return super.visit(filter, data);
    }

    @Override
    public @Nullable Object visit(PropertyIsGreaterThan filter, @Nullable Object data) {
        check(filter);
        return super.visit(filter, data);
    }

    @Override
    public @Nullable Object visit(PropertyIsGreaterThanOrEqualTo filter, @Nullable Object data) {
        check(filter);
        return super.visit(filter, data);
    }

    @Override
    public @Nullable Object visit(PropertyIsLessThan filter, @Nullable Object data) {
        check(filter);
        return super.visit(filter, data);
    }

    @Override
    public @Nullable Object visit(PropertyIsLessThanOrEqualTo filter, @Nullable Object data) {
        check(filter);
        return super.visit(filter, data);
    }

    @Override
    public @Nullable Object visit(PropertyIsBetween filter, @Nullable Object data) {
        check(filter.getExpression(), filter.getLowerBoundary());
        check(filter.getExpression(), filter.getUpperBoundary());
        return super.visit(filter, data);
    }

    private void check(BinaryComparisonOperator filter) {
        check(filter.getExpression1(), filter.getExpression2());
        check(filter.getExpression2(), filter.getExpression1());
    }

    /** A comparison of a number with a text is never met, and would leave everything out without a word. */
    private void check(Expression one, Expression other) {
        if (one instanceof PropertyName name && other instanceof Literal literal) {
            Class<?> type = types.get(name.getPropertyName());
            Object value = literal.getValue();
            if (type != null && type != String.class && !isOf(asked(type), value)) {
                throw new UsageException("--where: column " + name.getPropertyName() + " holds "
                        + (type == Boolean.class ? "true or false" : "numbers") + ", not '" + value + "'");
            }
        }
    }

    /** What no converter takes, the library offers in the end to one of images, whose own library is not in our jar. */
    private static boolean isOf(Class<?> type, Object value) {
        try {
            return Converters.convert(value, type) != null;
        } catch (NoClassDefFoundError missing) {
            rethrowOthers(missing);
            return false;
        }
    }

    /** Throws on what is not the missing library of images: that would be a fault of ours. */
    static void rethrowOthers(NoClassDefFoundError missing) {
        if (!String.valueOf(missing.getMessage()).startsWith("javax/media/")) {
            throw missing;
        }
    }

    /** A whole number may be compared with a fraction. */
    private static Class<?> asked(Class<?> type) {
        return type == Boolean.class ? Boolean.class : Double.class;
    }
}
