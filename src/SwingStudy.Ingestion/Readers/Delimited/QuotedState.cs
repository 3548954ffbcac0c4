namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>How a quoted cell ends.</summary>
internal enum QuotedState
{
    /// <summary>At a quote that a delimiter, a line break or the end of the file follows.</summary>
    Closed,

    /// <summary>Not in the text at hand.</summary>
    Incomplete,

    /// <summary>Not before the end of the file, or not within the longest record.</summary>
    Unterminated,

    /// <summary>At a quote that other text follows.</summary>
    TextBehind,
}
