namespace SwingStudy.Ingestion.Readers;

/// <summary>What the numbers of one column say about the decimal sign.</summary>
internal sealed class DecimalEvidence(Heading column)
{
    private long _numbers;
    private long _others;

    /// <summary>The column.</summary>
    public Heading Column { get; } = column;

    /// <summary>Cells that only a decimal point explains.</summary>
    public long Points { get; private set; }

    /// <summary>Cells that only a decimal comma explains.</summary>
    public long Commas { get; private set; }

    /// <summary>The first cell that only a point explains, and its line.</summary>
    public (string Text, int Line)? FirstPoint { get; private set; }

    /// <summary>The first cell that only a comma explains, and its line.</summary>
    public (string Text, int Line)? FirstComma { get; private set; }

    /// <summary>The first cell that fits both, and its line.</summary>
    public (string Text, int Line)? FirstDoubtful { get; private set; }

    /// <summary>Whether at least half of the filled cells are numbers.</summary>
    public bool HoldsNumbers => _numbers > 0 && _numbers >= _others;

    /// <summary>Whether most cells that decide decide for <paramref name="sign"/>.</summary>
    public bool IsMainly(char sign) => sign == '.' ? Points > Commas : Commas > Points;

    /// <summary>Takes one filled cell into account.</summary>
    public void Add(NumberShapeKind shape, ReadOnlySpan<char> text, int line, HashSet<string>.AlternateLookup<ReadOnlySpan<char>> missing)
    {
        switch (shape)
        {
            case NumberShapeKind.None:
                if (!missing.Contains(text))
                    _others++;
                return;
            case NumberShapeKind.Point:
                Points++;
                FirstPoint ??= (text.ToString(), line);
                break;
            case NumberShapeKind.Comma:
                Commas++;
                FirstComma ??= (text.ToString(), line);
                break;
            case NumberShapeKind.PointOrThousands or NumberShapeKind.CommaOrThousands:
                FirstDoubtful ??= (text.ToString(), line);
                break;
        }

        _numbers++;
    }
}
