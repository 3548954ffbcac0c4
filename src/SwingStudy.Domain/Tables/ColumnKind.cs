namespace SwingStudy.Domain.Tables;

/// <summary>What a column of a study table holds. Every kind may hold missing values.</summary>
public enum ColumnKind
{
    /// <summary>Unicode text: identifiers, categories, remarks.</summary>
    Text,

    /// <summary>64-bit floating point in the column's canonical unit; never infinite, NaN stands for missing in memory and null on disk.</summary>
    Number,

    /// <summary>64-bit whole number.</summary>
    Integer,

    /// <summary>True or false.</summary>
    Boolean,

    /// <summary>A moment in UTC, to the millisecond.</summary>
    Instant,

    /// <summary>A list of numbers, such as the samples of a curve; a missing sample is NaN in memory and null on disk.</summary>
    NumberList,
}
