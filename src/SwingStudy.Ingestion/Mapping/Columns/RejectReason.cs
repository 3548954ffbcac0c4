namespace SwingStudy.Ingestion.Mapping.Columns;

/// <summary>Stable words of the <c>reason</c> column of rejects.</summary>
internal static class RejectReason
{
    public const string Unparsable = "unparsable";
    public const string OutOfRange = "out-of-range";
    public const string UnknownWord = "unknown-word";
    public const string BecameDate = "became-date";
    public const string TimeMissing = "time-missing";
    public const string TimeSkipped = "time-skipped";
    public const string TimeFarOff = "time-far-off";
    public const string TimeWithoutZone = "time-without-zone";
    public const string ParticipantMissing = "participant-missing";
    public const string ReadingTwice = "reading-twice";

    public static string Of(CellVerdict verdict) => verdict switch
    {
        CellVerdict.Unparsable => Unparsable,
        CellVerdict.OutOfRange => OutOfRange,
        CellVerdict.UnknownWord => UnknownWord,
        CellVerdict.BecameDate => BecameDate,
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "This is no reason to reject."),
    };
}
