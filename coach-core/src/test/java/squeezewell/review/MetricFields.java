package squeezewell.review;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Review;
import squeezewell.review.say.VerdictText;

/**
 * All figures of a review by name, found by reflection: {@code gap.longestSeconds}, {@code
 * pulseChecks[0].lateSeconds}. What is added to {@link Metrics} is among them without further ado.
 */
final class MetricFields {
  /** Stands for what is not known. */
  static final String NONE = "none";

  private MetricFields() {}

  /** The names of all figures that {@link Metrics} can hold, with {@code []} for each list. */
  static Set<String> names() {
    Set<String> names = new LinkedHashSet<>();
    addNames("", Metrics.class, names);
    names.add("unprompted.test.outcome");
    names.add("unprompted.test.intervalCount");
    names.add("unprompted.test.rule");
    names.add("unprompted.test.reasons[]");
    return names;
  }

  private static void addNames(String name, Type type, Set<String> names) {
    if (type instanceof ParameterizedType generic) {
      boolean list = generic.getRawType() == List.class;
      addNames(name + (list ? "[]" : ""), generic.getActualTypeArguments()[0], names);
    } else if (type instanceof Class<?> plain && plain.isRecord()) {
      for (RecordComponent component : plain.getRecordComponents()) {
        String inner = name.isEmpty() ? component.getName() : name + "." + component.getName();
        addNames(inner, component.getGenericType(), names);
      }
    } else {
      names.add(name);
    }
  }

  /** The figures with their values: numbers as {@code Double}, all else as text. */
  static Map<String, Object> values(Review review) {
    Map<String, Object> values = new LinkedHashMap<>();
    addValues("", review.metrics(), values);
    if (review.testIntervals().isPresent()) {
      values.put(
          "unprompted.test.outcome",
          VerdictText.testWord(review.verdict().outcome()).toUpperCase(Locale.ROOT));
      values.put("unprompted.test.intervalCount", (double) review.testIntervals().getAsInt());
      values.put("unprompted.test.rule", review.rule());
      addValues("unprompted.test.reasons", review.reasons(), values);
    } else if (review.metrics().unprompted().isPresent()) {
      values.put("unprompted.test", NONE);
    }
    return values;
  }

  private static void addValues(String name, Object value, Map<String, Object> values) {
    if (value instanceof Record) {
      for (RecordComponent component : value.getClass().getRecordComponents()) {
        String inner = name.isEmpty() ? component.getName() : name + "." + component.getName();
        addValues(inner, read(value, component), values);
      }
    } else if (value instanceof List<?> list) {
      for (int i = 0; i < list.size(); i++) {
        addValues(name + "[" + i + "]", list.get(i), values);
      }
    } else if (value instanceof Optional<?> optional) {
      if (optional.isPresent()) {
        addValues(name, optional.get(), values);
      } else {
        values.put(name, NONE);
      }
    } else {
      values.put(name, plain(value));
    }
  }

  private static Object plain(Object value) {
    if (value instanceof OptionalDouble number) {
      return number.isPresent() ? (Object) number.getAsDouble() : NONE;
    }
    if (value instanceof OptionalInt number) {
      return number.isPresent() ? (Object) (double) number.getAsInt() : NONE;
    }
    if (value instanceof OptionalLong number) {
      return number.isPresent() ? (Object) (double) number.getAsLong() : NONE;
    }
    return value instanceof Number number ? (Object) number.doubleValue() : value.toString();
  }

  private static Object read(Object record, RecordComponent component) {
    try {
      component.getAccessor().setAccessible(true);
      return component.getAccessor().invoke(record);
    } catch (IllegalAccessException | InvocationTargetException e) {
      throw new IllegalStateException(e);
    }
  }
}
