using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Link;

/// <summary>Links and clocks as rows of their tables.</summary>
internal static class LinkRows
{
    private const double Million = 1e6;

    public static RowSet Of(TableDefinition table, IReadOnlyList<CaptureLink> links) => new(table,
    [
        new TextColumn([.. links.Select(link => link.Capture.Id)]),
        new TextColumn([.. links.Select(link => link.Swing)]),
        new TextColumn([.. links.Select(link => link.Participant)]),
        new TextColumn([.. links.Select(link => link.Method)]),
        new NumberColumn([.. links.Select(link => Rounded(link.ResidualSeconds ?? double.NaN, 6))]),
        new NumberColumn([.. links.Select(link => Rounded(link.Confidence ?? double.NaN, 3))]),
        new TextColumn([.. links.Select(link => link.Session)]),
        new InstantColumn([.. links.Select(link => link.StruckMillis ?? InstantColumn.MissingMillis)]),
        new TextColumn([.. links.Select(link => link.Candidate)]),
        new TextColumn([.. links.Select(link => link.Capture.Source)]),
        new TextColumn([.. links.Select(link => link.Capture.Device)]),
    ]);

    public static RowSet Of(TableDefinition table, IReadOnlyList<ClockRow> clocks) => new(table,
    [
        new TextColumn([.. clocks.Select(clock => clock.Session.Participant)]),
        new TextColumn([.. clocks.Select(clock => clock.Session.Id)]),
        new TextColumn([.. clocks.Select(clock => clock.Device.Source)]),
        new TextColumn([.. clocks.Select(clock => clock.Device.Device)]),
        new TextColumn([.. clocks.Select(clock => clock.ReferenceSource)]),
        new InstantColumn([.. clocks.Select(clock => clock.FromMillis)]),
        new InstantColumn([.. clocks.Select(clock => clock.ToMillis)]),
        new NumberColumn([.. clocks.Select(clock => Rounded(clock.Line.OffsetSeconds, 6))]),
        new NumberColumn([.. clocks.Select(clock => Rounded(clock.Line.Drift * Million, 3))]),
        new NumberColumn([.. clocks.Select(clock => Rounded(clock.ResidualRms, 6))]),
        new IntegerColumn([.. clocks.Select(clock => (long?)clock.Matched)]),
        new IntegerColumn([.. clocks.Select(clock => (long?)clock.Missed)]),
        new IntegerColumn([.. clocks.Select(clock => (long?)clock.Extra)]),
        new NumberColumn([.. clocks.Select(clock => Rounded(clock.Confidence, 3))]),
        new TextColumn([.. clocks.Select(clock => clock.Method)]),
        new NumberColumn([.. clocks.Select(clock => Rounded(clock.RivalSeconds ?? double.NaN, 3))]),
        new IntegerColumn([.. clocks.Select(clock => (long?)clock.RivalMatched)]),
    ]);

    /// <summary>Without trailing noise of arithmetic, so that it reads well.</summary>
    private static double Rounded(double value, int digits) => double.IsNaN(value) ? value : Math.Round(value, digits) + 0.0;
}
