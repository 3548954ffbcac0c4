namespace SwingStudy.Ingestion.Mapping.Columns;

/// <summary>What became of a cell.</summary>
internal enum CellVerdict : byte
{
    /// <summary>A value.</summary>
    Value,

    /// <summary>Nothing was read.</summary>
    Missing,

    /// <summary>The text cannot be read as what it should be.</summary>
    Unparsable,

    /// <summary>Physically impossible by the dictionary.</summary>
    OutOfRange,

    /// <summary>No word of the category.</summary>
    UnknownWord,

    /// <summary>A workbook turned a number into a date.</summary>
    BecameDate,
}
