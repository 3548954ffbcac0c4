using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Measure;

/// <summary>Values of one variable for all swings of a session: from the preferred source that has one; moments are averaged.</summary>
internal static class SwingValues
{
    /// <summary>The column of a variable; <paramref name="forSession"/> fills what no capture delivers.</summary>
    public static Column Of(Column captured, RowSet captures, IReadOnlyList<MeasuredSwing> swings, Column forSession) => captured switch
    {
        NumberColumn numbers => new NumberColumn([.. swings.Select((swing, i) => Number(numbers.Values, captures, swing) is var value && !double.IsNaN(value)
            ? value
            : ((NumberColumn)forSession).Values[i])]),
        IntegerColumn integers => new IntegerColumn([.. swings.Select((swing, i) =>
            First(swing, integers, row => integers.Values[row]) ?? ((IntegerColumn)forSession).Values[i])]),
        BooleanColumn booleans => new BooleanColumn([.. swings.Select((swing, i) =>
            First(swing, booleans, row => booleans.Values[row]) ?? ((BooleanColumn)forSession).Values[i])]),
        TextColumn texts => new TextColumn([.. swings.Select((swing, i) => FirstText(swing, texts) ?? ((TextColumn)forSession).Values[i])]),
        var other => throw new ArgumentException($"A variable cannot hold {other.Kind}.", nameof(captured)),
    };

    private static double Number(double[] values, RowSet captures, MeasuredSwing swing)
    {
        foreach (var row in swing.Single)
        {
            if (!double.IsNaN(values[row]))
                return values[row];
        }

        var sources = captures.Texts("source");
        var (sum, count) = (0.0, 0);
        string? source = null;
        foreach (var row in swing.Moments.Where(row => !double.IsNaN(values[row])))
        {
            source ??= sources[row];
            if (sources[row] != source)
                break;
            sum += values[row];
            count++;
        }

        return count > 0 ? sum / count : double.NaN;
    }

    private static T? First<T>(MeasuredSwing swing, Column column, Func<int, T?> value)
        where T : struct
    {
        foreach (var row in swing.Single)
        {
            if (!column.IsMissing(row))
                return value(row);
        }

        return null;
    }

    private static string? FirstText(MeasuredSwing swing, TextColumn texts)
    {
        foreach (var row in swing.Single)
        {
            if (texts.Values[row] is { } text)
                return text;
        }

        return null;
    }
}
