namespace SwingStudy.Ingestion.Readers;

/// <summary>What the written form of a number says about the decimal sign.</summary>
internal enum NumberShapeKind
{
    /// <summary>It is no number.</summary>
    None,

    /// <summary>A number without sign between its digits: fits both.</summary>
    Whole,

    /// <summary>The decimal sign can be the point alone.</summary>
    Point,

    /// <summary>The decimal sign can be the comma alone.</summary>
    Comma,

    /// <summary>One point before three digits, as in <c>1.234</c>: a decimal point, or a decimal comma's thousands.</summary>
    PointOrThousands,

    /// <summary>One comma before three digits, as in <c>1,234</c>.</summary>
    CommaOrThousands,
}
