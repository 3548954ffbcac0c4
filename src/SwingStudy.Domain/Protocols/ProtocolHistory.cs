using System.Globalization;

namespace SwingStudy.Domain.Protocols;

/// <summary>The versions of a study's protocol, oldest first: which comparison was planned when.</summary>
/// <param name="Versions">The lock and every amendment; empty before the lock.</param>
public sealed record ProtocolHistory(IReadOnlyList<ProtocolVersion> Versions)
{
    /// <summary>The protocol was never locked.</summary>
    public static ProtocolHistory None { get; } = new([]);

    /// <summary>The version that holds; null before the lock.</summary>
    public ProtocolVersion? Current => Versions.Count > 0 ? Versions[^1] : null;

    /// <summary>Whether the protocol is locked.</summary>
    public bool IsLocked => Versions.Count > 0;

    /// <summary>Amendments made when data that could show an effect had been taken.</summary>
    public IReadOnlyList<ProtocolVersion> AmendmentsAfterData => [.. Versions.Where(version => version is { Number: > 1, IsAfterData: true })];

    /// <summary>When a comparison got the form it has now: planned before data, or named or changed once data could be seen.</summary>
    /// <param name="outcome">Name of the variable.</param>
    /// <param name="contrast">Name of the contrast.</param>
    public PlanStanding StandingOf(string outcome, string contrast)
    {
        if (Current is not { } current)
            return new(PlanTime.NotLocked, 0, null, false, "the protocol is not locked: nobody can show that this comparison was planned before data");
        if (Find(current, outcome, contrast) is not { } planned)
            return new(PlanTime.NotPlanned, current.Number, current.At, false, "the locked protocol does not plan this comparison");
        var first = Versions.Count - 1;
        while (first > 0 && Find(Versions[first - 1], outcome, contrast) == planned)
            first--;
        var version = Versions[first];
        var wasThere = first > 0 && Find(Versions[first - 1], outcome, contrast) is not null;
        return new(version.IsAfterData ? PlanTime.AfterData : PlanTime.BeforeData, version.Number, version.At, wasThere, Sentence(version, wasThere));
    }

    private static string Sentence(ProtocolVersion version, bool wasThere)
    {
        var act = version.Number == 1 ? "locked" : $"{(wasThere ? "changed" : "added")} by amendment {(version.Number - 1).ToString(CultureInfo.InvariantCulture)}";
        var day = version.At.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);
        return version.IsAfterData
            ? $"{act} on {day}, after data were taken ({string.Join("; ", version.Taken.Where(data => data.TellsOfEffects))})"
            : $"{act} on {day}, before data that could show an effect";
    }

    private static PlannedComparison? Find(ProtocolVersion version, string outcome, string contrast) =>
        version.Comparisons.FirstOrDefault(comparison => comparison.Outcome == outcome && comparison.Contrast == contrast);
}
