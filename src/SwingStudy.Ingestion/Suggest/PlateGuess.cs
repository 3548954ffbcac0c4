using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Drafts channels, axes and direction of force plates from headings and from what a standing player does to them.</summary>
internal static class PlateGuess
{
    /// <summary>The vertical axis carries weight: its median is at least this many times that of the others.</summary>
    private const double ClearlyLargest = 2;

    /// <summary>Fills channels, axes and loads.</summary>
    public static RecordingRule Fill(IReadOnlyList<(ColumnProfile Column, (string? Side, string Quantity, char Axis) Load)> loads, RecordingRule rule, Draft draft)
    {
        var (meaning, confidence, reason) = SideGuess.Of([.. loads.Select(pair => pair.Load.Side).Distinct()]);
        var channels = new Dictionary<string, FieldSource>(StringComparer.Ordinal);
        foreach (var (column, load) in loads)
        {
            var name = $"{(load.Side is { } side ? meaning.GetValueOrDefault(side, side) : Channels.BothFeet)}_{load.Quantity}_{load.Axis}";
            if (Channels.FindInput(PlayerSides.Of(name, true)) is not { } channel || channels.ContainsKey(name))
                continue;
            channels[name] = new FieldSource { Column = column.Heading.Name, Unit = column.Heading.Unit is null ? channel.Unit : null };
            draft.Say($"channels.{name}", column.Heading.Name, column.Heading.Unit is null ? Math.Min(confidence, 0.4) : confidence, column.Heading.Unit is null ? reason + "; the unit is a guess" : reason);
        }

        return Axes(loads, rule with { Channels = channels }, draft);
    }

    private static RecordingRule Axes(IReadOnlyList<(ColumnProfile Column, (string? Side, string Quantity, char Axis) Load)> loads, RecordingRule rule, Draft draft)
    {
        var medians = "xyz".Select(axis => loads.Where(pair => pair.Load.Quantity == "force" && pair.Load.Axis == axis).Sum(pair => Median(pair.Column))).ToArray();
        var vertical = Array.IndexOf(medians, medians.MaxBy(Math.Abs));
        var others = medians.Where((_, axis) => axis != vertical).Max(Math.Abs);
        var isClear = Math.Abs(medians[vertical]) > ClearlyLargest * others && others >= 0 && medians[vertical] != 0;
        var axes = vertical switch
        {
            2 => AxisMap.Of("x", "z", "-y")!,
            0 => AxisMap.Of("z", "x", "y")!,
            _ => AxisMap.Same,
        };
        draft.Say("recording.axes", $"{axes.X}, {axes.Y}, {axes.Z}", isClear ? 0.5 : 0.2, isClear
            ? $"{"xyz"[vertical]} carries the weight, so it is vertical; which of the others points to the target, and where to, is a guess"
            : "a guess: no axis clearly carries the weight");
        var isOnPlate = medians[vertical] < 0;
        draft.Say("recording.loads", isOnPlate ? "on-plate" : "on-player", isClear ? 0.7 : 0.2, isOnPlate
            ? "the vertical force is negative: the player's load on the plate, or an axis that points down"
            : "the vertical force is positive: the reaction on the player");
        return rule with { Axes = axes, Loads = isOnPlate ? LoadDirection.OnPlate : LoadDirection.OnPlayer };
    }

    private static double Median(ColumnProfile column) => column.Sorted() is { Length: > 0 } sorted ? sorted[sorted.Length / 2] : 0;
}
