namespace SwingStudy.Ingestion.Readers;

/// <summary>What the file itself says a cell is. Delimited text says nothing: all its cells are text.</summary>
public enum CellKind : byte
{
    /// <summary>Text, to be read by the mapping.</summary>
    Text,

    /// <summary>A number of a workbook or of JSON; its text is written with a point, whatever the file's decimal sign is.</summary>
    Number,

    /// <summary>A workbook number with a date style: its text is ISO 8601 local, <see cref="RawBlock.Number"/> the serial.</summary>
    Date,

    /// <summary><c>true</c> or <c>false</c>.</summary>
    Boolean,

    /// <summary>An error of a workbook such as <c>#DIV/0!</c>, or a value that is no cell, such as a JSON array.</summary>
    Error,

    /// <summary>Nothing: an empty workbook cell, a JSON null, a key that the record lacks.</summary>
    Empty,
}
