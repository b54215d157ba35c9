package org.cresthaul.units;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Trees of records as they are written: every figure rounded by its own rule ({@link Rounded}, {@link RoundsItself}),
 * none made from another one that is rounded. Called where JSON, text or paper is written and nowhere else: what is
 * judged, planned and compared has the figures as they were found.
 */
public final class RoundedRecords {
    private static final ClassValue<Shape> SHAPES = new ClassValue<>() {
        @Override
        protected Shape computeValue(Class<?> type) {
            return new Shape(type);
        }
    };

    private RoundedRecords() {}

    /** The same where nothing is to be rounded. */
    @SuppressWarnings("unchecked")
    public static <T> T of(T value) {
        return (T) written(value);
    }

    private static Object written(Object value) {
        if (value instanceof RoundsItself figure) {
            return figure.rounded();
        }
        if (value instanceof Record) {
            return SHAPES.get(value.getClass()).written(value);
        }
        if (value instanceof List<?> list) {
            return written(list);
        }
        if (value instanceof Map<?, ?> map) {
            Map<Object, Object> other = new LinkedHashMap<>();
            map.forEach((key, one) -> other.put(key, written(one)));
            return other;
        }
        return value;
    }

    private static List<?> written(List<?> list) {
        if (!list.isEmpty() && (list.get(0) instanceof Number || list.get(0) instanceof String)) {
            return list;
        }
        List<Object> other = new ArrayList<>(list.size());
        boolean same = true;
        for (Object one : list) {
            Object written = written(one);
            other.add(written);
            same &= written == one;
        }
        return same ? list : Collections.unmodifiableList(other);
    }

    private static Object rounded(Object value, Rounding rounding) {
        if (value instanceof Double figure) {
            return rounding.of(figure);
        }
        return value instanceof List<?> list
                ? list.stream().map(one -> rounded(one, rounding)).toList()
                : value;
    }

    /** How the records of one type are taken apart and put together. */
    private static final class Shape {
        private final RecordComponent[] components;
        private final Rounding[] roundings;
        private final Constructor<?> constructor;

        Shape(Class<?> type) {
            components = type.getRecordComponents();
            roundings = new Rounding[components.length];
            Class<?>[] types = new Class<?>[components.length];
            for (int i = 0; i < components.length; i++) {
                Rounded rounded = components[i].getAnnotation(Rounded.class);
                roundings[i] = rounded == null ? null : rounded.value();
                types[i] = components[i].getType();
                components[i].getAccessor().setAccessible(true);
            }
            try {
                constructor = type.getDeclaredConstructor(types);
            } catch (NoSuchMethodException e) {
                throw new IllegalStateException("a record without its constructor: " + type, e);
            }
            constructor.setAccessible(true);
        }

        Object written(Object value) {
            Object[] parts = new Object[components.length];
            boolean same = true;
            try {
                for (int i = 0; i < parts.length; i++) {
                    Object part = components[i].getAccessor().invoke(value);
                    parts[i] = roundings[i] == null ? RoundedRecords.written(part) : rounded(part, roundings[i]);
                    same &= parts[i] == part;
                }
                return same ? value : constructor.newInstance(parts);
            } catch (InvocationTargetException e) {
                throw new IllegalArgumentException("refused as rounded: " + value, e.getCause());
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException("a record that cannot be read: " + value.getClass(), e);
            }
        }
    }
}
