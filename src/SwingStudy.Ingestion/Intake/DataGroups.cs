namespace SwingStudy.Ingestion.Intake;

/// <summary>How rows are gathered into row groups and data files.</summary>
internal static class DataGroups
{
    /// <summary>Rows of a row group: a session or two, so that readers can skip; and arrays so short that the collector frees them at once.</summary>
    public const int Rows = 8_192;

    /// <summary>Values of a row group of curves, and those that wait of one file at most: 8 MiB.</summary>
    public const long MostValues = 1 << 20;

    /// <summary>A file with more rows has data files of its own; the rows of smaller ones are written together.</summary>
    public const int FewRows = 512;
}
