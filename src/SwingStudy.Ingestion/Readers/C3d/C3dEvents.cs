using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>Collects the events of a file from its EVENT group and its header.</summary>
internal static class C3dEvents
{
    private const double SameTimeSeconds = 1e-4;

    /// <summary>Events by time, each once. Times that count from frame 1 of the recording are shifted to the first frame of the file.</summary>
    public static IReadOnlyList<C3dEvent> Of(C3dParameters parameters, C3dHeader header, C3dShape shape, string file, List<Problem> notices)
    {
        var events = OfGroup(parameters);
        var start = (shape.FirstFrame - 1) / shape.RateHz;
        var length = shape.Frames / shape.RateHz;
        if (start > 0 && events.Exists(found => found.TimeSeconds > length) && events.TrueForAll(found => found.TimeSeconds >= start && found.TimeSeconds <= start + length))
        {
            notices.Add(C3dMessages.EventsShifted(file, start));
            events = [.. events.Select(found => found with { TimeSeconds = found.TimeSeconds - start })];
        }

        // Four letters are all that the header has: the same event in the group says more.
        foreach (var found in header.Events)
        {
            if (!events.Exists(known => Math.Abs(known.TimeSeconds - found.TimeSeconds) <= SameTimeSeconds && known.Label.StartsWith(found.Label, StringComparison.OrdinalIgnoreCase)))
                events.Add(found);
        }

        return [.. events.OrderBy(found => found.TimeSeconds).ThenBy(found => found.Label, StringComparer.Ordinal)];
    }

    private static List<C3dEvent> OfGroup(C3dParameters parameters)
    {
        var times = parameters.Joined("EVENT", "TIMES", isUnsigned: false);
        var (labels, contexts, subjects) = (parameters.Texts("EVENT", "LABELS"), parameters.Texts("EVENT", "CONTEXTS"), parameters.Texts("EVENT", "SUBJECTS"));
        var used = Math.Clamp(parameters.Count("EVENT", "USED") ?? times.Count / 2, 0, times.Count / 2);
        var events = new List<C3dEvent>();
        for (var i = 0; i < (int)used; i++)
        {
            var seconds = (60 * times[2 * i]) + times[(2 * i) + 1];
            if (double.IsFinite(seconds))
                events.Add(new C3dEvent(At(labels, i) ?? "", seconds, At(contexts, i), At(subjects, i)));
        }

        return events;
    }

    private static string? At(IReadOnlyList<string> texts, int i) => i < texts.Count ? texts[i] : null;
}
