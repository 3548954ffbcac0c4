using System.Text.Json;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Ingestion.Mapping.Times;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Ingestion.Intake;

/// <summary>What people decided about held files; the newest decision about a file holds.</summary>
internal sealed class IntakeDecisions
{
    private readonly Dictionary<string, (bool Take, AmbiguousChoice? Times)> _byFile = new(StringComparer.Ordinal);

    public IntakeDecisions(StudyRegistry registry)
    {
        foreach (var decision in registry.Decisions().Where(decision => decision.Kind is "include" or "exclude"))
        {
            using var subject = JsonDocument.Parse(decision.Subject);
            if (subject.RootElement.TryGetProperty("file", out var file) && file.GetString() is { } hash)
                _byFile[hash] = (decision.Kind == "include", subject.RootElement.TryGetProperty("times", out var times) ? Choice(times.GetString()) : null);
        }
    }

    /// <summary>Whether the file is to be taken although its values differ from earlier ones.</summary>
    public bool Takes(Sha256 hash) => _byFile.TryGetValue(hash.ToString(), out var decision) && decision.Take;

    /// <summary>Whether the file is to be left out.</summary>
    public bool LeavesOut(Sha256 hash) => _byFile.TryGetValue(hash.ToString(), out var decision) && !decision.Take;

    /// <summary>Which of two times is meant where local times of the file occur twice.</summary>
    public AmbiguousChoice? TimesOf(Sha256 hash) => _byFile.GetValueOrDefault(hash.ToString()).Times;

    private static AmbiguousChoice? Choice(string? word) => word switch
    {
        "earlier" => AmbiguousChoice.Earlier,
        "later" => AmbiguousChoice.Later,
        _ => null,
    };
}
