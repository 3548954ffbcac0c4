using System.Data.Common;
using NodaTime;
using NodaTime.Text;

namespace SwingStudy.Storage.Files;

/// <summary>The row that a reader stands on, by column name.</summary>
internal readonly struct Row(DbDataReader reader)
{
    /// <summary>A text that is never missing.</summary>
    internal string Text(string column) => reader.GetString(reader.GetOrdinal(column));

    /// <summary>A text, or null.</summary>
    internal string? OptionalText(string column) => reader.IsDBNull(reader.GetOrdinal(column)) ? null : reader.GetString(reader.GetOrdinal(column));

    /// <summary>A whole number that is never missing.</summary>
    internal long Whole(string column) => reader.GetInt64(reader.GetOrdinal(column));

    /// <summary>A whole number, or null.</summary>
    internal long? OptionalWhole(string column) => reader.IsDBNull(reader.GetOrdinal(column)) ? null : reader.GetInt64(reader.GetOrdinal(column));

    /// <summary>A number that is never missing.</summary>
    internal double Number(string column) => reader.GetDouble(reader.GetOrdinal(column));

    /// <summary>A moment in UTC.</summary>
    internal Instant At(string column) => InstantPattern.ExtendedIso.Parse(Text(column)).GetValueOrThrow();

    /// <summary>A moment as the database holds it.</summary>
    internal static string Write(Instant at) => InstantPattern.ExtendedIso.Format(at);
}
