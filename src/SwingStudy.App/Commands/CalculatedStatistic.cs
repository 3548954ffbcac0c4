using SwingStudy.Statistics.Catalogue;

namespace SwingStudy.App.Commands;

/// <summary>What <c>calc --json</c> prints: the main quantity at the top, and every row in <see cref="Results"/>.</summary>
internal sealed class CalculatedStatistic(string statistic, string symbol, int rows, IReadOnlyList<NamedEstimate> results)
{
    private readonly Row _main = new(results[0]);

    public string Statistic { get; } = statistic;

    public string Symbol { get; } = symbol;

    public int Rows { get; } = rows;

    public string Method => _main.Method;

    public double? Estimate => _main.Estimate;

    public double? Se => _main.Se;

    public double? CiLow => _main.CiLow;

    public double? CiHigh => _main.CiHigh;

    public double? Confidence => _main.Confidence;

    public double? P => _main.P;

    public double? Df => _main.Df;

    public string? Undefined => _main.Undefined;

    public IReadOnlyList<Row> Results { get; } = [.. results.Select(result => new Row(result))];

    /// <summary>One row; a limit that is open is null.</summary>
    internal sealed class Row(NamedEstimate result)
    {
        public string Quantity { get; } = result.Quantity;

        public string Method { get; } = result.Estimate.Method;

        public double? Estimate { get; } = result.Estimate.Value;

        public double? Se { get; } = result.Estimate.StandardError;

        public double? CiLow { get; } = Finite(result.Estimate.Interval?.Low);

        public double? CiHigh { get; } = Finite(result.Estimate.Interval?.High);

        public double? Confidence { get; } = result.Estimate.Interval?.Level;

        public double? P { get; } = result.Estimate.P;

        public double? Df { get; } = result.Estimate.DegreesOfFreedom;

        public string? Note { get; } = result.Note;

        public string? Undefined { get; } = result.Estimate.Undefined;

        private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;
    }
}
