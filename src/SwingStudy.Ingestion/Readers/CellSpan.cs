namespace SwingStudy.Ingestion.Readers;

/// <summary>Where the text of a cell lies: from <paramref name="Start"/> in the block's text, or from ~Start in its unescaped texts when negative.</summary>
internal readonly record struct CellSpan(int Start, int Length);
