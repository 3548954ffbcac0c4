using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Readers;

/// <summary>Decides the decimal sign from the text cells of all rows in the columns that hold numbers.</summary>
/// <param name="file">For messages.</param>
/// <param name="columns">Columns of values without a sign of their own.</param>
/// <param name="missing">Texts that hold nothing.</param>
/// <param name="thousands">Declared sign between thousands.</param>
internal sealed class DecimalFinder(string file, IReadOnlyList<Heading> columns, IReadOnlyList<string> missing, char? thousands)
{
    /// <summary>Up to this share of cells written the other way is left to be rejected cell by cell; more of them holds the file.</summary>
    private const double StrayShare = 0.05;

    private readonly DecimalEvidence[] _evidence = [.. columns.Select(column => new DecimalEvidence(column))];
    private readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> _missing =
        new HashSet<string>(missing, StringComparer.OrdinalIgnoreCase).GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The decimal sign of the text cells of a document: declared, or decided from all its rows.</summary>
    public static Outcome<DecimalSign> Find(IBlockReader rows, HeadingRow columns, SourceMapping mapping, string file)
    {
        if (mapping.Text.Decimal is { } declared)
            return new DecimalSign(declared);
        if (mapping.Text.Thousands is '.' or ',')
            return new DecimalSign(mapping.Text.Thousands == '.' ? ',' : '.');
        var numbers = MappedColumns.WithNumbers(mapping).Select(columns.Find).OfType<Heading>().Distinct().ToList();
        var finder = new DecimalFinder(file, numbers, mapping.Missing, mapping.Text.Thousands);
        if (numbers.Count == 0)
            return finder.Decide();
        foreach (var block in rows.Read(new RecordCounts()))
        {
            using (block)
                finder.Observe(block);
        }

        return finder.Decide();
    }

    /// <summary>Takes all rows of a block into account.</summary>
    public void Observe(RawBlock block)
    {
        // Row by row: the cells of a row lie side by side in memory.
        for (var row = 0; row < block.RowCount; row++)
        {
            foreach (var evidence in _evidence)
            {
                var column = evidence.Column.Position;
                if (block.Kind(row, column) != CellKind.Text)
                    continue;
                var text = block.Cell(row, column).Trim();
                if (text.IsEmpty)
                    continue;
                var shape = NumberShape.Of(text, thousands);
                if (shape == NumberShapeKind.None && NumberAndRest.NumberOf(text) is { IsEmpty: false } number)
                    shape = NumberShape.Of(number, thousands);
                evidence.Add(shape, text, block.Line(row), _missing);
            }
        }
    }

    /// <summary>The decimal sign, or the question that a person must answer.</summary>
    public Outcome<DecimalSign> Decide()
    {
        var numeric = _evidence.Where(column => column.HoldsNumbers).ToList();
        long points = numeric.Sum(column => column.Points), commas = numeric.Sum(column => column.Commas);
        if (points > 0 && commas > 0)
        {
            var rare = points < commas ? '.' : ',';
            var isStray = Math.Min(points, commas) <= StrayShare * (points + commas) && !numeric.Any(column => column.IsMainly(rare));
            return isStray
                ? new DecimalSign(rare == '.' ? ',' : '.')
                : ReaderMessages.DecimalMixed(file, [.. numeric.Where(column => column.Points + column.Commas > 0)]);
        }

        if (points > 0 || commas > 0)
            return new DecimalSign(points > 0 ? '.' : ',');
        var doubtful = numeric.Find(column => column.FirstDoubtful is not null);
        return doubtful is null ? new DecimalSign('.') : ReaderMessages.DecimalAmbiguous(file, doubtful);
    }
}
