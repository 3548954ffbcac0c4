namespace SwingStudy.Ingestion.Readers.Workbook;

/// <summary>Addresses of cells such as <c>C7</c>.</summary>
internal static class CellAddress
{
    /// <summary>Row and column from 0; null when the text is no address of a sheet.</summary>
    public static (int Row, int Column)? Parse(string? address)
    {
        int column = 0, row = 0, at = 0;
        for (; at < address?.Length && char.IsAsciiLetterUpper(address[at]) && at < 3; at++)
            column = (column * 26) + (address[at] - 'A' + 1);
        var digits = at;
        for (; at < address?.Length && char.IsAsciiDigit(address[at]) && at - digits < 7; at++)
            row = (row * 10) + (address[at] - '0');
        return column > 0 && row > 0 && at == address!.Length ? (row - 1, column - 1) : null;
    }

    /// <summary>The letters of a column from 0.</summary>
    public static string Letters(int column) =>
        column < 26 ? ((char)('A' + column)).ToString() : Letters((column / 26) - 1) + (char)('A' + (column % 26));
}
