namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>The text of one record; valid until the next one is read.</summary>
/// <param name="Line">Line, or position in the array, from 1.</param>
/// <param name="Utf8">Its text.</param>
/// <param name="TooLong">Set when it is longer than any record may be: the text is its beginning alone.</param>
/// <param name="Around">Values of the objects around it, as an object; null where it stands in none.</param>
internal readonly record struct RecordText(int Line, ReadOnlyMemory<byte> Utf8, bool TooLong = false, byte[]? Around = null);
