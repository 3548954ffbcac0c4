using SwingStudy.Pipeline.Running;
using SwingStudy.Storage.Registry;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Screen;

/// <summary>Human decisions as flags.</summary>
internal static class Decisions
{
    /// <summary>One flag for each decision about a swing that exists, oldest first. A capture names its swing whatever the swing's number has become.</summary>
    public static IEnumerable<Flag> Flags(IReadOnlyList<Decision> exclude, IReadOnlyList<Decision> include, RowSet links, IReadOnlyList<string?> swings)
    {
        var known = swings.OfType<string>().ToHashSet(StringComparer.Ordinal);
        var linked = links.Texts("swing_id");
        var swingOf = links.Texts("capture_id").Select((id, i) => (id, i)).ToDictionary(pair => pair.id!, pair => linked[pair.i], StringComparer.Ordinal);
        foreach (var decision in exclude.Concat(include).OrderBy(decision => decision.Id))
        {
            var subject = DecisionSubject.Of(decision);
            var swing = subject.Capture is null ? subject.Swing : swingOf.GetValueOrDefault(subject.Capture);
            if (swing is null || !known.Contains(swing))
                continue;
            var action = decision.Kind == "include" ? Flag.Keep : subject.Variable is null ? Flag.ExcludeSwing : Flag.ExcludeValue;
            yield return new Flag(swing, subject.Capture, subject.Variable, Flag.Decided, action, decision.Reason, decision.Actor);
        }
    }
}
