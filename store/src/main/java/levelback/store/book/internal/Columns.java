package levelback.store.book.internal;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.UUID;
import levelback.scoring.value.Leg;
import org.jspecify.annotations.Nullable;

/** How values stand in columns: UUIDs and days as text, instants as microseconds since 1970. */
final class Columns {

    private Columns() {}

    static long micros(Instant at) {
        return ChronoUnit.MICROS.between(Instant.EPOCH, at);
    }

    static Instant instant(long micros) {
        return Instant.EPOCH.plus(micros, ChronoUnit.MICROS);
    }

    static UUID uuid(ResultSet rs, String column) throws SQLException {
        return UUID.fromString(rs.getString(column));
    }

    static Optional<UUID> uuidIfAny(ResultSet rs, String column) throws SQLException {
        return text(rs, column).map(UUID::fromString);
    }

    static Optional<String> text(ResultSet rs, String column) throws SQLException {
        return Optional.ofNullable(rs.getString(column));
    }

    static LocalDate day(ResultSet rs, String column) throws SQLException {
        return LocalDate.parse(rs.getString(column));
    }

    static Optional<LocalDate> dayIfAny(ResultSet rs, String column) throws SQLException {
        return text(rs, column).map(LocalDate::parse);
    }

    static Optional<Instant> instantIfAny(ResultSet rs, String column) throws SQLException {
        long micros = rs.getLong(column);
        return rs.wasNull() ? Optional.empty() : Optional.of(instant(micros));
    }

    static OptionalInt integer(ResultSet rs, String column) throws SQLException {
        int value = rs.getInt(column);
        return rs.wasNull() ? OptionalInt.empty() : OptionalInt.of(value);
    }

    static OptionalDouble real(ResultSet rs, String column) throws SQLException {
        double value = rs.getDouble(column);
        return rs.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    static Optional<Leg> leg(ResultSet rs, String column) throws SQLException {
        return text(rs, column).map(Leg::valueOf);
    }

    /** The value as an argument of a statement. */
    static @Nullable Object argument(Optional<?> value) {
        return value.map(Object::toString).orElse(null);
    }

    static @Nullable Object argument(OptionalInt value) {
        return value.isPresent() ? value.getAsInt() : null;
    }

    static @Nullable Object argument(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }
}
