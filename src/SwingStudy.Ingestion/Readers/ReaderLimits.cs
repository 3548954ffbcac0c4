namespace SwingStudy.Ingestion.Readers;

/// <summary>Limits that keep memory bounded whatever a file holds.</summary>
public static class ReaderLimits
{
    /// <summary>Largest file whose bytes are held while it is read.</summary>
    public const int HeldBytes = 1 << 20;

    /// <summary>Longest record in characters: 1 MiB of plain text. No export of a device comes near it; an open quote does.</summary>
    public const int RecordCharacters = 1 << 20;

    /// <summary>Most raw text that a <see cref="RejectedRecord"/> carries.</summary>
    public const int RawCharacters = 4096;

    /// <summary>Records among which the headings are looked for.</summary>
    public const int HeadingSearchRecords = 1000;

    /// <summary>Most columns of a document.</summary>
    public const int Columns = 16_384;

    /// <summary>Most values of all channels of one recording: 128 MiB of numbers. A swing has some tens of thousands.</summary>
    public const long RecordingValues = 16L << 20;

    /// <summary>Deepest nesting of JSON.</summary>
    public const int JsonDepth = 32;

    /// <summary>Largest workbook once unpacked, in bytes.</summary>
    public const long WorkbookBytes = 512L << 20;

    /// <summary>Highest ratio of unpacked to packed size of a part of a workbook that is larger than 1 MiB.</summary>
    public const int WorkbookRatio = 200;

    /// <summary>Largest export once it is unpacked, in bytes.</summary>
    public const long UnpackedBytes = 2L << 30;

    /// <summary>Highest ratio of unpacked to packed size of an export that unpacks to more than <see cref="UnpackedFree"/>.</summary>
    public const int UnpackedRatio = 200;

    /// <summary>Size in bytes up to which an export may unpack at any ratio.</summary>
    public const long UnpackedFree = 16L << 20;

    /// <summary>Largest JSON document in bytes; NDJSON has no limit, since it is read line by line.</summary>
    public const long JsonBytes = 256L << 20;
}
